import type { Band, Depth, Feel, LessonItem, RoomSettings, SoundChange, SoundSlot } from './messages.ts';

/** A question a student may answer now, or just answered. */
export type WireAsking = {
  readonly kind: string;
  readonly target: number;
  readonly options?: readonly string[];
  readonly letter?: string;
  /** root, bass: fret of the class's capo, where there is one. */
  readonly capo?: number;
  /** direction, keys: `one`, `two` or `more` chords in the loop, where everyone knows it by now. */
  readonly loop?: string;
  /** home, keys: how many different chords the loop has, once that has been shown. */
  readonly chords?: number;
  /** settler: a note is sung over the loop; without it, a chord joins it. */
  readonly sung?: true;
  /** accents, stroke-grid, roles, opened: the grid that is drawn (`E8`). */
  readonly grid?: string;
};

/** The right answer once shown, in answer shape, and printed. */
export type WireTruth = {
  /** Right answer in the shape of an answer, and its `key`. */
  readonly answer: unknown;
  readonly key: string;
  /** Other right answers by their `key` (root: every neck place of the pitch class). */
  readonly also?: readonly string[];
  /** root, bass: the note as the chord spells it, in ASCII. */
  readonly name?: string;
};

/** Phase as every student sees it: serialised once. */
export type StudentCommon = {
  readonly v: number;
  /** `aloud`: the question is asked without phones, and has no pad. */
  readonly phase: 'waiting' | 'open' | 'closed' | 'aloud' | 'shown' | 'lesson-ended' | 'room-ended';
  /** Opaque name of question and sheet. */
  readonly ask?: string;
  /** 2 when it is the second sheet. */
  readonly sheet?: number;
  readonly asking?: WireAsking;
  /** Asked from memory: the sound has fallen silent. */
  readonly memory?: true;
  /** drop-out: the groove has dropped out just now, and is not back. */
  readonly droppedOut?: true;
  readonly truth?: WireTruth;
  /** The question counts for nobody and against nobody; everybody has its points. */
  readonly struck?: true;
  /** How notes are named here; absent where in English. */
  readonly naming?: RoomSettings['naming'];
};

/** What belongs to one student. */
export type StudentOwn = {
  readonly v: number;
  readonly name: string;
  readonly leftHanded: boolean;
  readonly pair: boolean;
  readonly leftThumb: boolean;
  /** Given at joining only: kept by the phone, sent in the handshake. */
  readonly token?: string;
  /** Last counter on disk, so that a reload goes on counting. */
  readonly counter: number;
  /** The ask that `answer` and `mark` belong to: common and own travel apart. */
  readonly ask?: string;
  /** Answer that counts for that ask; null where none. */
  readonly answer?: unknown;
  /** After the reveal: right, part or not. */
  readonly mark?: WireMark;
  /** accents: this student's own grid sounds on the host just now. */
  readonly echo?: true;
  /** At the end of the lesson: how many of the shown questions this student had right and partly right. */
  readonly lesson?: { readonly right: number; readonly part: number; readonly of: number };
};

/** A mark: `error` is an error kind's name, `note` a note kind's. */
export type WireMark = {
  readonly credit: number;
  readonly exact: boolean;
  readonly error?: string;
  readonly note?: string;
};

/** One question in the step row. */
export type WireStep = {
  readonly question: string;
  readonly kind: string;
  readonly target: number;
  readonly status: 'ready' | 'open' | 'closed' | 'shown';
  readonly sheet: number;
  readonly ask: string | null;
  /** The last asking was aloud, without phones. */
  readonly aloud: boolean;
  readonly memory: boolean;
  readonly struck: boolean;
};

/** How the answers to one question fell. */
export type WireSpread = {
  readonly ask: string;
  readonly kind: string;
  readonly target: number;
  readonly asking: WireAsking;
  /** Answers by their key, most first. */
  readonly counts: readonly { readonly key: string; readonly answer: unknown; readonly count: number }[];
  readonly notSure: number;
  /** Seats that could answer and did not. */
  readonly silent: number;
  readonly of: number;
  /** Questions that are answered by tapping: what the room did as a whole. */
  readonly taps?: WireTaps;
  /** accents: the middle grid of the class, 0 silent to 2 heavy for each slot; null where nobody filled one. */
  readonly meanGrid?: readonly number[] | null;
};

/** What a room tapped, without anyone's name. */
export type WireTaps = {
  /** Hands whose taps could be read, of those that tapped. */
  readonly read: number;
  readonly of: number;
  /** Middle tempo in beats a minute, and the middle half of all; null where nobody's could be read. */
  readonly tempo: number | null;
  readonly between: readonly [number, number] | null;
  /** Each hand's own tempo, sorted. */
  readonly tempi: readonly number[];
  /** Each hand's unevenness in percent of an interval, sorted. */
  readonly unevenness: readonly number[];
  /** together: how far the room's taps lie around each hand's own middle, in milliseconds (standard deviation). */
  readonly spread: number | null;
  /** How the room got faster (above 0) or slower over eight beats, in percent, with its standard error. */
  readonly drift: { readonly percent: number; readonly error: number } | null;
  /** drop-out: by beat from the silence on, how far ahead (above 0) or behind the groove the room's taps lie, in percent of a beat. */
  readonly curve:
    | readonly { readonly beat: number; readonly middle: number; readonly low: number; readonly high: number }[]
    | null;
};

/** A key that owns all chords, with its chart row starting on the vamp's first chord. */
export type WireKeyRow = {
  readonly key: string;
  readonly id: string;
  readonly row: readonly {
    readonly symbol: string;
    readonly numeral: string;
    /** Index of the vamp's chord that stands here. */
    readonly inVamp: boolean;
    readonly holdsDecider: boolean;
  }[];
  /** Scale from the first chord's root on. */
  readonly notes: readonly string[];
};

/** Where a visitor of a key comes from: `borrowed` from the minor on the same tonic, `applied` as the dominant of another degree. */
type WireVisit = 'borrowed' | 'applied' | 'dorian' | 'phrygian' | 'raised-seventh';

/** A key that owns a loop but for a visitor or two; names and numerals in ASCII. */
export type WireVisitedKey = {
  readonly key: string;
  /** One for each different chord. */
  readonly numerals: readonly string[];
  readonly visitors: readonly {
    readonly chord: string;
    readonly numeral: string;
    readonly visit: WireVisit;
    /** Of an applied chord: `V7/V`. */
    readonly of?: string;
  }[];
};

/** What the host draws at the reveal of the keys. */
export type WireKeysReveal = {
  readonly chords: readonly string[];
  readonly rows: readonly WireKeyRow[];
  /** Deciding notes and which keys each leaves. */
  readonly deciders: readonly { readonly note: string; readonly leaves: readonly string[] }[];
  /** Where no key owns all: the likeliest that does but for its visitors, if there is one. */
  readonly visited?: WireVisitedKey;
};

/** A round as the host page must know it to play and draw it. */
export type WireVamp = {
  readonly round: string;
  readonly number: number;
  readonly source: 'host' | 'guitar';
  readonly level: number | null;
  readonly meter: string;
  readonly grooveText: string;
  readonly tempo: number | null;
  readonly seed: number;
  /** Fret of the capo on the guitars of the class, where there is one. */
  readonly capo?: number;
  readonly slots: readonly {
    readonly chord: string;
    readonly beats: number;
    readonly frets: readonly (number | null)[];
  }[];
  /** What settles it: third chords, each to be played behind the loop, and notes, each to be sung over it. */
  readonly settlers: readonly WireSettler[];
};

/** A chord with its shape, or a note: its name in ASCII without octave, and its MIDI number. */
export type WireSettler = SoundSlot | { readonly note: string; readonly midi: number };

/** State of the sound as logged. */
export type WireSound = {
  readonly playing: boolean;
  readonly round: string | null;
  /** Never one of those that stand beside: they are in the fields that follow. */
  readonly change: SoundChange;
  readonly tempo: number | null;
  /** Where the tempo climbs to; null while it does not. */
  readonly climb: number | null;
  readonly feel: Feel;
  readonly band: Band;
};

/** One line of the end of the lesson. */
export type WireBreakdownLine = {
  readonly question: string;
  readonly round: number;
  readonly kind: string;
  readonly target: number;
  /** As it was asked, under the settings of its own round. */
  readonly asking: WireAsking;
  readonly right: number;
  readonly part: number;
  readonly wrong: number;
  readonly notSure: number;
  readonly silent: number;
  /** Most chosen wrong answers with their error kind. */
  readonly missed: readonly {
    readonly key: string;
    readonly answer: unknown;
    readonly count: number;
    readonly error: string | null;
  }[];
  readonly truth: unknown;
  /** It was asked from memory: nothing sounded while it was answered. */
  readonly memory: boolean;
};

/** A mishearing that was found in this class: how often it happened among the times that it could have. */
export type WireCommonError = {
  readonly error: string;
  readonly times: number;
  readonly chances: number;
  /** Share of chances, lowest and highest (Wilson, 95 %). */
  readonly interval: readonly [number, number];
  /** What blind guessing would give, as a share of chances. */
  readonly guessing: number;
  /** Kinds of the questions it was seen in. */
  readonly kinds: readonly string[];
  /** The sheet to play both of: the one with most of these answers; null where nothing of ours plays it now. */
  readonly ask: string | null;
};

/** How the opinions on one question fell: none is right, and nobody's name stands with them. */
export type WireOpinions = {
  readonly round: number;
  readonly question: string;
  readonly kind: string;
  readonly target: number;
  /** Most first. */
  readonly counts: readonly { readonly key: string; readonly answer: unknown; readonly count: number }[];
  readonly notSure: number;
};

/** Seat on the register page: a name where the class shows names, else null. */
export type WireSeat = { readonly seat: number; readonly name: string | null; readonly here: boolean };

export type HostView = {
  readonly v: number;
  readonly room: string;
  readonly status: 'register' | 'round' | 'lesson-ended' | 'room-ended';
  readonly settings: RoomSettings;
  readonly addresses: readonly string[];
  readonly seats: readonly WireSeat[];
  /** Whether this page holds the sound. */
  readonly holdsSound: boolean;
  /** Whether any page does. */
  readonly soundHeld: boolean;
  readonly vamp: WireVamp | null;
  /** Step kinds only: `direction`, `quality` … */
  readonly steps: readonly WireStep[];
  readonly current: (WireStep & { readonly asking: WireAsking }) | null;
  readonly handsIn: number;
  readonly handsOf: number;
  readonly spread: WireSpread | null;
  /** Null before the reveal, and always where the answers are opinions. */
  readonly truth: WireTruth | null;
  readonly keysReveal: WireKeysReveal | null;
  readonly sound: WireSound;
  readonly breakdown: readonly WireBreakdownLine[] | null;
  /** Questions of the lesson that were asked for opinions: on the host those that were shown, at the end; on the desk all closed ones. */
  readonly opinions: readonly WireOpinions[];
  /** The common errors: on the host only at the end of the lesson, three at most; on the desk as the lesson goes. No names. */
  readonly common: readonly WireCommonError[];
};

/** One student's lesson so far, private. */
export type WireStudentReport = {
  readonly student: string;
  /** Of the first sheets of closed questions; the five add up to `of`. */
  readonly right: number;
  readonly part: number;
  readonly wrong: number;
  readonly notSure: number;
  readonly silent: number;
  readonly of: number;
  /** Of the friendly ledger: ten a question. */
  readonly points: number;
  /** Of the questions that were asked from memory, how many were heard right. */
  readonly memory: { readonly right: number; readonly of: number };
  /** Where the student stands on the class's beat level: heard lately, and played through live. */
  readonly beat: {
    readonly right: number;
    readonly of: number;
    readonly needs: readonly [number, number];
    readonly played: boolean;
  };
  /** Error kinds on single answers, most often first. */
  readonly errors: readonly { readonly error: string; readonly times: number }[];
  /** Habits over several items, by error kind or habit kind. */
  readonly habits: readonly { readonly habit: string; readonly times: number; readonly of: number }[];
};

export type WireStudent = {
  readonly student: string;
  readonly seat: number;
  readonly name: string;
  readonly here: boolean;
  readonly pair: boolean;
  readonly leftHanded: boolean;
  /** How far this student is asked. */
  readonly depth: Depth;
  /** The question asked in the place of the current one, which lies beyond this student; null where nothing is left to ask. */
  readonly instead?: { readonly kind: string; readonly target: number } | null;
  /** Of what this student is asked. */
  readonly wrote: boolean;
  readonly cannotHear: boolean;
  /** After close, private. */
  readonly answer?: unknown;
  readonly mark?: WireMark;
  /** What the taps say, after close: tempo, unevenness and drift in percent, null where they could not be read. */
  readonly taps?: { readonly tempo: number; readonly unevenness: number; readonly drift: number | null } | null;
  /** Beat levels that the teacher has seen played through. */
  readonly hands: readonly number[];
};

/** What the choice of the key policy changes about a round; names, notes and numerals in ASCII. */
export type WirePolicyChange =
  | {
      readonly change: 'minor-by-raised-seventh' | 'minors-join-by-raised-seventh';
      readonly keys: readonly {
        readonly key: string;
        readonly numerals: readonly string[];
        readonly seventh: string;
      }[];
    }
  | {
      readonly change: 'home-key-with-visitor';
      readonly key: string;
      readonly numerals: readonly string[];
      readonly visitors: readonly {
        readonly chord: string;
        readonly visit: WireVisit;
        /** Of an applied chord: `V7/V`. */
        readonly of?: string;
      }[];
    }
  | {
      readonly change: 'home-in-a-mode';
      readonly key: string;
      readonly parent: string;
      readonly numerals: readonly string[];
    }
  | { readonly change: 'blues'; readonly tonic: string; readonly numerals: readonly string[] };

/** What the notes to solo on are of, where no key owns the loop: names, notes and chords in ASCII. */
export type WireSoloSource =
  | {
      readonly source: 'raised-seventh';
      readonly key: string;
      readonly natural: string;
      readonly raised: string;
      readonly over: readonly string[];
    }
  | {
      readonly source: 'visited-key';
      readonly key: string;
      readonly without: readonly string[];
      readonly visitors: readonly string[];
    }
  | { readonly source: 'blues'; readonly tonic: string };

export type WireCrib = {
  readonly chords: readonly string[];
  readonly keys: readonly { readonly key: string; readonly numerals: readonly string[] }[];
  readonly deciders: readonly { readonly note: string; readonly leaves: readonly string[] }[];
  readonly settlers: readonly { readonly chord: string; readonly leaves: readonly string[] }[];
  /** Where no key owns all: the likeliest that do but for their visitors, three at most. */
  readonly visited: readonly WireVisitedKey[];
  /** Notes to solo on: those that all the keys share, or of what `safeOf` says where no key owns all; empty where there are none. */
  readonly safe: readonly string[];
  readonly safeOf: WireSoloSource | null;
  readonly bass: readonly string[];
  readonly directions: readonly string[];
};

export type DeskView = Omit<HostView, 'seats' | 'spread' | 'truth'> & {
  readonly students: readonly WireStudent[];
  readonly spread: WireSpread | null;
  readonly truth: WireTruth | null;
  /** Most chosen wrong answer of the closed question, its error kind, whether many gave the same. */
  readonly topWrong: {
    readonly key: string;
    readonly answer: unknown;
    readonly count: number;
    readonly error: string | null;
    readonly manyTheSame: boolean;
    /** So many say that a moving bass stayed that the speaker is to be checked first. */
    readonly suspectSpeaker: boolean;
    /** Whether both can be played one after the other here and now. */
    readonly playable: boolean;
  } | null;
  /** Answers to the current question that the teacher let stand, by their key. */
  readonly letStand: readonly string[];
  readonly reports: readonly WireStudentReport[];
  readonly plan: {
    readonly items: readonly LessonItem[];
    /** Items that have been played, in order. */
    readonly played: readonly string[];
  };
  /** The teacher's own round as he entered it last, to be corrected; null where Hearsay plays. */
  readonly entered: {
    /** As he typed them; in another naming than the present one, as that prints them. */
    readonly chords: string;
    readonly groove: string | null;
    readonly tempo: number | null;
    readonly directions: readonly string[] | null;
    /** Corrections so far. */
    readonly corrections: number;
    /** Questions of this round whose answers have been shown: then a correction may cost points. */
    readonly shown: number;
  } | null;
  /** The question that waits for the sound to fall silent; null where none does. */
  readonly awaited: string | null;
  /** What the questions of the round are asked under, whatever the class has chosen since; null before the first round. */
  readonly askedUnder: { readonly policy: string; readonly qualities: readonly string[] } | null;
  readonly crib: WireCrib | null;
  /** What the choice of the key policy changes about the round: private. */
  readonly policyChanges: readonly WirePolicyChange[];
  /** Right answers of the round by question id, in answer shape: private. */
  readonly truths: Readonly<Record<string, unknown>>;
  readonly spreadShown: boolean;
  /** Distinct phones that reached this server from elsewhere. */
  readonly visitors: number;
  readonly grooves: readonly {
    readonly id: string;
    readonly name: string;
    readonly meter: string;
    readonly tempo: readonly [number, number];
  }[];
  readonly levels: readonly { readonly level: number; readonly name: string }[];
  readonly beatLevels: readonly { readonly level: number; readonly name: string }[];
  readonly contrasts: readonly { readonly id: string; readonly name: string }[];
  /** While a question is answered by tapping: the room so far, private. */
  readonly classTaps: WireTaps | null;
};
