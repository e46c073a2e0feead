import type { GridStroke, RhythmTruth, Role, Weight } from '../rhythm/rhythm-truth.ts';
import { GRIDS } from '../groove-grid.ts';
import { modulo } from '../pitch.ts';
import { BAR_COUNTS } from '../questions/bar-count/ask.ts';
import { andSlots, isMuted, numberSlots, pendulumAt } from '../questions/grid-places.ts';
import { judgeOf } from '../questions/judges.ts';
import type { AskedOf } from '../questions/question.ts';
import type { DropOutTaps, Taps } from '../taps/taps.ts';
import { alone } from './guess.ts';
import type { Guesses } from './guess.ts';

/** Taps of an answer: four bars of four. */
const TAPS = 16;

/** Taps at a tempo of beats a minute; each interval is so many times as long as the one before, every second one so much longer. */
function tapsAt(tempo: number, { grows = 1, limps = 1 }: { readonly grows?: number; readonly limps?: number } = {}) {
  const taps = [0];
  while (taps.length < TAPS) {
    const count = taps.length - 1;
    const interval = (60_000 / tempo) * grows ** count * (count % 2 === 0 ? limps : 1);
    taps.push(Math.round(((taps.at(-1) ?? 0) + interval) * 10) / 10);
  }
  return taps;
}

/** Twice as fast, half as fast, threes for twos. */
const OTHER_LEVELS = [2, 1 / 2, 3 / 2] as const;

function tempos({ truth: { tempo } }: AskedOf): readonly Taps[] {
  return tempo === null ? [] : [1, ...OTHER_LEVELS].map((factor) => tapsAt(tempo * factor));
}

/** Even, limping, getting faster and getting slower. */
function hands({ truth: { tempo } }: AskedOf): readonly Taps[] {
  const ways = [{}, { limps: 1.3 }, { grows: 0.99 }, { grows: 1.01 }];
  return tempo === null ? [] : ways.map((way) => tapsAt(tempo, way));
}

function silences(asked: AskedOf): readonly DropOutTaps[] {
  return hands(asked).map((taps) => ({ taps, silentFrom: null }));
}

function rhythmIn({ truth: { rhythm } }: AskedOf): RhythmTruth | null {
  return rhythm ?? null;
}

/** The slots of a grid with what a rule says of each. */
function filled<T>({ grid }: RhythmTruth, each: (slot: number) => T): readonly T[] {
  return Array.from({ length: GRIDS[grid].slots }, (_, slot) => each(slot));
}

/**
 * The right shape begun on another number or slot, weight on one and three, on two and four, on the ands, on the numbers, all light,
 * and what is muted left out.
 */
function accentGuesses(asked: AskedOf): readonly (readonly Weight[])[] {
  const right = judgeOf('accents').truth(asked);
  const rhythm = rhythmIn(asked);
  if (right === null || rhythm === null) return [];
  const numbers = numberSlots(rhythm.grid);
  const beat = numbers[1] ?? 1;
  const shifted = (by: number) => right.map((_, slot) => right[modulo(slot - by, right.length)] ?? 0);
  const heavyOn = (slots: readonly number[]) =>
    right.map((weight, slot): Weight => (slots.includes(slot) ? 2 : weight === 0 ? 0 : 1));
  const pulse = [0, 1].map((odd) => numbers.filter((_, place) => place % 2 === odd));
  return [
    ...[beat, -beat, 1, -1].map(shifted),
    ...pulse.map(heavyOn),
    heavyOn(andSlots(rhythm.grid)),
    heavyOn(numbers),
    right.map((): Weight => 1),
    right.map((weight, slot): Weight => (isMuted(rhythm, slot) ? 0 : weight)),
  ];
}

const TURNED = { down: 'up', up: 'down', silent: 'silent' } as const;

/** Down and up by turns, all downs, the pendulum lost at each pass of the hand, and what is muted left out. */
function strokeGuesses(asked: AskedOf): readonly (readonly GridStroke[])[] {
  const right = judgeOf('stroke-grid').truth(asked);
  const rhythm = rhythmIn(asked);
  if (right === null || rhythm === null) return [];
  const struck = (as: (slot: number) => GridStroke) =>
    right.map((stroke, slot) => (stroke === 'silent' ? stroke : as(slot)));
  const passes = right.flatMap((stroke, slot) => (stroke === 'silent' ? [slot] : []));
  return [
    ...passes.map((pass) => right.map((stroke, slot) => (slot > pass ? TURNED[stroke] : stroke))),
    struck((slot) => pendulumAt(rhythm.grid, slot)),
    filled(rhythm, (slot) => pendulumAt(rhythm.grid, slot)),
    struck(() => 'down'),
    right.map((stroke, slot) => (isMuted(rhythm, slot) ? 'silent' : stroke)),
  ];
}

const CROSSED: Readonly<Record<Role, Role>> = {
  kick: 'closed',
  slap: 'slap',
  closed: 'kick',
  open: 'kick',
  silent: 'silent',
};

/** Open heard as closed, foot and hat exchanged, the slap taken for the foot, and what is muted left out. */
function roleGuesses(asked: AskedOf): readonly (readonly Role[])[] {
  const right = judgeOf('roles').truth(asked) ?? [];
  const all = (heard: (role: Role) => Role) => right.map(heard);
  return [
    all((role) => (role === 'open' ? 'closed' : role)),
    all((role) => CROSSED[role]),
    all((role) => (role === 'slap' ? 'kick' : role)),
    all((role) => (role === 'closed' || role === 'kick' ? 'silent' : role)),
  ];
}

/** One slot early or late, and one of them alone. */
function openGuesses(asked: AskedOf): readonly (readonly number[])[] {
  const right = judgeOf('opened').truth(asked);
  const rhythm = rhythmIn(asked);
  if (right === null || rhythm === null) return [];
  const { slots } = GRIDS[rhythm.grid];
  const moved = (by: number) => right.map((slot) => modulo(slot + by, slots)).toSorted((one, other) => one - other);
  return [moved(1), moved(-1), ...right.map((slot) => [slot])];
}

/** Answers about the groove that a class might well give, by kind; those nearest to what sounded first. */
export const RHYTHM_GUESSES = {
  tempo: (asked) => alone(tempos(asked)),
  steadiness: (asked) => alone(hands(asked)),
  'drop-out': (asked) => alone(silences(asked)),
  // It is collected: nothing of it is wrong.
  together: () => [],
  'bar-count': () => alone(BAR_COUNTS),
  threes: () => alone(['two-threes', 'three-twos']),
  'half-time': () => alone(['full-time', 'half-time']),
  swing: () => alone(['straight', 'swung']),
  drive: () => alone(['driving', 'relaxed']),
  strokes: () => alone(['all-downs', 'down-up']),
  pendulum: () => alone(['keeps', 'breaks']),
  'change-place': () => alone(['on-one', 'pushed']),
  accents: (asked) => alone(accentGuesses(asked)),
  'stroke-grid': (asked) => alone(strokeGuesses(asked)),
  roles: (asked) => alone(roleGuesses(asked)),
  opened: (asked) => alone(openGuesses(asked)),
} as const satisfies Partial<Guesses>;
