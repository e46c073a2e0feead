import { GRIDS, slotsPerBar, type Grid } from '../groove-grid.ts';
import { slotsPerNumber, usualAccents } from './feel.ts';
import { onSlots, type HeardLoop, type HeardStroke } from './heard-bars.ts';
import type { RhythmTruth } from './rhythm-truth.ts';

type Counts = Pick<RhythmTruth, 'counts' | 'barCounts'>;

/** What of a groove decides how it may be counted. */
export type Countable = Pick<RhythmTruth, 'halfTime' | 'threes'> & {
  readonly weighs: boolean;
  readonly steps: boolean;
  readonly alike: boolean;
};

/** Beats a minute, all of them common practice. */
const COUNTED_TWICE_TO = 200;
const COUNTED_IN_TWO_FROM = 40;
const EIGHTHS_COUNTED_TO = 80;
const SIXTEENTHS_COUNTED_TO = 72;
const IN_ONE_FROM = 144;

/** The strokes of one slot of a bar, in every bar. */
function inBars({ slots, perBar }: HeardLoop, place: number): readonly (HeardStroke | null)[] {
  return slots.filter((_, slot) => slot % perBar === place);
}

/** Whether bass notes ring on 1 and 3 alone, and chords answer them: then two of them are two steps to a bar. */
export function hasTwoSteps(loop: HeardLoop): boolean {
  const bar = 4 * slotsPerNumber(loop);
  if (loop.perBar !== bar) return false;
  const rings = (stroke: HeardStroke | null) => stroke?.bass === true && stroke.touch !== 'palm';
  const onSteps = [0, bar / 2].every((place) => inBars(loop, place).every(rings));
  const elsewhere = loop.slots.flatMap((stroke, slot) => (slot % (bar / 2) === 0 ? [] : (stroke ?? [])));
  return onSteps && elsewhere.length > 0 && elsewhere.every(({ reach, bass }) => reach === 'high' && !bass);
}

/** Whether each and is heavier than the number before it, but for the one that may open a chord: then the ands may be counted as 2 and 4. */
export function weighsAnds(loop: HeardLoop): boolean {
  const step = slotsPerNumber(loop);
  if (step % 2 !== 0) return false;
  const accents = usualAccents(loop);
  const numbers = accents.flatMap((_, slot) => (slot % step === 0 && slot % loop.perBar !== 0 ? [slot] : []));
  return numbers.every((slot) => (accents[slot + step / 2] ?? 0) > (accents[slot] ?? 0));
}

/** Whether the second half of each bar is struck as the first is: then nobody can tell one bar of four from two of two. */
export function hasLikeHalves(loop: HeardLoop): boolean {
  const { perBar } = loop;
  if (perBar % 2 !== 0 || perBar % (2 * slotsPerNumber(loop)) !== 0) return false;
  const like = onSlots(loop, (stroke, place) => isLike(stroke, loop.slots[place + perBar / 2] ?? null));
  return like.every(([usual], slot) => slot % perBar >= perBar / 2 || usual);
}

function isLike(one: HeardStroke | null, other: HeardStroke | null): boolean {
  if (one === null || other === null) return one === other;
  const same = one.stroke === other.stroke && one.touch === other.touch && one.reach === other.reach;
  return same && one.accent === other.accent && one.bass === other.bass;
}

/**
 * Lawful counts of what is heard, at a tempo of beats a minute, the usual one first. Each second count is common practice:
 * - chops on the ands alone, or heavier there: twice as fast, the chops on 2 and 4;
 * - bass on 1 and 3, chords against it: in two, a step a bass note;
 * - the backbeat on 3: half as fast, where the bar is felt;
 * - slow beats of three: by their eighths; a bar of two such by six;
 * - slow beats of four sixteenths: by their eighths, as which they are often written;
 * - a fast bar of three: in one;
 * - a bar of four whose halves are alike: as two bars of two, twelve eighths as two of six;
 * - sevens, whose beats are uneven: by their eighths, and the bar by its three groups.
 */
export function countsOf(grid: Grid, { halfTime, threes, weighs, steps, alike }: Countable, tempo: number): Counts {
  const perBar = slotsPerBar({ grid });
  if (grid === 'V7') return { counts: [1, 2], barCounts: [7, 3] };
  if (slotsPerNumber({ grid, perBar }) === 3) {
    return { counts: tempo <= EIGHTHS_COUNTED_TO ? [1, 3] : [1], barCounts: barsOfThrees(perBar, alike) };
  }
  if (GRIDS[grid].meter === '3/4') {
    // Six that are grouped by threes, whatever they are written in, are felt in two.
    if (threes === 'two-threes') return { counts: [1, 2 / 3], barCounts: [2, 6] };
    return { counts: tempo >= IN_ONE_FROM ? [1, 1 / 3] : [1], barCounts: [3] };
  }
  const twice = (weighs && 2 * tempo <= COUNTED_TWICE_TO) || (grid === 'S16' && tempo <= SIXTEENTHS_COUNTED_TO);
  const inTwo = halfTime === 'half-time' || (steps && tempo / 2 >= COUNTED_IN_TWO_FROM);
  return {
    counts: [1, ...(twice ? [2] : []), ...(inTwo ? [0.5] : [])],
    barCounts: inTwo || alike ? [4, 2] : [4],
  };
}

/** Counts of a bar whose beats have three slots each. */
function barsOfThrees(perBar: number, alike: boolean): Counts['barCounts'] {
  if (perBar === 6) return [2, 6];
  return alike ? [4, 2, 6] : [4];
}
