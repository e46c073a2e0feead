import type { RoundQuestion } from '../../shared-theory/questions/round-questions.ts';
import type { Answer, Kind, NotSure, QuestionSettings } from '../../shared-theory/questions/question.ts';
import type { Truth } from '../../shared-theory/truth.ts';
import type { Frets, Meter } from '../../shared-theory/vamps.ts';
import type { AskHow, Depth, LessonItem, RoomSettings, SoundChange } from '../protocol/messages.ts';
import { UPGRADES } from './upgrades.ts';
import type { Plain } from './plain.ts';

/** A chord of a round with the shape that plays it. */
export type HeardSlot = { readonly chord: string; readonly beats: number; readonly frets: Frets };

/** The teacher's own round as he entered it. */
export type EnteredRound = {
  readonly chords: string;
  /** The naming in which he typed them. */
  readonly naming: RoomSettings['naming'];
  /** Groove id. */
  readonly groove: string | null;
  readonly tempo: number | null;
  readonly directions: readonly ('up' | 'down' | 'same' | 'usual')[] | null;
};

/** A round as it was heard: all that its marks need, so that no later generator can change the past. */
export type HeardRound = {
  /** `r3`: opaque, names the round in commands. */
  readonly id: string;
  /** From 1. */
  readonly number: number;
  /** Hearsay played it, or the teacher's own guitar. */
  readonly source: 'host' | 'guitar';
  readonly level: number | null;
  readonly seed: number;
  readonly meter: Meter;
  /** Beats a minute; null where the teacher plays and named none. */
  readonly tempo: number | null;
  readonly grooveText: string;
  readonly slots: readonly HeardSlot[];
  /**
   * Third chords that settle it, each to be played behind the loop; in the order of `truth.settlers`. Null where a note settles it,
   * which is sung over the loop and has no shape.
   */
  readonly settlers: readonly (HeardSlot | null)[];
  readonly truth: Truth;
  readonly questions: readonly RoundQuestion[];
  /** How many chords rounds of this sort may have, as everybody knows: of two, of one or two, of any number. */
  readonly loops: 'two' | 'one-or-two' | 'any';
  /** Kinds that rounds of this sort ask, in their order; the same for every truth, so that naming them tells nothing. */
  readonly kinds: readonly Kind[];
  /** Settings that hold for the whole round. */
  readonly settings: QuestionSettings;
  /** As the teacher entered it; null where Hearsay plays, and in rounds of a time that did not keep it. */
  readonly entered: EnteredRound | null;
  /** Item of the planned lesson that it plays; null for a round beside the plan. */
  readonly item: string | null;
  /** Beat level of the class by which it is asked about its groove; null in rounds of a time that had none. */
  readonly beat: number | null;
  /** Id of the contrast pair of which it plays one; null for a round beside all pairs. */
  readonly contrast: string | null;
};

type Event<Type extends string, Body = unknown> = { readonly type: Type; readonly version: number } & Body;

/** What happened in a room. Plain JSON; names never stand in it. */
export type RoomEvent =
  | Event<'RoomOpened', { readonly room: string; readonly class: string; readonly settings: RoomSettings }>
  | Event<'SettingsChanged', { readonly settings: Partial<RoomSettings> }>
  /** A groove of the class's own, in place of one of the same id; `text` in one line. */
  | Event<'GrooveSaved', { readonly text: string }>
  | Event<'GrooveErased', { readonly groove: string }>
  | Event<'StudentJoined', { readonly student: string; readonly seat: number }>
  /** The person's row (name, hands) was written anew. */
  | Event<'PersonChanged', { readonly student: string }>
  /** How far the student is asked from now on. */
  | Event<'DepthSet', { readonly student: string; readonly depth: Depth }>
  | Event<'RoundStarted', { readonly round: HeardRound }>
  | Event<
      'QuestionOpened',
      {
        readonly ask: string;
        readonly round: string;
        readonly question: string;
        /** 1 is evidence; from 2 on it is support. Aloud it is the sheet that comes next. */
        readonly sheet: number;
        readonly how: AskHow;
        /** Beats a minute of what sounds, for a question that is answered by tapping; null for every other. */
        readonly tempo: number | null;
      }
    >
  /**
   * With a question that opens and lies beyond a student: the question of the round that this student is asked in its place, or
   * null where nothing is left to ask. `ask` is that of the question that opens.
   */
  | Event<'AskedInstead', { readonly student: string; readonly ask: string; readonly question: string | null }>
  /** The question opens once two bars have passed in silence. */
  | Event<'MemoryAwaited', { readonly round: string; readonly question: string }>
  /** It is not waited for any more. */
  | Event<'MemoryDropped', { readonly round: string }>
  | Event<
      'AnswerWritten',
      {
        readonly student: string;
        readonly ask: string;
        readonly counter: number;
        readonly answer: Answer | NotSure | null;
      }
    >
  | Event<'HearingSignalled', { readonly student: string; readonly ask: string }>
  /** The teacher has seen the student play a groove of a beat level through, or takes it back. */
  | Event<'HandTicked', { readonly student: string; readonly beat: number; readonly played: boolean }>
  /** A grid was sent to be played, by its text; `student` is whose it is, null for the class's and the right one. */
  | Event<'EchoOrdered', { readonly student: string | null; readonly groove: string }>
  | Event<'QuestionClosed', { readonly ask: string }>
  | Event<'SpreadShown', { readonly ask: string }>
  | Event<'QuestionShown', { readonly ask: string }>
  /** The teacher lets another answer stand as right, or no more. */
  | Event<
      'AnswerLetStand',
      { readonly round: string; readonly question: string; readonly answer: Answer; readonly stands: boolean }
    >
  | Event<'QuestionStruck', { readonly round: string; readonly question: string; readonly struck: boolean }>
  /** What the teacher really played: takes the place of what was entered, under the same id and number. */
  | Event<'TruthCorrected', { readonly round: HeardRound; readonly pointsMayFall: boolean }>
  | Event<'LessonPlanned', { readonly items: readonly LessonItem[] }>
  | Event<'VampStarted', { readonly round: string; readonly tempo: number }>
  | Event<'ChangeTook', { readonly round: string; readonly change: SoundChange; readonly bar: number }>
  | Event<'VampStopped', { readonly round: string }>
  /** Two bars have passed unheard since the silence took. */
  | Event<'SilenceKept', { readonly round: string }>
  | Event<'LessonEnded'>
  | Event<'RoomClosed'>
  /** Stands where an erased student's event stood. */
  | Event<'Erased'>;

export type EventType = RoomEvent['type'];
/** An event without its version, as `decide` writes it. */
export type NewEvent = RoomEvent extends infer E ? (E extends RoomEvent ? Omit<E, 'version'> : never) : never;

/** Newest version of each event; raise it together with an upgrade from the one before. */
export const EVENT_VERSIONS: Readonly<Record<EventType, number>> = {
  RoomOpened: 5,
  SettingsChanged: 1,
  GrooveSaved: 1,
  GrooveErased: 1,
  StudentJoined: 1,
  PersonChanged: 1,
  DepthSet: 1,
  RoundStarted: 4,
  QuestionOpened: 3,
  AskedInstead: 1,
  MemoryAwaited: 1,
  MemoryDropped: 1,
  AnswerWritten: 1,
  HearingSignalled: 1,
  HandTicked: 1,
  EchoOrdered: 1,
  QuestionClosed: 1,
  SpreadShown: 1,
  QuestionShown: 1,
  AnswerLetStand: 1,
  QuestionStruck: 1,
  TruthCorrected: 3,
  LessonPlanned: 1,
  VampStarted: 1,
  ChangeTook: 1,
  VampStopped: 1,
  SilenceKept: 1,
  LessonEnded: 1,
  RoomClosed: 1,
  Erased: 1,
};

/** By type: the step from version 1 to 2, from 2 to 3, and so on. */
export type Upgrades = Readonly<Partial<Record<EventType, readonly ((event: Plain) => Plain)[]>>>;

/** When something happened. */
export type Stamp = {
  /** Wall time in milliseconds since 1970: recorded, never used for order. */
  readonly at: number;
  /** Milliseconds of a monotonic clock; comparable only within one `boot`. */
  readonly mono: number;
  readonly boot: string;
};

/** An event of the log that this server cannot read. */
export class UnreadableEventError extends Error {
  override readonly name = 'UnreadableEventError';
}

/** Puts the newest version on events as `decide` writes them. */
export function versioned(event: NewEvent): RoomEvent {
  return { ...event, version: EVENT_VERSIONS[event.type] };
}

/**
 * Reads an event of the log and brings it to its newest version. Throws UnreadableEventError where it is none, or of a type
 * or version that only a newer server knows.
 */
export function readEvent(body: string, upgrades: Upgrades = UPGRADES, versions = EVENT_VERSIONS): RoomEvent {
  const event = parsed(body);
  const { type, version } = event;
  if (typeof type !== 'string' || !isType(type, versions)) {
    throw new UnreadableEventError(
      `the log holds an event of type ${JSON.stringify(type)}, which this version does not know`,
    );
  }
  const newest = versions[type];
  if (version === newest) return event as unknown as RoomEvent;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1 || version > newest) {
    throw new UnreadableEventError(
      `the log holds ${type} of version ${JSON.stringify(version)}; this version reads 1 to ${newest}`,
    );
  }
  const steps = (upgrades[type] ?? []).slice(version - 1, newest - 1);
  try {
    return { ...steps.reduce<Plain>((old, step) => step(old), event), version: newest } as unknown as RoomEvent;
  } catch (cause) {
    throw new UnreadableEventError(`the log holds ${type} of version ${version} that is none`, { cause });
  }
}

/** Whose event it is; null for events of the room. */
export function studentOf(event: RoomEvent): string | null {
  return 'student' in event ? event.student : null;
}

function parsed(body: string): Plain {
  let value: unknown;
  try {
    value = JSON.parse(body);
  } catch (cause) {
    throw new UnreadableEventError('the log holds an event that is not JSON', { cause });
  }
  if (typeof value !== 'object' || value === null)
    throw new UnreadableEventError('the log holds an event that is not an object');
  return value as Plain;
}

function isType(type: string, versions: Readonly<Record<string, number>>): type is EventType {
  return Object.hasOwn(versions, type);
}
