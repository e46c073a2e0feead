import type { Answer, NotSure, QuestionId } from '../../shared-theory/questions/question.ts';
import type { Grid } from '../../shared-theory/groove-grid.ts';
import type { Truth } from '../../shared-theory/truth.ts';
import type { AskHow, Band, Depth, Feel, LessonItem, ModeChange, RoomSettings } from '../protocol/messages.ts';
import type { HeardRound, Stamp } from './events.ts';
import { DEFAULT_SETTINGS } from './settings.ts';

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
  /** How far this student is asked. */
  depth: Depth;
  /** Beat levels of which the teacher has seen a groove played through, rising. */
  hands: readonly number[];
};

/** The answer of a student on one sheet; null where it was taken back. */
export type Written = {
  readonly counter: number;
  readonly answer: Answer | NotSure | null;
  /** How often this student has written on this sheet. */
  readonly times: number;
};

/** A third chord or a note that throws some of the keys out: one of the two is not null. */
export type Settling = Pick<Truth['settlers'][number], 'chord' | 'note'>;

/** One opening of a question. */
export type Sheet = {
  readonly ask: string;
  /** As it is known by now: a correction takes the place of what was entered. */
  round: HeardRound;
  readonly question: QuestionId;
  /** 1 is evidence; from 2 on it is support, after talk with the neighbour. */
  readonly sheet: number;
  readonly how: AskHow;
  /** What was to settle it, a chord or a note, where that was asked; no correction makes another of what sounded. */
  readonly settler: Settling | null;
  /** The grid that was drawn, where it is answered on one; no correction makes another of it. */
  readonly grid: Grid | null;
  /** Beats a minute of what sounded as it opened, where it is answered by tapping. */
  readonly tempo: number | null;
  /** When it opened. */
  readonly opened: Stamp;
  /** Whether the loop had come home by then; null where nobody knows. */
  readonly returned: boolean | null;
  /** When it closed, and the turn it closed at; null while it is open. Aloud it never takes an answer. */
  closed: { readonly stamp: Stamp; readonly turn: number } | null;
  spreadShown: boolean;
  readonly answers: Map<string, Written>;
  readonly cannotHear: Set<string>;
  /**
   * Students who are asked something else in its place, as it lies beyond them: the ask of that sheet, or null where nothing is
   * left to ask them and they listen.
   */
  readonly instead: Map<string, string | null>;
  /** On a sheet that is asked in the place of another: the students who are asked it; null on every other. */
  readonly among: Set<string> | null;
};

/** What one question of a round has been through. */
export type QuestionRecord = {
  readonly sheets: Sheet[];
  /** The sheets that are evidence, as they opened: the class's first, and those of students asked it in the place of others. */
  readonly firsts: Sheet[];
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
  readonly change: ModeChange;
  readonly tempo: number | null;
  /** The tempo that it climbs to; null while it does not. */
  readonly climb: number | null;
  readonly feel: Feel;
  readonly band: Band;
  /** Bar at which the loop was last begun again; null where it was not. */
  readonly again: number | null;
  /** Whether it has been silent for two bars. */
  readonly kept: boolean;
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
  /** How often a question has been asked of the room. */
  asks: number;
  /** The sheet that is open; at most one. */
  open: Sheet | null;
  /** The sheet that all look at: the open one, else the one last opened, closed or shown in this round. */
  current: Sheet | null;
  /** The question that opens once the sound has fallen silent. */
  awaited: QuestionId | null;
  readonly letStand: LetStand[];
  plan: readonly LessonItem[];
  sound: SoundState;
  /** The grid that was last sent to be played, and whose it is; null before the first. */
  echo: { readonly groove: string; readonly student: string | null } | null;
  /** How often a grid was sent to be played. */
  echoes: number;
};

export const SILENCE: SoundState = {
  playing: false,
  round: null,
  change: { kind: 'full' },
  tempo: null,
  climb: null,
  feel: 'written',
  band: { kit: false, bass: false },
  again: null,
  kept: false,
};

/** The room before its first event. */
export function unopenedRoom(): RoomState {
  return {
    status: 'unopened',
    room: '',
    class: '',
    settings: DEFAULT_SETTINGS,
    turn: 0,
    students: new Map(),
    rounds: [],
    sheets: new Map(),
    asks: 0,
    open: null,
    current: null,
    awaited: null,
    letStand: [],
    plan: [],
    sound: SILENCE,
    echo: null,
    echoes: 0,
  };
}

/** A question to which nothing has happened. */
export function unasked(): QuestionRecord {
  return { sheets: [], firsts: [], shown: false, struck: false, shownUnder: [] };
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

/** The sheets that the phones of the class could answer, the evidence first. */
export function phoneSheets(record: QuestionRecord | undefined): readonly Sheet[] {
  return record?.sheets.filter(({ how }) => how !== 'aloud') ?? [];
}

/** The sheet that a student is asked while the room is asked another: that one, what is asked in its place, or null for listening. */
export function sheetFor(state: RoomState, sheet: Sheet, student: string): Sheet | null {
  const ask = sheet.instead.get(student);
  return ask === undefined ? sheet : ask === null ? null : (state.sheets.get(ask) ?? null);
}

/**
 * Beats a minute of what sounded while a sheet was tapped on; null where that is the round's own tempo. What the teacher played is known
 * by what he says that he played.
 */
export function tempoOn({ round, tempo }: Sheet): number | null {
  return round.source === 'guitar' || tempo === round.tempo ? null : tempo;
}

/** Who could answer a sheet. */
export function seatsOf(state: RoomState, sheet: Sheet): readonly string[] {
  const seats: string[] = [];
  for (const student of state.students.values()) if (couldAnswer(sheet, student)) seats.push(student.student);
  return seats;
}

/** Whether a student was asked a sheet, and had come in before it closed. Aloud nobody answers on a phone. */
export function couldAnswer(sheet: Sheet, { student, joinedTurn }: Student): boolean {
  const { how, closed, among, instead } = sheet;
  if (how === 'aloud' || (among === null ? instead.has(student) : !among.has(student))) return false;
  return closed === null || joinedTurn < closed.turn;
}
