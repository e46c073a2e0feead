/** One event of a track: when it happens, in ticks from the start, and its bytes without the time. */
export type MidiEvent = { readonly tick: number; readonly bytes: readonly number[] };

const LARGEST = 0x0fffffff;
/** Format 1: tracks that sound together. */
const FORMAT = 1;
/** How fast a key comes up, where nothing knows better. */
const RELEASE_VELOCITY = 64;

/** A number of 0 to 0x0FFFFFFF as a variable-length quantity: seven bits a byte, the highest first, bit 7 on all but the last. */
export function variableLength(value: number): number[] {
  if (!Number.isInteger(value) || value < 0 || value > LARGEST)
    throw new RangeError(`A variable-length quantity is a whole number from 0 to ${LARGEST}, not ${value}.`);
  const bytes = [value & 0x7f];
  for (let rest = value >>> 7; rest > 0; rest >>>= 7) bytes.unshift((rest & 0x7f) | 0x80);
  return bytes;
}

function meta(type: number, data: readonly number[]): number[] {
  return [0xff, type, ...variableLength(data.length), ...data];
}

/** Text is ASCII; other signs become question marks. */
function ascii(text: string): number[] {
  return Array.from(text, (sign) => (sign >= ' ' && sign <= '~' ? sign.charCodeAt(0) : 0x3f));
}

function bigEndian(value: number, bytes: number): number[] {
  return Array.from({ length: bytes }, (_, index) => (value >>> (8 * (bytes - 1 - index))) & 0xff);
}

/** The name of a track; of the whole file in the first. */
export function trackName(name: string): number[] {
  return meta(0x03, ascii(name));
}

/** A name for a place in the music. */
export function marker(text: string): number[] {
  return meta(0x06, ascii(text));
}

/** A tempo in microseconds a quarter note, at most 0xFFFFFF. */
export function setTempo(microseconds: number): number[] {
  return meta(0x51, bigEndian(microseconds, 3));
}

/** A time signature; `clocks` are the MIDI clocks of one metronome click, 24 to a quarter note. `denominator` is a power of two. */
export function timeSignature(numerator: number, denominator: number, clocks: number): number[] {
  return meta(0x58, [numerator, Math.log2(denominator), clocks, 8]);
}

/** Chooses the sound of a channel (0 to 15) by its program number, 0 to 127. */
export function programChange(program: number, channel = 0): number[] {
  return [0xc0 | channel, program];
}

/** A note begins: MIDI note, velocity of 1 to 127, channel of 0 to 15. */
export function noteOn(midi: number, velocity: number, channel = 0): number[] {
  return [0x90 | channel, midi, velocity];
}

/** A note ends. */
export function noteOff(midi: number, channel = 0): number[] {
  return [0x80 | channel, midi, RELEASE_VELOCITY];
}

function chunk(type: string, data: readonly number[]): number[] {
  return [...ascii(type), ...bigEndian(data.length, 4), ...data];
}

/** The header of a file of so many tracks and ticks to a quarter note. */
export function headerChunk(tracks: number, ticksPerQuarter: number): number[] {
  return chunk('MThd', [...bigEndian(FORMAT, 2), ...bigEndian(tracks, 2), ...bigEndian(ticksPerQuarter, 2)]);
}

/** A track of events in order of time, with its end at `end` ticks. Every event has its status byte. */
export function trackChunk(events: readonly MidiEvent[], end: number): number[] {
  let last = 0;
  const data = [...events, { tick: end, bytes: meta(0x2f, []) }].flatMap(({ tick, bytes }) => {
    const delta = variableLength(tick - last);
    last = tick;
    return [...delta, ...bytes];
  });
  return chunk('MTrk', data);
}
