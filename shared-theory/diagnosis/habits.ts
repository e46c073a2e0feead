import { lineDigit } from '../distance-line.ts';
import { keyId, usualKey } from '../keys.ts';
import { pitchClass } from '../pitch.ts';
import { startsAtZero } from '../questions/distance/judge.ts';
import { keysAsk, partsOf } from '../questions/keys/ask.ts';
import type { Answer, AnswerOf, Kind } from '../questions/question.ts';
import { NOT_SURE } from '../questions/question.ts';
import type { AskedRound, EvidenceQuestion } from './asked.ts';
import { evidenceQuestions } from './asked.ts';

/** What only several items together can show of a student. */
export type Habit =
  | 'swaps-up-and-down'
  | 'leans-to-one-quality'
  | 'carries-the-first-quality'
  | 'always-the-home-key'
  | 'starts-at-zero';

/** A habit: how often it showed among the items that could show it. */
export type HabitFound = { readonly habit: Habit; readonly times: number; readonly of: number };

type Item = { readonly asked: EvidenceQuestion; readonly answer: Answer };

const KINDS_READ: ReadonlySet<Kind> = new Set(['direction', 'quality', 'keys', 'distance']);

/** The habits of each student that has any, over a lesson or many. */
export function habitsByStudent(rounds: readonly AskedRound[]): ReadonlyMap<string, readonly HabitFound[]> {
  const items = new Map<string, Item[]>();
  for (const asked of evidenceQuestions(rounds)) {
    if (!KINDS_READ.has(asked.question.kind)) continue;
    for (const { student, answer } of asked.hands) {
      if (answer === NOT_SURE) continue;
      const own = items.get(student);
      if (own === undefined) items.set(student, [{ asked, answer }]);
      else own.push({ asked, answer });
    }
  }
  const found = new Map<string, readonly HabitFound[]>();
  for (const [student, own] of items) {
    const habits = FINDERS.flatMap((find) => find(own) ?? []);
    if (habits.length > 0) found.set(student, habits);
  }
  return found;
}

const FINDERS: readonly ((items: readonly Item[]) => HabitFound | null)[] = [
  swapsUpAndDown,
  leansToOneQuality,
  carriesTheFirstQuality,
  alwaysTheHomeKey,
  countsFromNought,
];

/** Worse than chance on six moving basses and more: the words are exchanged, not the ears. */
function swapsUpAndDown(items: readonly Item[]): HabitFound | null {
  const moving = of(items, 'direction').filter(({ truth }) => truth !== 'same');
  const wrong = moving.filter(({ answer, truth }) => answer !== truth && answer !== 'same');
  return moving.length >= 6 && wrong.length >= 0.75 * moving.length
    ? { habit: 'swaps-up-and-down', times: wrong.length, of: moving.length }
    : null;
}

/** One quality for three of four chords, over eight and more, where what sounded was mixed. */
function leansToOneQuality(items: readonly Item[]): HabitFound | null {
  const asked = of(items, 'quality');
  if (asked.length < 8) return null;
  for (const quality of new Set(asked.map(({ answer }) => answer))) {
    const times = asked.filter(({ answer }) => answer === quality).length;
    const sounded = asked.filter(({ truth }) => truth === quality).length;
    if (times >= 0.75 * asked.length && sounded <= 0.6 * asked.length) {
      return { habit: 'leans-to-one-quality', times, of: asked.length };
    }
  }
  return null;
}

function carriesTheFirstQuality(items: readonly Item[]): HabitFound | null {
  const changed = of(items, 'quality').filter(
    ({ truth, asked }) => asked.question.target > 0 && truth !== asked.round.truth.qualities[0],
  );
  const carried = changed.filter(({ answer, asked }) => answer === asked.round.truth.qualities[0]);
  return carried.length >= 3 ? { habit: 'carries-the-first-quality', times: carried.length, of: changed.length } : null;
}

/** The first chord's own key and no other, three times and more where that was not right. */
function alwaysTheHomeKey(items: readonly Item[]): HabitFound | null {
  const asked = of(items, 'keys');
  const home = asked.filter(({ answer, asked: { round } }) => {
    const [root = 'C'] = round.truth.roots;
    const mode = round.truth.qualities[0] === 'minor' ? 'm' : 'M';
    const [named, ...others] = partsOf(answer).keys;
    return named !== undefined && others.length === 0 && named === keyId(usualKey(`${pitchClass(root)}${mode}`));
  });
  const wrong = home.filter(({ answer, truth }) => keysAsk.key(answer) !== keysAsk.key(truth));
  return wrong.length >= 3 ? { habit: 'always-the-home-key', times: home.length, of: asked.length } : null;
}

/** One step short on the distance line, on two distances and more. */
function countsFromNought(items: readonly Item[]): HabitFound | null {
  const asked = of(items, 'distance');
  const short = asked.filter(({ answer, truth }) => startsAtZero(answer, truth));
  const distances = new Set(short.map(({ truth }) => lineDigit(truth)));
  return distances.size >= 2 ? { habit: 'starts-at-zero', times: short.length, of: asked.length } : null;
}

type ItemOf<K extends Kind> = {
  readonly answer: AnswerOf<K>;
  readonly truth: AnswerOf<K>;
  readonly asked: EvidenceQuestion;
};

function of<K extends Kind>(items: readonly Item[], kind: K): readonly ItemOf<K>[] {
  return items
    .filter(({ asked }) => asked.question.kind === kind)
    .map(({ asked, answer }) => ({ answer: answer as AnswerOf<K>, truth: asked.right as AnswerOf<K>, asked }));
}
