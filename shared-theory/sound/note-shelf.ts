import type { BassNote, KitStrike, Performance, SoundedNote } from '../perform.ts';
import { renderBass } from './bass-guitar.ts';
import { STEEL, type Instrument } from './instrument.ts';
import { renderKit } from './kit.ts';
import { renderString } from './plucked-string.ts';

/**
 * Rendered sounds by what they sound like, so that every stroke of a vamp is rendered once. Each sound is kept in a few variants that
 * differ in the pick's or the stick's noise, so that a string struck again is not the same sample again.
 */
export type NoteShelf = {
  readonly sampleRate: number;
  readonly instrument: Instrument;
  /** The samples of a note, as long as the note needs them where the string rings so long. */
  readonly take: (note: SoundedNote) => Float32Array;
  readonly takeKit: (strike: KitStrike) => Float32Array;
  readonly takeBass: (note: BassNote) => Float32Array;
  /** What a performance needs and the shelf lacks: each call renders one sound. */
  readonly missing: (performance: Performance) => readonly (() => void)[];
};

type Touch = SoundedNote['touch'];

/** Seconds in which a stopped string falls silent, by touch: the next strike is abrupt, a lifted hand is not. */
const STOP_SECONDS = { open: 0.012, ring: 0.012, half: 0.012, palm: 0.012, dead: 0.012, choke: 0.035 } as const;

/** Seconds in which a stopped bass string and a closed hat fall silent. */
export const BASS_STOP_SECONDS = 0.025;
export const HAT_STOP_SECONDS = 0.03;

/** Longest sound kept of a touch; beyond it the string is too soft to matter or is faded out. */
const LONGEST_SECONDS = { open: 8, ring: 8, half: 1.5, choke: 1, palm: 0.3, dead: 0.12 } as const;
const LONGEST_BASS_SECONDS = 4;

/** Lengths are rounded up to this, so that small differences of tempo share a buffer. */
const LENGTH_STEP_SECONDS = 0.25;

/** Variants of a sound: short strokes follow each other alike; of long ones the ear keeps the pitch. */
const VARIANTS: Readonly<Record<Touch, number>> = { open: 2, ring: 2, half: 3, palm: 3, dead: 3, choke: 3 };
const KIT_VARIANTS = 3;

/** Sounds that the shelf keeps, in seconds: some ninety megabytes at 48 kHz. */
const KEPT_SECONDS = 480;

/** Seconds from the end of a note until its string is silent: the same for the file and for the live sound. */
export function stopSeconds(note: Pick<SoundedNote, 'touch'>): number {
  return STOP_SECONDS[note.touch];
}

/** Factor for a note's own trim; the accent is in its samples. */
export function trimGain(note: Pick<SoundedNote, 'trim'>): number {
  return 10 ** (note.trim / 20);
}

/** One sound that can be rendered: its name on the shelf, and the samples that it needs at least. */
type Sound = { readonly key: string; readonly length: number; readonly render: () => Float32Array };

/**
 * An empty shelf for one sample rate and instrument. It keeps `keptSeconds` of sound at most: what was not taken for the longest time
 * goes first.
 */
export function noteShelf(
  sampleRate: number,
  instrument: Instrument = STEEL,
  { keptSeconds = KEPT_SECONDS }: { readonly keptSeconds?: number } = {},
): NoteShelf {
  // A map keeps the order in which its entries came: the first was not taken for the longest time.
  const shelf = new Map<string, Float32Array>();
  let kept = 0;
  const drop = (key: string, samples: Float32Array) => {
    shelf.delete(key);
    kept -= samples.length;
  };
  const keep = (key: string, samples: Float32Array) => {
    shelf.set(key, samples);
    kept += samples.length;
    for (const [oldest, least] of shelf) {
      if (kept <= keptSeconds * sampleRate || oldest === key) break;
      drop(oldest, least);
    }
  };
  const found = ({ key, length }: Sound) => {
    const samples = shelf.get(key);
    return samples && samples.length >= length ? samples : undefined;
  };
  const takeSound = (sound: Sound): Float32Array => {
    const samples = found(sound) ?? sound.render();
    const before = shelf.get(sound.key);
    if (before) drop(sound.key, before);
    keep(sound.key, samples);
    return samples;
  };

  const stringSound = (note: SoundedNote, variant: number): Sound => {
    const seconds = roundedUp(note.duration + stopSeconds(note), LONGEST_SECONDS[note.touch]);
    const key = stringKey(note, variant, instrument);
    const seed = seedOf(key);
    return {
      key,
      length: Math.round(seconds * sampleRate),
      render: () => renderString(note, { seconds, sampleRate, seed, instrument }),
    };
  };
  const kitSound = ({ piece, accent }: KitStrike, variant: number): Sound => {
    const key = `${piece}.${accent}.${variant}`;
    return { key, length: 0, render: () => renderKit({ piece, accent }, { sampleRate, seed: seedOf(key) }) };
  };
  const bassSound = ({ midi, accent, duration }: BassNote): Sound => {
    const seconds = roundedUp(duration + BASS_STOP_SECONDS, LONGEST_BASS_SECONDS);
    return {
      key: `bass.${midi}.${accent}`,
      length: Math.round(seconds * sampleRate),
      render: () => renderBass({ midi, accent }, { seconds, sampleRate, instrument }),
    };
  };

  return {
    sampleRate,
    instrument,
    take: (note) => takeSound(stringSound(note, variantAt(note.time, VARIANTS[note.touch]))),
    takeKit: (strike) => takeSound(kitSound(strike, variantAt(strike.time, KIT_VARIANTS))),
    takeBass: (note) => takeSound(bassSound(note)),
    missing: ({ notes, kit = [], bass = [] }) => {
      const longest = new Map<string, Sound>();
      const want = (sound: Sound) => {
        if (!found(sound) && sound.length >= (longest.get(sound.key)?.length ?? 0)) longest.set(sound.key, sound);
      };
      for (const note of notes) eachVariant(VARIANTS[note.touch], (variant) => want(stringSound(note, variant)));
      for (const strike of kit) eachVariant(KIT_VARIANTS, (variant) => want(kitSound(strike, variant)));
      for (const note of bass) want(bassSound(note));
      return [...longest.values()].map((sound) => () => {
        takeSound(sound);
      });
    },
  };
}

function stringKey(note: SoundedNote, variant: number, { smallSpeaker }: Instrument): string {
  const { midi, string, touch, accent, stroke, by = 'pick', bass = false, free = [] } = note;
  // Only a small speaker makes a bass sound otherwise.
  const lifted = bass && smallSpeaker ? 'bass' : '';
  return `${midi}.${string}.${touch}.${accent}.${stroke}.${by}.${lifted}.${free.join(' ')}.${variant}`;
}

function roundedUp(wanted: number, longest: number): number {
  return Math.min(longest, Math.ceil((wanted + 0.03) / LENGTH_STEP_SECONDS) * LENGTH_STEP_SECONDS);
}

function eachVariant(count: number, use: (variant: number) => void): void {
  for (let variant = 0; variant < count; variant += 1) use(variant);
}

/** A whole number from a name: the 32-bit FNV-1a hash. */
function seedOf(name: string): number {
  let hash = 0x811c9dc5;
  for (const letter of name) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193);
  return hash >>> 0;
}

/** Which variant a moment gets: the same for the same moment, and without order from one moment to the next. */
function variantAt(time: number, count: number): number {
  return seedOf(String(Math.round(time * 50))) % count;
}
