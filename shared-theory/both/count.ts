import { chordPitchClasses, soundsAs, type Chord } from '../chords.ts';
import { candidateKeys } from '../candidates.ts';
import { diatonicChart } from '../degrees.ts';
import { usualKey } from '../keys.ts';
import { BEATS_PER_BAR } from '../meters.ts';
import type { VoicedSlot, VoicedVamp } from '../vamps.ts';
import { chordIndices, type SlashRule } from '../different-chords.ts';
import { cheapest, differentOf, handyShape, shortened, type BothReadings } from './readings.ts';

/** The loop with the answered number of different chords, then as it is. */
export function countReadings(vamp: VoicedVamp, count: number, rule: SlashRule): BothReadings | null {
  const right = shortened(vamp);
  const wrong = differentOf(right, rule).length > count ? fewer(right, count, rule) : more(right, count, vamp, rule);
  return wrong && { wrong, right };
}

function sharedNotes(one: Chord, other: Chord): number {
  const notes = chordPitchClasses(other);
  return chordPitchClasses(one).filter((note) => notes.includes(note)).length;
}

/** Each chord that comes new once the count is full is taken for the one heard before that it shares most notes with. */
function fewer(slots: readonly VoicedSlot[], count: number, rule: SlashRule): readonly VoicedSlot[] {
  const heard = differentOf(slots, rule).slice(0, count);
  const indices = chordIndices(
    slots.map(({ chord }) => chord),
    rule,
  );
  return slots.map((slot, place) => {
    if ((indices[place] ?? 0) < count) return slot;
    const taken = cheapest(heard, ({ chord }) => -sharedNotes(chord, slot.chord));
    return taken ? { ...slot, chord: taken.chord, frets: taken.frets } : slot;
  });
}

/** One more chord at a time: in place of a chord that came back, else in the second bar of a long one, else a bar behind. */
function more(
  slots: readonly VoicedSlot[],
  count: number,
  vamp: VoicedVamp,
  rule: SlashRule,
): readonly VoicedSlot[] | null {
  const bar = BEATS_PER_BAR[vamp.meter];
  let grown = slots;
  while (differentOf(grown, rule).length < count) {
    const returned = grown.findLastIndex((slot) => !differentOf(grown, rule).includes(slot));
    const long = grown.findLastIndex(({ beats }) => beats >= 2 * bar - 1e-6);
    const place = returned >= 0 ? returned : long >= 0 ? long : grown.length - 1;
    const taken = grown[place];
    const fresh = taken && newChord(grown, taken);
    if (!fresh) return null;
    const changed =
      returned >= 0
        ? [{ ...fresh, beats: taken.beats }]
        : long >= 0
          ? [
              { ...taken, beats: taken.beats - bar },
              { ...fresh, beats: bar },
            ]
          : [taken, { ...fresh, beats: bar }];
    grown = [...grown.slice(0, place), ...changed, ...grown.slice(place + 1)];
  }
  return grown;
}

/** The triads of the keys that own the loop; where none does, every major and minor triad. */
function familiar(slots: readonly VoicedSlot[]): readonly Chord[] {
  const owners = candidateKeys(
    slots.map(({ chord }) => chord),
    'majors',
  );
  const owned = owners.flatMap(diatonicChart).map(({ chord }) => chord);
  if (owned.length > 0) return owned.filter(({ quality }) => quality !== 'diminished');
  return Array.from({ length: 12 }, (_, sound): readonly Chord[] => [
    { root: usualKey(`${sound}M`).tonic, quality: 'major' },
    { root: usualKey(`${sound}m`).tonic, quality: 'minor' },
  ]).flat();
}

/** A chord that the loop has not, as near to one of its chords as can be. */
export function newChord(slots: readonly VoicedSlot[], near: VoicedSlot): Omit<VoicedSlot, 'beats'> | null {
  const fresh = familiar(slots).filter((chord) => !slots.some((slot) => soundsAs(slot.chord, chord)));
  const chord = cheapest(fresh, (each) => -sharedNotes(each, near.chord));
  const frets = chord && handyShape(chord, near.frets);
  return frets && { chord, frets };
}
