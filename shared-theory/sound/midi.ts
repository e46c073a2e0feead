import { chordSymbol } from '../chords.ts';
import { BEATS_PER_BAR } from '../meters.ts';
import type { KitPiece, KitStrike, Performance, SoundedNote } from '../perform.ts';
import type { Meter, VoicedVamp } from '../vamps.ts';
import { BASS_PROGRAM, CHANNEL, GUITAR_PROGRAM, KIT_KEY } from './general-midi.ts';
import type { Voice } from './instrument.ts';
import {
  headerChunk,
  marker,
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

/** A heavy stroke; lighter ones by the usual curve of synthesizers, whose loudness goes with the square of the velocity. */
const HEAVY_VELOCITY = 112;

/** A stroke on the kit is a moment; only an open hat rings, until a hat is struck again. */
const STRUCK_TICKS = TICKS_PER_QUARTER / 4;
const OPEN_HAT_TICKS = TICKS_PER_QUARTER;

/** Names in a file, all in ASCII: of the whole, and of each part. */
export type PartNames = {
  readonly name: string;
  readonly guitar: string;
  readonly bass: string;
  readonly kit: string;
};

/** MIDI velocity of an accent. */
export function velocityOf(accent: SoundedNote['accent']): number {
  return Math.round(HEAVY_VELOCITY * 10 ** (ACCENT_DB[accent] / 40));
}

/** Numerator and denominator of a meter, and the quarter notes in one beat of its tempo. */
export function meterFacts(meter: Meter): {
  readonly numerator: number;
  readonly denominator: number;
  readonly quarters: number;
} {
  const [numerator = 4, denominator = 4] = meter.split('/').map(Number);
  return { numerator, denominator, quarters: (4 * numerator) / denominator / BEATS_PER_BAR[meter] };
}

/**
 * A vamp's performance as a Standard MIDI File 1.0 of format 1 (RP-001): a track of name, tempo, meter and a marker for each
 * chord, and one track for each part that plays. A loop that ends inside a bar has a shorter bar there, so that every bar
 * line falls where a bar begins.
 */
export function writeMidi(
  { meter, tempo, slots }: Pick<VoicedVamp, 'meter' | 'tempo' | 'slots'>,
  performance: Performance,
  names: PartNames,
  voice: Voice = 'steel',
): Uint8Array {
  const { quarters } = meterFacts(meter);
  const tickOf = (seconds: number) => Math.round((seconds * tempo * quarters * TICKS_PER_QUARTER) / 60);
  const end = tickOf(performance.seconds);
  const bars = performance.bars.map(({ time }) => tickOf(time));
  const conductor: readonly MidiEvent[] = [
    { tick: 0, bytes: trackName(names.name) },
    { tick: 0, bytes: setTempo(Math.round(60_000_000 / (tempo * quarters))) },
    ...[...signatures(meter, bars, end), ...chordMarkers(slots, quarters, performance.loops)].toSorted(inTime),
  ];
  const { notes, bass = [], kit = [] } = performance;
  const parts = [
    notes.length > 0 && part(names.guitar, CHANNEL.guitar, GUITAR_PROGRAM[voice], pitched(notes, tickOf)),
    bass.length > 0 && part(names.bass, CHANNEL.bass, BASS_PROGRAM, pitched(bass, tickOf)),
    kit.length > 0 && part(names.kit, CHANNEL.kit, null, percussion(kit, tickOf, end)),
  ].filter((events) => events !== false);
  return Uint8Array.from([
    ...headerChunk(1 + parts.length, TICKS_PER_QUARTER),
    // A hand that is late may let go after the end.
    ...[conductor, ...parts].flatMap((events) => trackChunk(events, Math.max(end, events.at(-1)?.tick ?? 0))),
  ]);
}

function inTime(one: MidiEvent, other: MidiEvent): number {
  return one.tick - other.tick;
}

/** A time signature at the start, and wherever a bar is not as long as the one before; in smaller notes where it must be. */
function signatures(meter: Meter, bars: readonly number[], end: number): MidiEvent[] {
  const { denominator, quarters } = meterFacts(meter);
  let before = 0;
  return bars.flatMap((tick, bar) => {
    const length = (bars[bar + 1] ?? end) - tick;
    if (length === before) return [];
    before = length;
    const { numerator, lower } = fraction(length, denominator);
    return [{ tick, bytes: timeSignature(numerator, lower, 24 * quarters) }];
  });
}

function fraction(ticks: number, denominator: number): { readonly numerator: number; readonly lower: number } {
  const numerator = (ticks * denominator) / (4 * TICKS_PER_QUARTER);
  if (denominator < 32 && Math.abs(numerator - Math.round(numerator)) > 0.01) return fraction(ticks, denominator * 2);
  return { numerator: Math.round(numerator), lower: denominator };
}

/** The symbol of each chord where its slot begins, in every loop. */
function chordMarkers(slots: VoicedVamp['slots'], quarters: number, loops: number): MidiEvent[] {
  let beats = 0;
  return Array.from({ length: loops }, () => slots)
    .flat()
    .map((slot) => {
      const tick = Math.round(beats * quarters * TICKS_PER_QUARTER);
      beats += slot.beats;
      return { tick, bytes: marker(chordSymbol(slot.chord)) };
    });
}

type Held = { readonly key: number; readonly velocity: number; readonly start: number; end: number };

/** The events of a part: its name, its program where its channel has one, then its notes, offs first where both fall on one tick. */
function part(name: string, channel: number, program: number | null, notes: readonly Held[]): MidiEvent[] {
  const offs = notes.map(({ key, end }) => ({ tick: end, bytes: noteOff(key, channel) }));
  const ons = notes.map(({ key, velocity, start }) => ({ tick: start, bytes: noteOn(key, velocity, channel) }));
  return [
    { tick: 0, bytes: trackName(name) },
    ...(program === null ? [] : [{ tick: 0, bytes: programChange(program, channel) }]),
    // Sorting keeps the order of equals: offs stand before ons.
    ...[...offs, ...ons].toSorted(inTime),
  ];
}

type Pitched = Pick<SoundedNote, 'time' | 'duration' | 'midi' | 'accent'>;

/**
 * Notes of strings. One channel holds a pitch once: struck on a second string while the first still sounds, the first ends
 * there and the second lasts as long as either.
 */
function pitched(notes: readonly Pitched[], tickOf: (seconds: number) => number): Held[] {
  const held: Held[] = [];
  const sounding = new Map<number, Held>();
  for (const { time, duration, midi, accent } of notes) {
    const start = tickOf(time);
    const end = Math.max(start + 1, tickOf(time + duration));
    const note: Held = { key: midi, velocity: velocityOf(accent), start, end };
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
  return held;
}

function isHat(piece: KitPiece): boolean {
  return piece === 'closed-hat' || piece === 'open-hat';
}

/** Strokes on the kit: each a moment, cut off by the next on the same piece; an open hat by the next on either hat. */
function percussion(strikes: readonly KitStrike[], tickOf: (seconds: number) => number, end: number): Held[] {
  return strikes.map(({ time, piece, accent, duration = Infinity }, index) => {
    const start = tickOf(time);
    const stops = ({ piece: next, time: at }: KitStrike) =>
      (next === piece || (isHat(piece) && isHat(next))) && tickOf(at) > start;
    const next = strikes.slice(index + 1).find(stops);
    const longest =
      piece === 'open-hat' ? Math.min(start + OPEN_HAT_TICKS, tickOf(time + duration)) : start + STRUCK_TICKS;
    const stop = Math.max(start + 1, Math.min(longest, next ? tickOf(next.time) : end));
    return { key: KIT_KEY[piece], velocity: velocityOf(accent), start, end: stop };
  });
}
