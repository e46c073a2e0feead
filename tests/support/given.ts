import { expect } from 'vitest';
import { levelOf } from '../../shared-theory/levels.ts';
import { askableQuestions } from '../../shared-theory/questions/judges.ts';
import { KINDS, RHYTHM_KINDS } from '../../shared-theory/questions/question.ts';
import type { Kind } from '../../shared-theory/questions/question.ts';
import type { AskHow, Command, RoomSettings } from '../../server/protocol/messages.ts';
import type { Context, Decision, Sender } from '../../server/rooms/commands.ts';
import { decide } from '../../server/rooms/decide.ts';
import type { HeardRound, NewEvent, Stamp } from '../../server/rooms/events.ts';
import { versioned } from '../../server/rooms/events.ts';
import { guitarRound } from '../../server/rooms/guitar-round.ts';
import { ownGrooves } from '../../server/rooms/own-grooves.ts';
import type { People, Person } from '../../server/rooms/people.ts';
import { peopleOf } from '../../server/rooms/people.ts';
import type { RoomState } from '../../server/rooms/state.ts';
import type { Live } from '../../server/rooms/view.ts';
import { evolve } from '../../server/rooms/evolve.ts';
import { unopenedRoom } from '../../server/rooms/state.ts';

export const SETTINGS: RoomSettings = {
  policy: 'majors',
  naming: 'english',
  capo: 0,
  slashIsNew: false,
  qualities: ['major', 'minor'],
  namesShown: true,
  soundFollows: true,
  voice: 'steel',
  pitch: 440,
  smallSpeaker: false,
  band: { kit: false, bass: false },
  beatLevel: 1,
  grooves: [],
};
/** The fifth second of a run of the server. */
const NOW: Stamp = { at: 1_700_000_005_000, mono: 5_000, boot: 'boot-1' };
export const HANDS = { leftHanded: false, pair: false, leftThumb: false } as const;

/** Facts of the moment: one student's phone is connected, and a page holds the sound. */
export const LIVE: Live = {
  v: 9,
  addresses: ['192.168.1.5:4600'],
  here: new Set(['s1']),
  soundHolder: 'page-1',
  visitors: 2,
};
export const DESK: Sender = { role: 'desk' };
export const HOST: Sender = { role: 'host', page: 'page-1' };
export const student = (id: string | null): Sender => ({ role: 'student', student: id });

/** A moment of the same run, `ms` after the server started. */
export function moment(ms: number): Stamp {
  return { at: 1_700_000_000_000 + ms, mono: ms, boot: 'boot-1' };
}

export const opened: NewEvent = { type: 'RoomOpened', room: 'WAKUR', class: 'class-1', settings: SETTINGS };
export const joined = (student: string, seat: number): NewEvent => ({ type: 'StudentJoined', student, seat });
export const closed = (ask: string): NewEvent => ({ type: 'QuestionClosed', ask });
export const shown = (ask: string): NewEvent => ({ type: 'QuestionShown', ask });
export const asked = (
  ask: string,
  question: string,
  round = 'r1',
  sheet = 1,
  how: AskHow = 'phones',
  tempo: number | null = null,
): NewEvent => ({ type: 'QuestionOpened', ask, round, question, sheet, how, tempo });

/** A round on the teacher's guitar. */
export function guitar(
  chords: string,
  number = 1,
  groove: string | null = null,
  settings = SETTINGS,
  tempo: number | null = null,
): HeardRound {
  const entered = { chords, naming: settings.naming, groove, tempo, directions: null };
  const round = guitarRound(
    { id: `r${number}`, settings, beat: settings.beatLevel, grooves: ownGrooves(settings) },
    entered,
    7,
  );
  if ('reason' in round) throw new Error(`no such round: ${JSON.stringify(round)}`);
  return round;
}

/** Asked of a groove by `played` unless all of it is. */
const OF_ANY_GROOVE: readonly Kind[] = ['strokes', 'tempo', 'drop-out', 'together'];

/**
 * The same as if Hearsay had played it, and asked what its level asks, its strokes and what is tapped; counted, and all about the groove,
 * where that is said.
 */
export function played(
  chords: string,
  number = 1,
  groove = 'relaxed-alternate',
  { settings = SETTINGS, counted = false, rhythm = false } = {},
): HeardRound {
  const round = guitar(chords, number, groove, settings, 100);
  const kinds = KINDS.filter((kind) => {
    if (RHYTHM_KINDS.has(kind)) return rhythm || kind === 'strokes';
    return levelOf(7).questions.includes(kind) || (counted && kind === 'count');
  });
  const questions = askableQuestions(round.truth, round.settings).filter(
    ({ kind }) => kinds.includes(kind) || OF_ANY_GROOVE.includes(kind),
  );
  const loops = counted ? 'any' : 'two';
  return { ...round, source: 'host', level: 7, kinds, loops, questions, entered: null };
}

export const started = (round: HeardRound): NewEvent => ({ type: 'RoundStarted', round });

export function person(student: string, name = student): Person {
  return { student, name, tokenHash: `hash-of-${student}`, hands: HANDS };
}

/** Events one second apart, from the start of the run. */
export function fold(events: readonly NewEvent[]): RoomState {
  const state = unopenedRoom();
  for (const [index, event] of events.entries()) evolve(state, versioned(event), moment(index * 100));
  return state;
}

/** Everyone who joined, named by id unless `names` says otherwise. */
export function peopleIn(events: readonly NewEvent[], names: Readonly<Record<string, string>> = {}): People {
  return peopleOf(
    events.flatMap((event) =>
      event.type === 'StudentJoined' ? [person(event.student, names[event.student] ?? event.student)] : [],
    ),
  );
}

/** `given(events).when(sender, command).gives(decision)`: whole values, fixed ids and times. */
export function given(...events: readonly NewEvent[]) {
  const context = (sender: Sender, changed: Partial<Context>): Context => ({
    sender,
    now: NOW,
    people: peopleIn(events),
    fresh: { student: 'fresh-student', tokenHash: 'fresh-hash', token: 'fresh-token' },
    seed: 11,
    soundHolder: null,
    ...changed,
  });
  return {
    when: (sender: Sender, command: Command, changed: Partial<Context> = {}) => {
      const state = fold(events);
      const before = structuredClone(state);
      const decision = decide(state, command, context(sender, changed));
      expect(state, 'decide changes nothing').toEqual(before);
      return {
        decision,
        gives: (expected: Decision) => expect(decision).toEqual(expected),
        refused: (reason: string, detail?: Readonly<Record<string, string | number>>) =>
          expect(decision).toEqual(detail === undefined ? { ok: false, reason } : { ok: false, reason, detail }),
      };
    },
  };
}
