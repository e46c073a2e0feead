import { bassPitchClass } from '../../chords.ts';
import type { PitchClass } from '../../pitch.ts';
import { midiPitchClass, modulo } from '../../pitch.ts';
import { firstShown, needed, notRight, RIGHT } from '../marks.ts';
import { chordsOf } from '../own-chords.ts';
import type { AskedOf, Judge, MarkingContext, NeckPlace } from '../question.ts';
import { neckPlaces } from '../root/ask.ts';
import { pitchClassAt, placesOf } from '../root/places.ts';

const FIFTH = 7;
const THIRDS: readonly number[] = [3, 4];
const FRET_EITHER_WAY: readonly number[] = [1, 11];

/** The lowest note of a chord, by pitch class: any string, any octave, any spelling. */
export const bassJudge: Judge<'bass'> = {
  kind: 'bass',
  truth: (context) => rightPlaces(context)[0] ?? null,
  mark: (answer, context) => {
    const bass = needed(bassOf(context), 'bass', context.target);
    const above = modulo(pitchClassAt(answer) - bass, 12);
    if (above === 0) return RIGHT;
    const root = context.beside.roots[context.target] ?? null;
    const namesTheRoot = root !== null && pitchClassAt(answer) === root;
    return notRight(creditOf(above, namesTheRoot), errorOf(above, bass, namesTheRoot, context));
  },
  also: (context) => rightPlaces(context).slice(1),
  heard: (answer) => String(pitchClassAt(answer)),
  chance: (context) => rightPlaces(context).length / neckPlaces(context.settings.capo).length,
};

/** Every place of the bass, lowest fret first. */
function rightPlaces(context: AskedOf): readonly NeckPlace[] {
  return placesOf(bassOf(context), context.settings);
}

function bassOf({ truth, target }: AskedOf): PitchClass | null {
  const chord = chordsOf(truth)[target];
  return chord === undefined ? null : bassPitchClass(chord);
}

/** As of a root: its fifth, its third and the fret beside it earn a part; the root over another bass more. */
function creditOf(above: number, namesTheRoot: boolean): number {
  if (namesTheRoot) return 0.6;
  if (above === FIFTH) return 0.4;
  return THIRDS.includes(above) || FRET_EITHER_WAY.includes(above) ? 0.25 : 0;
}

function errorOf(above: number, bass: PitchClass, namesTheRoot: boolean, { beside, target }: MarkingContext) {
  const top = beside.top[target];
  return firstShown([
    ['names-the-root-over-a-slash', namesTheRoot],
    ['fifth-over-the-bass', above === FIFTH],
    ['third-over-the-bass', THIRDS.includes(above)],
    ['one-fret-off', FRET_EITHER_WAY.includes(above)],
    ['names-the-top-note', top !== undefined && modulo(bass + above, 12) === midiPitchClass(top)],
  ]);
}
