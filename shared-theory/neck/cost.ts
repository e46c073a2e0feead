import type { PitchClass } from '../pitch.ts';
import type { Frets } from '../vamps.ts';
import { handCost } from './hand-cost.ts';
import { frettedRange, type Finger } from './hand.ts';

/*
 * Costs in fingers: what a shape asks of the hand and the ear counts as so many more fingers put down. The weights are set so
 * that the shapes in common use come first; the tests name them.
 */

/** A string left out between others must be muted by a finger that does something else; the bass finger does it best. */
const INNER_MUTE = 6;
const MUTE_BY_BASS = 2.7;
/** Chords of four notes or more are often held so. */
const MUTE_BY_BASS_OF_FOUR = 2.3;
/** The finger that mutes must not touch the string beyond; an open one tells. */
const OPEN_BESIDE_MUTE = 0.2;
/** A string left out above the bass although it sounds the chord when it is left alone: it takes care to keep it still. */
const MUTED_CHORD_NOTE = 1;
/** By the number of highest strings left out; a chord of four notes or more is often four strings alone. */
const TOP_MUTES = [0, 2.3, 5, 7, 9, 12, 15] as const;
const TOP_MUTES_OF_FOUR = [0, 1.5, 5, 7, 9, 12, 15] as const;
/** A diminished triad is often its four low strings, with a seventh five without the first; either is moved, seldom open. */
const TOP_MUTES_DIMINISHED = [0, 1.2, 1.6, 6, 9, 12, 15] as const;
const TOP_MUTES_HALF_DIMINISHED = [0, 0, 5, 7, 9, 12, 15] as const;
const OPEN_UNDER_TRITONE = 1;
/** Four high strings are usual for a triad without a perfect fifth, for one over its own third or fifth, and with an addition. */
const THIN_TRITONE = 0.5;
const THIN_INVERSION = 0.7;
const THIN_OF_FOUR = 0.8;
/** Three strings are no full chord. */
const FEW_STRINGS = 3;
const FEW = 2.5;

/** The bass by the number of strings above it: three strings are thin, two no strum. An open bass costs a part of it. */
const THIN_BASS: Readonly<Record<number, number>> = { 3: 3.5, 2: 16, 1: 30 };
const OPEN_THIN_BASS = 0.45;

/** A foreign bass, or a seventh, belongs under the chord: with three strings above it alone it is heard as a part of it. */
const HIGH_FOREIGN_BASS = 1.5;

/** The bass finger must arch over an open string next to it, the harder the more fingers are down. */
const ARCHED_FINGER = 0.75;
/** It reaches back over a string next to it that is fretted two frets lower or more. */
const REACHED_BACK = 2.2;
/** Each fret of the bass beyond this one: a class goes there only with need. */
const HIGH_BASS = 5;
const BEYOND_HIGH_BASS = 0.8;
/** Up the neck the index leads: a bass under another finger. */
const BASS_OFF_INDEX = 0.8;

/** The note next above the bass: a half step growls, and so does a low whole step; low thirds are thick, a fourth makes the root doubtful. */
const GROWL = 3;
const LOW_THIRD = 0.7;
/** Semitones above the open sixth string up to which a bass is low. */
const LOW_BASS = 8;
const FOURTH_ON_ROOT = 1.5;
const NO_FIFTH_ON_ROOT = 0.3;
/** Over another bass the chord stands as itself where its root comes next; a low tritone there clouds it. */
const ROOT_ON_BASS = -1;
const TRITONE_ON_BASS = 1;
/** One note on two strings adds a finger and no sound. */
const UNISON = 1.2;
/** A second voice on a note that leans: a seventh, sixth or ninth, or a fifth that is not perfect. */
const DOUBLED_LEANING = 1.5;

/** A power chord is two or three strings; each one more tells no more. */
const POWER_STRINGS = 3;
const MORE_POWER = 0.3;
/** Beside an open string one that is left out cannot be damped by a flat finger. */
const POWER_TOP_MUTE = 1;
const NO_FIFTH = 0.5;

/** What of a chord its shapes' cost depends on. */
export type Sounding = {
  /** How many different notes it has. */
  readonly notes: number;
  /** Pitch class of the root. */
  readonly root: PitchClass;
  /** The root is the bass. */
  readonly rooted: boolean;
  /** The bass is no note of the chord above it. */
  readonly foreign: boolean;
  readonly fifth: 'perfect' | 'diminished' | 'augmented';
  /** Bits of every pitch class of the chord. */
  readonly bits: number;
  /** Bits of the pitch classes that lean and are best heard once. */
  readonly leaning: number;
  /** The fifth is left out. */
  readonly noFifth: boolean;
};

/** Whether an open string sounds one of the pitch classes. */
function sounds(open: readonly number[], string: number, bits: number): boolean {
  return (bits & (1 << ((open[string] ?? 0) % 12))) !== 0;
}

/** What strings left out cost. */
function muteCost(frets: Frets, first: number, open: readonly number[], sounding: Sounding): number {
  const { notes, rooted, fifth, bits } = sounding;
  const four = notes > 3 && rooted;
  const last = frets.findLastIndex((fret) => fret !== null);
  let cost = 0;
  let played = 1;
  for (let string = first + 1; string <= last; string += 1) {
    if (frets[string] !== null) played += 1;
    else {
      const byBass = string === first + 1 && (frets[first] ?? 0) > 0;
      if (!byBass) cost += INNER_MUTE;
      else if (frets[string + 1] === 0) cost += MUTE_BY_BASS + OPEN_BESIDE_MUTE;
      else cost += notes > 3 ? MUTE_BY_BASS_OF_FOUR : MUTE_BY_BASS;
    }
  }
  const top = frets.length - 1 - last;
  if (notes === 2)
    return (
      cost +
      MORE_POWER * Math.max(0, played - POWER_STRINGS) +
      (frets.includes(0, first + 1) ? POWER_TOP_MUTE * top : 0)
    );
  const own = frets.filter((fret, string) => fret === null && string > first + 1 && sounds(open, string, bits)).length;
  const mutes =
    fifth === 'diminished'
      ? four
        ? TOP_MUTES_HALF_DIMINISHED
        : TOP_MUTES_DIMINISHED
      : four
        ? TOP_MUTES_OF_FOUR
        : TOP_MUTES;
  const rings =
    fifth === 'perfect' ? 0 : OPEN_UNDER_TRITONE * frets.filter((fret, string) => fret === 0 && string > first).length;
  return cost + rings + (played <= FEW_STRINGS ? FEW : 0) + MUTED_CHORD_NOTE * own + (mutes[top] ?? Infinity);
}

/** By how much a bass with few strings above it costs less than under a triad on its root. */
function thinness({ notes, rooted, fifth }: Sounding): number {
  if (notes > 3) return fifth === 'perfect' ? THIN_OF_FOUR : 1;
  return fifth === 'perfect' ? (rooted ? 1 : THIN_INVERSION) : THIN_TRITONE;
}

/** What the bass costs the hand, by its place and the string next to it. */
function bassCost(frets: Frets, first: number, fingers: number, sounding: Sounding): number {
  const bass = frets[first] ?? 0;
  const thin = (THIN_BASS[frets.length - 1 - first] ?? 0) * thinness(sounding);
  const beside = frets[first + 1] ?? null;
  if (bass === 0) return OPEN_THIN_BASS * thin;
  const [lowest] = frettedRange(frets) ?? [0];
  const led = bass === lowest || frets.includes(0);
  return (
    thin +
    (!sounding.rooted && sounding.notes > 3 && thin > 0 ? HIGH_FOREIGN_BASS : 0) +
    // One finger across all strings is at home everywhere.
    (fingers > 1 || frets.at(-1) === null ? BEYOND_HIGH_BASS * Math.max(0, bass - HIGH_BASS) : 0) +
    (led ? 0 : BASS_OFF_INDEX) +
    (beside === null ? 0 : beside === 0 ? ARCHED_FINGER * fingers : bass - beside >= 2 ? REACHED_BACK : 0)
  );
}

/** What a shape costs the ear: thick intervals over the bass, and leaning notes heard twice. */
function soundCost(midis: readonly number[], beside: number, open: readonly number[], sounding: Sounding): number {
  const { root, rooted, foreign, leaning, notes } = sounding;
  const [bass = 0, next = 0] = midis;
  const gap = next - bass;
  const low = bass < (open.at(-6) ?? 0) + LOW_BASS;
  let cost = gap < 2 || (gap === 2 && low) ? GROWL : gap <= 4 && low ? LOW_THIRD : 0;
  if (rooted && notes > 2) cost += gap === 5 ? FOURTH_ON_ROOT : gap === 7 || gap === 12 ? 0 : NO_FIFTH_ON_ROOT;
  if (!rooted)
    cost += foreign && next % 12 === root && next === beside ? ROOT_ON_BASS : gap === 6 && low ? TRITONE_ON_BASS : 0;
  cost += UNISON * (midis.length - new Set(midis).size);
  let heard = 0;
  for (const midi of midis) {
    const bit = 1 << (midi % 12);
    if ((heard & bit & leaning) !== 0) cost += DOUBLED_LEANING;
    heard |= bit;
  }
  return cost;
}

/**
 * How hard and how unusual a shape is, in fingers; the least is what a player takes first. `fingers` hold it, `open` are MIDI
 * notes, lowest first.
 */
export function costOf(frets: Frets, fingers: readonly Finger[], open: readonly number[], sounding: Sounding): number {
  const midis: number[] = [];
  let first = -1;
  for (let string = 0; string < frets.length; string += 1) {
    const fret = frets[string] ?? null;
    if (fret === null) continue;
    if (first < 0) first = string;
    midis.push((open[string] ?? 0) + fret);
  }
  const besideBass = (open[first + 1] ?? 0) + (frets[first + 1] ?? Number.NaN);
  return (
    handCost(frets, fingers) +
    muteCost(frets, first, open, sounding) +
    bassCost(frets, first, fingers.length, sounding) +
    soundCost(midis, besideBass, open, sounding) +
    (sounding.noFifth ? NO_FIFTH : 0)
  );
}
