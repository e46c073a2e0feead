import * as fc from 'fast-check';
import { parseMidi } from 'midi-file';
import { describe, expect, test } from 'vitest';
import { GROOVES, grooveById } from '../../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { perform, type Performance } from '../../../shared-theory/perform.ts';
import { writeMidi } from '../../../shared-theory/sound/midi.ts';
import { parseVamp, type VoicedVamp } from '../../../shared-theory/vamps.ts';
import { tempoRange, voice } from '../../../shared-theory/voice.ts';
import { anyVamp } from '../../support/theory-arbitraries.ts';

type ReadNote = { readonly midi: number; readonly velocity: number; readonly start: number; readonly end: number };

/** A file as midi-file 1.2.4 reads it: what stands in the first track, and the notes of the second in ticks. */
function read(bytes: Uint8Array) {
  const { header, tracks } = parseMidi(bytes);
  expect({ format: header.format, tracks: header.numTracks }).toEqual({ format: 1, tracks: 2 });
  const [conductor = [], guitar = []] = tracks.map((track) => {
    let tick = 0;
    return track.map((event) => ({ tick: (tick += event.deltaTime), event }));
  });
  const sounding = new Map<number, { tick: number; velocity: number }>();
  const notes: ReadNote[] = [];
  for (const { tick, event } of guitar) {
    if (event.type === 'noteOn') {
      // A pitch never begins anew before it has ended: no synthesizer is left to guess which one an off ends.
      expect(sounding.has(event.noteNumber)).toBe(false);
      sounding.set(event.noteNumber, { tick, velocity: event.velocity });
    } else if (event.type === 'noteOff') {
      const begun = sounding.get(event.noteNumber);
      sounding.delete(event.noteNumber);
      if (begun === undefined) throw new Error(`${event.noteNumber} ends and never began`);
      notes.push({ midi: event.noteNumber, velocity: begun.velocity, start: begun.tick, end: tick });
    }
  }
  expect([...sounding]).toEqual([]);
  for (const track of [conductor, guitar]) {
    expect(track.filter(({ event }) => event.type === 'endOfTrack')).toHaveLength(1);
    expect(track.at(-1)?.event.type).toBe('endOfTrack');
  }
  return {
    ticksPerQuarter: header.ticksPerBeat ?? 0,
    conductor,
    guitar,
    end: guitar.at(-1)?.tick ?? 0,
    notes: notes.toSorted((one, other) => one.start - other.start || one.midi - other.midi),
  };
}

const NAMES = { name: 'Em D', guitar: 'Guitar', bass: 'Bass', kit: 'Kit' };

function fileOf(text: string, groove: string | null, tempo: number, loops = 1) {
  const beats = groove === null ? 4 : BEATS_PER_BAR[grooveById(groove).meter];
  const vamp = voice({ slots: parseVamp(text, beats), groove, tempo, seed: 1 });
  const performance = perform(vamp, { loops });
  return { performance, ...read(writeMidi(vamp, performance, NAMES)) };
}

const signaturesOf = ({ conductor }: ReturnType<typeof read>) =>
  conductor.flatMap(({ tick, event }) =>
    event.type === 'timeSignature' ? [[tick, event.numerator, event.denominator, event.metronome]] : [],
  );
const tempoOf = ({ conductor }: ReturnType<typeof read>) =>
  conductor.flatMap(({ event }) => (event.type === 'setTempo' ? [event.microsecondsPerBeat] : []));

describe('a vamp as a MIDI file', () => {
  test('name, tempo and meter stand in the first track, the guitar in the second', () => {
    const file = fileOf('Em D', 'relaxed-alternate', 100);
    expect(file.ticksPerQuarter).toBe(480);
    expect(file.conductor.map(({ tick, event }) => [tick, event.type])).toEqual([
      [0, 'trackName'],
      [0, 'setTempo'],
      [0, 'timeSignature'],
      [0, 'marker'],
      [4 * 480, 'marker'],
      [2 * 4 * 480, 'endOfTrack'],
    ]);
    expect(file.guitar.slice(0, 2).map(({ event }) => event)).toMatchObject([
      { type: 'trackName', text: 'Guitar' },
      // Acoustic guitar (steel): 26 counted from 1 (General MIDI sound set).
      { type: 'programChange', programNumber: 25, channel: 0 },
    ]);
    expect(file.end).toBe(2 * 4 * 480);
  });

  // Microseconds a quarter: in 6/8 the tempo counts dotted quarters, of which 60 are 90 quarters.
  test.each([
    ['relaxed-alternate', 100, 600_000, [0, 4, 4, 24], 1920],
    ['relaxed-alternate', 90, 666_667, [0, 4, 4, 24], 1920],
    ['waltz', 120, 500_000, [0, 3, 4, 24], 1440],
    ['six-eight-ballad', 60, 666_667, [0, 6, 8, 36], 1440],
    ['six-eight-ballad', 40, 1_000_000, [0, 6, 8, 36], 1440],
  ] as const)('%s at %d', (groove, tempo, microseconds, signature, bar) => {
    const file = fileOf('Em D', groove, tempo);
    expect(tempoOf(file)).toEqual([microseconds]);
    expect(signaturesOf(file)).toEqual([signature]);
    expect(file.end).toBe(2 * bar);
    // Each chord’s first string falls on its bar line, and nothing of the chord before lasts beyond it.
    expect(file.notes.filter(({ start }) => start === 0).map(({ midi }) => midi)).toEqual([40]);
    expect(file.notes.filter(({ start }) => start === bar).map(({ midi }) => midi)).toEqual([50]);
    expect(file.notes.filter(({ start, end }) => start < bar && end > bar)).toEqual([]);
  });

  test('strokes fall on the grid: numbers and ands of relaxed eighths', () => {
    const { notes } = fileOf('Em', 'relaxed-alternate', 100);
    const lowest = notes.filter(({ midi }) => midi === 40).map(({ start }) => start);
    expect(lowest).toEqual([0, 480, 960, 1440]);
    // An up begins on the first string.
    const highest = notes.filter(({ midi, velocity }) => midi === 64 && velocity < 80).map(({ start }) => start);
    expect(highest).toEqual([240, 720, 1200, 1680]);
  });

  test('velocities follow the accents: heavy, medium and light stay apart', () => {
    const { notes } = fileOf('Em', 'relaxed-alternate', 100);
    expect(notes.filter(({ midi }) => midi === 40).map(({ velocity }) => velocity)).toEqual([112, 86, 112, 86]);
    expect(new Set(notes.map(({ velocity }) => velocity))).toEqual(new Set([112, 86, 67]));
    // Four and a half and nine decibels under heavy by the square law of General MIDI synthesizers (from memory).
    for (const [velocity, decibels] of [
      [86, -4.5],
      [67, -9],
    ] as const)
      expect(Math.abs(40 * Math.log10(velocity / 112) - decibels)).toBeLessThan(0.1);
  });

  test('a chord that comes again is struck again, and ends before it begins anew', () => {
    const file = fileOf('C C C C', null, 120);
    for (const midi of [48, 52, 55, 60, 64]) {
      const struck = file.notes.filter((note) => note.midi === midi);
      expect(struck).toHaveLength(4);
      for (const [index, note] of struck.entries()) {
        expect(Math.abs(note.start - index * 1920)).toBeLessThan(30);
        expect(note.end).toBe(index === 3 ? 4 * 1920 : Math.min(struck[index + 1]?.start ?? 0, (index + 1) * 1920));
      }
    }
    // Where an end and a beginning share a tick, the end is written first.
    const at = file.guitar.filter(({ tick }) => tick === 1920).map(({ event }) => event.type);
    expect(at.lastIndexOf('noteOff')).toBeLessThan(at.indexOf('noteOn'));
    expect(at).toContain('noteOff');
  });

  test('a pitch on two strings is passed from one to the other', () => {
    // Esus2 as 024400 has B on the third and the second string.
    const { notes } = fileOf('Esus2', null, 60);
    const unison = notes.filter(({ midi }) => midi === 59);
    expect(unison).toHaveLength(2);
    expect(unison[0]?.end).toBe(unison[1]?.start);
    expect(unison[1]?.end).toBe(1920);
  });

  test('palm-muted strokes are short, dead ones very short', () => {
    const { performance, notes } = fileOf('| Em | . |', 'driving-eighths', 120);
    const muted = notes.filter(({ start }) => start > 1920);
    for (const { start, end } of muted) expect(((end - start) / 480) * 0.5).toBeCloseTo(0.18, 2);
    const dead: Performance = {
      ...performance,
      notes: performance.notes.map((note) => ({ ...note, touch: 'dead', duration: 0.0001 })),
    };
    for (const { start, end } of read(writeMidi({ meter: '4/4', tempo: 120, slots: [] }, dead, NAMES)).notes)
      expect(end - start).toBe(1);
  });

  test('a loop that ends inside a bar has a shorter bar there', () => {
    const slots = parseVamp('Em D C', 4).map((slot) => ({ ...slot, beats: 2 }));
    const vamp = voice({ slots, groove: 'quarter-downs', tempo: 60, seed: 1 });
    const file = read(writeMidi(vamp, perform(vamp, { loops: 2 }), NAMES));
    expect(signaturesOf(file)).toEqual([
      [0, 4, 4, 24],
      [4 * 480, 2, 4, 24],
      [6 * 480, 4, 4, 24],
      [10 * 480, 2, 4, 24],
    ]);
    expect(file.end).toBe(12 * 480);
    const half = voice({ slots: parseVamp('Em D C', 1), groove: 'six-eight-ballad', tempo: 60, seed: 1 });
    const ballad = read(writeMidi(half, perform(half), NAMES));
    expect(signaturesOf(ballad)).toEqual([
      [0, 6, 8, 36],
      [1440, 3, 8, 36],
    ]);
    expect(ballad.end).toBe(1440 + 720);
  });

  test('every vamp reads back as it was performed, to the nearest tick', () => {
    const any = fc
      .record({
        chords: anyVamp,
        groove: fc.constantFrom(null, ...GROOVES.map(({ id }) => id)),
        share: fc.double({ min: 0, max: 1, noNaN: true }),
        loops: fc.integer({ min: 1, max: 3 }),
      })
      .map(({ chords, groove, share, loops }): { vamp: VoicedVamp; loops: number } => {
        const beats = groove === null ? 4 : BEATS_PER_BAR[grooveById(groove).meter];
        const [low, high] = tempoRange(groove);
        const tempo = Math.round(low + share * (high - low));
        const slots = chords.map((chord) => ({ chord, beats }));
        return { loops, vamp: voice({ slots, groove, tempo, seed: 1, alternatingBass: true }) };
      });
    fc.assert(
      fc.property(any, ({ vamp, loops }) => {
        const performance = perform(vamp, { loops });
        const file = read(writeMidi(vamp, performance, NAMES));
        const [microseconds = 0] = tempoOf(file);
        // The tempo of the file is right to a microsecond a quarter; its ticks are counted from the beats.
        const compound = vamp.meter === '6/8' || vamp.meter === '12/8';
        expect(Math.abs(microseconds - 60_000_000 / (vamp.tempo * (compound ? 1.5 : 1)))).toBeLessThanOrEqual(0.5);
        expect(signaturesOf(file)).toHaveLength(1);
        const tick = 60 / (vamp.tempo * (compound ? 1.5 : 1)) / 480;
        expect(file.end).toBe(Math.round(performance.seconds / tick));
        const left = [...file.notes];
        for (const note of performance.notes) {
          const index = left.findIndex(
            ({ midi, start }) => midi === note.midi && Math.abs(start - note.time / tick) <= 0.51,
          );
          const found = left[index];
          expect(found?.velocity).toBe({ 1: 67, 2: 86, 3: 112 }[note.accent]);
          left.splice(index, 1);
          const unison = performance.notes.some(
            (other) =>
              other !== note &&
              other.midi === note.midi &&
              other.time < note.time + note.duration - tick &&
              note.time < other.time + other.duration - tick,
          );
          if (unison) continue;
          const length = Math.max(1, Math.round(note.duration / tick));
          expect(Math.abs((found?.end ?? 0) - (found?.start ?? 0) - length)).toBeLessThanOrEqual(1);
        }
        expect(left).toEqual([]);
      }),
      { numRuns: 80 },
    );
  });
});
