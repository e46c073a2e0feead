import { isBeside, type SoundChange } from '../../server/protocol/messages.ts';
import { RESTED } from '../../shared-theory/hand-care.ts';
import { changedControls, fullControls, takenAs } from './controls.ts';
import { isUnheard, placeInLoop, playsLoop, programOf, type Program } from './live-program.ts';
import type { LiveVamp } from './played-slots.ts';
import {
  barAfter,
  nextTime,
  placeCountIn,
  placeNext,
  START_SECONDS,
  takeBack,
  UNHEARD_BARS,
  type Running,
} from './schedule.ts';
import type { Heard } from './sound-view.ts';
import type { Stage } from './stage.ts';

/** What really happened, told when it is heard. `bar` counts from the vamp's first bar. */
export type PlayerEvents = {
  readonly onStarted: (round: string, tempo: number) => void;
  readonly onTook: (round: string, change: SoundChange, bar: number) => void;
  /** Two bars have passed unheard since a silence took. */
  readonly onSilent: (round: string) => void;
  /** Hands that have long struck fast downs are given a rest; `seconds` the time in which that is to be said. */
  readonly onRest: (round: string, seconds: number) => void;
  readonly onStopped: (round: string) => void;
};

export type Player = {
  /** Counts in and plays the vamp round and round. Does nothing while that round is playing already. */
  readonly play: (round: string, vamp: LiveVamp) => void;
  /** Takes effect on the next bar line, a drop-out so many bars after it as are to be heard first. Throws `RangeError` for a slot or settler that the loop has not. */
  readonly change: (change: SoundChange) => void;
  /** From the next bar line on everything is struck anew: on other strings, say. The music goes on where it is. */
  readonly renew: () => void;
  /**
   * Whether the room plays along, as it does from the beginning; while it does not, its hands rest. Hands that play along are given a
   * rest after 90 seconds of fast downstrokes in a row: the relaxed feel, from a bar line on.
   */
  readonly playAlong: (along: boolean) => void;
  readonly stop: () => void;
  /** Schedules what is due; to be called some times a second by a clock that also runs in hidden tabs. */
  readonly advance: () => void;
  /** Where the music is at a time of the audio clock; null before the count-in and while nothing plays. */
  readonly position: (at: number) => Heard | null;
  /** The round that plays; null while none does. */
  readonly playing: () => string | null;
  /** What will be played once every change has taken. */
  readonly program: () => Program | null;
};

/** Bars are scheduled so far ahead that a hidden tab's slow clock (one call a second) leaves no gap. */
const LOOKAHEAD_SECONDS = 2.2;

/** A change this close before a bar line waits for the next one. */
const GUARD_SECONDS = 0.06;

/** Bars for which the room is told to shake its hands out. */
const REST_BARS = 8;

/** What is heard runs behind the clock by the delay of the speakers, wireless ones included: so long is remembered where it was. */
const REMEMBERED_SECONDS = 1.5;

/** A player of vamps on a stage: which bar sounds when, and what a change does. It knows nothing of browsers. */
export function createPlayer(stage: Stage, events: PlayerEvents): Player {
  let running: Running | null = null;
  let alongNow = true;

  const play = (round: string, vamp: LiveVamp): void => {
    if (running?.round === round) return;
    stop();
    const program = programOf(vamp, fullControls(vamp));
    const origin = { time: stage.now() + START_SECONDS, beats: 0 };
    running = {
      round,
      vamp,
      started: false,
      program,
      changes: [],
      bar: 0,
      count: 0,
      origin,
      beats: 0,
      broken: false,
      unheard: 0,
      dropsIn: null,
      along: alongNow,
      hand: RESTED,
      due: null,
      placed: [],
    };
    placeCountIn(running, stage);
    advance();
  };

  const change = (wanted: SoundChange): void => {
    if (!running) return;
    const { vamp } = running;
    // What cannot be played changes nothing.
    programOf(vamp, changedControls(vamp, running.program.controls, wanted));
    takeBack(running, stage.now() + GUARD_SECONDS);
    if (!isBeside(wanted)) running.dropsIn = null;
    const bars = wanted.kind === 'drop-out' ? (wanted.after ?? 0) : 0;
    if (bars > 0) running.dropsIn = bars;
    // Of a loop that is to drop out later, something must be heard until then.
    const heard = playsLoop(running.program) && !isUnheard(running.program.controls.mode);
    if (bars === 0 || !heard) order(running, bars === 0 ? wanted : { kind: 'full' });
    advance();
  };

  /** What the next bar to be placed begins with. */
  const order = (current: Running, wanted: SoundChange): void => {
    const before = current.program.controls;
    const controls = changedControls(current.vamp, before, wanted);
    const next = programOf(current.vamp, controls);
    current.bar = barAfter(current, next);
    current.program = next;
    current.changes.push(...takenAs(before, controls, wanted));
  };

  const renew = (): void => {
    if (!running) return;
    takeBack(running, stage.now() + GUARD_SECONDS);
    advance();
  };

  const playAlong = (along: boolean): void => {
    if (along === alongNow) return;
    alongNow = along;
    if (!running) return;
    running.along = along;
    if (along) return;
    // A rest that is scheduled is not needed any more: what is asked about is the groove as it sounds.
    const rests = running.placed.some((placed) => placed.kind === 'bar' && placed.rests && !placed.told);
    if (rests) takeBack(running, stage.now() + GUARD_SECONDS);
    running.hand = RESTED;
    running.due = null;
    advance();
  };

  const stop = (): void => {
    if (!running) return;
    const { round, started } = running;
    running = null;
    stage.hush();
    // What was never heard to begin has not stopped either.
    if (started) events.onStopped(round);
  };

  const advance = (): void => {
    const current = running;
    if (!current) return;
    const now = stage.now();
    while (nextTime(current) < now + LOOKAHEAD_SECONDS && placeNext(current, now, stage));
    current.placed = current.placed.filter((placed) => placed.end > now - REMEMBERED_SECONDS);
    for (const placed of current.placed) {
      if (placed.told || placed.start > now) continue;
      placed.told = true;
      if (placed.kind === 'count-in') {
        current.started = true;
        events.onStarted(current.round, current.vamp.tempo);
        continue;
      }
      for (const taken of placed.changes) events.onTook(current.round, taken, placed.count);
      const silent = placed.program.controls.mode.kind === 'silence';
      if (silent && placed.unheard === UNHEARD_BARS) events.onSilent(current.round);
      if (placed.rests) events.onRest(current.round, REST_BARS * (placed.end - placed.start));
    }
  };

  const position = (at: number): Heard | null => {
    const placed = running?.placed.find(({ start, end }) => start <= at && at < end);
    if (!placed) return null;
    if (placed.kind === 'bar') return placeInLoop(placed.program, placed.bar, at - placed.start);
    const beat = placed.beats.findLast(({ time }) => time <= at - placed.start);
    return {
      phase: 'count-in',
      beat: (beat?.number ?? 1) - 1,
      of: Math.max(...placed.beats.map(({ number }) => number)),
    };
  };

  return {
    play,
    change,
    renew,
    playAlong,
    stop,
    advance,
    position,
    playing: () => running?.round ?? null,
    program: () => running?.program ?? null,
  };
}
