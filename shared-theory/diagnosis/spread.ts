import { answerKey } from '../questions/asks.ts';
import type { ErrorKind } from '../questions/error-kinds.ts';
import type { Answer, AnswerOf, Judge, Kind, Mark, NotSure } from '../questions/question.ts';
import { NOT_SURE } from '../questions/question.ts';
import type { Hand, StudentMarker } from './asked.ts';

/** The answers to one sheet by student; null where an answer was taken back. */
export type Answered = ReadonlyMap<string, { readonly answer: Answer | NotSure | null }>;

/** Equal answers and how many gave them. */
export type Tally = { readonly key: string; readonly answer: Answer; readonly count: number };

/** How the answers to one sheet fell. */
export type Spread = {
  readonly kind: Kind;
  /** Most first; of equally many, by key. */
  readonly counts: readonly Tally[];
  readonly notSure: number;
  /** Seats that could answer and did not. */
  readonly silent: number;
  /** Seats that could answer. */
  readonly of: number;
};

/** Equal answers with the mark that all of them earn. */
export type MarkedTally = Tally & { readonly mark: Mark };

/** A wrong answer, how many heard it so (wherever they marked it) and what it shows. */
export type WrongAnswer = Tally & { readonly error: ErrorKind | null };

/** The wrong answer most often given. */
export type TopWrong = WrongAnswer & {
  /** One misconception to teach, and not answers that scatter because nothing was heard. */
  readonly manyTheSame: boolean;
  /** So many say that a moving bass stayed that the speaker comes under suspicion before the ears. */
  readonly suspectSpeaker: boolean;
};

/** Many the same: at least this many, and this share of all wrong answers. */
const MANY_AT_LEAST = 5;
const MANY_SHARE_PERCENT = 60;
/** Share of all hands saying `same` above which the speaker is suspected. */
const SPEAKER_SHARE_PERCENT = 40;

/**
 * Counts the answers to one sheet. `seats` are the students who could answer; an answer from anyone else (a late joiner)
 * counts as a seat more. Those who were not there are in neither and count nowhere.
 */
export function spreadOf(kind: Kind, answers: Answered, seats: Iterable<string>): Spread {
  const tallies = new Map<string, { key: string; answer: Answer; count: number }>();
  let notSure = 0;
  let answered = 0;
  for (const { answer } of answers.values()) {
    if (answer === null) continue;
    answered += 1;
    if (answer === NOT_SURE) {
      notSure += 1;
      continue;
    }
    const key = answerKey<Kind>(kind, answer);
    const tally = tallies.get(key);
    if (tally === undefined) tallies.set(key, { key, answer, count: 1 });
    else tally.count += 1;
  }
  let silent = 0;
  for (const seat of new Set(seats)) if ((answers.get(seat)?.answer ?? null) === null) silent += 1;
  return { kind, counts: [...tallies.values()].toSorted(mostFirst), notSure, silent, of: answered + silent };
}

/**
 * The wrong answer most often given, or null where there is none; not sure and silence are not wrong. Answers that say the
 * same (one note on two strings) count together. `hands` are all answers of the sheet, not sure among them.
 */
export function topWrong<K extends Kind>(
  marked: readonly MarkedTally[],
  judge: Pick<Judge<K>, 'heard'>,
  hands: number,
): TopWrong | null {
  const wrong = wrongAnswers(marked, judge);
  const top = wrong[0];
  if (top === undefined) return null;
  const all = wrong.reduce((sum, { count }) => sum + count, 0);
  return {
    ...top,
    manyTheSame: top.count >= MANY_AT_LEAST && top.count * 100 >= all * MANY_SHARE_PERCENT,
    suspectSpeaker: wrong.some(({ answer, count }) => answer === 'same' && count * 100 > hands * SPEAKER_SHARE_PERCENT),
  };
}

/**
 * Every different answer with its mark and how many gave it; not sure is none. Answers alike stand apart where they are marked
 * apart, since a mark may lean on what the student answered before.
 */
export function markedTallies(kind: Kind, hands: Iterable<Hand>): readonly MarkedTally[] {
  // One marker makes each mark once: marks alike are one object.
  const tallies = new Map<Mark, Map<string, { key: string; answer: Answer; count: number; mark: Mark }>>();
  for (const { answer, mark } of hands) {
    if (answer === NOT_SURE) continue;
    const key = answerKey<Kind>(kind, answer);
    const ofMark = tallies.get(mark) ?? new Map<string, { key: string; answer: Answer; count: number; mark: Mark }>();
    tallies.set(mark, ofMark);
    const tally = ofMark.get(key);
    if (tally === undefined) ofMark.set(key, { key, answer, count: 1, mark });
    else tally.count += 1;
  }
  return [...tallies.values()].flatMap((each) => [...each.values()]).toSorted(mostFirst);
}

/** The hands of a sheet with their marks; answers taken back are none. */
export function handsOf(answers: Answered, mark: StudentMarker): readonly Hand[] {
  const hands: Hand[] = [];
  for (const [student, { answer }] of answers) {
    if (answer !== null) hands.push({ student, answer, mark: mark(answer, student) });
  }
  return hands;
}

/**
 * Every wrong answer with what it shows, most first, of equally many those first that show something; answers that say the same are one,
 * under the place most often marked.
 */
export function wrongAnswers<K extends Kind>(
  marked: readonly MarkedTally[],
  judge: Pick<Judge<K>, 'heard'>,
): readonly WrongAnswer[] {
  const groups = new Map<string, { key: string; answer: Answer; count: number; error: ErrorKind | null }>();
  for (const { key, answer, count, mark } of marked) {
    // Who is right from an own earlier answer on was counted wrong there.
    if (mark.exact || mark.note === 'follows-own-answer') continue;
    const heard = judge.heard(answer as AnswerOf<K>, mark);
    const group = groups.get(heard);
    if (group === undefined) groups.set(heard, { key, answer, count, error: mark.errors[0] ?? null });
    else group.count += count;
  }
  return [...groups.values()].toSorted(
    (a, b) => b.count - a.count || Number(a.error === null) - Number(b.error === null) || mostFirst(a, b),
  );
}

function mostFirst(a: Tally, b: Tally): number {
  return b.count - a.count || (a.key < b.key ? -1 : a.key > b.key ? 1 : 0);
}
