import { isBeside, type SoundChange } from '../../server/protocol/messages.ts';
import { countIn, type CountInBeat, type PerformedBar } from '../../shared-theory/live.ts';
import type { BassNote, KitStrike, SoundedNote } from '../../shared-theory/perform.ts';
import { changedControls, climbedControls, fullControls, takenAs } from './controls.ts';
import {
  barBehind,
  barOf,
  enteredBar,
  isUnheard,
  nextBar,
  placeInLoop,
  playsLoop,
  programOf,
  type Program,
} from './live-program.ts';
import {
  lastOnStrings,
  stopRinging,
  stopSounding,
  timeAt,
  type Origin,
  type Placed,
  type Sounding,
  type Voice,
} from './placed.ts';
import type { LiveVamp } from './played-slots.ts';
import type { Heard } from './sound-view.ts';

export type { Voice } from './placed.ts';

/** What the player plays on; times are seconds of the audio clock. */
export type Stage = {
  readonly now: () => number;
  /** Whether all of a bar of the program can sound now; where not, it is being made ready. */
  readonly ready: (program: Program, bar: PerformedBar) => boolean;
  readonly strike: (note: SoundedNote, at: number, program: Program) => Voice;
  readonly strikeKit: (strike: KitStrike, at: number, program: Program) => Voice;
  readonly strikeBass: (note: BassNote, at: number, program: Program) => Voice;
  /** One counted beat: all that it sounds of. */
  readonly count: (beat: CountInBeat, at: number) => readonly Voice[];
  /** Ramps everything down within 30 ms and forgets it. */
  readonly hush: () => void;
};

/** What really happened, told when it is heard. `bar` counts from the vamp's first bar. */
export type PlayerEvents = {
  readonly onStarted: (round: string, tempo: number) => void;
  readonly onTook: (round: string, change: SoundChange, bar: number) => void;
  /** Two bars have passed unheard since a silence took. */
  readonly onSilent: (round: string) => void;
  readonly onStopped: (round: string) => void;
};

export type Player = {
  /** Counts in and plays the vamp round and round. Does nothing while that round is playing already. */
  readonly play: (round: string, vamp: LiveVamp) => void;
  /** Takes effect on the next bar line. Throws `RangeError` for a slot or settler that the loop has not. */
  readonly change: (change: SoundChange) => void;
  /** From the next bar line on everything is struck anew: on other strings, say. The music goes on where it is. */
  readonly renew: () => void;
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

/** From the press to the first tick: time for the first beats to be scheduled. */
const START_SECONDS = 0.15;

/** A change this close before a bar line waits for the next one. */
const GUARD_SECONDS = 0.06;

/** A count-in this close to its end goes on for another, where the first bar is not ready. */
const COUNT_ON_SECONDS = 0.25;

/** Bars that pass unheard before what was heard is asked from memory, or before a loop that dropped out is back. */
const UNHEARD_BARS = 2;

/** A string that is struck again so much before its time is up, in seconds, is stopped. */
const EARLY_SECONDS = 0.001;

/** What is heard runs behind the clock by the delay of the speakers, wireless ones included: so long is remembered where it was. */
const REMEMBERED_SECONDS = 1.5;

/** The next bar as it will be placed. */
type Due = { readonly program: Program; readonly performed: PerformedBar; readonly changes: readonly SoundChange[] };

type Running = {
  readonly round: string;
  readonly vamp: LiveVamp;
  /** It was told that it began. */
  started: boolean;
  program: Program;
  /** Orders that take effect with the next bar to be placed. */
  changes: SoundChange[];
  /** Next bar of `program.bars`, its count from the first bar. */
  bar: number;
  count: number;
  /** Where the next bar begins: so many beats after an origin. */
  origin: Origin;
  beats: number;
  /** The music broke off before it: the next bar begins anew. */
  broken: boolean;
  /** Bars placed unheard since that took. */
  unheard: number;
  due: Due | null;
  placed: Placed[];
};

/** A player of vamps on a stage: which bar sounds when, and what a change does. It knows nothing of browsers. */
export function createPlayer(stage: Stage, events: PlayerEvents): Player {
  let running: Running | null = null;

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
    const before = running.program.controls;
    const controls = changedControls(vamp, before, wanted);
    const next = programOf(vamp, controls);
    running.bar = barAfter(running, next);
    running.program = next;
    running.changes.push(...takenAs(before, controls, wanted));
    advance();
  };

  const renew = (): void => {
    if (!running) return;
    takeBack(running, stage.now() + GUARD_SECONDS);
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
    stop,
    advance,
    position,
    playing: () => running?.round ?? null,
    program: () => running?.program ?? null,
  };
}

function nextTime({ origin, beats, program }: Running): number {
  return timeAt(origin, beats, program.controls.tempo);
}

/** Counts in, or counts on where a count-in is not enough. */
function placeCountIn(running: Running, stage: Stage): void {
  const start = running.origin.time;
  const { seconds, beats } = countIn(running.vamp.meter, running.vamp.tempo);
  const sounds = beats.flatMap((beat) =>
    stage.count(beat, start + beat.time).map((voice): Sounding => ({ voice, string: null, until: voice.end })),
  );
  const told = running.placed.length > 0;
  running.placed.push({ kind: 'count-in', start, end: start + seconds, sounds, beats, changes: [], told });
  running.origin = { time: start + seconds, beats: 0 };
}

/** The bar that a change begins with: it follows what is placed before it, so that what was wanted and never sounded moves nothing. */
function barAfter({ placed, changes }: Running, next: Program): number {
  const last = placed.findLast((each) => each.kind === 'bar');
  if (!last || (playsLoop(next) && changes.some(({ kind }) => kind === 'again'))) return 0;
  return nextBar(last.program, barBehind(last.program, last.bar), next);
}

/** The next bar, with what goes by itself on its line: a step of a climb, and the loop back after it dropped out. */
function dueBar(running: Running): Due {
  const { vamp, program, bar, count, changes } = running;
  let { controls } = program;
  const own: SoundChange[] = [];
  const asOrdered = changes.every(isBeside);
  if (controls.mode.kind === 'drop-out' && asOrdered && running.unheard >= UNHEARD_BARS) {
    controls = { ...controls, mode: { kind: 'full' } };
    own.push({ kind: 'full' });
  }
  if (controls.climb !== null && count > 0 && changes.length === 0 && bar % program.barsPerLoop === 0) {
    controls = climbedControls(controls);
    own.push({ kind: 'tempo', tempo: controls.tempo });
  }
  const next = own.length === 0 ? program : programOf(vamp, controls);
  const anew = running.broken || [...changes, ...own].some(beginsAnew);
  return { program: next, performed: anew ? enteredBar(next, bar) : barOf(next, bar), changes: [...changes, ...own] };
}

/** Whether the strings that ring are stopped on the line of a change: where only tempo or company change, they ring on. */
function beginsAnew(change: SoundChange): boolean {
  return !isBeside(change) || change.kind === 'feel';
}

/** Schedules the next bar at its line; false where it is not ready, and waits. */
function placeNext(running: Running, now: number, stage: Stage): boolean {
  const first = !running.placed.some(({ kind }) => kind === 'bar');
  const late = nextTime(running) < now;
  if (late) {
    // A bar is not squeezed in: the music goes on from now.
    running.broken ||= !first;
    running.origin = { time: now + START_SECONDS, beats: running.beats };
    running.due = null;
  }
  const due = (running.due ??= dueBar(running));
  const { program, performed, changes } = due;
  if (!stage.ready(program, performed)) {
    if (first && nextTime(running) < now + COUNT_ON_SECONDS) placeCountIn(running, stage);
    return false;
  }
  const { bar, count, unheard } = running;
  const start = nextTime(running);
  // Times are products of the beats since the last change of tempo.
  if (program.controls.tempo !== running.program.controls.tempo) running.origin = { time: start, beats: running.beats };
  const silent = changes.every(isBeside) ? unheard : 0;
  const ordered = { program: running.program, changes: running.changes, unheard };
  running.beats += program.beats[bar] ?? 0;
  running.program = program;
  const end = nextTime(running);
  if (changes.some(beginsAnew)) stopRinging(running.placed, start);
  const sounds = strikeBar(running.placed, { program, performed, start }, stage);
  const placed = { kind: 'bar', start, end, sounds, program, bar, count, changes, ordered } as const;
  running.placed.push({ ...placed, unheard: silent, told: false });
  running.unheard = isUnheard(program.controls.mode) ? silent + 1 : 0;
  running.changes = [];
  running.due = null;
  running.broken = false;
  running.bar = barBehind(program, bar);
  running.count = count + 1;
  return true;
}

/** Strikes everything of a bar. A string that still rings stops where it is struck again. */
function strikeBar(
  placed: readonly Placed[],
  {
    program,
    performed,
    start,
  }: { readonly program: Program; readonly performed: PerformedBar; readonly start: number },
  stage: Stage,
): readonly Sounding[] {
  const ringing = lastOnStrings(placed);
  const sounds: Sounding[] = [];
  const add = (voice: Voice, at: number, string: string | null, until: number): void => {
    const sounding = { voice, string, until };
    sounds.push(sounding);
    if (string === null) return;
    const before = ringing.get(string);
    if (before && before.until > at + EARLY_SECONDS) stopSounding(before, at);
    ringing.set(string, sounding);
  };
  for (const note of performed.notes) {
    const at = start + note.time;
    add(stage.strike(note, at, program), at, `guitar ${note.string}`, at + note.duration);
  }
  for (const note of performed.bass) {
    const at = start + note.time;
    add(stage.strikeBass(note, at, program), at, 'bass', at + note.duration);
  }
  for (const strike of performed.kit) {
    const at = start + strike.time;
    add(stage.strikeKit(strike, at, program), at, null, Infinity);
  }
  return sounds;
}

/** Takes back the bars that begin at `from` or later; their orders wait again, and what would have gone by itself is forgotten. */
function takeBack(running: Running, from: number): void {
  running.due = null;
  running.origin = { time: nextTime(running), beats: 0 };
  running.beats = 0;
  const first = running.placed.findIndex((placed) => placed.kind === 'bar' && placed.start >= from);
  const line = running.placed[first];
  if (line?.kind !== 'bar') return;
  const taken = running.placed.splice(first);
  for (const { voice } of taken.flatMap(({ sounds }) => sounds)) voice.drop();
  running.changes = [...taken.flatMap((each) => (each.kind === 'bar' ? each.ordered.changes : [])), ...running.changes];
  running.program = line.ordered.program;
  running.bar = line.bar;
  running.count = line.count;
  running.unheard = line.ordered.unheard;
  running.origin = { time: line.start, beats: 0 };
}
