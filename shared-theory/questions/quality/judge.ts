import type { Quality } from '../../chords.ts';
import type { ErrorKind } from '../error-kinds.ts';
import { modulo } from '../../pitch.ts';
import { firstShown, needed, notRight, ownAnswer, RIGHT } from '../marks.ts';
import { chordsOf } from '../own-chords.ts';
import type { AskedOf, Judge, MarkingContext } from '../question.ts';
import { pitchClassAt } from '../root/places.ts';
import { questionId } from '../round-questions.ts';
import { readingsOfSound } from '../same-sound.ts';
import { inversionOnOwnRoot } from '../root/inversion.ts';

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

/**
 * Quality of a chord, among those on the pad: its triad. A seventh, sixth or ninth changes nothing of it, and a chord with a
 * diminished triad and a seventh earns the same part as one without.
 */
export const qualityJudge: Judge<'quality'> = {
  kind: 'quality',
  truth: rightQuality,
  mark: (answer, context) => {
    const sounded = needed(rightQuality(context), 'quality', context.target);
    if (answer === sounded || alsoRight(context).includes(answer) || fitsOwnRoot(answer, context)) return RIGHT;
    return notRight(PART_CREDIT[sounded]?.[answer] ?? 0, errorOf(answer, sounded, context));
  },
  also: alsoRight,
  heard: (answer) => answer,
  chance: (context) => {
    const { qualities } = context.settings;
    const sounded = rightQuality(context);
    const named = sounded === null || !qualities.includes(sounded) ? 0 : 1;
    return (named + alsoRight(context).length) / qualities.length;
  },
  leansOn: (target) => [questionId('root', target)],
};

/** What sounded, where the pad can name it. */
function rightQuality(asked: AskedOf): Quality | null {
  const sounded = asked.truth.qualities[asked.target];
  if (sounded === undefined) return null;
  return asked.settings.qualities.includes(sounded) || alsoRight(asked).length > 0 ? sounded : null;
}

/** The other names on the pad for what sounds: C6/A may be heard as Am7. */
function alsoRight({ truth, target, settings: { qualities } }: AskedOf): readonly Quality[] {
  const sounded = truth.qualities[target];
  const written = chordsOf(truth)[target];
  if (sounded === undefined || written === undefined) return [];
  const heard = readingsOfSound(written).map(({ quality }) => quality);
  const name = qualities.includes(sounded) ? undefined : NAMED_BY[sounded];
  return qualities.filter((quality) => quality !== sounded && (quality === name || heard.includes(quality)));
}

/** Whether the quality is that of the chord which the student heard inverted, by the student's own root: C6 as Am7, from A. */
function fitsOwnRoot(answer: Quality, context: MarkingContext): boolean {
  return inversionOnOwnRoot(context)?.quality === answer;
}

function errorOf(answer: Quality, sounded: Quality, context: MarkingContext): ErrorKind | null {
  const { beside, target } = context;
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
    ['hears-the-inversion-as-minor', sounded === 'major' && answer === 'minor' && standsOnItsThird(context)],
    ['gives-a-mood-to-a-power-chord', sounded === 'power' && saysMood],
    ['gives-a-mood-to-a-suspended-chord', suspended && saysMood],
    ['hears-the-major-on-top', sounded === 'minor' && answer === 'major' && hearsTheMajorOnTop(context)],
    ['hears-diminished-as-minor', sounded === 'diminished' && answer === 'minor'],
    ['lumps-diminished-and-augmented', odd(sounded) && odd(answer)],
    ['carries-the-first-quality', target > 0 && answer === beside.qualities[0]],
  ]);
}

const MAJOR_THIRD = 4;
const MINOR_THIRD = 3;

/** Whether a major chord has its third in the bass, as far as that may be told. */
function standsOnItsThird({ beside: { roots, basses }, target }: MarkingContext): boolean {
  const [root, bass] = [roots[target] ?? null, basses[target] ?? null];
  return root !== null && bass !== null && modulo(bass - root, 12) === MAJOR_THIRD;
}

/** Whether a minor seventh chord was heard as the major chord of its upper notes, on its own root or on theirs. */
function hearsTheMajorOnTop(context: MarkingContext): boolean {
  const { beside, target } = context;
  if (beside.sevenths[target] !== 'seventh') return false;
  const [root, place] = [beside.roots[target] ?? null, ownAnswer(context, 'root', target)];
  if (root === null || place === null) return true;
  return [0, MINOR_THIRD].includes(modulo(pitchClassAt(place) - root, 12));
}
