import { isBeside, type SoundChange } from '../../server/protocol/messages.ts';
import { RESTED, type HandRun } from '../../shared-theory/hand-care.ts';
import { countIn } from '../../shared-theory/live.ts';
import { changedControls, climbedControls, takenAs } from './controls.ts';
import { dueRest, handAfter, readyRest } from './hand-rest.ts';
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
  type Ordered,
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

/** The next bar as it will be placed; `rests` where the hands in the room are given a rest on its line. */
type Due = Struck & { readonly changes: readonly SoundChange[]; readonly rests: boolean };

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
  /** Bars still to be placed before the loop drops out; null while it is not to. */
  dropsIn: number | null;
  /** The room plays along, and how its hands fare. */
  along: boolean;
  hand: HandRun;
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
  const { meter, tempo, uncounted = false } = running.vamp;
  const { seconds, beats: counted } = countIn(meter, tempo);
  const beats = uncounted ? counted.slice(0, 1).map((beat) => ({ ...beat, accented: false })) : counted;
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

/** The next bar, with what goes by itself on its line: a step of a climb, a loop that drops out or is back, a rest for hands. */
function dueBar(running: Running, stage: Stage): Due {
  const { vamp, program, bar, count, changes } = running;
  let { controls } = program;
  const own: SoundChange[] = [];
  const asOrdered = changes.every(isBeside);
  if (running.dropsIn === 0) {
    const out = { kind: 'drop-out' } as const;
    controls = { ...controls, mode: out };
    own.push(out);
  }
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
  const rest = own.length === 0 && asOrdered ? dueRest(running.hand, program, stage) : null;
  if (rest?.change) {
    const before = controls;
    controls = changedControls(vamp, before, rest.change);
    own.push(...takenAs(before, controls, rest.change));
  }
  const next = own.length === 0 ? program : programOf(vamp, controls);
  const taken = [...changes, ...own];
  const anew = running.broken || taken.some(beginsAnew);
  const performed = anew ? enteredBar(next, bar) : barOf(next, bar);
  return { program: next, performed, changes: taken, rests: rest !== null };
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
  const due = (running.due ??= dueBar(running, stage));
  const { program, performed, changes, rests } = due;
  if (!stage.ready(program, performed)) {
    if (first && nextTime(running) < now + COUNT_ON_SECONDS) placeCountIn(running, stage);
    return false;
  }
  const { bar, count, unheard, broken, dropsIn, hand } = running;
  const start = nextTime(running);
  // Times are products of the beats since the last change of tempo.
  if (program.controls.tempo !== running.program.controls.tempo) running.origin = { time: start, beats: running.beats };
  const silent = changes.every(isBeside) ? unheard : 0;
  const ordered: Ordered = { program: running.program, changes: running.changes, unheard, broken, dropsIn, hand };
  running.beats += program.beats[bar] ?? 0;
  running.program = program;
  const end = nextTime(running);
  if (changes.some(beginsAnew)) stopRinging(running.placed, start);
  const sounds = strikeBar(running.placed, due, start, stage);
  const placed = { kind: 'bar', start, end, sounds, program, bar, count, changes, rests, ordered } as const;
  running.placed.push({ ...placed, unheard: silent, told: false });
  running.unheard = isUnheard(program.controls.mode) ? silent + 1 : 0;
  running.dropsIn = dropsIn === null || dropsIn === 0 ? null : dropsIn - 1;
  running.hand = handAfter(rests ? RESTED : hand, running.along, program, performed);
  readyRest(running.hand, program, stage);
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
  running.dropsIn = line.ordered.dropsIn;
  running.hand = line.ordered.hand;
  running.broken = line.ordered.broken;
  running.origin = { time: line.start, beats: 0 };
}
