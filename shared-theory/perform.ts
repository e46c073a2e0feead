import { contactsOf, grooveOf, NEAR, startsOf } from './contacts.ts';
import { beatsPerSlot } from './groove-grid.ts';
import { BEATS_PER_BAR } from './meters.ts';
import { pitchClass } from './pitch.ts';
import { seededRandom } from './random.ts';
import { strumSpread } from './strum-spread.ts';
import { soundStrokes, type Stroke } from './strum.ts';
import type { VoicedVamp } from './vamps.ts';

export { contactsOf, grooveOf, type Contact } from './contacts.ts';

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
  /** It is the lowest string of a stroke that plays the chord's bass or the other one: what small speakers must still let be heard. */
  readonly bass?: true;
  /** MIDI notes of open strings of the shape that nothing damps and this stroke leaves alone: they ring along, much softer. */
  readonly free?: readonly number[];
  readonly accent: 1 | 2 | 3;
  /** Loudness trim in decibels beside the accent's own level (human variation, strokes over part of the strings). */
  readonly trim: number;
  /** Index of the loop's slot; of a stroke that pushes into the next chord, that chord's. */
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

/**
 * What sounds, note by note, for a number of loops of a vamp. Loops after the first may differ from it: where the groove pushes into
 * the next bar, the last stroke of a loop sounds the first chord already, and the first slot of the next loop is silent.
 */
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
  const contacts = contactsOf(vamp);
  const random = seededRandom(vamp.seed, 'human');
  const strokes: Stroke[] = [];
  for (let loop = 0; loop < loops; loop += 1) {
    for (const [place, { beats, cell, chord, opens, pushes, again }] of contacts.entries()) {
      const grid = (loop * loopBeats + beats) * beat;
      const slot = vamp.slots[chord];
      if (!slot) continue;
      const { frets } = slot;
      const root = pitchClass(slot.chord.root);
      let shift = human ? (random() * 2 - 1) * HUMAN_SECONDS : 0;
      // No stroke comes before the bar or the chord it opens, so that a bar can be played by itself.
      if (opens || Math.abs(Math.round(beats / barBeats) * barBeats - beats) < NEAR) shift = Math.abs(shift);
      const trim = human ? (random() * 2 - 1) * HUMAN_DECIBELS : 0;
      const changes = opens || (pushes && contacts[place - 1]?.chord !== chord);
      const done = loop > 0 && again ? again : cell;
      strokes.push({ time: grid + shift, cell: done, chord, frets, root, trim, stopsAt: changes ? grid : null });
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
