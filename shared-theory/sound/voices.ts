import type { SoundedNote } from '../perform.ts';
import type { Voice } from './instrument.ts';

/** One value for each string, 1 (high E) to 6 (low E). */
type ByString = readonly [number, number, number, number, number, number];

/** One value for each accent: 3 heavy, 2 medium, 1 light. */
type ByAccent = Readonly<Record<SoundedNote['accent'], number>>;

/** What sets a string going: a pick on its way down or up, the thumb, a finger. */
export type Plucker = 'down' | 'up' | 'thumb' | 'finger';

export type PluckSound = {
  /** Where it meets the string: share of the open string's length, from the bridge. */
  readonly position: number;
  /** Corner in hertz of its own low-pass, by accent: a hard stroke is bright, flesh is dark. */
  readonly corner: ByAccent;
  /** Hertz above which its edge adds to the string's motion, by accent; Infinity for flesh. */
  readonly edge: ByAccent;
  /** The push leaks under this share of the fundamental: a high one sounds thin. */
  readonly leak: number;
  /** Its own noise on the string beside the note's level: band in hertz, and level in decibels by accent. */
  readonly noise: { readonly low: number; readonly high: number; readonly decibels: ByAccent };
};

/** A resonance beside the direct sound: centre in hertz, quality factor, gain. */
export type Mode = { readonly hertz: number; readonly q: number; readonly gain: number };

/** Everything that makes a guitar's voice, by its parameters alone. */
export type VoiceSound = {
  /** Seconds to −60 dB of an open string's fundamental, and of its partials near 4 kHz. */
  readonly ring: ByString;
  readonly brightRing: ByString;
  /** Share of the open string's time that a note an octave up has lost. */
  readonly lostByOctave: number;
  /** How much longer than the upright motion a string's motion along the top rings, and its share of the pluck. */
  readonly sideways: { readonly longer: number; readonly share: number };
  readonly plucks: Readonly<Record<Plucker, PluckSound>>;
  /** How much of a string's motion the bridge hands on to a free string, a second: a solid body little. */
  readonly coupling: number;
  /** The body, or the amplifier's box. */
  readonly modes: readonly Mode[];
  /** A magnetic pickup's place as a share of the open string from the bridge; null where air carries the sound. */
  readonly pickup: number | null;
  /** What leaves the instrument: second-order corners in hertz, and the quality factor of the upper. */
  readonly reach: { readonly from: number; readonly to: number; readonly q: number };
};

const NONE: ByAccent = { 3: Infinity, 2: Infinity, 1: Infinity };

/**
 * Body modes about where measured guitars have them: air, top and back, then the broad ones higher up (Fletcher and Rossing,
 * "The Physics of Musical Instruments"). Broad and gentle, so that no note of the low strings sticks out. The times of ringing
 * stay under what measured strings keep without a body (J. Woodhouse, "Plucked guitar transients", 2004, for nylon).
 */
const SOUNDS: Readonly<Record<Voice, VoiceSound>> = {
  steel: {
    ring: [3, 3.2, 3.6, 4.2, 4.8, 5.4],
    brightRing: [0.6, 0.62, 0.65, 0.6, 0.64, 0.7],
    lostByOctave: 0.12,
    sideways: { longer: 1.45, share: 0.24 },
    plucks: {
      down: {
        position: 0.17,
        corner: { 3: 5600, 2: 4000, 1: 2900 },
        edge: { 3: 2600, 2: 3400, 1: 4600 },
        leak: 0.4,
        noise: { low: 1400, high: 5000, decibels: { 3: -4, 2: -3, 1: -3 } },
      },
      // The pick's edge meets plain strings nearer the bridge: thin and bright even where it is light.
      up: {
        position: 0.11,
        corner: { 3: 7300, 2: 6300, 1: 5500 },
        edge: { 3: 2600, 2: 3400, 1: 4600 },
        leak: 1.4,
        noise: { low: 1400, high: 5000, decibels: { 3: -1.5, 2: 1.3, 1: 4.5 } },
      },
      thumb: {
        position: 0.26,
        corner: { 3: 1500, 2: 1200, 1: 950 },
        edge: NONE,
        leak: 0.3,
        noise: { low: 300, high: 1200, decibels: { 3: -30, 2: -30, 1: -30 } },
      },
      finger: {
        position: 0.23,
        corner: { 3: 2900, 2: 2300, 1: 1750 },
        edge: { 3: 6000, 2: 8000, 1: 10_000 },
        leak: 0.4,
        noise: { low: 800, high: 3000, decibels: { 3: -15, 2: -16, 1: -17 } },
      },
    },
    coupling: 0.07,
    modes: [
      { hertz: 104, q: 3.5, gain: 0.5 },
      { hertz: 205, q: 4.5, gain: 0.45 },
      { hertz: 400, q: 5, gain: 0.3 },
      { hertz: 620, q: 5, gain: 0.2 },
      { hertz: 1150, q: 2, gain: 0.25 },
      { hertz: 2900, q: 1.2, gain: 0.2 },
    ],
    pickup: null,
    reach: { from: 45, to: 10_500, q: 0.7 },
  },
  nylon: {
    ring: [2, 2.2, 2.5, 3.1, 3.5, 4],
    brightRing: [0.28, 0.3, 0.33, 0.38, 0.41, 0.45],
    lostByOctave: 0.2,
    sideways: { longer: 1.4, share: 0.3 },
    plucks: {
      down: {
        position: 0.22,
        corner: { 3: 3000, 2: 2300, 1: 1750 },
        edge: { 3: 5200, 2: 6500, 1: 8000 },
        leak: 0.35,
        noise: { low: 800, high: 2200, decibels: { 3: -9, 2: -8, 1: -8 } },
      },
      up: {
        position: 0.16,
        corner: { 3: 3900, 2: 3300, 1: 2800 },
        edge: { 3: 4500, 2: 5500, 1: 6500 },
        leak: 0.9,
        noise: { low: 900, high: 2500, decibels: { 3: -4, 2: -1.5, 1: 1 } },
      },
      thumb: {
        position: 0.29,
        corner: { 3: 1250, 2: 1000, 1: 800 },
        edge: NONE,
        leak: 0.3,
        noise: { low: 300, high: 1000, decibels: { 3: -30, 2: -30, 1: -30 } },
      },
      finger: {
        position: 0.243,
        corner: { 3: 2300, 2: 1800, 1: 1400 },
        edge: { 3: 8000, 2: 10_000, 1: 12_000 },
        leak: 0.4,
        noise: { low: 700, high: 2400, decibels: { 3: -17, 2: -18, 1: -19 } },
      },
    },
    coupling: 0.08,
    modes: [
      { hertz: 98, q: 4, gain: 0.6 },
      { hertz: 190, q: 4.5, gain: 0.6 },
      { hertz: 235, q: 5, gain: 0.35 },
      { hertz: 400, q: 4, gain: 0.4 },
      { hertz: 760, q: 3, gain: 0.25 },
    ],
    pickup: null,
    reach: { from: 45, to: 4600, q: 0.6 },
  },
  clean: {
    ring: [7.5, 9, 9, 9, 10, 11],
    brightRing: [0.8, 0.85, 0.95, 0.75, 0.8, 0.85],
    lostByOctave: 0.25,
    sideways: { longer: 1.2, share: 0.2 },
    plucks: {
      down: {
        position: 0.193,
        corner: { 3: 6500, 2: 4600, 1: 3300 },
        edge: { 3: 2400, 2: 3200, 1: 4400 },
        leak: 0.4,
        noise: { low: 1200, high: 3200, decibels: { 3: -10, 2: -9, 1: -9 } },
      },
      up: {
        position: 0.14,
        corner: { 3: 7500, 2: 6500, 1: 5600 },
        edge: { 3: 2400, 2: 3000, 1: 3800 },
        leak: 1.1,
        noise: { low: 1300, high: 3400, decibels: { 3: -3, 2: -0.5, 1: 2 } },
      },
      thumb: {
        position: 0.287,
        corner: { 3: 1700, 2: 1350, 1: 1050 },
        edge: NONE,
        leak: 0.3,
        noise: { low: 300, high: 1200, decibels: { 3: -36, 2: -36, 1: -36 } },
      },
      finger: {
        position: 0.26,
        corner: { 3: 3000, 2: 2400, 1: 1850 },
        edge: { 3: 6000, 2: 8000, 1: 10_000 },
        leak: 0.4,
        noise: { low: 800, high: 3000, decibels: { 3: -20, 2: -21, 1: -22 } },
      },
    },
    coupling: 0.045,
    // A small open-backed box, and the presence of its loudspeaker.
    modes: [
      { hertz: 115, q: 1.2, gain: 0.35 },
      { hertz: 2600, q: 1.4, gain: 0.4 },
    ],
    pickup: 0.21,
    // The coil resonates with its cable, and nothing passes far above it.
    reach: { from: 60, to: 3700, q: 1.05 },
  },
};

/** The parameters of a voice. */
export function voiceSound(voice: Voice): VoiceSound {
  return SOUNDS[voice];
}

/** What sets the string of a note going. */
export function pluckerOf({ by, stroke }: Pick<SoundedNote, 'by' | 'stroke'>): Plucker {
  return by ?? stroke;
}
