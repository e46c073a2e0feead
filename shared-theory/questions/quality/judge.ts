import type { Quality } from '../../chords.ts';
import type { ErrorKind } from '../error-kinds.ts';
import { needed, notRight, RIGHT } from '../marks.ts';
import type { Judge, MarkingContext } from '../question.ts';

type Context = Omit<MarkingContext, 'earlier'>;

/** Credit for a quality that is not exact: sounded, then answered. */
const PART_CREDIT: Partial<Record<Quality, Partial<Record<Quality, number>>>> = {
  diminished: { minor: 0.5 },
  'suspended-fourth': { 'suspended-second': 0.7, major: 0.3 },
  'suspended-second': { 'suspended-fourth': 0.7, major: 0.3 },
};

/** Where a quality is not on the pad: the ones that come nearest, by what stands in place of third and fifth. */
const NEAREST: Partial<Record<Quality, readonly Quality[]>> = {
  'suspended-second': ['suspended-fourth', 'power'],
  'suspended-fourth': ['suspended-second', 'power'],
  diminished: ['minor'],
  augmented: ['major'],
};

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
    const right = needed(rightQuality(context), 'quality', context.target);
    const sounded = needed(context.truth.qualities[context.target], 'quality', context.target);
    if (answer === right || answer === sounded) return RIGHT;
    return notRight(PART_CREDIT[sounded]?.[answer] ?? 0, errorOf(answer, sounded, context));
  },
  also: () => [],
  heard: (answer) => answer,
  chance: ({ settings }) => 1 / settings.qualities.length,
};

function rightQuality({ truth, target, settings }: Context): Quality | null {
  const sounded = truth.qualities[target];
  if (sounded === undefined) return null;
  return [sounded, ...(NEAREST[sounded] ?? [])].find((quality) => settings.qualities.includes(quality)) ?? null;
}

function errorOf(answer: Quality, sounded: Quality, { truth, target }: Context): ErrorKind | null {
  const saysMood = answer === 'major' || answer === 'minor';
  const { tempo } = truth;
  if (sounded === 'major' && answer === 'minor') {
    const low = (truth.bass[target] ?? Infinity) < LOW_BASS_BELOW_MIDI;
    if (low || (tempo !== null && tempo < SLOW_BELOW)) return 'slow-or-low-is-minor';
  }
  if (sounded === 'minor' && answer === 'major') {
    const bright = (truth.top[target] ?? 0) >= BRIGHT_TOP_FROM_MIDI;
    if (bright || (tempo !== null && tempo > FAST_ABOVE)) return 'fast-or-bright-is-major';
  }
  if (sounded === 'power' && saysMood) return 'gives-a-mood-to-a-power-chord';
  if ((sounded === 'suspended-fourth' || sounded === 'suspended-second') && saysMood) {
    return 'gives-a-mood-to-a-suspended-chord';
  }
  if (sounded === 'diminished' && answer === 'minor') return 'hears-diminished-as-minor';
  if (sounded === 'diminished' && answer === 'augmented') return 'lumps-diminished-and-augmented';
  if (sounded === 'augmented' && answer === 'diminished') return 'lumps-diminished-and-augmented';
  if (target > 0 && answer === truth.qualities[0]) return 'carries-the-first-quality';
  return null;
}
