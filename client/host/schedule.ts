import { isBeside, type SoundChange } from '../../server/protocol/messages.ts';
import { countIn } from '../../shared-theory/live.ts';
import { climbedControls } from './controls.ts';
import {
  barBehind,
  barOf,
  enteredBar,
  isUnheard,
  nextBar,
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
import type { Stage, Struck } from './stage.ts';

/** From the press to the first tick: time for the first beats to be scheduled. */
export const START_SECONDS = 0.15;

/** A count-in this close to its end goes on for another, where the first bar is not ready. */
const COUNT_ON_SECONDS = 0.25;

/** Bars that pass unheard before what was heard is asked from memory, or before a loop that dropped out is back. */
export const UNHEARD_BARS = 2;

/** A string that is struck again so much before its time is up, in seconds, is stopped. */
const EARLY_SECONDS = 0.001;

/** The next bar as it will be placed. */
type Due = Struck & { readonly changes: readonly SoundChange[] };

/** A vamp that plays: what was ordered, where it has come, and what of it is placed. */
export type Running = {
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

/** Where the next bar begins, in seconds of the audio clock. */
export function nextTime({ origin, beats, program }: Running): number {
  return timeAt(origin, beats, program.controls.tempo);
}

/** Counts in, or counts on where a count-in is not enough. */
export function placeCountIn(running: Running, stage: Stage): void {
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
export function barAfter({ placed, changes }: Running, next: Program): number {
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
  // Nobody can follow a step that is not heard: who counts on through the silence must meet the loop where it comes back.
  const steps = controls.climb !== null && !isUnheard(controls.mode) && changes.length === 0;
  if (steps && count > 0 && bar % program.barsPerLoop === 0) {
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
export function placeNext(running: Running, now: number, stage: Stage): boolean {
  const first = running.count === 0;
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
  const { bar, count, unheard, broken } = running;
  const start = nextTime(running);
  // Times are products of the beats since the last change of tempo.
  if (program.controls.tempo !== running.program.controls.tempo) running.origin = { time: start, beats: running.beats };
  const silent = changes.every(isBeside) ? unheard : 0;
  const ordered = { program: running.program, changes: running.changes, unheard, broken };
  running.beats += program.beats[bar] ?? 0;
  running.program = program;
  const end = nextTime(running);
  if (changes.some(beginsAnew)) stopRinging(running.placed, start);
  const sounds = strikeBar(running.placed, due, start, stage);
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
function strikeBar(placed: readonly Placed[], of: Struck, start: number, stage: Stage): readonly Sounding[] {
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
  for (const note of of.performed.notes) {
    const at = start + note.time;
    add(stage.strike(note, at, of), at, `guitar ${note.string}`, at + note.duration);
  }
  for (const note of of.performed.bass) {
    const at = start + note.time;
    add(stage.strikeBass(note, at, of), at, 'bass', at + note.duration);
  }
  for (const strike of of.performed.kit) {
    const at = start + strike.time;
    add(stage.strikeKit(strike, at, of), at, null, Infinity);
  }
  return sounds;
}

/** Takes back the bars that begin at `from` or later; their orders wait again, and what would have gone by itself is forgotten. */
export function takeBack(running: Running, from: number): void {
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
  running.broken = line.ordered.broken;
  running.origin = { time: line.start, beats: 0 };
}
