import type { Answer, NotSure, QuestionId } from '../../shared-theory/questions/question.ts';
import type { AskHow, LessonItem, RoomSettings, SoundChange } from '../protocol/messages.ts';
import type { HeardRound, Stamp } from './events.ts';

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
  /** As it is known by now: a correction takes the place of what was entered. */
  round: HeardRound;
  readonly question: QuestionId;
  /** 1 is evidence; from 2 on it is support, after talk with the neighbour. */
  readonly sheet: number;
  readonly how: AskHow;
  /** The chord that was to settle it, where that was asked; no correction makes another chord of what sounded. */
  readonly settler: string | null;
  /** When it opened. */
  readonly opened: Stamp;
  /** Whether the loop had come home by then; null where nobody knows. */
  readonly returned: boolean | null;
  /** When it closed, and the turn it closed at; null while it is open. Aloud it never takes an answer. */
  closed: { readonly stamp: Stamp; readonly turn: number } | null;
  spreadShown: boolean;
  readonly answers: Map<string, Written>;
  readonly cannotHear: Set<string>;
};

/** What one question of a round has been through. */
export type QuestionRecord = {
  readonly sheets: Sheet[];
  shown: boolean;
  struck: boolean;
  /** The round as it was known each time the answer was shown, before what is known now. */
  shownUnder: readonly HeardRound[];
};

/** How the sound of a round has gone, as far as marks depend on it. */
export type Heard = {
  /** When the vamp last began, and its tempo; null while it does not play or only a part of it does. */
  readonly since: { readonly stamp: Stamp; readonly tempo: number } | null;
  /** Whether the loop has come home; null where nobody knows. */
  readonly cameHome: boolean | null;
};

export type RoundRecord = {
  heard: HeardRound;
  /** By id: those of the round, and those that it had before it was corrected. */
  readonly questions: Map<QuestionId, QuestionRecord>;
  /** Whether it has sounded at another tempo than it was made for. */
  tempoChanged: boolean;
  corrections: number;
  sounded: Heard;
  /** Rises with every event that changes what its closed sheets show. */
  revision: number;
};

export type SoundState = {
  readonly playing: boolean;
  readonly round: string | null;
  readonly change: SoundChange;
  readonly tempo: number | null;
  /** Bar at which the loop was last begun again; null where it was not. */
  readonly again: number | null;
};

/** An answer that the teacher let stand, or no more. */
export type LetStand = {
  /** The round as it was known when he said so. */
  readonly heard: HeardRound;
  readonly question: QuestionId;
  readonly answer: Answer;
  readonly stands: boolean;
};

/** A room: the fold of its events and nothing else. */
export type RoomState = {
  status: 'unopened' | 'register' | 'round' | 'lesson-ended' | 'room-ended';
  room: string;
  class: string;
  settings: RoomSettings;
  /** Rises with every event that changes what all students see. */
  turn: number;
  readonly students: Map<string, Student>;
  readonly rounds: RoundRecord[];
  readonly sheets: Map<string, Sheet>;
  /** The sheet that is open; at most one. */
  open: Sheet | null;
  /** The sheet that all look at: the open one, else the one last opened, closed or shown in this round. */
  current: Sheet | null;
  /** The question that opens once the sound has fallen silent. */
  awaited: QuestionId | null;
  readonly letStand: LetStand[];
  plan: readonly LessonItem[];
  sound: SoundState;
};

export const SILENCE: SoundState = {
  playing: false,
  round: null,
  change: { kind: 'full' },
  tempo: null,
  again: null,
};

/** The room before its first event. */
export function unopenedRoom(): RoomState {
  return {
    status: 'unopened',
    room: '',
    class: '',
    settings: { policy: 'majors', qualities: [], namesShown: false, soundFollows: true },
    turn: 0,
    students: new Map(),
    rounds: [],
    sheets: new Map(),
    open: null,
    current: null,
    awaited: null,
    letStand: [],
    plan: [],
    sound: SILENCE,
  };
}

/** A question to which nothing has happened. */
export function unasked(): QuestionRecord {
  return { sheets: [], shown: false, struck: false, shownUnder: [] };
}

/** The round that runs, or ran last. */
export function currentRound(state: RoomState): RoundRecord | null {
  return state.rounds.at(-1) ?? null;
}

/** A round by its id. */
export function roundOf(state: RoomState, round: string): RoundRecord | undefined {
  return state.rounds.find(({ heard }) => heard.id === round);
}

/** What the question of a sheet has been through. */
export function questionOf(state: RoomState, sheet: Sheet): QuestionRecord | undefined {
  return state.rounds[sheet.round.number - 1]?.questions.get(sheet.question);
}

/** The sheets that phones could answer, the evidence first. */
export function phoneSheets(record: QuestionRecord | undefined): readonly Sheet[] {
  return record?.sheets.filter(({ how }) => how !== 'aloud') ?? [];
}

/** Who could answer a sheet. */
export function seatsOf(state: RoomState, sheet: Sheet): readonly string[] {
  const seats: string[] = [];
  for (const student of state.students.values()) if (couldAnswer(sheet, student)) seats.push(student.student);
  return seats;
}

/** Whether a student had come in before the sheet closed. Aloud nobody answers on a phone. */
export function couldAnswer(sheet: Sheet, student: Student): boolean {
  return sheet.how !== 'aloud' && (sheet.closed === null || student.joinedTurn < sheet.closed.turn);
}
