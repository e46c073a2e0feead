import { readSymbol } from '../../shared-theory/chords.ts';
import type { Chord } from '../../shared-theory/chords.ts';
import { differentChords } from '../../shared-theory/different-chords.ts';
import { ownAnswer, studentMarker } from '../../shared-theory/diagnosis/asked.ts';
import type { AskedRound, StudentMarker } from '../../shared-theory/diagnosis/asked.ts';
import { markerOf } from '../../shared-theory/diagnosis/marker.ts';
import { handsOf, markedTallies, spreadOf, topWrong } from '../../shared-theory/diagnosis/spread.ts';
import type { Spread, TopWrong } from '../../shared-theory/diagnosis/spread.ts';
import { answerKey } from '../../shared-theory/questions/asks.ts';
import { besideShown } from '../../shared-theory/questions/beside.ts';
import { judgeOf } from '../../shared-theory/questions/judges.ts';
import { isPartly } from '../../shared-theory/questions/points.ts';
import { COLLECTED_KINDS } from '../../shared-theory/questions/question.ts';
import type { Answer, Kind } from '../../shared-theory/questions/question.ts';
import type { RoundQuestion } from '../../shared-theory/questions/round-questions.ts';
import { askedRound } from './asked-rounds.ts';
import type { HeardRound } from './events.ts';
import type { RoomState, RoundRecord, Sheet } from './state.ts';
import { couldAnswer, seatsOf, tempoOn } from './state.ts';

/** Everything here is worked out from the fold and kept nowhere, so that a corrected truth marks the past anew. */

/** The question of a sheet. */
export function questionOn({ round, question }: Pick<Sheet, 'round' | 'question'>): RoundQuestion {
  const found = round.questions.find(({ id }) => id === question);
  if (found === undefined) throw new RangeError(`round ${round.id} has no question ${question}`);
  return found;
}

/** Who is told a mark: the teacher all that it shows, a student no more than what has been shown tells. */
export type ToldTo = 'teacher' | 'student';

/** The right answer to a question of a round; null to one that is an opinion. */
export function rightAnswer({ truth, settings }: HeardRound, { id, kind, target }: RoundQuestion): Answer | null {
  const answer = judgeOf<Kind>(kind).truth({ truth, settings, target });
  if (answer === null && !COLLECTED_KINDS.has(kind)) throw new RangeError(`${id} has no right answer in this round`);
  return answer;
}

/** The round of a sheet as it sounded while that was open: the tempo may have been another than its own. */
export function heardOn(sheet: Sheet): HeardRound {
  const tempo = tempoOn(sheet);
  return tempo === null ? sheet.round : { ...sheet.round, truth: { ...sheet.round.truth, tempo } };
}

/** Whether the answers of a sheet are opinions: collected, and never marked. */
export function isCollected(sheet: Pick<Sheet, 'round' | 'question'>): boolean {
  return COLLECTED_KINDS.has(questionOn(sheet).kind);
}

/** Other answers that are as right as the right one by themselves, by their key. */
export function alsoRight({ truth, settings }: HeardRound, { kind, target }: RoundQuestion): readonly string[] {
  return judgeOf<Kind>(kind)
    .also({ truth, settings, target })
    .map((other) => answerKey<Kind>(kind, other));
}

/** The marker of a sheet, for whom it is told. */
export function markerOn(state: RoomState, sheet: Sheet, told: ToldTo): StudentMarker {
  const record = state.rounds[sheet.round.number - 1];
  const marker = record && (told === 'teacher' ? teachersMarker : studentsMarker)(state, record, sheet);
  if (!marker) throw new RangeError(`${sheet.question} of ${sheet.round.id} has no right answer`);
  return marker;
}

/** Markers are made once for as long as what they depend on stays; each makes each mark once. */
const teachers = new WeakMap<AskedRound, Map<string, StudentMarker | null>>();

function teachersMarker(state: RoomState, record: RoundRecord, sheet: Sheet): StudentMarker | null {
  const round = askedRound(state, record);
  const markers = teachers.get(round) ?? new Map<string, StudentMarker | null>();
  teachers.set(round, markers);
  const { id } = questionOn(sheet);
  const tempo = tempoOn(sheet);
  const key = `${id} ${tempo ?? ''}`;
  const known = markers.get(key);
  if (known !== undefined) return known;
  const question = round.questions.find((each) => each.id === id);
  const on = { answers: sheet.answers, seats: [], ...(tempo === null ? {} : { tempo }) };
  const marker = question === undefined ? null : studentMarker(round, question, round.truth, on);
  markers.set(key, marker);
  return marker;
}

const students = new WeakMap<AskedRound, { readonly shown: string; readonly markers: Map<string, StudentMarker> }>();

/** Leans on nothing that has not been shown. */
function studentsMarker(state: RoomState, record: RoundRecord, sheet: Sheet): StudentMarker {
  const question = questionOn(sheet);
  const round = askedRound(state, record);
  const shown = record.heard.questions.filter(({ id }) => record.questions.get(id)?.shown === true);
  const ids = new Set(shown.map(({ id }) => id));
  const at = [...ids].join();
  const last = students.get(round);
  const markers = last?.shown === at ? last.markers : new Map<string, StudentMarker>();
  students.set(round, { shown: at, markers });
  const key = `${question.id} ${tempoOn(sheet) ?? ''}`;
  const known = markers.get(key);
  if (known !== undefined) return known;
  const byId = new Map(round.questions.map((each) => [each.id, each]));
  const mark = markerOf({
    question,
    questions: record.heard.questions,
    truth: heardOn(sheet).truth,
    settings: round.settings,
    beside: besideShown(round.truth, shown),
    letStand: byId.get(question.id)?.letStand ?? new Set(),
    mayLeanOn: (id) => ids.has(id),
  });
  const marker: StudentMarker = (answer, student) => mark(answer, (id) => ownAnswer(byId.get(id), student));
  markers.set(key, marker);
  return marker;
}

/** How the answers of a sheet fell, counted over those who were there before it closed. */
export function spreadOn(state: RoomState, sheet: Sheet): Spread {
  return spreadOf(questionOn(sheet).kind, sheet.answers, seatsOf(state, sheet));
}

/** The most chosen wrong answer of a sheet; null where none is wrong. */
export function topWrongOn(state: RoomState, sheet: Sheet): TopWrong | null {
  const { kind } = questionOn(sheet);
  if (COLLECTED_KINDS.has(kind)) return null;
  const marked = markedTallies(kind, handsOf(sheet.answers, markerOn(state, sheet, 'teacher')));
  return topWrong<Kind>(marked, judgeOf<Kind>(kind), handsIn(sheet));
}

/** How many hands are in on a sheet; an answer taken back is none. */
export function handsIn(sheet: Sheet): number {
  let hands = 0;
  for (const { answer } of sheet.answers.values()) if (answer !== null) hands += 1;
  return hands;
}

/** The different chords of a round in order of their first sounding. */
export function chordsOf({ slots }: HeardRound): readonly Chord[] {
  return differentChords(slots.map(({ chord }) => readSymbol(chord)));
}

/** How many of the questions that were shown, and that a student could answer, came out right and partly right. */
export type Standing = { right: number; part: number; of: number };

const standingsKnown = new WeakMap<
  RoomState,
  { readonly at: string; readonly result: ReadonlyMap<string, Standing> }
>();

/**
 * Each student's standing over the lesson as the student may be told it, by the first sheet of each question; struck questions
 * are none. Worked out once while nothing is shown and nobody comes in.
 */
export function standings(state: RoomState): ReadonlyMap<string, Readonly<Standing>> {
  const at = `${state.turn} ${state.students.size}`;
  const last = standingsKnown.get(state);
  if (last?.at === at) return last.result;
  const result = new Map<string, Standing>();
  for (const id of state.students.keys()) result.set(id, { right: 0, part: 0, of: 0 });
  for (const record of state.rounds) {
    for (const { id, kind } of record.heard.questions) {
      const asked = record.questions.get(id);
      if (asked?.shown === true && !asked.struck && !COLLECTED_KINDS.has(kind)) stand(state, asked.firsts, result);
    }
  }
  standingsKnown.set(state, { at, result });
  return result;
}

/** Each student's first answer on the sheets on which a question was asked for the first time. */
function stand(state: RoomState, firsts: readonly Sheet[], all: ReadonlyMap<string, Standing>): void {
  for (const student of state.students.values()) {
    const asked = firsts.filter((sheet) => couldAnswer(sheet, student));
    const standing = all.get(student.student);
    if (standing === undefined || asked.length === 0) continue;
    standing.of += 1;
    const [answered] = asked.filter((sheet) => (sheet.answers.get(student.student)?.answer ?? null) !== null);
    const answer = answered?.answers.get(student.student)?.answer ?? null;
    if (answered === undefined || answer === null) continue;
    const { exact, credit } = markerOn(state, answered, 'student')(answer, student.student);
    if (exact) standing.right += 1;
    else if (isPartly(credit)) standing.part += 1;
  }
}
