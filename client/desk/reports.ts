import { deskWords, errorKinds, habitKinds } from '../../server/protocol/words/en.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import type { DeskView, WireStudentReport } from '../../server/protocol/views.ts';

const words = deskWords.roll;

/** Silent so often, or the same slip so often: then it is noted. */
const SILENT_OFTEN = 2;
const SLIP_OFTEN = 3;
/** Never more at once beside a question. */
const MOST_QUIET = 4;

const OUTCOMES = ['right', 'part', 'wrong', 'notSure', 'silent'] as const;

/** A finding about one student, with what to say about it. */
export type Finding = {
  readonly finding: string;
  readonly say: string;
  /** Seen often enough to be more than a hint. */
  readonly firm: boolean;
};

/** `once`, `3 times`. */
function times(count: number): string {
  return count === 1 ? words.once : fill(words.times, { n: count });
}

/** How a student's answers came out, in words: `5 right`, `2 not sure`; what never happened is left out. */
export function countsOf(report: WireStudentReport): readonly string[] {
  return OUTCOMES.flatMap((outcome) =>
    report[outcome] > 0 ? [fill(words.counts[outcome], { n: report[outcome] })] : [],
  );
}

/** What is to be noticed about one student: silence, and the same slip again and again. Private, and no verdict. */
function notesOf(report: WireStudentReport | undefined): readonly string[] {
  if (!report) return [];
  const [slip] = report.errors;
  return [
    report.silent >= SILENT_OFTEN ? fill(words.silentTimes, { n: report.silent }) : '',
    slip && slip.times >= SLIP_OFTEN ? fill(words.sameAgain, { n: slip.times }) : '',
  ].filter(Boolean);
}

/** The slip seen most often, and habits over several answers, each with its sentence. */
export function findingsOf({ errors, habits }: WireStudentReport): readonly Finding[] {
  const slips = errors.slice(0, 1).flatMap(({ error, times: seen }) => {
    const found = errorKinds[error];
    if (!found) return [];
    const finding = fill(words.seen, { finding: found.finding, times: times(seen) });
    return [{ finding, say: found.say, firm: seen >= SLIP_OFTEN }];
  });
  const kept = habits.flatMap(({ habit, times: seen, of }) => {
    const found = habitKinds[habit] ?? errorKinds[habit];
    if (!found) return [];
    return [{ finding: fill(words.habit, { finding: found.finding, times: seen, of }), say: found.say, firm: true }];
  });
  return [...slips, ...kept];
}

/** Those whom the teacher may want to look at, by seat; a few at most. */
export function quietList({ students, reports }: Pick<DeskView, 'students' | 'reports'>) {
  const noted = students
    .toSorted((a, b) => a.seat - b.seat)
    .map(({ student, name, cannotHear }) => ({
      student,
      name,
      notes: [
        ...(cannotHear ? [words.cannotHear] : []),
        ...notesOf(reports.find((report) => report.student === student)),
      ],
    }));
  return noted.filter(({ notes }) => notes.length > 0).slice(0, MOST_QUIET);
}
