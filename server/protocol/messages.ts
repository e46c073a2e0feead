import type { Band, SoundChange, Tone } from './sound-messages.ts';

export * from './sound-messages.ts';

/** Version of what travels; a page of another version is asked to reload once. */
export const PROTOCOL_VERSION = 5;

/** Socket path prefix; a page connects to `${SOCKET_PATH}${room}/`, so that a balancer can hash the room. */
export const SOCKET_PATH = '/live/';

/** Handshake `auth` of each role. Host and desk are let in by the teacher's cookie. */
export type Handshake =
  | { readonly role: 'student'; readonly room: string; readonly version: number; readonly token?: string }
  /** `page` is made by a host page and names it over reconnects, so that its sound stays its own; 16 to 64 signs. */
  | { readonly role: 'host'; readonly room: string; readonly version: number; readonly page?: string }
  | { readonly role: 'desk'; readonly room: string; readonly version: number };

/** Reasons for a refusal; the sentence for each is in the catalogue. */
export const REASONS = [
  'room-not-found',
  'room-ended',
  'name-empty',
  'name-too-long',
  'name-not-readable',
  'not-joined',
  'not-teacher',
  'question-not-open',
  'question-not-closed',
  'question-unknown',
  'question-shown',
  'question-still-open',
  'round-unknown',
  'no-round',
  'too-late',
  'answer-not-readable',
  'message-not-readable',
  'message-too-large',
  'too-many-messages',
  'too-many-codes',
  'chords-not-readable',
  'groove-unknown',
  'groove-not-readable',
  'groove-taken',
  'groove-unheard',
  'too-many-grooves',
  'level-unknown',
  'tempo-out-of-range',
  'climb-not-up',
  'no-host-sound',
  'sound-held-elsewhere',
  'nothing-plays',
  'vamp-plays',
  'chord-asked',
  'loop-asked',
  'spread-seen',
  'nothing-to-compare',
  'not-played-here',
  'not-your-guitar',
  'never-marked',
  'asked-aloud',
  'settler-unknown',
  'settler-from-memory',
  'plan-not-readable',
  'item-unknown',
  'sound-too-long',
  'contrast-unknown',
  'beat-level-unknown',
  'bar-told',
  'no-grid',
  'groove-asked',
  'groove-swapped',
  'not-saved',
  'page-too-old',
  'pairing-code-wrong',
  'room-full',
  'student-unknown',
] as const;
export type Reason = (typeof REASONS)[number];

/** Every command is answered, to its sender only. `detail` fills the sentence's blanks (what was wrong, what would be right). */
export type Reply<T = unknown> =
  | { readonly ok: true; readonly value?: T }
  | { readonly ok: false; readonly reason: Reason; readonly detail?: Readonly<Record<string, string | number>> };

/** Commands of a student. `id` is made by the sender; a repeat is answered, not applied twice. */
export type StudentCommand =
  | {
      readonly type: 'Join';
      readonly id: string;
      readonly name: string;
      readonly leftHanded: boolean;
      /** Two people on this phone. */
      readonly pair: boolean;
      readonly leftThumb: boolean;
    }
  | {
      readonly type: 'WriteAnswer';
      readonly id: string;
      /** `ask` of the view: names question and sheet without naming the truth. */
      readonly ask: string;
      /** Rises with every writing of this student; the highest wins. */
      readonly counter: number;
      /** An answer of the question's kind, or `not-sure`, or null to take it back. */
      readonly answer: unknown;
      /** Milliseconds between writing and this sending, by the phone's monotonic clock. */
      readonly heldMs: number;
    }
  | { readonly type: 'CannotHear'; readonly id: string; readonly ask: string };

/** Whose grid is played. */
export type EchoOf =
  | { readonly grid: 'student'; readonly student: string }
  | { readonly grid: 'class' }
  | { readonly grid: 'right' };

/** How a question is asked: on the phones; aloud, with no phone; on the phones once two bars have passed in silence. */
export type AskHow = 'phones' | 'aloud' | 'memory';

/** A round of a planned lesson. */
export type LessonItem = {
  /** Made by the desk; names the item while it stands in the plan. */
  readonly item: string;
  readonly level: number;
  /** Kinds asked, any of the level's and `count`. */
  readonly kinds: readonly string[];
};

/** Commands of the desk. `target` fields make two presses or two desks act once. */
export type DeskCommand =
  | {
      readonly type: 'StartRound';
      readonly id: string;
      readonly after: number;
      readonly level: number;
      /** The item of the plan that it plays; null for a round of the level beside the plan. */
      readonly item: string | null;
      /** Id of a groove of the catalogue or of the class that it is played in; null for one that the level draws. */
      readonly groove: string | null;
      /** Id of a contrast pair: it is played in one of the two, with the last round's chords and tempo where that was of the same pair. */
      readonly contrast: string | null;
    }
  | { readonly type: 'PlanLesson'; readonly id: string; readonly items: readonly LessonItem[] }
  | {
      readonly type: 'StartGuitarRound';
      readonly id: string;
      /** Number of the round before it (0 for none). */
      readonly after: number;
      readonly chords: string;
      /** Groove id, or null for chords only. */
      readonly groove: string | null;
      readonly tempo: number | null;
      /** What the teacher's bass did, where it differs from the usual open shapes; one per slot after the first, `usual` where it did not differ. */
      readonly directions: readonly ('up' | 'down' | 'same' | 'usual')[] | null;
    }
  /** What the teacher really played: everything is marked anew, as if it had been entered at first. */
  | {
      readonly type: 'CorrectRound';
      readonly id: string;
      readonly round: string;
      /** Corrections of this round before this one. */
      readonly after: number;
      readonly chords: string;
      readonly groove: string | null;
      readonly tempo: number | null;
      readonly directions: readonly ('up' | 'down' | 'same' | 'usual')[] | null;
      /** Confirmed by the teacher: what was shown before counts no more, and points may fall. */
      readonly pointsMayFall: boolean;
    }
  | {
      readonly type: 'OpenQuestion';
      readonly id: string;
      readonly round: string;
      readonly question: string;
      readonly how: AskHow;
    }
  /** Lets another answer stand as right, or no more, wherever these chords come again in this room. */
  | {
      readonly type: 'LetStand';
      readonly id: string;
      readonly round: string;
      readonly question: string;
      readonly answer: unknown;
      readonly stands: boolean;
    }
  /** A spoiled question: everybody gets it, and it is evidence of nothing. */
  | {
      readonly type: 'StrikeQuestion';
      readonly id: string;
      readonly round: string;
      readonly question: string;
      readonly struck: boolean;
    }
  /** Plays the most chosen wrong answer of a closed question and the right one by turns. */
  | { readonly type: 'PlayBoth'; readonly id: string; readonly ask: string }
  /** Plays a grid of a closed question about accents on muted strings: one student's, the middle one of the class, or the right one. */
  | { readonly type: 'PlayEcho'; readonly id: string; readonly ask: string; readonly of: EchoOf }
  /** The teacher has seen a student play a groove of a beat level through, live; or takes it back. */
  | {
      readonly type: 'TickHand';
      readonly id: string;
      readonly student: string;
      /** Beat level, 1 to 8. */
      readonly beat: number;
      readonly played: boolean;
    }
  | { readonly type: 'CloseQuestion'; readonly id: string; readonly ask: string }
  | { readonly type: 'ShowSpread'; readonly id: string; readonly ask: string }
  | { readonly type: 'ShowAnswer'; readonly id: string; readonly ask: string }
  /** After talk with the neighbour: a second sheet of the same question. */
  | { readonly type: 'AnswerAgain'; readonly id: string; readonly ask: string }
  | { readonly type: 'RequestPlay'; readonly id: string; readonly round: string }
  | { readonly type: 'RequestChange'; readonly id: string; readonly round: string; readonly change: SoundChange }
  | { readonly type: 'RequestStop'; readonly id: string }
  /** A tone on the host page, while no vamp plays. */
  | { readonly type: 'RequestTone'; readonly id: string; readonly tone: Tone }
  /** Keeps a groove with the class, in place of one of the same id; `text` in the grid language. */
  | { readonly type: 'SaveGroove'; readonly id: string; readonly text: string }
  | { readonly type: 'EraseGroove'; readonly id: string; readonly groove: string }
  | {
      readonly type: 'ChangeSettings';
      readonly id: string;
      /** Any but the grooves, which are kept one by one. */
      readonly settings: Partial<Omit<RoomSettings, 'grooves'>>;
    }
  | { readonly type: 'RenameStudent'; readonly id: string; readonly student: string; readonly name: string }
  | { readonly type: 'EraseStudent'; readonly id: string; readonly student: string }
  /** How far a student is asked, from the next question that opens on. */
  | { readonly type: 'SetDepth'; readonly id: string; readonly student: string; readonly depth: Depth }
  | { readonly type: 'EndLesson'; readonly id: string }
  | { readonly type: 'CloseRoom'; readonly id: string };

/** Commands of the host page: the first is about this page, the others report facts of the room's sound. */
export type HostCommand =
  /** Asks to hold the sound; `takeOver` takes it from another page. */
  | { readonly type: 'HoldSound'; readonly id: string; readonly takeOver: boolean }
  | { readonly type: 'VampStarted'; readonly id: string; readonly round: string; readonly tempo: number }
  | {
      readonly type: 'ChangeTook';
      readonly id: string;
      readonly round: string;
      readonly change: SoundChange;
      readonly bar: number;
    }
  | { readonly type: 'VampStopped'; readonly id: string; readonly round: string }
  /** Two bars have passed unheard since the silence took: what waits to be asked from memory opens. */
  | { readonly type: 'SilenceKept'; readonly id: string; readonly round: string };

export type Command = StudentCommand | DeskCommand | HostCommand;

/** Which keys may count as owners of a loop, in the order in which they are offered. */
export const POLICIES = ['majors', 'relatives', 'raised-seventh', 'modes'] as const;

/** Guitars that the host can play, in the order in which they are offered. */
export const VOICES = ['steel', 'nylon', 'clean'] as const;

/** Lowest and highest pitch of a class, in hertz of the A above middle C. */
export const PITCH_RANGE = [415, 466] as const;

/** Own grooves that a class keeps, and the characters that each may be long. */
export const MOST_GROOVES = 40;
export const MOST_GROOVE_TEXT = 1500;

/** Ways of naming notes, chords and keys, in the order in which they are offered. */
export const NAMINGS = ['english', 'german', 'mixed', 'dutch', 'fixed-do'] as const;

/** How far up a round a student is asked: as far as the bass and the first qualities, as far as single chords, or all of it. */
export const DEPTHS = ['floor', 'chords', 'keys'] as const;
export type Depth = (typeof DEPTHS)[number];

/** The highest fret that a capo stands on. */
export const HIGHEST_CAPO = 9;

/** Settings of a room: copied from its class when it opens, and kept with the class as they change. */
export type RoomSettings = {
  /** Which keys count as owners of a loop. */
  readonly policy: (typeof POLICIES)[number];
  /** How notes are named on every screen, and in what the teacher types. */
  readonly naming: (typeof NAMINGS)[number];
  /** Fret of the capo on the guitars of the class, 0 for none, 9 at most. */
  readonly capo: number;
  /** Whether a chord over another bass counts as another chord. */
  readonly slashIsNew: boolean;
  /** Qualities on the pad, in pad order. */
  readonly qualities: readonly string[];
  /** Names on the host's register page. */
  readonly namesShown: boolean;
  /** Opening a question brings what usually sounds while it is answered. */
  readonly soundFollows: boolean;
  /** Which guitar the host plays. */
  readonly voice: (typeof VOICES)[number];
  /** Hertz of the A above middle C, within `PITCH_RANGE`. */
  readonly pitch: number;
  /** The room's speaker has no bass. */
  readonly smallSpeaker: boolean;
  /** Who plays along when a vamp begins. */
  readonly band: Band;
  /** How far up the rounds ask about the groove: 1 to 8. */
  readonly beatLevel: number;
  /** The teacher's own grooves, each in one line of the grid language. */
  readonly grooves: readonly string[];
};

/**
 * Socket events. client → server: `command` (Command, reply), `check` (no payload; its empty acknowledgement says the line lives);
 * a refused handshake is a connect_error whose `data` is `{ reason, detail }`. server → student: `common` (StudentCommon), `own` (StudentOwn);
 * server → host and desk: `view` (whole), `patch` (changed top-level fields); server → the page with the sound: `sound` (SoundOrder).
 */
export type ServerEvents = 'common' | 'own' | 'view' | 'patch' | 'sound' | 'removed';
