import { BEATS_PER_BAR } from '../meters.ts';
import { bassOf, shapeNotes } from '../neck.ts';
import type { Performance, SoundedNote } from '../perform.ts';
import type { Meter, VoicedVamp } from '../vamps.ts';

/** Numbers that the bass alone falls on stand at least this far apart, in seconds, so that each can be heard. */
const BASS_SECONDS = 0.4;
/** A player's small differences move a note no further than this from its number. */
const NEAR_SECONDS = 0.03;

/** Numbers of a bar by weight, from 0: each row is what is left when the one before comes too fast. */
const WEIGHTS: Readonly<Record<Meter, readonly (readonly number[])[]>> = {
  '4/4': [[0, 1, 2, 3], [0, 2], [0]],
  '12/8': [[0, 1, 2, 3], [0, 2], [0]],
  '3/4': [[0, 1, 2], [0]],
  '6/8': [[0, 1], [0]],
  '7/8': [[0, 1, 2], [0]],
};

/**
 * The bass notes that the bass alone chooses from: the lowest note of each shape, of a slash chord its bass, wherever a down plays it,
 * also where the groove's bass takes turns with the fifth; on the one of a bar that has none there, where the groove pushed it over the
 * line or leaves it out; and where a chord begins without any.
 */
function bassNotes(vamp: VoicedVamp, { notes, bars, seconds }: Performance): readonly SoundedNote[] {
  const shapes = vamp.slots.map(({ frets }) => shapeNotes(frets).toSorted((one, other) => one.midi - other.midi));
  const played = notes.filter(({ stroke, midi, chord }) => stroke === 'down' && midi === shapes[chord]?.[0]?.midi);
  const missing: SoundedNote[] = [];
  const strike = (time: number, chord: number): void => {
    const [bass] = shapes[chord] ?? [];
    if (bass) missing.push({ ...bass, time, duration: 0, stroke: 'down', touch: 'open', accent: 3, trim: 0, chord });
  };
  for (const { time, chord } of bars) {
    if (!played.some((note) => Math.abs(note.time - time) <= NEAR_SECONDS)) strike(time, chord);
  }
  const barSeconds = (bars[1]?.time ?? Infinity) - (bars[0]?.time ?? 0);
  for (const [index, { time, chord }] of notes.entries()) {
    if (index > 0 && notes[index - 1]?.chord === chord) continue;
    // What is pushed over the end belongs to the bar behind it.
    if (time > seconds - BASS_SECONDS) continue;
    const soon = [...played, ...missing].some(
      (note) => note.chord === chord && note.time >= time - NEAR_SECONDS && note.time < time + barSeconds,
    );
    if (!soon) strike(time, chord);
  }
  return [...played, ...missing].toSorted((one, other) => one.time - other.time);
}

/** Notes in the stays on a chord that they belong to, in order. */
function byStay(notes: readonly SoundedNote[]): readonly (readonly SoundedNote[])[] {
  const stays: SoundedNote[][] = [];
  for (const note of notes) {
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
 * on the numbers, thinned by their weight where they come too fast; the one of a bar always stands.
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
  const stays = byStay(bassNotes(vamp, performance));
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

/** How far the chord's bass comes forward and the other strings step back, in decibels. */
const FORWARD_DECIBELS = 5;
const BACK_DECIBELS = 7;

/** A vamp's performance with the bass of each chord standing out of it, twelve decibels before the other strings. */
export function bassForward(vamp: VoicedVamp, performance: Performance): Performance {
  const lowest = vamp.slots.map(({ frets }) => bassOf(frets));
  const notes = performance.notes.map((note) => ({
    ...note,
    trim: note.trim + (note.midi === lowest[note.chord] ? FORWARD_DECIBELS : -BACK_DECIBELS),
  }));
  return { ...performance, notes };
}
