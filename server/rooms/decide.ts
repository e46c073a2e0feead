import type { Command } from '../protocol/messages.ts';
import type { CommandType, Context, Decision, Sender } from './commands.ts';
import { refuse } from './commands.ts';
import { correctRound, letStand, strikeQuestion } from './decisions/corrections.ts';
import { eraseGroove, saveGroove } from './decisions/grooves.ts';
import { planLesson } from './decisions/lesson-plan.ts';
import { playEcho } from './decisions/echo.ts';
import { playBothReadings } from './decisions/play-both.ts';
import { answerAgain, closeQuestion, openQuestion, showAnswer, showSpread } from './decisions/questions.ts';
import { changeSettings, closeRoom, endLesson, startGuitarRound, startRound } from './decisions/rounds.ts';
import {
  changeTook,
  holdSound,
  requestChange,
  requestPlay,
  requestStop,
  requestTone,
  silenceKept,
  vampStarted,
  vampStopped,
} from './decisions/sound.ts';
import {
  cannotHear,
  eraseStudent,
  join,
  renameStudent,
  setDepth,
  tickHand,
  writeAnswer,
} from './decisions/students.ts';
import type { RoomState } from './state.ts';

/** Who may send what: a host page may do what the desk does, a student neither. */
const SENDERS: Readonly<Record<CommandType, readonly Sender['role'][]>> = {
  Join: ['student'],
  WriteAnswer: ['student'],
  CannotHear: ['student'],
  StartRound: ['desk', 'host'],
  StartGuitarRound: ['desk', 'host'],
  PlanLesson: ['desk', 'host'],
  CorrectRound: ['desk', 'host'],
  OpenQuestion: ['desk', 'host'],
  CloseQuestion: ['desk', 'host'],
  ShowSpread: ['desk', 'host'],
  ShowAnswer: ['desk', 'host'],
  AnswerAgain: ['desk', 'host'],
  LetStand: ['desk', 'host'],
  StrikeQuestion: ['desk', 'host'],
  PlayBoth: ['desk', 'host'],
  PlayEcho: ['desk', 'host'],
  TickHand: ['desk', 'host'],
  RequestPlay: ['desk', 'host'],
  RequestChange: ['desk', 'host'],
  RequestStop: ['desk', 'host'],
  RequestTone: ['desk', 'host'],
  SaveGroove: ['desk', 'host'],
  EraseGroove: ['desk', 'host'],
  ChangeSettings: ['desk', 'host'],
  RenameStudent: ['desk', 'host'],
  EraseStudent: ['desk', 'host'],
  SetDepth: ['desk', 'host'],
  EndLesson: ['desk', 'host'],
  CloseRoom: ['desk', 'host'],
  HoldSound: ['host'],
  VampStarted: ['host'],
  ChangeTook: ['host'],
  VampStopped: ['host'],
  SilenceKept: ['host'],
};

/** What still has a meaning in a room that has closed: repeats, and the care of what is kept. */
const AFTER_THE_END: readonly CommandType[] = [
  'WriteAnswer',
  'CloseRoom',
  'RenameStudent',
  'EraseStudent',
  'RequestStop',
  'VampStopped',
];

/**
 * What a command does to the room: events, or a refusal with its reason. Free of effects: it reads the state and the context
 * and changes neither.
 */
export function decide(state: RoomState, command: Command, context: Context): Decision {
  const { sender } = context;
  if (!SENDERS[command.type].includes(sender.role)) {
    return refuse(sender.role === 'student' ? 'not-teacher' : 'not-joined');
  }
  if (state.status === 'unopened') return refuse('room-not-found', { room: state.room });
  if (state.status === 'room-ended' && !AFTER_THE_END.includes(command.type)) return refuse('room-ended');
  switch (command.type) {
    case 'Join':
      return join(state, command, context);
    case 'WriteAnswer':
    case 'CannotHear': {
      const student = sender.role === 'student' ? state.students.get(sender.student ?? '') : undefined;
      if (student === undefined) return refuse('not-joined');
      return command.type === 'WriteAnswer'
        ? writeAnswer(state, command, student, context.now)
        : cannotHear(state, command, student);
    }
    case 'StartRound':
      return startRound(state, command, context);
    case 'StartGuitarRound':
      return startGuitarRound(state, command, context);
    case 'PlanLesson':
      return planLesson(state, command);
    case 'CorrectRound':
      return correctRound(state, command);
    case 'OpenQuestion':
      return openQuestion(state, command, context);
    case 'CloseQuestion':
      return closeQuestion(state, command);
    case 'ShowSpread':
      return showSpread(state, command);
    case 'ShowAnswer':
      return showAnswer(state, command);
    case 'AnswerAgain':
      return answerAgain(state, command, context);
    case 'LetStand':
      return letStand(state, command);
    case 'StrikeQuestion':
      return strikeQuestion(state, command);
    case 'PlayBoth':
      return playBothReadings(state, command, context);
    case 'PlayEcho':
      return playEcho(state, command, context);
    case 'TickHand':
      return tickHand(state, command);
    case 'RequestPlay':
      return requestPlay(state, command, context);
    case 'RequestChange':
      return requestChange(state, command, context);
    case 'RequestStop':
      return requestStop(state, context);
    case 'RequestTone':
      return requestTone(state, command, context);
    case 'SaveGroove':
      return saveGroove(state, command);
    case 'EraseGroove':
      return eraseGroove(state, command);
    case 'ChangeSettings':
      return changeSettings(state, command);
    case 'RenameStudent':
      return renameStudent(command, context);
    case 'EraseStudent':
      return eraseStudent(state, command);
    case 'SetDepth':
      return setDepth(state, command);
    case 'EndLesson':
      return endLesson(state, context);
    case 'CloseRoom':
      return closeRoom(state, context);
    case 'HoldSound':
      return holdSound(command, context);
    case 'VampStarted':
      return vampStarted(state, command, context);
    case 'ChangeTook':
      return changeTook(state, command, context);
    case 'VampStopped':
      return vampStopped(state, command, context);
    case 'SilenceKept':
      return silenceKept(state, command, context);
  }
}
