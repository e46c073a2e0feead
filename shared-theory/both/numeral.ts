import { soundsAs, triadOf } from '../chords.ts';
import { chordIndices } from '../different-chords.ts';
import { candidateKeys } from '../candidates.ts';
import { diatonicChart } from '../degrees.ts';
import { MOST_NUMERALS } from '../questions/numeral/ask.ts';
import type { VoicedSlot, VoicedVamp } from '../vamps.ts';
import { cheapest, differentOf, handyShape, shortened, type BothReadings } from './readings.ts';

/** The loop with the chords of the answered numerals in a key that owns it, then as it is; null where that key has no such triads. */
export function numeralReadings(vamp: VoicedVamp, numerals: readonly string[]): BothReadings | null {
  const right = shortened(vamp);
  const different = differentOf(right);
  const indices = chordIndices(right.map(({ chord }) => chord));
  if (numerals.length !== Math.min(different.length, MOST_NUMERALS)) return null;
  const loops = candidateKeys(
    different.map(({ chord }) => chord),
    'relatives',
  ).flatMap((key) => {
    const chart = diatonicChart(key);
    const chords = numerals.flatMap((numeral) => chart.find((each) => each.numeral === numeral)?.chord ?? []);
    if (chords.length !== numerals.length) return [];
    const wrong = right.flatMap((slot, place): readonly VoicedSlot[] => {
      const chord = chords[indices[place] ?? 0];
      if (!chord || soundsAs(chord, triadOf(slot.chord))) return [slot];
      const frets = handyShape(chord, slot.frets);
      return frets ? [{ ...slot, chord, frets }] : [];
    });
    return wrong.length === right.length ? [wrong] : [];
  });
  const changes = (wrong: readonly VoicedSlot[]) => wrong.filter((slot, index) => slot !== right[index]).length;
  const wrong = cheapest(loops, changes);
  // Where nothing changes, the numerals name what sounds, only from another home.
  return wrong && changes(wrong) > 0 ? { wrong, right } : null;
}
