import type { GridStroke } from '../../rhythm/rhythm-truth.ts';
import type { Grid } from '../../groove-grid.ts';
import { filledJudge } from '../filled-judge.ts';
import { allRight, mostlyRests, shareKept, standingFor, stretched } from '../grid-choices.ts';
import type { RightSlots } from '../grid-choices.ts';
import { isMuted, numberSlots, pendulumAt } from '../grid-places.ts';
import { firstShown, notRight } from '../marks.ts';
import { GRID_STROKES, strokeGridAsk } from './ask.ts';

/** Share of the strokes that one who hears no hand has right, at least: every one is a down or an up. */
const UNHEARD = 1 / 2;
/** Right up to a pass of the hand that touches nothing, and turned round behind it. */
const LOST = 0.6;

/**
 * What the hand does on each slot; which way it goes where it touches nothing is not asked. Credit is the share of the strokes that
 * are right, stretched so that half of them earns nothing, nor down and up by turns, all downs or downs on the numbers by rote.
 */
export const strokeGridJudge = filledJudge({
  ask: strokeGridAsk,
  choices: GRID_STROKES.length,
  right: ({ strokes }) => (strokes?.some(([usual]) => usual !== 'silent') ? strokes : null),
  wrong: (answer, right, rhythm) => {
    const { grid } = rhythm;
    const share = (strokes: readonly GridStroke[]) =>
      shareKept(strokes, right, { sounds: (stroke) => stroke !== 'silent', lost: () => 1 });
    const unheard = byRote(grid, right.length).filter((strokes) => !allRight(strokes, right));
    const credit = stretched(share(answer), Math.max(UNHEARD, ...unheard.map(share)));
    const lost = losesThePendulum(answer, right);
    return notRight(
      lost ? Math.max(LOST, credit) : credit,
      firstShown([
        ['loses-the-pendulum', lost],
        ['hears-down-up-where-all-are-down', isAllDown(standingFor(right)) && goesByTurns(answer, grid)],
        ['hears-all-downs-where-they-alternate', isAllDown(answer) && followsThePendulum(standingFor(right), grid)],
        [
          'mute-heard-as-rest',
          mostlyRests(answer, right, { silent: 'silent', muted: (slot) => isMuted(rhythm, slot) }),
        ],
      ]),
    );
  },
});

/** Strokes of those who hear nothing. */
function byRote(grid: Grid, slots: number): readonly (readonly GridStroke[])[] {
  const numbers = numberSlots(grid);
  const fills: readonly ((slot: number) => GridStroke)[] = [
    (slot) => pendulumAt(grid, slot),
    () => 'down',
    (slot) => (numbers.includes(slot) ? 'down' : 'silent'),
  ];
  return fills.map((fill) => Array.from({ length: slots }, (_, slot) => fill(slot)));
}

const isStruck = (stroke: GridStroke | undefined): boolean => stroke === 'down' || stroke === 'up';

/** Strokes that sound are downs alone; two of them at least. */
function isAllDown(strokes: readonly GridStroke[]): boolean {
  return strokes.filter(isStruck).length > 1 && !strokes.includes('up');
}

/** Downs and ups of a hand that never stops, down on one slot and up on the next. */
function followsThePendulum(strokes: readonly GridStroke[], grid: Grid): boolean {
  const isBoth = strokes.includes('down') && strokes.includes('up');
  return isBoth && strokes.every((each, slot) => !isStruck(each) || each === pendulumAt(grid, slot));
}

/** Down and up by turns, by slots or from stroke to stroke. */
function goesByTurns(strokes: readonly GridStroke[], grid: Grid): boolean {
  if (followsThePendulum(strokes, grid)) return true;
  const struck = strokes.filter(isStruck);
  return struck.length > 1 && struck.every((stroke, place) => place === 0 || stroke !== struck[place - 1]);
}

/** Right up to a slot on which nothing is struck, and behind it every down an up and every up a down, to the end. */
function losesThePendulum(answer: readonly GridStroke[], right: RightSlots<GridStroke>): boolean {
  const truth = standingFor(right);
  const isRight = (given: GridStroke, slot: number) => right[slot]?.includes(given) ?? false;
  const isTurned = (given: GridStroke, slot: number) =>
    isStruck(truth[slot]) ? isStruck(given) && !isRight(given, slot) : isRight(given, slot);
  return truth.some((passes, slot) => {
    if (passes !== 'silent') return false;
    const struck = [truth.slice(0, slot), truth.slice(slot)].every((part) => part.some(isStruck));
    return struck && answer.every((given, place) => (place <= slot ? isRight : isTurned)(given, place));
  });
}
