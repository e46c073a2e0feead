import { chordSymbol } from './chords.ts';
import { BEATS_PER_BAR } from './meters.ts';
import { bassOf, shapeNotes, STANDARD_TUNING } from './neck.ts';
import { grooveOf, perform } from './perform.ts';
import type { Performance, PerformOptions, SoundedNote } from './perform.ts';
import { midiPitchClass, pitchClass } from './pitch.ts';
import { DEAD_SECONDS } from './strum.ts';
import type { Frets, Meter, VoicedSlot, VoicedVamp } from './vamps.ts';

/** The slowest that a live control goes, beats a minute. */
const SLOWEST_TEMPO = 30;
/** The fastest for chords without a groove. */
const FASTEST_TEMPO = 300;

/** Numbers that the bass alone falls on stand at least this far apart, in seconds, so that each can be heard. */
const BASS_SECONDS = 0.4;
/** A player's small differences move a note no further than this from its number. */
const NEAR_SECONDS = 0.03;

/** What a string that rings alone gains, so that it comes about as loud as the loop. */
const LONE_DECIBELS = 5;

/** How much quieter soft is: ten decibels are about half as loud to the ear. */
const SOFT_DECIBELS = 10;

/** The hand on muted strings plays one shape throughout: which strings it finds must not tell of a chord. */
const MUTED_SHAPE: Frets = [0, 2, 2, 1, 0, 0];

/** Numbers of a bar by weight, from 0: each row is what is left when the one before comes too fast. */
const WEIGHTS: Readonly<Record<Meter, readonly (readonly number[])[]>> = {
  '4/4': [[0, 1, 2, 3], [0, 2], [0]],
  '12/8': [[0, 1, 2, 3], [0, 2], [0]],
  '3/4': [[0, 1, 2], [0]],
  '6/8': [[0, 1], [0]],
  '7/8': [[0, 1, 2], [0]],
};

function slotAt(vamp: VoicedVamp, slot: number): VoicedSlot {
  const found = vamp.slots[slot];
  if (!found) throw new RangeError(`The loop has slots 0 to ${vamp.slots.length - 1}, not ${slot}.`);
  return found;
}

/** Two bars of the chord in a slot, to be looped: one that opens it and one that goes on. Throws `RangeError` where the loop has no such slot. */
export function holdSlot(vamp: VoicedVamp, slot: number): VoicedVamp {
  return { ...vamp, slots: [{ ...slotAt(vamp, slot), beats: 2 * BEATS_PER_BAR[vamp.meter] }] };
}

/**
 * The slots that the first chord and that of `slot` take by turns: a loop of two as it is, else each for its own length in
 * whole bars, two at most. Throws `RangeError` where the loop has no such slot.
 */
export function pairSlots(
  vamp: VoicedVamp,
  slot: number,
): readonly { readonly slot: number; readonly beats: number }[] {
  const barBeats = BEATS_PER_BAR[vamp.meter];
  return [...new Set([0, slot])].map((each) => {
    const { beats } = slotAt(vamp, each);
    const bars = Math.min(2, Math.max(1, Math.round(beats / barBeats)));
    return { slot: each, beats: vamp.slots.length === 2 ? beats : bars * barBeats };
  });
}

/** A sung note lasts so many beats from the first of the loop. */
const SUNG_BEATS = 2;

/**
 * A performance with a note sung over the beginning of each time round, as settlers are: two beats from the first, above the
 * chord, which goes on beneath it. Throws `RangeError` for a MIDI note below the highest open string.
 */
export function sungOver(vamp: VoicedVamp, performance: Performance, midi: number): Performance {
  const highest = STANDARD_TUNING[5];
  if (!Number.isInteger(midi) || midi < highest)
    throw new RangeError(`A note is sung from ${highest} up, not ${midi}.`);
  const round = performance.seconds / performance.loops;
  const sung = { string: 1, fret: midi - highest, midi, stroke: 'down', touch: 'open', accent: 3, chord: 0 } as const;
  const duration = Math.min(round, (SUNG_BEATS * 60) / vamp.tempo);
  const notes = Array.from({ length: performance.loops }, (_, loop): SoundedNote => {
    return { ...sung, time: loop * round, duration, trim: LONE_DECIBELS };
  });
  return { ...performance, notes: [...performance.notes, ...notes].toSorted((one, other) => one.time - other.time) };
}

/** The slots with the last one lengthened to the end of its bar, so that something else can begin on the next. */
export function wholeBars(slots: readonly VoicedSlot[], meter: Meter): readonly VoicedSlot[] {
  const barBeats = BEATS_PER_BAR[meter];
  const beats = slots.reduce((sum, slot) => sum + slot.beats, 0);
  const missing = Math.ceil(beats / barBeats - 1e-6) * barBeats - beats;
  return slots.map((slot, index) => (index === slots.length - 1 ? { ...slot, beats: slot.beats + missing } : slot));
}

/** The vamp at another tempo, kept between 30 and the fastest of its groove, where every quality can still be heard. */
export function withTempo(vamp: VoicedVamp, tempo: number): VoicedVamp {
  if (!Number.isFinite(tempo)) throw new RangeError(`A tempo is a number of beats a minute, not ${tempo}.`);
  const fastest = grooveOf(vamp)?.tempo[1] ?? FASTEST_TEMPO;
  return { ...vamp, tempo: Math.min(fastest, Math.max(SLOWEST_TEMPO, tempo)) };
}

/**
 * The bass notes of each stay on a chord, in order: the lowest note of its shape alone, of a slash chord its bass, also where the
 * groove's bass takes turns with the fifth.
 */
function bassByStay(vamp: VoicedVamp, performance: Performance): readonly (readonly SoundedNote[])[] {
  const lowest = vamp.slots.map(({ frets }) => bassOf(frets));
  const stays: SoundedNote[][] = [];
  for (const note of performance.notes) {
    if (note.stroke !== 'down' || note.midi !== lowest[note.chord]) continue;
    const stay = stays.at(-1);
    if (stay?.[0]?.chord === note.chord) stay.push(note);
    else stays.push([note]);
  }
  return stays;
}

/** The numbers of a bar that the bass falls on at a tempo: as many as stand far enough apart. */
function numbersAt(meter: Meter, tempo: number): readonly number[] {
  const rows = WEIGHTS[meter];
  const far = rows.find((row) => ((row[1] ?? BEATS_PER_BAR[meter]) * 60) / tempo >= BASS_SECONDS - 1e-9);
  return far ?? [0];
}

/**
 * The bass of a vamp's performance by itself: open, each note held until the next. It falls on each chord's first bass and
 * on the numbers, thinned by their weight where they come too fast; what sounded on the one of a bar always stands.
 */
export function bassAlone(vamp: VoicedVamp, performance: Performance): Performance {
  const beat = 60 / vamp.tempo;
  const numbers = numbersAt(vamp.meter, vamp.tempo);
  const bars = performance.bars.map((bar) => bar.time);
  /** The number of the bar that a moment falls on, from 0; null between numbers. */
  const numberAt = (time: number): number | null => {
    const start = bars.findLast((bar) => bar <= time + NEAR_SECONDS) ?? 0;
    const number = Math.round((time - start) / beat);
    return Math.abs(time - start - number * beat) <= NEAR_SECONDS ? number : null;
  };
  const stays = bassByStay(vamp, performance);
  const kept = stays.flatMap((stay, index) => {
    const end = stays[index + 1]?.[0]?.time ?? Infinity;
    let last = -Infinity;
    return stay.filter(({ time }, place) => {
      const number = numberAt(time);
      const apart = Math.min(time - last, end - time) >= BASS_SECONDS - NEAR_SECONDS;
      const stands = place === 0 || number === 0 || (number !== null && numbers.includes(number) && apart);
      if (stands) last = time;
      return stands;
    });
  });
  const notes = kept.map((note, index) => {
    const end = kept[index + 1]?.time ?? performance.seconds;
    return { ...note, touch: 'open' as const, duration: end - note.time };
  });
  return { ...performance, notes };
}

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

/** The strokes of a vamp on muted strings, accents and all: no string rings, and no stroke tells of a chord. */
export function mutedStrings(vamp: VoicedVamp, options: PerformOptions = {}): Performance {
  const slots = vamp.slots.map((slot) => ({ ...slot, frets: MUTED_SHAPE }));
  const performance = perform({ ...vamp, slots }, options);
  const notes = performance.notes.map((note): SoundedNote => {
    const midi = STANDARD_TUNING[6 - note.string] ?? note.midi;
    return { ...note, touch: 'dead', fret: 0, midi, duration: Math.min(note.duration, DEAD_SECONDS) };
  });
  return { ...performance, notes };
}

/** A performance clearly quieter, every note by as much. */
export function softly(performance: Performance): Performance {
  return { ...performance, notes: performance.notes.map((note) => ({ ...note, trim: note.trim - SOFT_DECIBELS })) };
}

/** The bars of a performance with nothing in them. */
export function unheard(performance: Performance): Performance {
  return { ...performance, notes: [] };
}

/** Performances one after the other, as one loop; their chords are counted on. */
export function inTurn(performances: readonly Performance[]): Performance {
  let seconds = 0;
  let chords = 0;
  const moved = performances.map((part) => {
    const [time, first] = [seconds, chords];
    seconds += part.seconds;
    chords += 1 + Math.max(0, ...part.bars.map(({ chord }) => chord), ...part.notes.map(({ chord }) => chord));
    const move = <T extends { readonly time: number; readonly chord: number }>(each: T): T => ({
      ...each,
      time: each.time + time,
      chord: each.chord + first,
    });
    return { bars: part.bars.map(move), notes: part.notes.map(move) };
  });
  return {
    seconds,
    loops: 1,
    bars: moved.flatMap(({ bars }) => bars),
    notes: moved.flatMap(({ notes }) => notes),
  };
}

/** One bar to be scheduled: `time` and `seconds` in the performance, its notes' times from the bar's own start. */
export type PerformedBar = {
  readonly time: number;
  readonly seconds: number;
  readonly chord: number;
  readonly notes: readonly SoundedNote[];
};

/** A performance bar by bar. Every note belongs to the bar in which it begins, and may ring into later ones. */
export function barsOf(performance: Performance): readonly PerformedBar[] {
  const starts = performance.bars.map((bar) => bar.time);
  const byBar = starts.map((): SoundedNote[] => []);
  let bar = 0;
  for (const note of performance.notes) {
    // Times of notes and bars are worked out along different ways: less than a microsecond is the same moment.
    while (bar + 1 < starts.length && note.time >= (starts[bar + 1] ?? Infinity) - 1e-6) bar += 1;
    byBar[bar]?.push({ ...note, time: Math.max(0, note.time - (starts[bar] ?? 0)) });
  }
  return performance.bars.map(({ time, chord }, index) => {
    const end = starts[index + 1] ?? performance.seconds;
    return { time, seconds: end - time, chord, notes: byBar[index] ?? [] };
  });
}

/** One tick of the count-in: `number` is what is counted aloud, `accented` on one. */
export type CountInBeat = { readonly time: number; readonly number: number; readonly accented: boolean };

/** The counted beats before a vamp and their whole length in seconds: one bar, two of 6/8; 7/8 is counted by its groups. */
export function countIn(
  meter: Meter,
  tempo: number,
): { readonly seconds: number; readonly beats: readonly CountInBeat[] } {
  const beat = 60 / tempo;
  const bars = meter === '6/8' ? 2 : 1;
  const barBeats = BEATS_PER_BAR[meter];
  const counted = Math.floor(barBeats);
  const beats = Array.from({ length: bars * counted }, (_, index) => ({
    time: (Math.floor(index / counted) * barBeats + (index % counted)) * beat,
    number: (index % counted) + 1,
    accented: index % counted === 0,
  }));
  return { seconds: bars * barBeats * beat, beats };
}
