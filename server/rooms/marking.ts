import { parseChord, soundsAs } from '../../shared-theory/chords.ts';
import type { Chord } from '../../shared-theory/chords.ts';
import { breakdownOf } from '../../shared-theory/diagnosis/breakdown.ts';
import type { BreakdownLine } from '../../shared-theory/diagnosis/breakdown.ts';
import { spreadOf, topWrong } from '../../shared-theory/diagnosis/spread.ts';
import type { Spread, TopWrong } from '../../shared-theory/diagnosis/spread.ts';
import type { Beside } from '../../shared-theory/questions/beside.ts';
import { besideAll, besideShown } from '../../shared-theory/questions/beside.ts';
import { answerKey } from '../../shared-theory/questions/asks.ts';
import { judgeOf, markAnswer } from '../../shared-theory/questions/judges.ts';
import type { Answer, Kind, Mark, MarkingContext, NotSure } from '../../shared-theory/questions/question.ts';
import type { RoundQuestion } from '../../shared-theory/questions/round-questions.ts';
import type { HeardRound } from './events.ts';
import type { RoomState, Sheet } from './state.ts';
import { couldAnswer } from './state.ts';

const NO_MARK = { exact: false, credit: 0 } as const;

/** Everything here is worked out from the fold and kept nowhere, so that a corrected truth marks the past anew. */

/** The question of a sheet. */
export function questionOn({ round, question }: Pick<Sheet, 'round' | 'question'>): RoundQuestion {
  const found = round.questions.find(({ id }) => id === question);
  if (found === undefined) throw new RangeError(`round ${round.id} has no question ${question}`);
  return found;
}

/** Who is told a mark: the teacher all that it shows, a student no more than what has been shown tells. */
export type ToldTo = 'teacher' | 'student';

/** What a mark on the sheet depends on. */
function markingOf(state: RoomState, sheet: Sheet, told: ToldTo = 'teacher'): MarkingContext {
  const { truth, settings } = sheet.round;
  return { truth, settings, target: questionOn(sheet).target, beside: besideOn(state, sheet, told) };
}

function besideOn(state: RoomState, { round }: Sheet, told: ToldTo): Beside {
  const record = state.rounds[round.number - 1];
  if (told === 'teacher') return besideAll(round.truth, record?.tempoChanged !== true);
  const shown = round.questions.filter(({ id }) => record?.questions.get(id)?.shown === true);
  return besideShown(round.truth, shown);
}

/** The right answer to a question of a round. */
export function rightAnswer({ truth, settings }: HeardRound, { id, kind, target }: RoundQuestion): Answer {
  const answer = judgeOf<Kind>(kind).truth({ truth, settings, target });
  if (answer === null) throw new RangeError(`${id} has no right answer in this round`);
  return answer;
}

/** Marks answers of one sheet; each different answer is marked once. */
export type Marker = (answer: Answer | NotSure) => Mark;
const markers = new WeakMap<Sheet, Partial<Record<ToldTo, { readonly at: string; readonly marker: Marker }>>>();

/** What marks the answers of a sheet, worked out anew once a mark may depend on more or less. */
export function markerOf(state: RoomState, sheet: Sheet, told: ToldTo = 'teacher'): Marker {
  const at = `${state.turn} ${state.rounds[sheet.round.number - 1]?.tempoChanged}`;
  const known = markers.get(sheet);
  const last = known?.[told];
  if (last?.at === at) return last.marker;
  const { kind } = questionOn(sheet);
  const context = markingOf(state, sheet, told);
  const marks = new Map<string, Mark>();
  const marker: Marker = (answer) => {
    const key = answerKey<Kind>(kind, answer);
    const mark = marks.get(key) ?? markAnswer<Kind>(kind, answer, context);
    marks.set(key, mark);
    return mark;
  };
  markers.set(sheet, { ...known, [told]: { at, marker } });
  return marker;
}

/** How the answers of a sheet fell, counted over those who were there before it closed. */
export function spreadOn(state: RoomState, sheet: Sheet): Spread {
  return spreadOf(questionOn(sheet).kind, sheet.answers, seatsOf(state, sheet));
}

/** The most chosen wrong answer of a sheet. */
export function topWrongOn(state: RoomState, sheet: Sheet): TopWrong | null {
  return topWrong<Kind>(spreadOn(state, sheet), judgeOf<Kind>(questionOn(sheet).kind), markingOf(state, sheet));
}

/** Who could answer a sheet. */
export function seatsOf(state: RoomState, sheet: Sheet): readonly string[] {
  const seats: string[] = [];
  for (const student of state.students.values()) if (couldAnswer(sheet, student)) seats.push(student.student);
  return seats;
}

/** How many hands are in on a sheet; an answer taken back is none. */
export function handsIn(sheet: Sheet): number {
  let hands = 0;
  for (const { answer } of sheet.answers.values()) if (answer !== null) hands += 1;
  return hands;
}

/** The different chords of a round in order of their first sounding. */
export function chordsOf({ slots }: HeardRound): readonly Chord[] {
  const chords = slots.map(({ chord }) => parseChord(chord));
  return chords.filter((chord, index) => chords.findIndex((other) => soundsAs(other, chord)) === index);
}

/** How many of the questions that were shown, and that a student could answer, came out right and partly right. */
export type Standing = { right: number; part: number; of: number };

/**
 * Each student's standing over the lesson as the student may be told it, by the first sheet of each question; worked out once
 * while nothing is added.
 */
export const standings = remembered((state): ReadonlyMap<string, Readonly<Standing>> => {
  const all = new Map<string, Standing>();
  for (const id of state.students.keys()) all.set(id, { right: 0, part: 0, of: 0 });
  for (const { questions } of state.rounds) {
    for (const { shown, sheets } of questions.values()) {
      const [first] = sheets;
      if (!shown || first === undefined) continue;
      const mark = markerOf(state, first, 'student');
      for (const student of state.students.values()) {
        const standing = all.get(student.student);
        if (standing === undefined || !couldAnswer(first, student)) continue;
        standing.of += 1;
        const answer = first.answers.get(student.student)?.answer ?? null;
        const { exact, credit } = answer === null ? NO_MARK : mark(answer);
        if (exact) standing.right += 1;
        else if (credit > 0) standing.part += 1;
      }
    }
  }
  return all;
});

/** The lesson, question by question; worked out once while nothing is added. */
export const breakdownFor = remembered((state): readonly BreakdownLine[] =>
  breakdownOf(
    state.rounds.map(({ heard, questions, tempoChanged }) => ({
      number: heard.number,
      truth: heard.truth,
      settings: heard.settings,
      steady: !tempoChanged,
      questions: heard.questions.map((question) => ({
        ...question,
        sheets: (questions.get(question.id)?.sheets ?? [])
          .filter(({ closed }) => closed !== null)
          .map((sheet) => ({ answers: sheet.answers, seats: seatsOf(state, sheet) })),
      })),
    })),
  ),
);

/** Works something out of a room once, for as long as no answer, no student, no turn and no change of tempo is added. */
function remembered<T>(work: (state: RoomState) => T): (state: RoomState) => T {
  const known = new WeakMap<RoomState, { readonly at: string; readonly result: T }>();
  return (state) => {
    const changed = state.rounds.filter(({ tempoChanged }) => tempoChanged).length;
    const at = `${state.turn} ${state.written} ${state.students.size} ${changed}`;
    const last = known.get(state);
    if (last?.at === at) return last.result;
    const result = work(state);
    known.set(state, { at, result });
    return result;
  };
}
