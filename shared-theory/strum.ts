import type { Groove, GrooveSlot } from './grooves.ts';
import { zoneNotes, type ShapeNote } from './neck.ts';
import type { SoundedNote } from './perform.ts';
import type { PitchClass } from './pitch.ts';
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
const PALM_SECONDS = 0.18;
export const DEAD_SECONDS = 0.06;
const CHOKE_SECONDS = 0.12;

/** Upstrokes reach the four highest strings at most. */
const UP_STRINGS = 4;

/**
 * A stroke over part of a shape puts its weight on those strings: the power of a full stroke shared among them, up to this
 * many decibels a string. So a foot of one string stands beside full strums, as a player's does.
 */
const PART_TRIM = 6;

/** Strings that a full stroke crosses after its first. */
const CROSSINGS = 5;

function between(tempo: number, slow: readonly [number, number], fast: readonly [number, number]): number {
  const share = Math.min(1, Math.max(0, (tempo - slow[0]) / (fast[0] - slow[0])));
  return slow[1] + share * (fast[1] - slow[1]);
}

/**
 * Seconds a stroke takes from string 6 to string 1: 25 to 45 ms in a slow ballad, 12 to 22 relaxed, 6 to 12 where the hand
 * drives in downstrokes on the ands too; the faster the shorter.
 */
export function strumSpread(groove: Groove | null, tempo: number): number {
  const straight = groove?.grid === 'E8';
  const drives = straight && groove.slots.some((cell, index) => index % 2 === 1 && cell.stroke === 'down');
  const milliseconds = drives
    ? between(tempo, [90, 12], [180, 6])
    : tempo < 72
      ? between(tempo, [44, 45], [72, 25])
      : between(tempo, [72, 22], [132, 12]);
  return milliseconds / 1000;
}

type Draft = { -readonly [Field in keyof SoundedNote]: SoundedNote[Field] };

function struck(stroke: Stroke): readonly ShapeNote[] {
  const notes = zoneNotes(stroke.frets, stroke.cell.zone, stroke.root);
  return stroke.cell.stroke === 'up' ? notes.slice(-UP_STRINGS).toReversed() : notes;
}

/** Decibels that each string of a stroke gains where the stroke leaves others of its shape alone. */
function partTrim(frets: Frets, played: readonly ShapeNote[]): number {
  const strings = zoneNotes(frets, 'all').length;
  return Math.min(PART_TRIM, 10 * Math.log10(strings / Math.max(1, played.length)));
}

function stopAt(note: Draft | undefined, time: number): void {
  if (note) note.duration = Math.min(note.duration, time - note.time);
}

/**
 * Turns strokes into notes: a down goes from string 6 to 1, an up from 1 to 6. A string sounds until it is struck again,
 * until the hand mutes the strings, until the chord changes, or until the end at `seconds`.
 */
export function soundStrokes(
  strokes: readonly Stroke[],
  spread: number,
  slotSeconds: number,
  seconds: number,
): readonly SoundedNote[] {
  const notes: Draft[] = [];
  // The last note of each string, by the string's number.
  const ringing: (Draft | undefined)[] = [];
  const stopAll = (time: number) => {
    for (const note of ringing) stopAt(note, time);
  };
  const choke = Math.min(CHOKE_SECONDS, slotSeconds / 2);
  for (const stroke of strokes) {
    const { cell, time } = stroke;
    if ((cell.stroke !== 'down' && cell.stroke !== 'up') || cell.touch === 'none' || cell.accent === 0) continue;
    const lasts = { open: Infinity, palm: PALM_SECONDS, dead: DEAD_SECONDS, choke }[cell.touch];
    if (stroke.stopsAt !== null) stopAll(Math.min(stroke.stopsAt, time));
    // The hand that mutes lies across all strings; a choke lets go of the ringing ones with those it struck.
    if (cell.touch !== 'open') stopAll(cell.touch === 'choke' ? time + choke : time);
    const played = struck(stroke);
    const first = played[0]?.string ?? 0;
    const part = partTrim(stroke.frets, played);
    for (const { string, fret, midi } of played) {
      const at = time + (Math.abs(string - first) * spread) / CROSSINGS;
      stopAt(ringing[string], at);
      const note: Draft = {
        time: at,
        duration: lasts,
        string,
        fret,
        midi,
        stroke: cell.stroke,
        touch: cell.touch,
        accent: cell.accent,
        trim: stroke.trim + part,
        chord: stroke.chord,
      };
      ringing[string] = note;
      notes.push(note);
    }
  }
  stopAll(seconds);
  return notes.toSorted((one, other) => one.time - other.time);
}
