import type { ErrorKind } from '../questions/error-kinds.ts';
import { creditWithTalk, pointsOf } from '../questions/points.ts';
import type { Truth } from '../truth.ts';
import type { AskedQuestion, AskedRound, StudentMarker } from './asked.ts';
import { evidenceQuestions, studentMarker } from './asked.ts';
import type { SheetResult } from './breakdown.ts';
import type { HabitFound } from './habits.ts';
import { habitsByStudent } from './habits.ts';

/** One student's lesson: for the teacher alone. */
export type StudentReport = SheetResult & {
  /** Of the friendly ledger: ten a question. */
  readonly points: number;
  /** What single answers showed, most often first. */
  readonly errors: readonly { readonly error: ErrorKind; readonly times: number }[];
  readonly habits: readonly HabitFound[];
};

type Tally = { right: number; part: number; wrong: number; notSure: number; silent: number; of: number };

/** The lesson of each student who could answer any of it, by student. The evidence is of the first sheets. */
export function studentReports(rounds: readonly AskedRound[]): ReadonlyMap<string, StudentReport> {
  const tallies = new Map<string, Tally & { points: number; errors: Map<ErrorKind, number> }>();
  const tallyOf = (student: string) => {
    const known = tallies.get(student);
    if (known !== undefined) return known;
    const made = { right: 0, part: 0, wrong: 0, notSure: 0, silent: 0, of: 0, points: 0, errors: new Map() };
    tallies.set(student, made);
    return made;
  };
  for (const { first, mark } of evidenceQuestions(rounds)) {
    for (const student of new Set([...first.seats, ...first.answers.keys()])) {
      const tally = tallyOf(student);
      const answer = first.answers.get(student)?.answer ?? null;
      tally.of += 1;
      if (answer === null) {
        tally.silent += 1;
        continue;
      }
      const { evidence, credit, errors } = mark(answer, student);
      if (evidence === 'abstain') tally.notSure += 1;
      else tally[evidence === 'right' ? 'right' : credit > 0 ? 'part' : 'wrong'] += 1;
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
 * whichever is higher; full for all who could answer where the question is struck.
 */
export function creditsOf(round: AskedRound, question: AskedQuestion): ReadonlyMap<string, number> {
  const { sheets, struck, shownUnder = [] } = question;
  const students = new Set(sheets.flatMap(({ seats, answers }) => [...seats, ...answers.keys()]));
  if (struck === true) return new Map([...students].map((student) => [student, 1]));
  const markers = [round.truth, ...shownUnder].flatMap((truth: Truth) => studentMarker(round, question, truth) ?? []);
  return new Map(
    [...students].map((student) => [
      student,
      Math.max(0, ...markers.map((mark) => creditUnder(mark, sheets, student))),
    ]),
  );
}

function creditUnder(mark: StudentMarker, sheets: AskedQuestion['sheets'], student: string): number {
  const credit = (sheet: AskedQuestion['sheets'][number] | undefined): number | null => {
    const answer = sheet?.answers.get(student)?.answer ?? null;
    return answer === null ? null : mark(answer, student).credit;
  };
  return creditWithTalk({ first: credit(sheets[0]), again: sheets.length > 1 ? credit(sheets.at(-1)) : null });
}
