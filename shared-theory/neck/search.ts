import type { PitchClass } from '../pitch.ts';
import type { Frets } from '../vamps.ts';
import { costOf, type Sounding } from './cost.ts';
import { isHeld, REACH } from './hand.ts';

/** A shape that a hand can hold: frets of the strings from the lowest, counted from the nut or the capo, and its cost in fingers. */
export type SolvedShape = { readonly frets: Frets; readonly cost: number };

/** What is looked for on a neck. */
export type Wanted = {
  /** MIDI notes of the open strings, lowest first. */
  readonly open: readonly number[];
  readonly highestFret: number;
  /** Every note of the chord that must sound, and no other may. */
  readonly sounds: readonly PitchClass[];
  readonly bass: PitchClass;
  readonly sounding: Sounding;
};

/** Shapes kept for each place of the hand, so that a chord far up the neck still finds its neighbour there. */
const KEPT_IN_A_PLACE = 12;

/** Fewest strings of a shape: two notes are an interval. */
const FEWEST_STRINGS = 3;

/** Strings left out between others: more make no strum. */
const MOST_INNER_MUTES = 1;

type Walk = {
  readonly wanted: Wanted;
  readonly mask: number;
  /** The lowest fretted fret; 0 where nothing is fretted. */
  readonly place: number;
  readonly highest: number;
  readonly frets: (number | null)[];
  readonly found: SolvedShape[];
};

/** Where a walk over the strings stands. */
type Step = {
  readonly string: number;
  /** Bits of the pitch classes that sound so far. */
  readonly heard: number;
  /** MIDI note of the bass; null below it. */
  readonly bass: number | null;
  readonly played: number;
  /** Strings left out since the last that sounds, and before it. */
  readonly silent: number;
  readonly inner: number;
  readonly reachesPlace: boolean;
};

function finish({ wanted, mask, place, frets, found }: Walk, step: Step): void {
  if (step.heard !== mask || step.played < FEWEST_STRINGS || (place > 0 && !step.reachesPlace)) return;
  if (!isHeld(frets)) return;
  const shape = [...frets];
  found.push({ frets: shape, cost: costOf(shape, wanted.open, wanted.sounding) });
}

function play(walk: Walk, step: Step, fret: number): void {
  const midi = (walk.wanted.open[step.string] ?? 0) + fret;
  const sound = midi % 12;
  if ((walk.mask & (1 << sound)) === 0) return;
  if (step.bass === null ? sound !== walk.wanted.bass : midi < step.bass) return;
  const inner = step.bass === null ? 0 : step.inner + step.silent;
  if (inner > MOST_INNER_MUTES) return;
  walk.frets[step.string] = fret;
  next(walk, {
    string: step.string + 1,
    heard: step.heard | (1 << sound),
    bass: step.bass ?? midi,
    played: step.played + 1,
    silent: 0,
    inner,
    reachesPlace: step.reachesPlace || fret === walk.place,
  });
  walk.frets[step.string] = null;
}

function next(walk: Walk, step: Step): void {
  if (step.string === walk.frets.length) {
    finish(walk, step);
    return;
  }
  next(walk, { ...step, string: step.string + 1, silent: step.silent + 1 });
  play(walk, step, 0);
  if (walk.place === 0) return;
  for (let fret = walk.place; fret <= walk.highest; fret += 1) play(walk, step, fret);
}

function inPlace(wanted: Wanted, mask: number, place: number): readonly SolvedShape[] {
  const walk: Walk = {
    wanted,
    mask,
    place,
    highest: Math.min(place + REACH, wanted.highestFret),
    frets: wanted.open.map(() => null),
    found: [],
  };
  next(walk, { string: 0, heard: 0, bass: null, played: 0, silent: 0, inner: 0, reachesPlace: false });
  return walk.found.toSorted(byCost).slice(0, KEPT_IN_A_PLACE);
}

function byCost(one: SolvedShape, other: SolvedShape): number {
  return one.cost - other.cost;
}

/** The shapes that sound exactly what is wanted with its bass lowest, the best of each place of the hand, the least costly first. */
export function searchShapes(wanted: Wanted): readonly SolvedShape[] {
  const mask = wanted.sounds.reduce((bits, sound) => bits | (1 << sound), 0);
  const places = Array.from({ length: wanted.highestFret + 1 }, (_, place) => place);
  return places.flatMap((place) => inPlace(wanted, mask, place)).toSorted(byCost);
}
