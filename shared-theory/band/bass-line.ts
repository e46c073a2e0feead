import { slotSounds, slotsPerBar, type GrooveSlot } from '../groove-grid.ts';
import { bassOf } from '../neck.ts';
import { grooveOf } from '../contacts.ts';
import type { BassNote, Performance } from '../perform.ts';
import type { VoicedVamp } from '../vamps.ts';
import { beatOf, pieceAt, type Beat } from './beat.ts';
import { placesOf, type Place } from './places.ts';

/** The bass guitar sounds an octave below the guitar. */
const OCTAVE = 12;

/** A note that the groove does not give an accent. */
const USUAL_ACCENT = 2;

/**
 * The bass to a vamp's performance, in order of time: under each chord the lowest note of its shape, an octave below it, so that the
 * bass moves wherever the guitar's does, in the same direction. It begins each chord on its first slot, whatever the hand does there, or
 * with the stroke that pushes the chord ahead of it; goes with the foot and with muted numbers; and holds where the groove rings.
 */
export function bassLine(vamp: VoicedVamp, performance: Performance): readonly BassNote[] {
  const groove = grooveOf(vamp);
  const beat = groove && beatOf(groove);
  const perBar = groove ? slotsPerBar(groove) : 1;
  const places = placesOf(vamp, performance);
  const openings = openingsOf(places, perBar);
  const played = places.flatMap((place, index) => {
    const sounds = openings.has(place) || (beat !== null && goesWith(beat, place, perBar));
    if (!sounds) return [];
    const contact = places.find((other, later) => later > index && slotSounds(other.cell));
    return [{ place, next: contact?.time ?? performance.seconds }];
  });
  const again = performance.seconds + (played[0]?.place.time ?? 0);
  return played.map(({ place, next }, index) => {
    const { time, trim, chord, cell } = place;
    const frets = vamp.slots[chord]?.frets;
    if (!frets) throw new RangeError(`The loop has slots 0 to ${vamp.slots.length - 1}, not ${chord}.`);
    const until = played[index + 1]?.place.time ?? again;
    const end = isShort(cell) ? Math.min(until, next) : until;
    const accent = cell.accent === 0 ? USUAL_ACCENT : cell.accent;
    return { time, duration: end - time, midi: bassOf(frets) - OCTAVE, accent, trim, chord };
  });
}

/** Where chords begin: on their first slots, or with the strokes that push them ahead, and then not again on those slots. */
function openingsOf(places: readonly Place[], perBar: number): ReadonlySet<Place> {
  const openings = new Set<Place>();
  let ahead: number | null = null;
  for (const place of places) {
    if (place.pushes || (place.opens && place.chord !== ahead)) openings.add(place);
    if (place.pushes) ahead = place.chord;
    else if (place.slot % perBar === 0) ahead = null;
  }
  return openings;
}

/** Whether the bass goes with the hand here: with the kit's foot, and on numbers where the hand mutes the low strings. */
function goesWith(beat: Beat, { cell, slot }: Place, perBar: number): boolean {
  const place = slot % perBar;
  const mutedLow = (cell.touch === 'palm' || cell.touch === 'half') && (cell.zone === 'low' || cell.zone === 'all');
  return pieceAt(beat, place, cell)?.piece === 'kick' || (mutedLow && beat.numbers.includes(place));
}

/** A stroke that the hand stops gives a short bass, to the hand's next contact; where it does nothing the bass holds. */
function isShort(cell: GrooveSlot): boolean {
  return slotSounds(cell) && cell.touch !== 'open' && cell.touch !== 'ring';
}
