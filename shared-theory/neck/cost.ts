import type { Frets } from '../vamps.ts';
import { frettedRange, type Finger } from './hand.ts';

/*
 * Costs in fingers: what a shape asks of the hand and the ear counts as so many more fingers put down. The weights are set so
 * that the shapes in common use come first; the tests name them.
 */
const BARRE_STRING = 0.35;
/** A barre of so many strings ends beside an open string only with a bent finger. */
const WIDE_BARRE = 4;
const BENT_BARRE = 2;
/** A barre over so many strings asks most of the hand on the first fret, beside the nut. */
const FULL_BARRE = 6;
const BARRE_AT_NUT = 0.6;
/** A finger that is not the index lies flat over three strings; over four it takes the whole hand. */
const FLAT_STRINGS = 3;
const FLATTER = 2.2;
/** Beside the index, one finger lies flat; a second one does not. */
const SECOND_FLAT_FINGER = 3;

/** Each fret of the highest finger from the nut. */
const POSITION_FRET = 0.45;
/** By the frets between the lowest and the highest fretted string. */
const SPAN = [0, 0, 0.3, 2.3] as const;

/** A string left out between others must be muted by a finger that does something else; the bass finger does it best. */
const INNER_MUTE = 3.8;
const MUTE_BY_BASS = 2.7;
/** By the number of highest strings left out; a chord of four notes or more is often four strings alone. */
const TOP_MUTES = [0, 2.3, 3.2, 6, 9, 12, 15] as const;
const TOP_MUTES_OF_FOUR = [0, 1.5, 3.4, 6, 9, 12, 15] as const;

/** The bass by the number of strings above it: three strings are thin, two no strum. An open bass costs a part of it. */
const THIN_BASS: Readonly<Record<number, number>> = { 3: 3.5, 2: 16, 1: 30 };
const OPEN_THIN_BASS = 0.45;

/** An open string beside fingers beyond this fret rings out of the shape. */
const NUT_FRETS = 4;
const FAR_OPEN = 2;
/** The bass finger must arch over an open string next to it, the harder the more fingers are down. */
const ARCHED_FINGER = 0.8;
/** It reaches back over a string next to it that is fretted two frets lower or more. */
const REACHED_BACK = 2.5;
/** Up the neck the index leads: a bass under another finger. */
const BASS_OFF_INDEX = 0.8;

/** The note next above the bass: within a whole step it growls, low thirds are thick, a fourth makes the root doubtful. */
const GROWL = 3;
const LOW_THIRD = 0.7;
/** Semitones above the open sixth string up to which a bass is low. */
const LOW_BASS = 8;
const FOURTH_ON_ROOT = 1.5;
const NO_FIFTH_ON_ROOT = 0.3;
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
  /** The root is the bass. */
  readonly rooted: boolean;
  /** Bits of the pitch classes that lean and are best heard once. */
  readonly leaning: number;
  /** The fifth is left out. */
  readonly noFifth: boolean;
};

function barreCost(frets: Frets, { fret, from, to }: Finger, lowest: number): number {
  const strings = to - from + 1;
  const wide = strings >= WIDE_BARRE;
  const bent = wide && frets.some((other, string) => string > to && other === 0);
  return (
    BARRE_STRING * (strings - 1) +
    (bent ? BENT_BARRE : 0) +
    (strings >= FULL_BARRE && fret === 1 ? BARRE_AT_NUT : 0) +
    (fret > lowest && strings > FLAT_STRINGS ? FLATTER : 0)
  );
}

/** What the hand does: fingers, barres, the place on the neck, the stretch. */
function handCost(frets: Frets, fingers: readonly Finger[]): number {
  const [lowest, highest] = frettedRange(frets) ?? [1, 1];
  const flat = fingers.filter(({ fret, from, to }) => fret > lowest && to > from).length;
  const far = highest > NUT_FRETS ? frets.filter((fret) => fret === 0).length : 0;
  return (
    fingers.reduce((sum, finger) => sum + 1 + barreCost(frets, finger, lowest), 0) +
    SECOND_FLAT_FINGER * Math.max(0, flat - 1) +
    POSITION_FRET * (highest - 1) +
    (SPAN[highest - lowest] ?? Infinity) +
    FAR_OPEN * far
  );
}

/** What strings left out cost. */
function muteCost(frets: Frets, first: number, { notes }: Sounding): number {
  const last = frets.findLastIndex((fret) => fret !== null);
  let cost = 0;
  let played = 1;
  for (let string = first + 1; string <= last; string += 1) {
    if (frets[string] !== null) played += 1;
    else cost += string === first + 1 && (frets[first] ?? 0) > 0 ? MUTE_BY_BASS : INNER_MUTE;
  }
  const top = frets.length - 1 - last;
  if (notes === 2)
    return (
      cost +
      MORE_POWER * Math.max(0, played - POWER_STRINGS) +
      (frets.includes(0, first + 1) ? POWER_TOP_MUTE * top : 0)
    );
  return cost + ((notes > 3 ? TOP_MUTES_OF_FOUR : TOP_MUTES)[top] ?? Infinity);
}

/** What the bass costs the hand, by its place and the string next to it. */
function bassCost(frets: Frets, first: number, fingers: number): number {
  const bass = frets[first] ?? 0;
  const thin = THIN_BASS[frets.length - 1 - first] ?? 0;
  const beside = frets[first + 1] ?? null;
  if (bass === 0) return OPEN_THIN_BASS * thin;
  const [lowest] = frettedRange(frets) ?? [0];
  const led = bass === lowest || frets.includes(0);
  return (
    thin +
    (led ? 0 : BASS_OFF_INDEX) +
    (beside === null ? 0 : beside === 0 ? ARCHED_FINGER * fingers : bass - beside >= 2 ? REACHED_BACK : 0)
  );
}

/** What a shape costs the ear: thick intervals over the bass, and leaning notes heard twice. */
function soundCost(midis: readonly number[], open: readonly number[], { rooted, leaning, notes }: Sounding): number {
  const [bass = 0, next = 0] = midis;
  const gap = next - bass;
  const low = bass < (open.at(-6) ?? 0) + LOW_BASS;
  let cost = gap <= 2 ? GROWL : gap <= 4 && low ? LOW_THIRD : 0;
  if (rooted && notes > 2) cost += gap === 5 ? FOURTH_ON_ROOT : gap === 7 || gap === 12 ? 0 : NO_FIFTH_ON_ROOT;
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
  return (
    handCost(frets, fingers) +
    muteCost(frets, first, sounding) +
    bassCost(frets, first, fingers.length) +
    soundCost(midis, open, sounding) +
    (sounding.noFifth ? NO_FIFTH : 0)
  );
}

const SHIFT_FRET = 2.5;
const CHANGED_STRING = 0.2;

/** What it costs the hand to go from one shape to another of the same guitar: the way along the neck, and strings that change. */
export function movementCost(from: Frets, to: Frets): number {
  const [start] = frettedRange(from) ?? [1];
  const [end] = frettedRange(to) ?? [1];
  const changed = to.filter((fret, string) => fret !== (from[string] ?? null)).length;
  return SHIFT_FRET * Math.abs(end - start) + CHANGED_STRING * changed;
}
