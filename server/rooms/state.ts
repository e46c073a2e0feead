import type { Answer, NotSure, QuestionId } from '../../shared-theory/questions/question.ts';
import type { RoomSettings, SoundChange } from '../protocol/messages.ts';
import type { HeardRound, RoomEvent, Stamp } from './events.ts';

/** A student of the room; the name is in the people table alone. */
export type Student = {
  readonly student: string;
  /** From 1, in order of joining. */
  readonly seat: number;
  /** Turn of the room when the student came in. */
  readonly joinedTurn: number;
  /** Highest counter of any answer. */
  counter: number;
  /** Rises with every event of this student. */
  revision: number;
};

/** The answer of a student on one sheet; null where it was taken back. */
type Written = { readonly counter: number; readonly answer: Answer | NotSure | null };

/** One opening of a question. */
export type Sheet = {
  readonly ask: string;
  readonly round: HeardRound;
  readonly question: QuestionId;
  /** 1 is evidence; from 2 on it is support, after talk with the neighbour. */
  readonly sheet: number;
  /** When it opened. */
  readonly opened: Stamp;
  /** When it closed, and the turn it closed at; null while it is open. */
  closed: { readonly stamp: Stamp; readonly turn: number } | null;
  spreadShown: boolean;
  readonly answers: Map<string, Written>;
  readonly cannotHear: Set<string>;
};

/** What one question of a round has been through. */
export type QuestionRecord = { readonly sheets: Sheet[]; shown: boolean };

export type RoundRecord = {
  readonly heard: HeardRound;
  readonly questions: Map<QuestionId, QuestionRecord>;
  /** Whether it has sounded at another tempo than it was made for. */
  tempoChanged: boolean;
};

export type SoundState = {
  readonly playing: boolean;
  readonly round: string | null;
  readonly change: SoundChange;
  readonly tempo: number | null;
};

/** A room: the fold of its events and nothing else. */
export type RoomState = {
  status: 'unopened' | 'register' | 'round' | 'lesson-ended' | 'room-ended';
  room: string;
  class: string;
  settings: RoomSettings;
  /** Rises with every event that changes what all students see. */
  turn: number;
  /** Answers written so far, changes among them. */
  written: number;
  readonly students: Map<string, Student>;
  readonly rounds: RoundRecord[];
  readonly sheets: Map<string, Sheet>;
  /** The sheet that is open; at most one. */
  open: Sheet | null;
  /** The sheet that all look at: the open one, else the one last opened, closed or shown in this round. */
  current: Sheet | null;
  sound: SoundState;
};

const SILENCE: SoundState = { playing: false, round: null, change: { kind: 'full' }, tempo: null };

/** The room before its first event. */
export function unopenedRoom(): RoomState {
  return {
    status: 'unopened',
    room: '',
    class: '',
    settings: { policy: 'majors', qualities: [], namesShown: false },
    turn: 0,
    written: 0,
    students: new Map(),
    rounds: [],
    sheets: new Map(),
    open: null,
    current: null,
    sound: SILENCE,
  };
}

/** Folds one event into the room, in place. Holds no rule and never throws: what `decide` allowed has happened. */
export function evolve(state: RoomState, event: RoomEvent, stamp: Stamp): void {
  switch (event.type) {
    case 'AnswerWritten': {
      const { student, ask, counter, answer } = event;
      state.written += 1;
      state.sheets.get(ask)?.answers.set(student, { counter, answer });
      const writer = touched(state, student);
      if (writer !== undefined && counter > writer.counter) writer.counter = counter;
      return;
    }
    case 'HearingSignalled':
      state.sheets.get(event.ask)?.cannotHear.add(event.student);
      touched(state, event.student);
      return;
    case 'StudentJoined': {
      const { student, seat } = event;
      state.students.set(student, { student, seat, joinedTurn: state.turn, counter: 0, revision: 0 });
      return;
    }
    case 'PersonChanged':
      touched(state, event.student);
      return;
    case 'RoomOpened':
      state.status = 'register';
      state.room = event.room;
      state.class = event.class;
      state.settings = event.settings;
      return;
    case 'SettingsChanged':
      state.settings = { ...state.settings, ...event.settings };
      return;
    case 'RoundStarted':
      state.rounds.push({
        heard: event.round,
        questions: new Map(event.round.questions.map(({ id }) => [id, { sheets: [], shown: false }])),
        tempoChanged: false,
      });
      state.status = 'round';
      state.open = null;
      state.current = null;
      state.turn += 1;
      return;
    case 'QuestionOpened':
      openSheet(state, event, stamp);
      return;
    case 'QuestionClosed': {
      const sheet = state.sheets.get(event.ask);
      if (sheet === undefined) return;
      state.turn += 1;
      sheet.closed = { stamp: plain(stamp), turn: state.turn };
      state.open = null;
      state.current = sheet;
      return;
    }
    case 'SpreadShown': {
      const sheet = state.sheets.get(event.ask);
      if (sheet === undefined) return;
      sheet.spreadShown = true;
      look(state, sheet);
      return;
    }
    case 'QuestionShown': {
      const sheet = state.sheets.get(event.ask);
      const record = sheet && questionOf(state, sheet);
      if (sheet === undefined || record === undefined) return;
      record.shown = true;
      state.current = sheet;
      state.turn += 1;
      return;
    }
    case 'VampStarted':
      noteTempo(state, event.round, event.tempo);
      state.sound = { playing: true, round: event.round, change: { kind: 'full' }, tempo: event.tempo };
      return;
    case 'ChangeTook':
      if (event.change.kind === 'tempo') noteTempo(state, event.round, event.change.tempo);
      state.sound =
        event.change.kind === 'tempo'
          ? { ...state.sound, tempo: event.change.tempo }
          : { ...state.sound, change: event.change };
      return;
    case 'VampStopped':
      state.sound = SILENCE;
      return;
    case 'LessonEnded':
      state.status = 'lesson-ended';
      state.turn += 1;
      return;
    case 'RoomClosed':
      state.status = 'room-ended';
      state.turn += 1;
      return;
    case 'Erased':
      return;
  }
}

function noteTempo(state: RoomState, round: string, tempo: number): void {
  const record = state.rounds.find(({ heard }) => heard.id === round);
  if (record !== undefined && tempo !== record.heard.tempo) record.tempoChanged = true;
}

/** The round that runs, or ran last. */
export function currentRound(state: RoomState): RoundRecord | null {
  return state.rounds.at(-1) ?? null;
}

/** What the question of a sheet has been through. */
export function questionOf(state: RoomState, sheet: Sheet): QuestionRecord | undefined {
  return state.rounds[sheet.round.number - 1]?.questions.get(sheet.question);
}

/** Whether a student had come in before the sheet closed. */
export function couldAnswer(sheet: Sheet, student: Student): boolean {
  return sheet.closed === null || student.joinedTurn < sheet.closed.turn;
}

function openSheet(state: RoomState, event: Extract<RoomEvent, { type: 'QuestionOpened' }>, stamp: Stamp): void {
  const record = state.rounds.find(({ heard }) => heard.id === event.round);
  const question = record?.questions.get(event.question);
  if (record === undefined || question === undefined) return;
  const sheet: Sheet = {
    ask: event.ask,
    round: record.heard,
    question: event.question,
    sheet: event.sheet,
    opened: plain(stamp),
    closed: null,
    spreadShown: false,
    answers: new Map(),
    cannotHear: new Set(),
  };
  question.sheets.push(sheet);
  state.sheets.set(sheet.ask, sheet);
  state.open = sheet;
  state.current = sheet;
  state.turn += 1;
}

/** A row of the log carries more than its stamp. */
function plain({ at, mono, boot }: Stamp): Stamp {
  return { at, mono, boot };
}

/** Showing the spread of another closed sheet turns the students' page to it. */
function look(state: RoomState, sheet: Sheet): void {
  if (state.current === sheet) return;
  state.current = sheet;
  state.turn += 1;
}

function touched(state: RoomState, student: string): Student | undefined {
  const found = state.students.get(student);
  if (found !== undefined) found.revision += 1;
  return found;
}
