import type { OnSlot, RhythmTruth, Weight } from '../../rhythm/rhythm-truth.ts';
import { filledJudge } from '../filled-judge.ts';
import { allRight, mostlyRests, shareKept, stretched } from '../grid-choices.ts';
import type { RightSlots } from '../grid-choices.ts';
import { andSlots, isMuted, numberSlots } from '../grid-places.ts';
import { firstShown, notRight } from '../marks.ts';
import { accentsAsk, WEIGHTS } from './ask.ts';

type Accent = 0 | 1 | 2 | 3;

/** What an accent may be marked as: a medium one is heavy beside a light one and light beside a heavy one. */
const MARKED: Readonly<Record<Accent, readonly [Weight, ...Weight[]]>> = { 0: [0], 1: [1], 2: [1, 2], 3: [2] };

/** The accent that a mark on the pad stands for. */
const MEANT: Readonly<Record<Weight, Accent>> = { 0: 0, 1: 1, 2: 3 };
const HEAVIEST = 3;

/** A right shape on the wrong one is half right. */
const ELSEWHERE = 1 / 2;

/**
 * How heavily each slot sounds. Credit is how near the marks come, of the slots that sound, stretched so that marking all alike earns
 * nothing; half where the shape is right and begins on another slot. It is asked where some slot is heavy and some is surely not.
 */
export const accentsJudge = filledJudge({
  ask: accentsAsk,
  choices: WEIGHTS.length,
  right: ({ accents }) => {
    const right = accents.map(weightsOf);
    const isHeavy = right.some((weights) => weights.every((weight) => weight === 2));
    return isHeavy && right.some((weights) => !weights.includes(2)) ? right : null;
  },
  wrong: (answer, right, rhythm) => {
    const share = (weights: readonly Weight[]) =>
      shareKept(weights, right, {
        sounds: (weight) => weight > 0,
        lost: (given, slot) => farOff(given, rhythm.accents[slot]),
      });
    const alike = Math.max(...WEIGHTS.map((weight) => share(right.map(() => weight))));
    const rotated = isRotated(answer, right);
    const credit = stretched(share(answer), alike);
    return notRight(
      rotated ? Math.max(ELSEWHERE, credit) : credit,
      firstShown([
        // A bar that is begun a beat late, but every teacher has a name of its own for it.
        ['one-and-three-for-two-and-four', swapsTheBackbeat(answer, right, rhythm)],
        ['starts-the-bar-elsewhere', rotated],
        ['ands-heavier-than-numbers', liftsTheAnds(answer, rhythm)],
        ['all-alike', isAlike(answer, right)],
        [
          'mute-heard-as-rest',
          mostlyRests<Weight>(answer, right, { silent: 0, muted: (slot) => isMuted(rhythm, slot) }),
        ],
      ]),
    );
  },
});

function weightsOf(accents: OnSlot<Accent>): readonly [Weight, ...Weight[]] {
  const [usual, ...others] = accents;
  const [first, ...more] = MARKED[usual];
  return [first, ...new Set([...more, ...others.flatMap((other) => MARKED[other])].filter((each) => each !== first))];
}

/** How far a mark is from the nearest accent that sounds on a slot, 0 to 1. */
function farOff(given: Weight, accents: readonly Accent[] = []): number {
  return Math.min(...accents.map((accent) => Math.abs(MEANT[given] - accent))) / HEAVIEST;
}

/** Right on every slot if the pattern began on another one. */
function isRotated(answer: readonly Weight[], right: RightSlots<Weight>): boolean {
  return answer.some((_, by) => by > 0 && allRight([...answer.slice(by), ...answer.slice(0, by)], right));
}

/** Heavy on one and three, and not on two and four, where it is the other way round. */
function swapsTheBackbeat(answer: readonly Weight[], right: RightSlots<Weight>, { grid }: RhythmTruth): boolean {
  const numbers = numberSlots(grid);
  if (numbers.length % 4 !== 0 || numbers.length === 0) return false;
  const [strong, back] = [0, 1].map((odd) => numbers.filter((_, place) => place % 2 === odd));
  const sounds = (slots: readonly number[] = [], heavy: boolean) =>
    slots.every((slot) => (right[slot] ?? []).every((weight) => weight === 2) === heavy);
  const marked = (slots: readonly number[] = [], heavy: boolean) =>
    slots.every((slot) => (answer[slot] === 2) === heavy);
  return sounds(strong, false) && sounds(back, true) && marked(strong, true) && marked(back, false);
}

/** So much heavier, on the mean, is no scatter: half of what lies between light and heavy. */
const CLEARLY = 1;

/** The ands are marked clearly heavier than the numbers, where they sound lighter. */
function liftsTheAnds(answer: readonly Weight[], { accents, grid }: RhythmTruth): boolean {
  const [ands, numbers] = [andSlots(grid), numberSlots(grid)];
  const mean = (slots: readonly number[], of: (slot: number) => number) =>
    slots.reduce((sum, slot) => sum + of(slot), 0) / Math.max(1, slots.length);
  const meant = (slot: number) => MEANT[answer[slot] ?? 0];
  const sounded = (slot: number) => accents[slot]?.[0] ?? 0;
  const lifted = mean(ands, meant) - mean(numbers, meant) >= CLEARLY;
  return lifted && mean(ands, sounded) < mean(numbers, sounded);
}

/** One weight on every slot, or on every one that sounds and no other one beside it, where no one weight is right. */
function isAlike(answer: readonly Weight[], right: RightSlots<Weight>): boolean {
  if (new Set(answer).size === 1) return true;
  const sounding = right.map((_, slot) => slot).filter((slot) => right[slot]?.[0] !== 0);
  const [mark, ...others] = new Set(sounding.map((slot) => answer[slot]));
  const alone = others.length === 0 && answer.every((given) => given === mark || given === 0);
  return alone && sounding.some((slot) => !right[slot]?.includes(answer[slot] ?? 0));
}
