import { BEATS_PER_BAR } from '../meters.ts';
import { GRIDS } from '../groove-grid.ts';
import type { HeardLoop, HeardStroke } from './heard-bars.ts';
import { onSlots } from './heard-bars.ts';
import { roleOf } from './roles.ts';
import type { RhythmTruth } from './rhythm-truth.ts';

/**
 * Long to short: from here on it is heard as swung, up to here as straight; between it is neither. Both lie between the tenths that
 * swing is drawn in, so that no rounding of onsets decides.
 */
const SWUNG_FROM = 1.25;
const STRAIGHT_TO = 1.15;

/** The hand comes down so often a second, at least, where it drives; it goes down and up no oftener where it is relaxed. */
const DRIVING_FROM = 2.5;
const RELAXED_TO = 6;

/** Slots of a beat, or in sevens of a pair of eighths: its first is counted. */
export function slotsPerNumber({ grid, perBar }: Pick<HeardLoop, 'grid' | 'perBar'>): number {
  return grid === 'V7' ? 2 : perBar / BEATS_PER_BAR[GRIDS[grid].meter];
}

/** Whether a number is counted on a slot of the loop; the last eighth of a seven belongs to its last group, of three. */
function isNumber(loop: HeardLoop, slot: number): boolean {
  const place = slot % loop.perBar;
  return place % slotsPerNumber(loop) === 0 && !(loop.grid === 'V7' && place === loop.perBar - 1);
}

const sounding = ({ slots }: HeardLoop) => slots.filter((stroke) => stroke !== null);
const rings = ({ touch }: HeardStroke) => touch === 'open' || touch === 'ring';
const isPlucked = (loop: HeardLoop) => sounding(loop).some(({ plucked }) => plucked);

/** The accents that sound most often, by slot of the pattern. */
export function usualAccents(loop: HeardLoop): readonly number[] {
  return onSlots(loop, (stroke) => stroke?.accent ?? 0).map(([usual]) => usual);
}

/**
 * Whether a hand that goes down on the numbers and up between (in sixteenths down on number and and, up between) plays it without
 * stopping; it may miss the strings. Where slots come by threes or sevens there is no such hand.
 */
export function pendulumOf(loop: HeardLoop): RhythmTruth['pendulum'] {
  if (slotsPerNumber(loop) % 2 !== 0 || loop.grid === 'V7' || isPlucked(loop)) return null;
  const keeps = loop.slots.every(
    (stroke, slot) => stroke === null || stroke.stroke === ((slot % loop.perBar) % 2 === 0 ? 'down' : 'up'),
  );
  return keeps ? 'keeps' : 'breaks';
}

/**
 * Driving: downs alone, on the numbers and between, most of them muted or stopped short. Relaxed: downs and ups, all ringing, the
 * numbers heavier than what lies between and nothing heavy there, the hand never stopping (common practice). Either where it is
 * neither too slow nor too fast for it, of which `driveAt` tells.
 */
export function driveOf(loop: HeardLoop): RhythmTruth['drive'] {
  if (isPlucked(loop)) return null;
  const strokes = sounding(loop);
  const [numbers, between] = [true, false].map((wanted) => {
    const places = loop.slots.flatMap((_, slot) => (isNumber(loop, slot) === wanted ? [slot] : []));
    const heard = places.flatMap((slot) => loop.slots[slot] ?? []);
    const weight = heard.reduce((sum, { accent }) => sum + accent, 0) / heard.length;
    return { share: heard.length / places.length, weight, heaviest: Math.max(0, ...heard.map(({ accent }) => accent)) };
  });
  if (!numbers || !between) return null;
  const downs = strokes.filter(({ stroke }) => stroke === 'down').length;
  const ringing = strokes.filter(rings).length;
  if (downs === strokes.length) {
    const inARow = numbers.share >= 0.5 && between.share >= 1 / 3;
    return inARow && ringing < strokes.length / 2 ? 'driving' : null;
  }
  const open = ringing === strokes.length && downs > 0;
  const gentle = numbers.weight > between.weight && between.heaviest < 3;
  return open && gentle && pendulumOf(loop) !== 'breaks' ? 'relaxed' : null;
}

/** Whether the hand comes down often enough to drive, or goes down and up slowly enough to be relaxed. */
export function driveAt(drive: RhythmTruth['drive'], { slots, slotSeconds }: HeardLoop): RhythmTruth['drive'] {
  if (drive === 'relaxed') return 1 / slotSeconds <= RELAXED_TO ? drive : null;
  const struck = slots.reduce((sum, stroke) => sum + (stroke === null ? 0 : 1), 0);
  return struck / (slots.length * slotSeconds) >= DRIVING_FROM ? drive : null;
}

/** Long to short, by the onsets of neighbours that sound within a bar; null where none does off the even slots. */
function swingRatioHeard({ grid, slots, perBar, slotSeconds }: HeardLoop): number | null {
  if (!GRIDS[grid].swings) return null;
  let heard = 0;
  let sum = 0;
  for (let slot = 0; slot < slots.length; slot += 1) {
    const stroke = slots[slot];
    if (!stroke || (slot % perBar) % 2 === 0) continue;
    const before = slots[slot - 1];
    const after = (slot + 1) % perBar === 0 ? null : slots[slot + 1];
    if (!before && !after) continue;
    heard += 1;
    sum += before ? stroke.time - before.time : 2 * slotSeconds - ((after?.time ?? 0) - stroke.time);
  }
  if (heard === 0) return null;
  const long = sum / heard;
  return long / (2 * slotSeconds - long);
}

/** Whether pairs that are so much longer first, long to short, are heard as swung. */
export function isSwung(ratio: number): boolean {
  return ratio >= SWUNG_FROM;
}

export function swingOf(loop: HeardLoop): RhythmTruth['swing'] {
  const ratio = swingRatioHeard(loop);
  if (ratio === null) return null;
  return isSwung(ratio) ? 'swung' : ratio <= STRAIGHT_TO ? 'straight' : null;
}

/**
 * Where the backbeat falls in a bar of four: on 2 and 4, or on 3. It is the slap where there is one, else what is heavier than the
 * other numbers.
 */
export function halfTimeOf(loop: HeardLoop): RhythmTruth['halfTime'] {
  const step = slotsPerNumber(loop);
  if (loop.perBar !== 4 * step) return null;
  const slaps = onSlots(loop, (stroke) => stroke !== null && roleOf(stroke) === 'slap').map(([usual]) => usual);
  const accents = usualAccents(loop);
  const places: ReturnType<typeof halfTimeIn>[] = [];
  for (let bar = 0; bar < loop.pattern; bar += loop.perBar) {
    const beats = [0, 1, 2, 3].map((beat) => bar + beat * step);
    places.push(
      halfTimeIn(
        beats.map((slot) => slaps[slot] === true),
        beats.map((slot) => accents[slot] ?? 0),
      ),
    );
  }
  const [first = null] = places;
  return places.every((place) => place === first) ? first : null;
}

function halfTimeIn(slaps: readonly boolean[], accents: readonly number[]): RhythmTruth['halfTime'] {
  const slapped = slaps.includes(true);
  const [one = 0, two = 0, three = 0, four = 0] = slapped ? slaps.map(Number) : accents;
  if (Math.min(two, four) > Math.max(one, three)) return 'full-time';
  // A push leaves the one silent: that is no backbeat on three.
  return (slapped || one > 0) && three > Math.max(one, two, four) ? 'half-time' : null;
}

/** How a bar of six equal slots is grouped, by what is heavier than its neighbours in the middle of it. */
export function threesOf(loop: HeardLoop): RhythmTruth['threes'] {
  if (loop.perBar !== 6) return null;
  const [, , third = 0, middle = 0, fifth = 0] = usualAccents(loop);
  if (middle > Math.max(third, fifth)) return 'two-threes';
  return Math.min(third, fifth) > middle ? 'three-twos' : null;
}
