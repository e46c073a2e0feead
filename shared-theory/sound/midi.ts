import { BEATS_PER_BAR } from '../meters.ts';
import type { Performance, SoundedNote } from '../perform.ts';
import type { Meter, VoicedVamp } from '../vamps.ts';
import {
  headerChunk,
  noteOff,
  noteOn,
  programChange,
  setTempo,
  timeSignature,
  trackChunk,
  trackName,
  type MidiEvent,
} from './midi-file.ts';
import { ACCENT_DB } from './plucked-string.ts';

const TICKS_PER_QUARTER = 480;

/** Acoustic guitar (steel) in the General MIDI sound set, counted from 0. */
const STEEL_GUITAR = 25;

/** A heavy stroke; lighter ones by the usual curve of synthesizers, whose loudness goes with the square of the velocity. */
const HEAVY_VELOCITY = 112;

export type MidiNames = {
  /** Name of the whole, in ASCII. */
  readonly name: string;
  /** Name of the guitar's track. */
  readonly part: string;
};

function velocityOf(accent: SoundedNote['accent']): number {
  return Math.round(HEAVY_VELOCITY * 10 ** (ACCENT_DB[accent] / 40));
}

/** Numerator and denominator of a meter, and the quarter notes in one beat of its tempo. */
function meterFacts(meter: Meter): { numerator: number; denominator: number; quarters: number } {
  const [numerator = 4, denominator = 4] = meter.split('/').map(Number);
  return { numerator, denominator, quarters: (4 * numerator) / denominator / BEATS_PER_BAR[meter] };
}

/**
 * A vamp's performance as a Standard MIDI File 1.0 of format 1 (RP-001): a track of name, tempo and meter, and one of the
 * guitar. A loop that ends inside a bar has a shorter bar there, so that every bar line falls where a bar begins.
 */
export function writeMidi(
  { meter, tempo }: Pick<VoicedVamp, 'meter' | 'tempo'>,
  performance: Performance,
  { name, part }: MidiNames,
): Uint8Array {
  const { quarters } = meterFacts(meter);
  const tickOf = (seconds: number) => Math.round((seconds * tempo * quarters * TICKS_PER_QUARTER) / 60);
  const end = tickOf(performance.seconds);
  const conductor: readonly MidiEvent[] = [
    { tick: 0, bytes: trackName(name) },
    { tick: 0, bytes: setTempo(Math.round(60_000_000 / (tempo * quarters))) },
    ...signatures(
      meter,
      performance.bars.map(({ time }) => tickOf(time)),
      end,
    ),
  ];
  const guitar: readonly MidiEvent[] = [
    { tick: 0, bytes: trackName(part) },
    { tick: 0, bytes: programChange(STEEL_GUITAR) },
    ...noteEvents(performance.notes, tickOf),
  ];
  return Uint8Array.from([
    ...headerChunk(2, TICKS_PER_QUARTER),
    ...trackChunk(conductor, end),
    ...trackChunk(guitar, end),
  ]);
}

/** A time signature at the start, and wherever a bar is not as long as the one before. */
function signatures(meter: Meter, bars: readonly number[], end: number): MidiEvent[] {
  const { denominator, quarters } = meterFacts(meter);
  let before = 0;
  return bars.flatMap((tick, bar) => {
    const numerator = Math.round((((bars[bar + 1] ?? end) - tick) * denominator) / (4 * TICKS_PER_QUARTER));
    if (numerator === before) return [];
    before = numerator;
    return [{ tick, bytes: timeSignature(numerator, denominator, 24 * quarters) }];
  });
}

type Held = { readonly midi: number; readonly velocity: number; readonly start: number; end: number };

/**
 * Notes on and off, offs first where both fall on one tick. One channel holds a pitch once: struck on a second string while
 * the first still sounds, the first ends there and the second lasts as long as either.
 */
function noteEvents(notes: readonly SoundedNote[], tickOf: (seconds: number) => number): MidiEvent[] {
  const held: Held[] = [];
  const sounding = new Map<number, Held>();
  for (const { time, duration, midi, accent } of notes) {
    const start = tickOf(time);
    const note: Held = { midi, velocity: velocityOf(accent), start, end: Math.max(start + 1, tickOf(time + duration)) };
    const other = sounding.get(midi);
    if (other && other.end > start) {
      note.end = Math.max(note.end, other.end);
      if (other.start === start) {
        other.end = note.end;
        continue;
      }
      other.end = start;
    }
    sounding.set(midi, note);
    held.push(note);
  }
  const offs = held.map(({ midi, end }) => ({ tick: end, bytes: noteOff(midi) }));
  const ons = held.map(({ midi, velocity, start }) => ({ tick: start, bytes: noteOn(midi, velocity) }));
  // Sorting keeps the order of equals: offs stand before ons.
  return [...offs, ...ons].toSorted((one, other) => one.tick - other.tick);
}
