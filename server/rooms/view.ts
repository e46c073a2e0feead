import { BEAT_LEVELS } from '../../shared-theory/beat-levels.ts';
import { CONTRASTS } from '../../shared-theory/contrast.ts';
import { GROOVES } from '../../shared-theory/grooves.ts';
import { LEVELS } from '../../shared-theory/levels.ts';
import { NOT_SURE, TAPPED_KINDS } from '../../shared-theory/questions/question.ts';
import type { DropOutTaps, Taps } from '../../shared-theory/taps/taps.ts';
import type * as Wire from '../protocol/views.ts';
import { letStandOn } from './let-stand.ts';
import { handsIn, isCollected, questionOn, standings, topWrongOn } from './marking.ts';
import { ownGrooves } from './own-grooves.ts';
import type { People } from './people.ts';
import type { RoomState, Sheet, Student } from './state.ts';
import { currentRound, questionOf, seatsOf, sheetFor } from './state.ts';
import {
  canPlayBoth,
  wireBreakdown,
  wireCommon,
  wireCommonForAll,
  wireEntered,
  wireOpinions,
  wirePlan,
  wireReports,
} from './view-lesson.ts';
import {
  askingOn,
  askingOnDesk,
  hasEnded,
  hostSteps,
  isShown,
  keysReveal,
  stepOf,
  truthOn,
  truthsOf,
  wasShown,
  wireAskedUnder,
  wireCrib,
  wireMark,
  wirePolicyChanges,
  wireSpread,
  wireVamp,
} from './view-parts.ts';
import { wireHandTaps, wireTaps } from './view-taps.ts';

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

/**
 * What all students see alike, but for those who are asked something else: what `student` sees. It may depend on no truth that
 * has not been shown.
 */
export function studentCommon(state: RoomState, student: string | null = null): Wire.StudentCommon {
  const sheet = sheetSeen(state, student);
  const { naming } = state.settings;
  const all = { v: state.turn, ...(naming === 'english' ? {} : { naming }) };
  if (state.status === 'room-ended' || state.status === 'lesson-ended') return { ...all, phase: state.status };
  if (sheet === null) return { ...all, phase: 'waiting' };
  const shared = {
    ...all,
    ask: sheet.ask,
    sheet: sheet.sheet,
    asking: askingOn(state, sheet),
    ...(sheet.how === 'memory' ? { memory: true as const } : {}),
    ...(hasDroppedOut(state, sheet) ? { droppedOut: true as const } : {}),
    ...(questionOf(state, sheet)?.struck === true ? { struck: true as const } : {}),
  };
  if (isShown(state, sheet)) {
    const truth = truthOn(state, sheet);
    return { ...shared, phase: 'shown', ...(truth === null ? {} : { truth }) };
  }
  if (sheet.how === 'aloud') return { ...shared, phase: 'aloud' };
  return { ...shared, phase: sheet.closed === null ? 'open' : 'closed' };
}

/** Whether the groove has dropped out that is tapped on through the silence. */
function hasDroppedOut({ sound }: RoomState, sheet: Sheet): boolean {
  const { kind } = questionOn(sheet);
  const dropped = sound.playing && sound.round === sheet.round.id && sound.change.kind === 'drop-out';
  return kind === 'drop-out' && sheet.closed === null && dropped;
}

/** Whether a student's own grid sounds now. Whose it is, nobody else learns. */
function isEchoed({ sound, echo }: RoomState, student: string): boolean {
  return sound.change.kind === 'echo' && echo?.student === student && echo.groove === sound.change.groove;
}

/** Students who see something else than the others now. */
export function seesOther({ current }: RoomState): Iterable<string> {
  return current?.instead.keys() ?? [];
}

/** The sheet that a student looks at; null where nothing is asked of that one now. */
function sheetSeen(state: RoomState, student: string | null): Sheet | null {
  const { current } = state;
  return current === null || student === null ? current : sheetFor(state, current, student);
}

/** Whether a student has written on what is asked now. */
export function hasWritten(state: RoomState, student: string): boolean {
  return sheetSeen(state, student)?.answers.has(student) ?? false;
}

/** What belongs to one student, null for nobody's; `token` only in answer to joining. */
export function studentOwn(state: RoomState, people: People, student: string, token?: string): Wire.StudentOwn | null {
  const found = state.students.get(student);
  const person = people.byStudent.get(student);
  if (found === undefined || person === undefined) return null;
  const sheet = sheetSeen(state, student);
  const answer = sheet?.answers.get(student)?.answer ?? null;
  const lesson = hasEnded(state) ? standings(state).get(student) : undefined;
  const mark =
    sheet !== null && answer !== null && isShown(state, sheet)
      ? wireMark(state, sheet, student, answer, 'student')
      : null;
  return {
    v: state.turn + found.revision,
    name: people.shown.get(student) ?? person.name,
    leftHanded: person.hands.leftHanded,
    pair: person.hands.pair,
    leftThumb: person.hands.leftThumb,
    ...(token === undefined ? {} : { token }),
    counter: found.counter,
    ...(sheet === null ? {} : { ask: sheet.ask, answer }),
    ...(mark === null ? {} : { mark }),
    ...(isEchoed(state, student) ? { echo: true as const } : {}),
    ...(lesson === undefined ? {} : { lesson: { right: lesson.right, part: lesson.part, of: lesson.of } }),
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
    spread: sheet !== null && crowdIsUp(state, sheet) ? wireSpread(state, sheet) : null,
    truth: sheet !== null && isShown(state, sheet) ? truthOn(state, sheet) : null,
    breakdown: hasEnded(state)
      ? wireBreakdown(state).filter(({ round, question }) => wasShown(state, round, question))
      : null,
    opinions: hasEnded(state)
      ? wireOpinions(state).filter(({ round, question }) => wasShown(state, round, question))
      : [],
    common: hasEnded(state) ? wireCommonForAll(state) : [],
  };
}

/** Whether the wall shows how the answers fell: once asked for, and of opinions with the reveal, which has nothing else to show. */
function crowdIsUp(state: RoomState, sheet: Sheet): boolean {
  return sheet.spreadShown || (isShown(state, sheet) && isCollected(sheet));
}

/** The teacher's private page: all of it, spread and answers once the question is closed. */
export function deskView(state: RoomState, people: People, live: Live): Wire.DeskView {
  const sheet = state.current;
  const closed = sheet !== null && sheet.closed !== null && sheet.how !== 'aloud' ? sheet : null;
  const round = currentRound(state);
  const top = closed === null ? null : topWrongOn(state, closed);
  const seen = shared(state, live, null);
  const playable = (ask: string) => canPlayBoth(state, ask, live.soundHolder);
  return {
    ...seen,
    current: sheet && seen.current && { ...seen.current, asking: askingOnDesk(state, sheet) },
    steps: round === null ? [] : round.heard.questions.map((question) => stepOf(round, question)),
    students: [...state.students.values()].map((student) => deskRow(state, people, live, student)),
    spread: closed === null ? null : wireSpread(state, closed),
    truth: sheet === null ? null : truthOn(state, sheet),
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
            playable: closed !== null && playable(closed.ask),
          },
    askedUnder: round === null ? null : wireAskedUnder(round.heard),
    crib: round === null ? null : wireCrib(round.heard),
    policyChanges: round === null ? [] : wirePolicyChanges(round.heard),
    truths: round === null ? {} : truthsOf(round.heard),
    spreadShown: sheet?.spreadShown ?? false,
    visitors: live.visitors,
    grooves: [...GROOVES, ...ownGrooves(state.settings)].map(({ id, name, meter, tempo }) => ({
      id,
      name,
      meter,
      tempo,
    })),
    levels: LEVELS.map(({ level, name }) => ({ level, name })),
    beatLevels: BEAT_LEVELS.map(({ level, name }) => ({ level, name })),
    contrasts: CONTRASTS.map(({ id, name }) => ({ id, name })),
    classTaps: sheet !== null && sheet.closed === null && isTapped(sheet) ? wireTaps(sheet) : null,
    breakdown: wireBreakdown(state),
    opinions: wireOpinions(state),
    common: wireCommon(state, playable),
    letStand: round === null || sheet === null ? [] : [...letStandOn(state, sheet.round, questionOn(sheet))],
    reports: wireReports(state),
    plan: wirePlan(state),
    entered: wireEntered(state),
    awaited: state.awaited,
  };
}

/** One student as the teacher sees it: what is asked of that one, the answer and its mark once it is closed. */
function deskRow(
  state: RoomState,
  people: People,
  live: Live,
  { student, seat, depth, hands }: Student,
): Wire.WireStudent {
  const { current } = state;
  const person = people.byStudent.get(student);
  const sheet = sheetSeen(state, student);
  const answer = sheet?.answers.get(student)?.answer ?? null;
  const row: Wire.WireStudent = {
    student,
    seat,
    name: people.shown.get(student) ?? '',
    here: live.here.has(student),
    pair: person?.hands.pair ?? false,
    leftHanded: person?.hands.leftHanded ?? false,
    depth,
    ...(current?.instead.has(student) === true ? { instead: sheet && insteadOf(sheet) } : {}),
    wrote: answer !== null,
    cannotHear: sheet?.cannotHear.has(student) ?? false,
    hands,
  };
  if (sheet === null || sheet.closed === null || sheet.how === 'aloud') return row;
  const mark = answer === null ? null : wireMark(state, sheet, student, answer, 'teacher');
  const marked = mark === null ? {} : { mark };
  // Taps are many, and say nothing by themselves.
  if (answer !== null && answer !== NOT_SURE && isTapped(sheet)) {
    return { ...row, taps: wireHandTaps(answer as Taps | DropOutTaps), ...marked };
  }
  return { ...row, answer, ...marked };
}

function isTapped(sheet: Sheet): boolean {
  return TAPPED_KINDS.has(questionOn(sheet).kind);
}

function insteadOf(sheet: Sheet): { readonly kind: string; readonly target: number } {
  const { kind, target } = questionOn(sheet);
  return { kind, target };
}

type Shared = Omit<Wire.HostView, 'seats' | 'steps' | 'spread' | 'truth' | 'breakdown' | 'opinions' | 'common'>;

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
      naming: state.settings.naming,
      capo: state.settings.capo,
      slashIsNew: state.settings.slashIsNew,
      qualities: state.settings.qualities,
      namesShown: state.settings.namesShown,
      soundFollows: state.settings.soundFollows,
      voice: state.settings.voice,
      pitch: state.settings.pitch,
      smallSpeaker: state.settings.smallSpeaker,
      band: state.settings.band,
      beatLevel: state.settings.beatLevel,
      grooves: state.settings.grooves,
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
      climb: state.sound.climb,
      feel: state.sound.feel,
      band: state.sound.band,
    },
  };
}
