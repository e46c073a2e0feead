import { beatsPerSlot, parseGroove, slotsPerBar, swingCap, type Groove, type GrooveSlot } from './grooves.ts';
import { BEATS_PER_BAR } from './meters.ts';
import { pitchClass } from './pitch.ts';
import { seededRandom } from './random.ts';
import { soundStrokes, strumSpread, type Stroke } from './strum.ts';
import type { VoicedVamp } from './vamps.ts';

/**
 * How the hands leave a string: open until its next contact; ringing on through mutes of the others too; half or fully muted by
 * the palm; dead under loose fingers; choked a moment after it was struck.
 */
export type Touch = 'open' | 'ring' | 'half' | 'palm' | 'dead' | 'choke';

/** One note of a guitar string that sounds. Times in seconds from the start of the performance. */
export type SoundedNote = {
  readonly time: number;
  /** Seconds until the string is stopped or struck again. */
  readonly duration: number;
  /** 1 (high E) to 6 (low E). */
  readonly string: number;
  readonly fret: number;
  readonly midi: number;
  readonly stroke: 'down' | 'up';
  readonly touch: Touch;
  /** What plucks the string; a pick where absent. Thumbs go down, fingers up. */
  readonly by?: 'thumb' | 'finger';
  /** It is the lowest string of a stroke that plays the chord's bass: what small speakers must still let be heard. */
  readonly bass?: true;
  /** MIDI notes of open strings of the shape that nothing damps and this stroke leaves alone: they ring along, much softer. */
  readonly free?: readonly number[];
  readonly accent: 1 | 2 | 3;
  /** Loudness trim in decibels beside the accent's own level (human variation, strokes over part of the strings). */
  readonly trim: number;
  /** Index of the loop's slot. */
  readonly chord: number;
};

/** A piece of the light kit. */
export type KitPiece = 'kick' | 'snare' | 'closed-hat' | 'open-hat';

/** One stroke on the kit; `time`, `accent`, `trim` and `chord` as of a string. */
export type KitStrike = Pick<SoundedNote, 'time' | 'accent' | 'trim' | 'chord'> & {
  readonly piece: KitPiece;
  /** Seconds until an open hat is closed again; what has none rings out. */
  readonly duration?: number;
};

/** One note of the bass guitar. */
export type BassNote = Pick<SoundedNote, 'time' | 'duration' | 'midi' | 'accent' | 'trim' | 'chord'>;

/** What sounds, note by note, for a number of loops of a vamp. */
export type Performance = {
  readonly seconds: number;
  readonly loops: number;
  /** Start of each bar in seconds, and the slot that begins or continues there. */
  readonly bars: readonly { readonly time: number; readonly chord: number }[];
  /** The guitar, sorted by time. */
  readonly notes: readonly SoundedNote[];
  /** The kit and the bass where they play along, sorted by time. */
  readonly kit?: readonly KitStrike[];
  readonly bass?: readonly BassNote[];
};

export type PerformOptions = {
  readonly loops?: number;
  /** Timing within ±8 ms and ±1 dB from the vamp's seed; default false: exact. */
  readonly human?: boolean;
};

export type Perform = (vamp: VoicedVamp, options?: PerformOptions) => Performance;

const HUMAN_SECONDS = 0.008;
const HUMAN_DECIBELS = 1;

/** Beats closer than this are one place in the bar. */
const NEAR = 1e-6;

/** One open downstroke: what a chord gets where no groove is named. */
const PLAIN_STROKE: GrooveSlot = { stroke: 'down', zone: 'all', touch: 'open', accent: 2 };

const parsed = new Map<string, Groove>();

/** The groove of a vamp, null where it names none. Throws `GrooveError` for a text that is no groove. */
export function grooveOf(vamp: VoicedVamp): Groove | null {
  if (vamp.grooveText === '') return null;
  const groove = parsed.get(vamp.grooveText) ?? parseGroove(vamp.grooveText);
  if (parsed.size > 500) parsed.clear();
  parsed.set(vamp.grooveText, groove);
  return groove;
}

function startsOf(vamp: VoicedVamp): number[] {
  let beats = 0;
  return [
    0,
    ...vamp.slots.map((slot) => {
      if (!(slot.beats > 0)) throw new RangeError(`A chord lasts more than no beats, not ${slot.beats}.`);
      return (beats += slot.beats);
    }),
  ];
}

/** Whether the root is the lowest string that the cell strikes first. */
function opensOnRoot(cell: GrooveSlot): boolean {
  return cell.stroke === 'down' && (cell.zone === 'root' || cell.zone === 'low' || cell.zone === 'all');
}

/** A contact in the loop: beats from the loop's start, swing included, and the slot of the loop. */
type Contact = { readonly beats: number; readonly cell: GrooveSlot; readonly chord: number; readonly opens: boolean };

/** The first stroke of a chord whose opening bar is cut short, before any string but the bass would ring. */
function fullStroke(cell: GrooveSlot): GrooveSlot {
  return { ...cell, zone: 'all' };
}

/** Whether some stroke of the cells lets more ring than the bass. */
function ringsChord(cells: readonly GrooveSlot[]): boolean {
  return cells.some((cell) => cell.touch === 'open' && cell.zone !== 'root' && cell.zone !== 'other-bass');
}

/**
 * The groove laid over one loop. A chord that opens inside a bar, where the pattern would not sound its root, opens with the
 * pattern's first stroke; an opening bar is played from its beginning wherever the chord begins, and opens with a full
 * stroke where the chord or the bar ends before more than the bass has sounded.
 */
function layOut(groove: Groove, starts: readonly number[], tempo: number): Contact[] {
  const step = beatsPerSlot(groove);
  const perBar = slotsPerBar(groove);
  const ratio = Math.max(1, Math.min(groove.swing[0], swingCap(tempo / (2 * step))));
  const late = step * ((2 * ratio) / (1 + ratio) - 1);
  const places = starts.map((beats, index) => {
    const place = Math.round(beats / step);
    if (Math.abs(place * step - beats) > NEAR)
      throw new RangeError(
        `Chord ${index + 1} begins ${beats} beats into the loop, between the slots of ${groove.id}.`,
      );
    return place;
  });
  return places.slice(0, -1).flatMap((start, chord) => {
    const end = places[chord + 1] ?? start;
    const barEnd = (Math.floor(start / perBar) + 1) * perBar;
    const opens = groove.opening?.slice(0, Math.min(end, barEnd) - start) ?? [];
    const [first] = opens;
    const opening = first && !ringsChord(opens) ? [fullStroke(first), ...opens.slice(1)] : opens;
    return Array.from({ length: end - start }, (_, index): Contact => {
      const place = start + index;
      const usual = groove.slots[place % groove.slots.length] ?? PLAIN_STROKE;
      const bass = index === 0 && !opensOnRoot(usual) ? groove.slots[0] : undefined;
      const cell = opening[index] ?? bass ?? usual;
      return { beats: place * step + (place % 2 === 1 ? late : 0), cell, chord, opens: index === 0 };
    });
  });
}

/**
 * Plays a vamp: every note with its time, string, touch and length. Onsets fall exactly on the grid unless `human`; a stroke
 * then spreads over its strings. Throws `RangeError` for an empty loop, a tempo outside 20 to 400, or chords off the grid.
 */
export const perform: Perform = (vamp, { loops = 1, human = false } = {}) => {
  if (vamp.slots.length === 0) throw new RangeError('A vamp has at least one chord.');
  if (!(vamp.tempo >= 20 && vamp.tempo <= 400)) throw new RangeError(`A tempo is 20 to 400, not ${vamp.tempo}.`);
  if (!Number.isInteger(loops) || loops < 1) throw new RangeError(`Loops are a whole number from 1, not ${loops}.`);
  const groove = grooveOf(vamp);
  if (groove && groove.meter !== vamp.meter)
    throw new RangeError(`${groove.id} is in ${groove.meter}; this vamp is in ${vamp.meter}.`);
  const beat = 60 / vamp.tempo;
  const starts = startsOf(vamp);
  const loopBeats = starts.at(-1) ?? 0;
  const barBeats = BEATS_PER_BAR[vamp.meter];
  const contacts: readonly Contact[] = groove
    ? layOut(groove, starts, vamp.tempo)
    : starts.slice(0, -1).map((beats, chord) => ({ beats, cell: PLAIN_STROKE, chord, opens: true }));
  const random = seededRandom(vamp.seed, 'human');
  const strokes: Stroke[] = [];
  for (let loop = 0; loop < loops; loop += 1) {
    for (const { beats, cell, chord, opens } of contacts) {
      const grid = (loop * loopBeats + beats) * beat;
      const slot = vamp.slots[chord];
      if (!slot) continue;
      const { frets } = slot;
      const root = pitchClass(slot.chord.root);
      let shift = human ? (random() * 2 - 1) * HUMAN_SECONDS : 0;
      // No stroke comes before the bar or the chord it opens, so that a bar can be played by itself.
      if (opens || Math.abs(Math.round(beats / barBeats) * barBeats - beats) < NEAR) shift = Math.abs(shift);
      const trim = human ? (random() * 2 - 1) * HUMAN_DECIBELS : 0;
      strokes.push({ time: grid + shift, cell, chord, frets, root, trim, stopsAt: opens ? grid : null });
    }
  }
  const seconds = loops * loopBeats * beat;
  const bars = Array.from({ length: loops }, (_, loop) =>
    Array.from({ length: Math.ceil((loopBeats - NEAR) / barBeats) }, (_, bar) => ({
      time: (loop * loopBeats + bar * barBeats) * beat,
      chord: starts.findLastIndex((start) => start <= bar * barBeats + NEAR),
    })),
  ).flat();
  const slotSeconds = groove ? beatsPerSlot(groove) * beat : seconds;
  const notes = soundStrokes(strokes, strumSpread(groove, vamp.tempo), slotSeconds, seconds);
  return { seconds, loops, bars, notes };
};
