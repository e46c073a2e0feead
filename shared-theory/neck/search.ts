import type { PitchClass } from '../pitch.ts';
import type { Frets } from '../vamps.ts';
import { costOf, type Sounding } from './cost.ts';
import { canHold, fingersOf, REACH } from './hand.ts';

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

/** The strings from the lowest: which frets of a place sound a wanted note, and the bits of what they and all above can sound. */
function optionsOf({ open, highestFret, sounds }: Wanted, place: number) {
  const frets = place === 0 ? [0] : [0, ...Array.from({ length: REACH + 1 }, (_, step) => place + step)];
  const options = open.map((note) =>
    frets.filter((fret) => fret <= highestFret && sounds.includes((note + fret) % 12)),
  );
  let bits = 0;
  const reachable = options
    .map((some, string) => some.map((fret) => 1 << (((open[string] ?? 0) + fret) % 12)))
    .toReversed()
    .map((some) => (bits = some.reduce((sum, bit) => sum | bit, bits)))
    .toReversed();
  return { options, reachable: [...reachable, 0] };
}

/** The shapes whose lowest fretted fret is `place`; with 0, those of open strings alone. */
function inPlace(wanted: Wanted, mask: number, place: number): readonly SolvedShape[] {
  const { open, bass, sounding } = wanted;
  const { options, reachable } = optionsOf(wanted, place);
  const frets: (number | null)[] = open.map(() => null);
  const found: SolvedShape[] = [];
  // Plain arguments: a step into every string of every place is taken many thousand times. `silent` counts the strings left
  // out since the last that sounds, `inner` those between two that do.
  const walk = (
    string: number,
    heard: number,
    lowest: number,
    played: number,
    silent: number,
    inner: number,
    placed: boolean,
  ): void => {
    if ((heard | (reachable[string] ?? 0)) !== mask) return;
    if (string === open.length) {
      if (!placed || played < FEWEST_STRINGS) return;
      const fingers = fingersOf(frets);
      if (canHold(frets, fingers)) found.push({ frets: [...frets], cost: costOf(frets, fingers, open, sounding) });
      return;
    }
    walk(string + 1, heard, lowest, played, silent + 1, inner, placed);
    const gaps = played === 0 ? 0 : inner + silent;
    if (gaps > MOST_INNER_MUTES) return;
    for (const fret of options[string] ?? []) {
      const midi = (open[string] ?? 0) + fret;
      if (played === 0 ? midi % 12 !== bass : midi < lowest) continue;
      frets[string] = fret;
      const from = played === 0 ? midi : lowest;
      walk(string + 1, heard | (1 << (midi % 12)), from, played + 1, 0, gaps, placed || fret === place);
    }
    frets[string] = null;
  };
  walk(0, 0, 0, 0, 0, 0, false);
  return found.toSorted(byCost).slice(0, KEPT_IN_A_PLACE);
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
