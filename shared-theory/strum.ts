import { slotSounds, type GrooveSlot } from './groove-grid.ts';
import { zoneNotes, type ShapeNote } from './neck.ts';
import type { SoundedNote, Touch } from './perform.ts';
import type { PitchClass } from './pitch.ts';
import { strokeTrim } from './stroke-level.ts';
import { CROSSINGS, fingerStep } from './strum-spread.ts';
import type { Frets } from './vamps.ts';

/** One contact of the hand with the strings; `time` in seconds is when its first string sounds. */
export type Stroke = {
  readonly time: number;
  readonly cell: GrooveSlot;
  readonly chord: number;
  readonly frets: Frets;
  /** The chord's root, which is not the bass of every shape. */
  readonly root: PitchClass;
  /** Decibels added by human variation. */
  readonly trim: number;
  /** Seconds at which the strings of the chord before stop; null within a chord. */
  readonly stopsAt: number | null;
};

/** How long a touch lets a string sound, in seconds; palm-muted strings decay in 80 to 180 ms, dead ones in 30 to 60. */
const HALF_SECONDS = 0.5;
const PALM_SECONDS = 0.18;
export const DEAD_SECONDS = 0.06;
const CHOKE_SECONDS = 0.12;

/** Upstrokes reach the four highest strings at most; a push sounds the whole chord. */
const UP_STRINGS = 4;

type Draft = { -readonly [Field in keyof SoundedNote]: SoundedNote[Field] };

/** A string that a stroke reaches so many seconds after its first one, and what plucks it. */
type Reached = ShapeNote & { readonly late: number; readonly stroke: 'down' | 'up'; readonly by?: 'thumb' | 'finger' };

/** Down from the lowest string, up from the highest; a string follows the last after its distance in strings. */
function swept(notes: readonly ShapeNote[], stroke: 'down' | 'up', spread: number): readonly Reached[] {
  const ordered = stroke === 'down' ? notes : notes.toReversed();
  const first = ordered[0]?.string ?? 0;
  return ordered.map((note) => ({ ...note, stroke, late: (Math.abs(note.string - first) * spread) / CROSSINGS }));
}

/** Fingers pluck nearly together, the highest string first. */
function plucked(notes: readonly ShapeNote[]): readonly Reached[] {
  const step = fingerStep(notes.length);
  return notes
    .toReversed()
    .map((note, index) => ({ ...note, stroke: 'up' as const, by: 'finger' as const, late: index * step }));
}

/** The strings of a stroke in the order that they sound. */
function reached({ frets, cell, root }: Stroke, spread: number): readonly Reached[] {
  const notes = zoneNotes(frets, cell.zone, root);
  switch (cell.stroke) {
    case 'down':
      return swept(notes, 'down', spread);
    case 'up':
      return swept(cell.pushes ? notes : notes.slice(-UP_STRINGS), 'up', spread);
    case 'thumb':
      return swept(notes, 'down', spread).map((note) => ({ ...note, by: 'thumb' }));
    case 'fingers':
      return plucked(notes);
    case 'pinch': {
      // The thumb takes the zone's lowest string; over a whole chord the fingers take its high ones, else the zone's others.
      const others = cell.zone === 'all' ? zoneNotes(frets, 'high') : notes.slice(1);
      const thumb = notes
        .slice(0, 1)
        .map((note) => ({ ...note, stroke: 'down' as const, by: 'thumb' as const, late: 0 }));
      return [...thumb, ...plucked(others.filter(({ string }) => string !== thumb[0]?.string))];
    }
    case 'down-silent':
    case 'up-silent':
    case 'none':
      return [];
  }
}

function stopAt(note: Draft | undefined, time: number): void {
  if (note) note.duration = Math.min(note.duration, time - note.time);
}

/** The string that a stroke plays as the bass of its chord, or in its turn; null where it leaves it alone or takes it by the way. */
function bassString({ cell }: Stroke, played: readonly Reached[]): number | null {
  if (cell.touch === 'dead' || cell.zone === 'high' || cell.zone === 'middle') return null;
  const byTheWay = played[0]?.stroke === 'up' && cell.zone === 'all' && !cell.pushes;
  return byTheWay ? null : Math.max(...played.map(({ string }) => string));
}

/** MIDI notes of the shape's open strings that a stroke leaves alone; none ring along under a hand that damps. */
function freeStrings({ cell, frets }: Stroke, played: readonly Reached[]): readonly number[] {
  if (cell.touch !== 'open' && cell.touch !== 'ring') return [];
  const struck = new Set(played.map(({ string }) => string));
  return zoneNotes(frets, 'all').flatMap(({ string, fret, midi }) => (fret === 0 && !struck.has(string) ? [midi] : []));
}

/** How long a touch lets a string sound at most, in seconds. */
function lasts(touch: Touch, slotSeconds: number): number {
  const choke = Math.min(CHOKE_SECONDS, slotSeconds / 2);
  return { open: Infinity, ring: Infinity, half: HALF_SECONDS, palm: PALM_SECONDS, dead: DEAD_SECONDS, choke }[touch];
}

/** What a stroke plays of its shape, and what follows from that alone. */
type Struck = {
  readonly played: readonly Reached[];
  /** Decibels that each of its strings gains. */
  readonly part: number;
  readonly bass: number | null;
  readonly free: readonly number[];
};

/** Works out each contact of a hand with a shape once: a groove comes back to the same few. */
function struckAt(spread: number): (stroke: Stroke) => Struck {
  const byShape = new Map<Frets, Map<string, Struck>>();
  return (stroke) => {
    const { cell, frets, root } = stroke;
    const known = byShape.get(frets) ?? new Map<string, Struck>();
    byShape.set(frets, known);
    const key = `${cell.stroke} ${cell.zone} ${cell.touch} ${cell.pushes ?? false} ${root}`;
    const found = known.get(key);
    if (found) return found;
    const played = reached(stroke, spread);
    const strings = played.map(({ string }) => string);
    const part = strokeTrim(strings, cell.stroke === 'up');
    const struck = { played, part, bass: bassString(stroke, played), free: freeStrings(stroke, played) };
    known.set(key, struck);
    return struck;
  };
}

/**
 * Turns strokes into notes: a down goes from string 6 to 1, an up from 1 to 6, fingers pluck at once. A string sounds until it is
 * struck again, until the hand mutes the strings (but for those let ring), until the chord changes, or until the end at `seconds`.
 * A palm or dead fingers lie across all strings, and a choking hand lets go of all; fingers stop only what they plucked.
 */
export function soundStrokes(
  strokes: readonly Stroke[],
  spread: number,
  slotSeconds: number,
  seconds: number,
): readonly SoundedNote[] {
  const struckBy = struckAt(spread);
  const notes: Draft[] = [];
  // The last note of each string, by the string's number.
  const ringing: (Draft | undefined)[] = [];
  const stopAll = (time: number) => {
    for (const note of ringing) stopAt(note, time);
  };
  const mute = (time: number) => {
    for (const note of ringing) if (note?.touch !== 'ring') stopAt(note, time);
  };
  for (const stroke of strokes) {
    const { cell, time } = stroke;
    const { touch, accent } = cell;
    if (!slotSounds(cell) || touch === 'none' || accent === 0) continue;
    const duration = lasts(touch, slotSeconds);
    if (stroke.stopsAt !== null) stopAll(Math.min(stroke.stopsAt, time));
    const fingers = cell.stroke === 'fingers' || cell.stroke === 'pinch';
    if (touch === 'choke') {
      // The ringing strings stop with those it struck.
      if (!fingers) mute(time + duration);
    } else if (touch !== 'open' && touch !== 'ring') mute(time);
    const { played, part, bass, free } = struckBy(stroke);
    for (const { string, fret, midi, late, stroke: way, by } of played) {
      stopAt(ringing[string], time + late);
      const note: Draft = {
        time: time + late,
        duration,
        string,
        fret,
        midi,
        stroke: way,
        touch,
        accent,
        trim: stroke.trim + part,
        chord: stroke.chord,
      };
      // Added by hand: spreads cost as much again as all else of a note, and notes come by the thousand.
      if (by) note.by = by;
      if (string === bass) note.bass = true;
      if (free.length > 0) note.free = free;
      ringing[string] = note;
      notes.push(note);
    }
  }
  stopAll(seconds);
  return notes.toSorted((one, other) => one.time - other.time);
}
