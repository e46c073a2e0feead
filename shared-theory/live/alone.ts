import { chordSymbol } from '../chords.ts';
import { BEATS_PER_BAR } from '../meters.ts';
import { shapeNotes } from '../neck.ts';
import { perform } from '../perform.ts';
import type { Performance } from '../perform.ts';
import { midiPitchClass, pitchClass } from '../pitch.ts';
import type { VoicedVamp } from '../vamps.ts';
import { barsOf, inTurn } from './bars.ts';
import { holdSlot, slotAt } from './slots.ts';

/** What a string that rings alone gains, so that it comes about as loud as the loop. */
export const LONE_DECIBELS = 5;

/**
 * The root of the chord in a slot, in the lowest place where its shape plays it (of C/E the C above the bass): struck on each of two
 * bars and left to ring. Throws `RangeError` where the loop has no such slot, or the shape no root.
 */
export function rootAlone(vamp: VoicedVamp, slot: number): Performance {
  const { seconds, loops, bars } = perform(holdSlot(vamp, slot));
  const { chord, frets } = slotAt(vamp, slot);
  const [root] = shapeNotes(frets)
    .filter(({ midi }) => midiPitchClass(midi) === pitchClass(chord.root))
    .toSorted((one, other) => one.midi - other.midi);
  if (!root) throw new RangeError(`The shape of ${chordSymbol(chord)} must play its root, ${chord.root}.`);
  const struck = { ...root, stroke: 'down', touch: 'open', accent: 3, trim: LONE_DECIBELS, chord: 0 } as const;
  const notes = bars.map(({ time }, bar) => ({ ...struck, time, duration: (bars[bar + 1]?.time ?? seconds) - time }));
  return { seconds, loops, bars, notes };
}

/** The chord in a slot, struck once on each of two bars and left to ring. Throws `RangeError` where the loop has no such slot. */
export function chordAlone(vamp: VoicedVamp, slot: number): Performance {
  const bar = { ...slotAt(vamp, slot), beats: BEATS_PER_BAR[vamp.meter] };
  return oneChord(perform({ ...vamp, grooveText: '', slots: [bar, bar] }));
}

/**
 * The root of the chord in a slot for one bar, then the whole chord for one: each struck once and left to ring. Throws
 * `RangeError` where the loop has no such slot, or the shape no root.
 */
export function rootThenChord(vamp: VoicedVamp, slot: number): Performance {
  return oneChord(inTurn([firstBar(rootAlone(vamp, slot)), firstBar(chordAlone(vamp, slot))]));
}

/** The first bar of a performance by itself, every note ended with it. */
function firstBar(performance: Performance): Performance {
  const [bar] = barsOf(performance);
  if (!bar) throw new RangeError('A performance has at least one bar.');
  const notes = bar.notes.map((note) => ({ ...note, duration: Math.min(note.duration, bar.seconds - note.time) }));
  return { seconds: bar.seconds, loops: 1, bars: [{ time: 0, chord: bar.chord }], notes };
}

/** A performance whose bars are all of one chord. */
function oneChord(performance: Performance): Performance {
  const first = <T extends { readonly chord: number }>(each: T): T => ({ ...each, chord: 0 });
  return { ...performance, bars: performance.bars.map(first), notes: performance.notes.map(first) };
}
