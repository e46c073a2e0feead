import type { Quality } from '../../chords.ts';
import type { ErrorKind } from '../error-kinds.ts';
import { firstShown, needed, notRight, RIGHT } from '../marks.ts';
import type { AskedOf, Judge, MarkingContext } from '../question.ts';

/** Credit for a quality that is not exact: sounded, then answered. */
const PART_CREDIT: Partial<Record<Quality, Partial<Record<Quality, number>>>> = {
  diminished: { minor: 0.5 },
  'suspended-fourth': { 'suspended-second': 0.7, major: 0.3 },
  'suspended-second': { 'suspended-fourth': 0.7, major: 0.3 },
};

/** A pad with one suspended chord asks whether a chord is suspended, not by what: there the other one's name is right as well. */
const NAMED_BY: Partial<Record<Quality, Quality>> = { 'suspended-second': 'suspended-fourth' };

const SLOW_BELOW = 80;
const FAST_ABOVE = 120;
const LOW_BASS_BELOW_MIDI = 45; // A2
/** Open shapes end on string 1 at most at G4; from A4 on a shape sits up the neck and rings brighter. */
const BRIGHT_TOP_FROM_MIDI = 69;

/** Quality of a chord, among those on the pad. */
export const qualityJudge: Judge<'quality'> = {
  kind: 'quality',
  truth: rightQuality,
  mark: (answer, context) => {
    const sounded = needed(rightQuality(context), 'quality', context.target);
    if (answer === sounded || alsoRight(context).includes(answer)) return RIGHT;
    return notRight(PART_CREDIT[sounded]?.[answer] ?? 0, errorOf(answer, sounded, context));
  },
  also: alsoRight,
  heard: (answer) => answer,
  chance: ({ settings }) => 1 / settings.qualities.length,
};

/** What sounded, where the pad can name it. */
function rightQuality(asked: AskedOf): Quality | null {
  const sounded = asked.truth.qualities[asked.target];
  if (sounded === undefined) return null;
  return asked.settings.qualities.includes(sounded) || alsoRight(asked).length > 0 ? sounded : null;
}

function alsoRight({ truth, target, settings: { qualities } }: AskedOf): readonly Quality[] {
  const sounded = truth.qualities[target];
  const name = sounded && !qualities.includes(sounded) ? NAMED_BY[sounded] : undefined;
  return name && qualities.includes(name) ? [name] : [];
}

function errorOf(answer: Quality, sounded: Quality, { beside, target }: MarkingContext): ErrorKind | null {
  const { tempo } = beside;
  const slow = tempo !== null && tempo < SLOW_BELOW;
  const fast = tempo !== null && tempo > FAST_ABOVE;
  const low = (beside.bass[target] ?? Infinity) < LOW_BASS_BELOW_MIDI;
  const bright = (beside.top[target] ?? 0) >= BRIGHT_TOP_FROM_MIDI;
  const saysMood = answer === 'major' || answer === 'minor';
  const suspended = sounded === 'suspended-fourth' || sounded === 'suspended-second';
  const odd = (quality: Quality) => quality === 'diminished' || quality === 'augmented';
  return firstShown([
    ['slow-or-low-is-minor', sounded === 'major' && answer === 'minor' && (slow || low)],
    ['fast-or-bright-is-major', sounded === 'minor' && answer === 'major' && (fast || bright)],
    ['gives-a-mood-to-a-power-chord', sounded === 'power' && saysMood],
    ['gives-a-mood-to-a-suspended-chord', suspended && saysMood],
    ['hears-diminished-as-minor', sounded === 'diminished' && answer === 'minor'],
    ['lumps-diminished-and-augmented', odd(sounded) && odd(answer)],
    ['carries-the-first-quality', target > 0 && answer === beside.qualities[0]],
  ]);
}
