import { parseChord } from './chords.ts';
import type { Chord } from './chords.ts';
import { cribOf } from './crib.ts';
import { candidateKeys } from './keys.ts';
import { BEATS_PER_BAR } from './meters.ts';
import { usualShape } from './neck.ts';
import type { Truth } from './truth.ts';
import type { VoicedSlot, VoicedVamp } from './vamps.ts';

/** A third chord that throws some of the keys out, with the shape that plays it. */
export type VoicedSettler = { readonly slot: VoicedSlot; readonly keys: Truth['settlers'][number]['keys'] };

/** Settlers that a round offers at most: one to each side. */
const MOST_SETTLERS = 2;

/** The settlers of a vamp: of those that leave one key, the most usual chord for each side. Empty where one key owns it or none. */
export function settlersOf(vamp: Pick<VoicedVamp, 'slots' | 'meter'>): readonly VoicedSettler[] {
  const chords = vamp.slots.map(({ chord }) => chord);
  const { settlers } = cribOf(different(chords), 'majors');
  const single = settlers.filter(({ leaves }) => leaves.length === 1);
  const sides = single.filter(
    ({ leaves }, index) => single.findIndex((each) => each.leaves[0] === leaves[0]) === index,
  );
  return sides.slice(0, MOST_SETTLERS).map(({ chord: symbol }) => {
    const chord = parseChord(symbol);
    const all = [...chords, chord];
    const names = (policy: 'majors' | 'relatives') => candidateKeys(all, policy).map(({ name }) => name);
    return {
      slot: { chord, beats: BEATS_PER_BAR[vamp.meter], frets: usualShape(chord) },
      keys: { majors: names('majors'), relatives: names('relatives') },
    };
  });
}

function different(chords: readonly Chord[]): readonly Chord[] {
  return chords.filter(
    (chord, index) =>
      chords.findIndex(({ root, quality }) => root === chord.root && quality === chord.quality) === index,
  );
}
