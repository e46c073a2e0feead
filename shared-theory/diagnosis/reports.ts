import type { ErrorKind } from '../questions/error-kinds.ts';
import { creditWithTalk, isPartly, pointsOf } from '../questions/points.ts';
import type { AskedQuestion, AskedRound, Hand, StudentMarker } from './asked.ts';
import { againMarker, evidenceOf, evidenceQuestions, studentMarker } from './asked.ts';
import type { SheetResult } from './breakdown.ts';
import type { HabitFound } from './habits.ts';
import { habitsByStudent } from './habits.ts';
import { handsOf } from './spread.ts';

/** One student's lesson: for the teacher alone. */
export type StudentReport = SheetResult & {
  /** Of the friendly ledger: ten a question. */
  readonly points: number;
  /** Of the questions that were asked from memory, without any sound, how many were heard right. */
  readonly memory: { readonly right: number; readonly of: number };
  /** What single answers showed, most often first. */
  readonly errors: readonly { readonly error: ErrorKind; readonly times: number }[];
  readonly habits: readonly HabitFound[];
};

type Tally = { right: number; part: number; wrong: number; notSure: number; silent: number; of: number } & {
  readonly memory: { right: number; of: number };
};

/** The lesson of each student who could answer any of it, by student. The evidence is of the first sheets. */
export function studentReports(rounds: readonly AskedRound[]): ReadonlyMap<string, StudentReport> {
  const tallies = new Map<string, Tally & { points: number; errors: Map<ErrorKind, number> }>();
  const tallyOf = (student: string) => {
    const known = tallies.get(student);
    if (known !== undefined) return known;
    const memory = { right: 0, of: 0 };
    const made = { right: 0, part: 0, wrong: 0, notSure: 0, silent: 0, of: 0, points: 0, memory, errors: new Map() };
    tallies.set(student, made);
    return made;
  };
  for (const { first, hands, question } of evidenceQuestions(rounds)) {
    for (const student of first.seats) {
      if ((first.answers.get(student)?.answer ?? null) !== null) continue;
      const tally = tallyOf(student);
      tally.of += 1;
      tally.silent += 1;
      if (question.memory === true) tally.memory.of += 1;
    }
    for (const { student, mark } of hands) {
      const { evidence, credit, errors } = mark;
      const tally = tallyOf(student);
      tally.of += 1;
      if (evidence === 'abstain') tally.notSure += 1;
      else tally[evidence === 'right' ? 'right' : isPartly(credit) ? 'part' : 'wrong'] += 1;
      if (question.memory === true) {
        tally.memory.of += 1;
        if (evidence === 'right') tally.memory.right += 1;
      }
      for (const error of errors) tally.errors.set(error, (tally.errors.get(error) ?? 0) + 1);
    }
  }
  for (const round of rounds) {
    for (const question of round.questions) {
      for (const [student, credit] of creditsOf(round, question)) tallyOf(student).points += pointsOf(credit);
    }
  }
  const habits = habitsByStudent(rounds);
  return new Map(
    [...tallies].map(([student, { errors, ...tally }]) => [
      student,
      {
        ...tally,
        errors: [...errors]
          .map(([error, times]) => ({ error, times }))
          .toSorted((a, b) => b.times - a.times || a.error.localeCompare(b.error, 'en')),
        habits: habits.get(student) ?? [],
      },
    ]),
  );
}

/**
 * Each student's credit of one question for the friendly ledger, 0 to 1: under the present truth or another that was shown,
 * whichever is higher; full for all who could answer where the question is struck. Who has none may be missing.
 */
export function creditsOf(round: AskedRound, question: AskedQuestion): ReadonlyMap<string, number> {
  const { sheets, struck, shownUnder = [] } = question;
  if (struck === true) {
    return new Map(
      sheets.flatMap(({ seats, answers }) => [...seats, ...answers.keys()]).map((student) => [student, 1]),
    );
  }
  const credits = new Map<string, number>();
  const raise = (student: string, credit: number): void => {
    if (credit > (credits.get(student) ?? 0)) credits.set(student, credit);
  };
  const present = evidenceOf(round, question);
  const again = present === null ? null : againMarker(round, question, present.mark);
  for (const { student, credit } of credited(present?.hands ?? [], again, sheets)) raise(student, credit);
  for (const { truth, letStand } of shownUnder) {
    const mark = studentMarker(round, { ...question, letStand }, truth);
    const [first] = sheets;
    if (mark === null || first === undefined) continue;
    for (const { student, credit } of credited(handsOf(first.answers, mark), mark, sheets)) raise(student, credit);
  }
  return credits;
}

/** The credits that marks give: of the first sheet, and of what the last is better. */
function* credited(
  hands: readonly Hand[],
  mark: StudentMarker | null,
  sheets: AskedQuestion['sheets'],
): Generator<{ readonly student: string; readonly credit: number }> {
  const last = sheets.length > 1 ? sheets.at(-1) : undefined;
  if (last === undefined || mark === null) {
    for (const hand of hands) yield { student: hand.student, credit: hand.mark.credit };
    return;
  }
  const again = new Map(handsOf(last.answers, mark).map((hand) => [hand.student, hand.mark.credit]));
  const firsts = new Map(hands.map((hand) => [hand.student, hand.mark.credit]));
  for (const student of new Set([...firsts.keys(), ...again.keys()])) {
    const credits = { first: firsts.get(student) ?? null, again: again.get(student) ?? null };
    yield { student, credit: creditWithTalk(credits) };
  }
}
