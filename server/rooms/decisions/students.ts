import { readAnswer } from '../../../shared-theory/questions/asks.ts';
import { parseQuestionId } from '../../../shared-theory/questions/round-questions.ts';
import type { CommandOf, Context, Decision } from '../commands.ts';
import { already, happens, refuse } from '../commands.ts';
import type { Stamp } from '../events.ts';
import { beatLevelFault } from '../beat-level.ts';
import { gridMisfit } from '../grid-misfit.ts';
import { readName } from '../names.ts';
import type { Hands, Person } from '../people.ts';
import type { RoomState, Sheet, Student, Written } from '../state.ts';
import { couldAnswer, questionOf } from '../state.ts';

/** Seats of one room. */
export const MOST_STUDENTS = 2_000;

/**
 * How often a student writes on one sheet: every few seconds of ten minutes of clapping along. What comes after that is answered with
 * what stands, so that no sheet makes the log longer than so many answers a seat.
 */
export const MOST_TIMES = 200;

/** An answer that was on its way when the question closed: what the phone held does not count the way through the air. */
const IN_THE_AIR_MS = 1_000;

/** A student takes a seat, or comes back to it with other settings. */
export function join(state: RoomState, command: CommandOf<'Join'>, context: Context): Decision {
  const reading = readName(command.name);
  if (!reading.ok) return reading;
  const { leftHanded, pair, leftThumb } = command;
  const hands: Hands = { leftHanded, pair, leftThumb };
  const { sender, people, fresh } = context;
  const known = sender.role === 'student' && sender.student !== null ? people.byStudent.get(sender.student) : undefined;
  if (known !== undefined) return comeBack({ ...known, name: reading.name, hands }, known);
  if (state.students.size >= MOST_STUDENTS) return refuse('room-full');
  const { student, tokenHash, token } = fresh;
  return {
    ...happens(
      [{ type: 'StudentJoined', student, seat: nextSeat(state) }],
      token === null ? { student } : { student, token },
    ),
    people: [{ student, name: reading.name, tokenHash, hands }],
  };
}

/** A student writes, changes or takes back an answer. */
export function writeAnswer(
  state: RoomState,
  command: CommandOf<'WriteAnswer'>,
  student: Student,
  now: Stamp,
): Decision {
  const { ask, counter } = command;
  const sheet = state.sheets.get(ask);
  if (sheet === undefined) return refuse('question-unknown');
  const written = sheet.answers.get(student.student);
  // Another tab may have written under the same number: what counts is said, so that no page takes its own for it.
  if (written !== undefined && written.counter >= counter) return already(standing(written));
  if (state.status === 'room-ended') return refuse('room-ended');
  const record = questionOf(state, sheet);
  if (record?.shown === true) return refuse('question-shown');
  if (sheet.how === 'aloud') return refuse('question-not-open');
  // Whoever sees how the answers fell could vote with the many; the spread of a later sheet tells of this one too, and of one
  // that is not the class's any that the class has.
  const later = record?.sheets.slice(Math.max(0, record.sheets.indexOf(sheet))) ?? [];
  const told = sheet.closed !== null && later.some(({ spreadShown }) => spreadShown);
  if (told || !couldAnswer(sheet, student) || !writtenInTime(sheet, command.heldMs, now)) return refuse('too-late');
  const kind = parseQuestionId(sheet.question)?.kind;
  const answer = command.answer === null || !kind ? null : readAnswer(kind, command.answer, sheet.round.settings);
  if (answer === null && command.answer !== null) return refuse('answer-not-readable');
  const misfit = !kind || sheet.grid === null || answer === null ? null : gridMisfit(kind, sheet.grid, answer);
  if (misfit !== null) return refuse('answer-not-readable', misfit);
  // What is clapped along is written again and again; after that often it is known well enough, and the log is long enough.
  if (written !== undefined && written.times >= MOST_TIMES) return already(standing(written));
  return happens([{ type: 'AnswerWritten', student: student.student, ask, counter, answer }], {
    counter,
    answer,
  });
}

/** What stands of a student's answer, as it is told. */
function standing({ counter, answer }: Written) {
  return { counter, answer };
}

/** A student says, privately, that the sound does not reach. */
export function cannotHear(state: RoomState, command: CommandOf<'CannotHear'>, student: Student): Decision {
  const sheet = state.sheets.get(command.ask);
  if (sheet === undefined) return refuse('question-unknown');
  if (sheet.cannotHear.has(student.student)) return already();
  if (!couldAnswer(sheet, student)) return refuse('question-not-open');
  if (sheet.closed !== null) return refuse('question-not-open');
  return happens([{ type: 'HearingSignalled', student: student.student, ask: sheet.ask }]);
}

/** The teacher writes a student's name anew. */
export function renameStudent(command: CommandOf<'RenameStudent'>, { people }: Context): Decision {
  const person = people.byStudent.get(command.student);
  if (person === undefined) return refuse('student-unknown');
  const reading = readName(command.name);
  if (!reading.ok) return reading;
  return comeBack({ ...person, name: reading.name }, person);
}

/** The teacher says how far a student is asked, from the next question that opens on. */
export function setDepth(state: RoomState, { student, depth }: CommandOf<'SetDepth'>): Decision {
  const found = state.students.get(student);
  if (found === undefined) return refuse('student-unknown');
  return found.depth === depth ? already() : happens([{ type: 'DepthSet', student, depth }]);
}

/** The teacher says that a student has played a groove of a beat level through, or takes it back. */
export function tickHand(state: RoomState, { student, beat, played }: CommandOf<'TickHand'>): Decision {
  const found = state.students.get(student);
  if (found === undefined) return refuse('student-unknown');
  const unknown = beatLevelFault(beat);
  if (unknown !== null) return unknown;
  return found.hands.includes(beat) === played ? already() : happens([{ type: 'HandTicked', student, beat, played }]);
}

/** The teacher erases a student for good. */
export function eraseStudent(state: RoomState, command: CommandOf<'EraseStudent'>): Decision {
  if (!state.students.has(command.student)) return refuse('student-unknown');
  return { ...happens([]), effects: [{ kind: 'erase', student: command.student }] };
}

function comeBack(person: Person, before: Person): Decision {
  const { student, name, hands } = person;
  const value = { student };
  const same =
    name === before.name &&
    hands.leftHanded === before.hands.leftHanded &&
    hands.pair === before.hands.pair &&
    hands.leftThumb === before.hands.leftThumb;
  return same ? already(value) : { ...happens([{ type: 'PersonChanged', student }], value), people: [person] };
}

/** Behind the last one: a seat left by an erased student stays empty, so that nobody moves. */
function nextSeat(state: RoomState): number {
  let last = 0;
  for (const { seat } of state.students.values()) last = seat > last ? seat : last;
  return last + 1;
}

/** The phone says how long it held the answer; the server alone judges whether that falls between opening and close. */
function writtenInTime({ opened, closed }: Sheet, heldMs: number, now: Stamp): boolean {
  return closed === null || (heldMs >= since(closed.stamp, now) - IN_THE_AIR_MS && heldMs <= since(opened, now));
}

/** Milliseconds from a moment until now, by the clock that both share. */
function since(moment: Stamp, now: Stamp): number {
  return now.boot === moment.boot ? now.mono - moment.mono : now.at - moment.at;
}
