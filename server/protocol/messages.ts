/** Version of what travels; a page of another version is asked to reload once. */
export const PROTOCOL_VERSION = 1;

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
  'level-unknown',
  'tempo-out-of-range',
  'no-host-sound',
  'sound-held-elsewhere',
  'nothing-plays',
  'strokes-asked',
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

/** Live controls of the sound; they take effect on the next bar line. */
export type SoundChange =
  | { readonly kind: 'full' }
  | { readonly kind: 'hold'; readonly slot: number }
  | { readonly kind: 'bass-alone' }
  | { readonly kind: 'tempo'; readonly tempo: number };

/** Commands of the desk. `target` fields make two presses or two desks act once. */
export type DeskCommand =
  | { readonly type: 'StartRound'; readonly id: string; readonly after: number; readonly level: number }
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
  | { readonly type: 'OpenQuestion'; readonly id: string; readonly round: string; readonly question: string }
  | { readonly type: 'CloseQuestion'; readonly id: string; readonly ask: string }
  | { readonly type: 'ShowSpread'; readonly id: string; readonly ask: string }
  | { readonly type: 'ShowAnswer'; readonly id: string; readonly ask: string }
  /** After talk with the neighbour: a second sheet of the same question. */
  | { readonly type: 'AnswerAgain'; readonly id: string; readonly ask: string }
  | { readonly type: 'RequestPlay'; readonly id: string; readonly round: string }
  | { readonly type: 'RequestChange'; readonly id: string; readonly round: string; readonly change: SoundChange }
  | { readonly type: 'RequestStop'; readonly id: string }
  | { readonly type: 'ChangeSettings'; readonly id: string; readonly settings: Partial<RoomSettings> }
  | { readonly type: 'RenameStudent'; readonly id: string; readonly student: string; readonly name: string }
  | { readonly type: 'EraseStudent'; readonly id: string; readonly student: string }
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
  | { readonly type: 'VampStopped'; readonly id: string; readonly round: string };

export type Command = StudentCommand | DeskCommand | HostCommand;

/** What the server tells the page that holds the sound. */
export type SoundOrder =
  | { readonly order: 'play'; readonly round: string }
  | { readonly order: 'change'; readonly round: string; readonly change: SoundChange }
  | { readonly order: 'stop' };

/** Settings of a room, copied from its class when it opens. */
export type RoomSettings = {
  readonly policy: 'majors' | 'relatives';
  /** Qualities on the pad, in pad order. */
  readonly qualities: readonly string[];
  /** Names on the host's register page. */
  readonly namesShown: boolean;
};

/**
 * Socket events. client → server: `command` (Command, reply), `check` (no payload; its empty acknowledgement says the line lives);
 * a refused handshake is a connect_error whose `data` is `{ reason, detail }`. server → student: `common` (StudentCommon), `own` (StudentOwn);
 * server → host and desk: `view` (whole), `patch` (changed top-level fields); server → the page with the sound: `sound` (SoundOrder).
 */
export type ServerEvents = 'common' | 'own' | 'view' | 'patch' | 'sound' | 'removed';
