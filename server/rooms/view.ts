import { candidateKeys, parseKeyName } from '../../shared-theory/keys.ts';
import { chartRows, cribOf, decidersOf } from '../../shared-theory/crib.ts';
import { GROOVES } from '../../shared-theory/grooves.ts';
import { LEVELS } from '../../shared-theory/levels.ts';
import { answerKey, asks } from '../../shared-theory/questions/asks.ts';
import { judgeOf } from '../../shared-theory/questions/judges.ts';
import type { Answer, Kind, NotSure } from '../../shared-theory/questions/question.ts';
import { questionId } from '../../shared-theory/questions/round-questions.ts';
import type { RoundQuestion } from '../../shared-theory/questions/round-questions.ts';
import type * as Wire from '../protocol/views.ts';
import type { HeardRound } from './events.ts';
import {
  breakdownFor,
  chordsOf,
  handsIn,
  markingOf,
  markOn,
  questionOn,
  rightAnswer,
  seatsOf,
  spreadOn,
  topWrongOn,
} from './marking.ts';
import type { People } from './people.ts';
import type { RoomState, RoundRecord, Sheet, Student } from './state.ts';
import { couldAnswer, currentRound, questionOf } from './state.ts';

/** What a view says beside the room: facts of the moment that no log holds. */
export type Live = {
  /** Rises with every view sent. */
  readonly v: number;
  readonly addresses: readonly string[];
  /** Students whose phone is connected. */
  readonly here: ReadonlySet<string>;
  /** Host page that holds the sound. */
  readonly soundHolder: string | null;
  /** Distinct phones that reached this server from elsewhere. */
  readonly visitors: number;
};

/** What all students see alike. It may depend on no truth that has not been shown. */
export function studentCommon(state: RoomState): Wire.StudentCommon {
  const sheet = state.current;
  const v = state.turn;
  if (state.status === 'room-ended' || state.status === 'lesson-ended') return { v, phase: state.status };
  if (sheet === null) return { v, phase: 'waiting' };
  const shared = { v, ask: sheet.ask, sheet: sheet.sheet, asking: askingOn(state, sheet) };
  if (isShown(state, sheet)) return { ...shared, phase: 'shown', truth: truthOn(sheet) };
  return { ...shared, phase: sheet.closed === null ? 'open' : 'closed' };
}

/** What belongs to one student, null for nobody's; `token` only in answer to joining. */
export function studentOwn(state: RoomState, people: People, student: string, token?: string): Wire.StudentOwn | null {
  const found = state.students.get(student);
  const person = people.byStudent.get(student);
  if (found === undefined || person === undefined) return null;
  const sheet = state.current;
  const answer = sheet?.answers.get(student)?.answer ?? null;
  const lesson = lessonOf(state, found);
  return {
    v: state.turn + found.revision,
    name: people.shown.get(student) ?? person.name,
    leftHanded: person.hands.leftHanded,
    pair: person.hands.pair,
    leftThumb: person.hands.leftThumb,
    ...(token === undefined ? {} : { token }),
    counter: found.counter,
    ...(sheet === null ? {} : { ask: sheet.ask, answer }),
    ...(sheet !== null && answer !== null && isShown(state, sheet) ? { mark: wireMark(sheet, answer) } : {}),
    ...(lesson === null ? {} : { lesson }),
  };
}

/** What stands on the wall: nothing of how answers fell before it is shown, no truth before it is shown, no names unasked. */
export function hostView(state: RoomState, people: People, live: Live, page: string): Wire.HostView {
  const sheet = state.current;
  return {
    ...shared(state, live, page),
    seats: [...state.students.values()].map(({ student, seat }) => ({
      seat,
      name: state.settings.namesShown ? (people.shown.get(student) ?? null) : null,
      here: live.here.has(student),
    })),
    steps: hostSteps(state),
    spread: sheet?.spreadShown === true ? wireSpread(state, sheet) : null,
    truth: sheet !== null && isShown(state, sheet) ? truthOn(sheet) : null,
    breakdown: breakdown(state, (line) => wasShown(state, line.round, line.question)),
  };
}

/** The teacher's private page: all of it, spread and answers once the question is closed. */
export function deskView(state: RoomState, people: People, live: Live): Wire.DeskView {
  const sheet = state.current;
  const closed = sheet !== null && sheet.closed !== null ? sheet : null;
  const round = currentRound(state);
  const top = closed === null ? null : topWrongOn(state, closed);
  return {
    ...shared(state, live, null),
    steps: round === null ? [] : round.heard.questions.map((question) => stepOf(round, question)),
    students: [...state.students.values()].map(({ student, seat }) => {
      const person = people.byStudent.get(student);
      const answer = sheet?.answers.get(student)?.answer ?? null;
      const row = {
        student,
        seat,
        name: people.shown.get(student) ?? '',
        here: live.here.has(student),
        pair: person?.hands.pair ?? false,
        leftHanded: person?.hands.leftHanded ?? false,
        wrote: answer !== null,
        cannotHear: sheet?.cannotHear.has(student) ?? false,
      };
      if (closed === null) return row;
      return answer === null ? { ...row, answer } : { ...row, answer, mark: wireMark(closed, answer) };
    }),
    spread: closed === null ? null : wireSpread(state, closed),
    truth: sheet === null ? null : truthOn(sheet),
    topWrong:
      top === null
        ? null
        : {
            key: top.key,
            answer: top.answer,
            count: top.count,
            error: top.error,
            manyTheSame: top.manyTheSame,
            suspectSpeaker: top.suspectSpeaker,
          },
    crib: round === null ? null : wireCrib(round.heard),
    truths: round === null ? {} : truthsOf(round.heard),
    spreadShown: sheet?.spreadShown ?? false,
    visitors: live.visitors,
    grooves: GROOVES.map(({ id, name, meter, tempo }) => ({ id, name, meter, tempo })),
    levels: LEVELS.map(({ level, name }) => ({ level, name })),
    breakdown: breakdown(state, () => true),
  };
}

type Shared = Omit<Wire.HostView, 'seats' | 'steps' | 'spread' | 'truth' | 'breakdown'>;

function shared(state: RoomState, live: Live, page: string | null): Shared {
  const sheet = state.current;
  const round = currentRound(state);
  const record = sheet && questionOf(state, sheet);
  const step = sheet === null || round === null || !record ? null : stepOf(round, questionOn(sheet), sheet);
  return {
    v: live.v,
    room: state.room,
    status: state.status === 'unopened' ? 'register' : state.status,
    settings: {
      policy: state.settings.policy,
      qualities: state.settings.qualities,
      namesShown: state.settings.namesShown,
    },
    addresses: live.addresses,
    holdsSound: page !== null && live.soundHolder === page,
    soundHeld: live.soundHolder !== null,
    vamp: round === null ? null : wireVamp(round.heard),
    current: sheet === null || step === null ? null : { ...step, asking: askingOn(state, sheet) },
    handsIn: sheet === null ? 0 : handsIn(sheet),
    handsOf: sheet === null ? state.students.size : seatsOf(state, sheet).length,
    keysReveal: sheet === null ? null : keysReveal(state, sheet),
    sound: {
      playing: state.sound.playing,
      round: state.sound.round,
      change: state.sound.change,
      tempo: state.sound.tempo,
    },
  };
}

function hasEnded({ status }: RoomState): boolean {
  return status === 'lesson-ended' || status === 'room-ended';
}

function isShown(state: RoomState, sheet: Sheet): boolean {
  return questionOf(state, sheet)?.shown === true;
}

function wasShown(state: RoomState, number: number, question: string): boolean {
  return state.rounds[number - 1]?.questions.get(question)?.shown === true;
}

/** The pad. Its letter is the chord's root: it stands only once that root has been shown. */
function askingOn(state: RoomState, sheet: Sheet): Wire.WireAsking {
  const { kind, target } = questionOn(sheet);
  const { truth, settings, number } = sheet.round;
  const root = truth.roots[target];
  const letterShown = kind === 'quality' && root !== undefined && wasShown(state, number, questionId('root', target));
  const asking = asks[kind].ask(target, settings, letterShown ? { letter: root } : {});
  return {
    kind: asking.kind,
    target: asking.target,
    ...(asking.options === undefined ? {} : { options: asking.options }),
    ...(asking.letter === undefined ? {} : { letter: asking.letter }),
  };
}

function truthOn(sheet: Sheet): Wire.WireTruth {
  const { kind } = questionOn(sheet);
  const judge = judgeOf<Kind>(kind);
  const context = markingOf(sheet);
  const answer = rightAnswer(sheet.round, questionOn(sheet));
  const also = judge.also(context).map((other) => answerKey<Kind>(kind, other));
  return { answer, key: answerKey<Kind>(kind, answer), ...(also.length === 0 ? {} : { also }) };
}

/** Right answers of a round by question id. */
function truthsOf(round: HeardRound): Readonly<Record<string, Answer>> {
  return Object.fromEntries(round.questions.map((question) => [question.id, rightAnswer(round, question)]));
}

/** At the end of the lesson: how many of the questions that were shown, and that this student could answer, came out right. */
function lessonOf(state: RoomState, student: Student): NonNullable<Wire.StudentOwn['lesson']> | null {
  if (!hasEnded(state)) return null;
  const lesson = { right: 0, part: 0, of: 0 };
  for (const { questions } of state.rounds) {
    for (const { shown, sheets } of questions.values()) {
      const [first] = sheets;
      if (!shown || first === undefined || !couldAnswer(first, student)) continue;
      const answer = first.answers.get(student.student)?.answer ?? null;
      const mark = answer === null ? null : markOn(first, answer);
      lesson.of += 1;
      if (mark?.exact === true) lesson.right += 1;
      else if (mark !== null && mark.credit > 0) lesson.part += 1;
    }
  }
  return lesson;
}

function wireMark(sheet: Sheet, answer: Answer | NotSure): NonNullable<Wire.StudentOwn['mark']> {
  const { credit, exact, errors } = markOn(sheet, answer);
  const [error] = errors;
  return error === undefined ? { credit, exact } : { credit, exact, error };
}

function stepOf(round: RoundRecord, { id, kind, target }: RoundQuestion, on?: Sheet): Wire.WireStep {
  const record = round.questions.get(id);
  const sheet = on ?? record?.sheets.at(-1);
  const status =
    sheet === undefined ? 'ready' : record?.shown === true ? 'shown' : sheet.closed === null ? 'open' : 'closed';
  return { question: id, kind, target, status, sheet: sheet?.sheet ?? 1, ask: sheet?.ask ?? null };
}

/**
 * The row on the wall: each question that has been opened, and one step for each kind that may still be. What stands there
 * before a question is opened is the same for every truth: it does not tell how many chords there are.
 */
function hostSteps(state: RoomState): readonly Wire.WireStep[] {
  const round = currentRound(state);
  if (round === null) return [];
  const steps = round.heard.questions.map((question) => stepOf(round, question)).filter(({ ask }) => ask !== null);
  const ready = round.heard.kinds
    .filter((kind) => !steps.some((step) => step.kind === kind))
    .map((kind) => {
      const target = kind === 'direction' ? 1 : 0;
      return { question: questionId(kind, target), kind, target, status: 'ready', sheet: 1, ask: null } as const;
    });
  const place = ({ kind }: { readonly kind: string }) => round.heard.kinds.findIndex((each) => each === kind);
  return [...steps, ...ready].toSorted((one, other) => place(one) - place(other));
}

function wireSpread(state: RoomState, sheet: Sheet): Wire.WireSpread {
  const { kind, target } = questionOn(sheet);
  const { counts, notSure, silent, of } = spreadOn(state, sheet);
  return {
    ask: sheet.ask,
    kind,
    target,
    asking: askingOn(state, sheet),
    counts: counts.map(({ key, answer, count }) => ({ key, answer, count })),
    notSure,
    silent,
    of,
  };
}

function wireVamp(round: HeardRound): Wire.WireVamp {
  return {
    round: round.id,
    number: round.number,
    source: round.source,
    level: round.level,
    meter: round.meter,
    grooveText: round.grooveText,
    tempo: round.tempo,
    seed: round.seed,
    slots: round.slots.map(({ chord, beats, frets }) => ({ chord, beats, frets })),
  };
}

/** The charts of every key that owns the chords; only once the keys are shown. */
function keysReveal(state: RoomState, sheet: Sheet): Wire.WireKeysReveal | null {
  if (questionOn(sheet).kind !== 'keys' || !isShown(state, sheet)) return null;
  const { truth, settings } = sheet.round;
  const chords = chordsOf(sheet.round);
  return {
    chords: cribOf(chords, settings.policy).chords,
    rows: truth.keys[settings.policy].map((name) => {
      const { key, id, row, notes } = chartRows(chords, parseKeyName(name));
      return {
        key,
        id,
        row: row.map(({ symbol, numeral, inVamp, holdsDecider }) => ({ symbol, numeral, inVamp, holdsDecider })),
        notes,
      };
    }),
    deciders: decidersOf(candidateKeys(chords, settings.policy)).map(({ note, leaves }) => ({ note, leaves })),
  };
}

function wireCrib(round: HeardRound): Wire.WireCrib {
  const { chords, keys, deciders, settlers } = cribOf(chordsOf(round), round.settings.policy);
  return {
    chords,
    keys: keys.map(({ key, numerals }) => ({ key, numerals })),
    deciders: deciders.map(({ note, leaves }) => ({ note, leaves })),
    settlers: settlers.map(({ chord, leaves }) => ({ chord, leaves })),
    bass: round.truth.roots,
    directions: round.truth.directions,
  };
}

function breakdown(
  state: RoomState,
  listed: (line: { readonly round: number; readonly question: string }) => boolean,
): readonly Wire.WireBreakdownLine[] | null {
  if (!hasEnded(state)) return null;
  return breakdownFor(state)
    .filter(listed)
    .map((line) => ({
      question: line.question,
      round: line.round,
      kind: line.kind,
      target: line.target,
      right: line.right,
      part: line.part,
      wrong: line.wrong,
      notSure: line.notSure,
      silent: line.silent,
      missed: line.missed.map(({ key, answer, count, error }) => ({ key, answer, count, error })),
      truth: line.truth,
    }));
}
