import type { SoundChange } from '../../server/protocol/messages.ts';
import { countIn } from '../../shared-theory/live.ts';
import type { SoundedNote } from '../../shared-theory/perform.ts';
import {
  changedControls,
  fullControls,
  nextBar,
  placeInLoop,
  playsLoop,
  programOf,
  type Program,
} from './live-program.ts';
import type { LiveVamp } from './played-slots.ts';
import type { Heard } from './sound-view.ts';

/** Something scheduled that sounds until `end`, in seconds of the audio clock. */
export type Voice = {
  readonly end: number;
  /** Stops it earlier, by its own ramp. */
  readonly stopAt: (time: number) => void;
  /** Takes it back before it has begun. */
  readonly drop: () => void;
};

/** What the player plays on; times are seconds of the audio clock. */
export type Instrument = {
  readonly now: () => number;
  readonly strike: (note: SoundedNote, at: number) => Voice;
  readonly tick: (accented: boolean, at: number) => Voice;
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

/** From the press to the first tick: time for the first bars to be scheduled. */
const START_SECONDS = 0.15;

/** A change this close before a bar line waits for the next one. */
const GUARD_SECONDS = 0.06;

/** Bars that pass unheard before what was heard is asked from memory. */
const SILENT_BARS = 2;

/** A bar this late is not squeezed in: the music goes on from now. */
const LATE_SECONDS = 0.05;

type Placed = {
  readonly start: number;
  readonly end: number;
  readonly voices: readonly Voice[];
  readonly changes: readonly SoundChange[];
  /** Bars that have passed unheard before it, since the silence took. */
  readonly silentBars: number;
  told: boolean;
} & (
  | { readonly kind: 'count-in'; readonly beats: ReturnType<typeof countIn>['beats'] }
  | { readonly kind: 'bar'; readonly program: Program; readonly bar: number; readonly count: number }
);

type Running = {
  readonly round: string;
  readonly vamp: LiveVamp;
  program: Program;
  /** Changes that take effect with the next bar to be placed. */
  changes: SoundChange[];
  /** Next bar of `program.bars`, its count from the first bar, and its time. */
  bar: number;
  count: number;
  time: number;
  /** Silent bars placed since the silence took. */
  silentBars: number;
  placed: Placed[];
};

/** A player of vamps on an instrument: which bar sounds when, and what a change does. It knows nothing of browsers. */
export function createPlayer(instrument: Instrument, events: PlayerEvents): Player {
  let running: Running | null = null;

  const play = (round: string, vamp: LiveVamp): void => {
    if (running?.round === round) return;
    stop();
    const { seconds, beats } = countIn(vamp.meter, vamp.tempo);
    const start = instrument.now() + START_SECONDS;
    const voices = beats.map((beat) => instrument.tick(beat.accented, start + beat.time));
    const end = start + seconds;
    running = {
      round,
      vamp,
      program: programOf(vamp, fullControls(vamp)),
      changes: [],
      bar: 0,
      count: 0,
      time: end,
      silentBars: 0,
      placed: [{ kind: 'count-in', start, end, voices, beats, changes: [], silentBars: 0, told: false }],
    };
    advance();
  };

  const change = (wanted: SoundChange): void => {
    if (!running) return;
    const { vamp, program } = running;
    const controls = changedControls(vamp, program.controls, wanted);
    takeBack(running, instrument.now() + GUARD_SECONDS);
    const next = programOf(vamp, controls);
    running.bar = barAfter(running, next);
    running.program = next;
    running.changes.push(wanted.kind === 'tempo' ? { kind: 'tempo', tempo: controls.tempo } : wanted);
    advance();
  };

  const stop = (): void => {
    if (!running) return;
    const { round } = running;
    running = null;
    instrument.hush();
    events.onStopped(round);
  };

  const advance = (): void => {
    const current = running;
    if (!current) return;
    const now = instrument.now();
    while (current.time < now + LOOKAHEAD_SECONDS) placeNext(current, now, instrument);
    // What is heard runs behind the clock by the delay of the speakers, wireless ones included.
    current.placed = current.placed.filter((placed) => placed.end > now - 1);
    for (const placed of current.placed) {
      if (placed.told || placed.start > now) continue;
      placed.told = true;
      if (placed.kind === 'count-in') events.onStarted(current.round, current.vamp.tempo);
      else for (const taken of placed.changes) events.onTook(current.round, taken, placed.count);
      if (placed.silentBars === SILENT_BARS) events.onSilent(current.round);
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
    stop,
    advance,
    position,
    playing: () => running?.round ?? null,
    program: () => running?.program ?? null,
  };
}

/** The bar that a change begins with: it follows what is placed before it, so that what was wanted and never sounded moves nothing. */
function barAfter({ placed, changes }: Running, next: Program): number {
  const last = placed.findLast((each) => each.kind === 'bar');
  if (!last || (playsLoop(next) && changes.some(({ kind }) => kind === 'again'))) return 0;
  return nextBar(last.program, (last.bar + 1) % last.program.bars.length, next);
}

/** Schedules the next bar at its line. */
function placeNext(running: Running, now: number, instrument: Instrument): void {
  const { program, bar, count } = running;
  if (running.time < now - LATE_SECONDS) running.time = now + START_SECONDS;
  const performed = program.bars[bar];
  if (!performed) throw new RangeError(`The program has ${program.bars.length} bars, not a bar ${bar}.`);
  const start = running.time;
  const end = start + performed.seconds;
  if (running.changes.length > 0) stopRinging(running.placed, start);
  const voices = performed.notes.map((note) => instrument.strike(note, start + note.time));
  const { changes } = running;
  // A silence that is asked for again begins anew.
  if (changes.some(({ kind }) => kind !== 'tempo')) running.silentBars = 0;
  const { silentBars } = running;
  running.placed.push({ kind: 'bar', start, end, voices, program, bar, count, changes, silentBars, told: false });
  running.silentBars = program.controls.mode.kind === 'silence' ? silentBars + 1 : 0;
  running.changes = [];
  running.bar = (bar + 1) % program.bars.length;
  running.count = count + 1;
  running.time = end;
}

/** Takes back the bars that begin at `from` or later; their changes wait again. */
function takeBack(running: Running, from: number): void {
  const first = running.placed.findIndex((placed) => placed.kind === 'bar' && placed.start >= from);
  const line = running.placed[first];
  if (line?.kind !== 'bar') return;
  const taken = running.placed.splice(first);
  for (const voice of taken.flatMap((placed) => placed.voices)) voice.drop();
  running.changes = [...taken.flatMap((placed) => placed.changes), ...running.changes];
  running.bar = line.bar;
  running.count = line.count;
  running.time = line.start;
  running.silentBars = line.silentBars;
}

/** Notes of the bars before ring only as far as the line where something else begins. */
function stopRinging(placed: readonly Placed[], time: number): void {
  for (const voice of placed.flatMap(({ voices }) => voices)) if (voice.end > time) voice.stopAt(time);
}
