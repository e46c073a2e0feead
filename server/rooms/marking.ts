import { parseChord, soundsAs } from '../../shared-theory/chords.ts';
import type { Chord } from '../../shared-theory/chords.ts';
import { breakdownOf } from '../../shared-theory/diagnosis/breakdown.ts';
import type { BreakdownLine } from '../../shared-theory/diagnosis/breakdown.ts';
import { spreadOf, topWrong } from '../../shared-theory/diagnosis/spread.ts';
import type { Spread, TopWrong } from '../../shared-theory/diagnosis/spread.ts';
import { answerKey } from '../../shared-theory/questions/asks.ts';
import { judgeOf, markAnswer } from '../../shared-theory/questions/judges.ts';
import type { Answer, Kind, Mark, MarkingContext, NotSure } from '../../shared-theory/questions/question.ts';
import type { RoundQuestion } from '../../shared-theory/questions/round-questions.ts';
import type { HeardRound } from './events.ts';
import type { RoomState, Sheet } from './state.ts';
import { couldAnswer } from './state.ts';

/** Everything here is worked out from the fold and kept nowhere, so that a corrected truth marks the past anew. */

/** The question of a sheet. */
export function questionOn({ round, question }: Sheet): RoundQuestion {
  const found = round.questions.find(({ id }) => id === question);
  if (found === undefined) throw new RangeError(`round ${round.id} has no question ${question}`);
  return found;
}

/** What a mark on the sheet depends on. */
export function markingOf(sheet: Sheet): MarkingContext {
  const { truth, settings } = sheet.round;
  return { truth, settings, target: questionOn(sheet).target, earlier: {} };
}

/** The right answer to a question of a round. */
export function rightAnswer({ truth, settings }: HeardRound, { id, kind, target }: RoundQuestion): Answer {
  const answer = judgeOf<Kind>(kind).truth({ truth, settings, target });
  if (answer === null) throw new RangeError(`${id} has no right answer in this round`);
  return answer;
}

const marks = new WeakMap<Sheet, Map<string, Mark>>();

/** The mark of one answer on a sheet; each different answer is marked once. */
export function markOn(sheet: Sheet, answer: Answer | NotSure): Mark {
  const known = marks.get(sheet) ?? new Map<string, Mark>();
  marks.set(sheet, known);
  const { kind } = questionOn(sheet);
  const key = answerKey<Kind>(kind, answer);
  const mark = known.get(key) ?? markAnswer<Kind>(kind, answer, markingOf(sheet));
  known.set(key, mark);
  return mark;
}

/** How the answers of a sheet fell, counted over those who were there before it closed. */
export function spreadOn(state: RoomState, sheet: Sheet): Spread {
  return spreadOf(questionOn(sheet).kind, sheet.answers, seatsOf(state, sheet));
}

/** The most chosen wrong answer of a sheet. */
export function topWrongOn(state: RoomState, sheet: Sheet): TopWrong | null {
  return topWrong<Kind>(spreadOn(state, sheet), judgeOf<Kind>(questionOn(sheet).kind), markingOf(sheet));
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

const breakdowns = new WeakMap<RoomState, { readonly key: string; readonly lines: readonly BreakdownLine[] }>();

/** The lesson, question by question; worked out once for as long as no answer and no turn is added. */
export function breakdownFor(state: RoomState): readonly BreakdownLine[] {
  const key = `${state.turn} ${state.written}`;
  const known = breakdowns.get(state);
  if (known?.key === key) return known.lines;
  const lines = breakdownOf(
    state.rounds.map(({ heard, questions }) => ({
      number: heard.number,
      truth: heard.truth,
      settings: heard.settings,
      questions: heard.questions.map((question) => ({
        ...question,
        sheets: (questions.get(question.id)?.sheets ?? [])
          .filter(({ closed }) => closed !== null)
          .map((sheet) => ({ answers: sheet.answers, seats: seatsOf(state, sheet) })),
      })),
    })),
  );
  breakdowns.set(state, { key, lines });
  return lines;
}
