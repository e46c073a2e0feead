import { parseMidi } from 'midi-file';
import { describe, expect, test } from 'vitest';
import { withBand } from '../../../shared-theory/band.ts';
import { GROOVES, grooveById } from '../../../shared-theory/grooves.ts';
import { perform, type Performance } from '../../../shared-theory/perform.ts';
import { VOICES } from '../../../shared-theory/sound/instrument.ts';
import { meterFacts, velocityOf, writeMidi } from '../../../shared-theory/sound/midi.ts';
import type { VoicedVamp } from '../../../shared-theory/vamps.ts';
import { vampIn } from './scores.ts';

const NAMES = { name: 'Vamp', guitar: 'Guitar', bass: 'Bass', kit: 'Kit' };

type Played = { readonly key: number; readonly velocity: number; readonly start: number; readonly end: number };

/** The tracks of a file as midi-file 1.2.4 reads it: names, programs and channels, and the notes of each in ticks. */
function tracksOf(bytes: Uint8Array) {
  return parseMidi(bytes).tracks.map((track) => {
    let tick = 0;
    const open = new Map<number, { start: number; velocity: number }>();
    const notes: Played[] = [];
    const channels = new Set<number>();
    for (const event of track) {
      tick += event.deltaTime;
      if ('channel' in event) channels.add(event.channel);
      if ('running' in event) throw new Error('a status byte was left out');
      if (event.type === 'noteOn') {
        expect(open.has(event.noteNumber)).toBe(false);
        open.set(event.noteNumber, { start: tick, velocity: event.velocity });
      } else if (event.type === 'noteOff') {
        const begun = open.get(event.noteNumber);
        if (!begun) throw new Error(`${event.noteNumber} ends and never began`);
        open.delete(event.noteNumber);
        notes.push({ key: event.noteNumber, ...begun, end: tick });
      }
    }
    expect(open.size).toBe(0);
    expect(track.at(-1)?.type).toBe('endOfTrack');
    return {
      name: track.flatMap((event) => (event.type === 'trackName' ? [event.text] : []))[0],
      programs: track.flatMap((event) => (event.type === 'programChange' ? [event.programNumber] : [])),
      markers: track.flatMap((event) => (event.type === 'marker' ? [event.text] : [])),
      channels: [...channels],
      notes: notes.toSorted((one, other) => one.start - other.start || one.key - other.key),
    };
  });
}

const ALL = { kit: true, bass: true };

function bandIn(groove: string, symbols: string, loops = 1): { vamp: VoicedVamp; performance: Performance } {
  const vamp = vampIn(grooveById(groove), symbols);
  return { vamp, performance: withBand(vamp, perform(vamp, { loops }), ALL) };
}

describe('a band as a MIDI file', () => {
  test('one track a part, each on a channel of its own, percussion on the tenth', () => {
    const { vamp, performance } = bandIn('campfire-strum', 'Em D');
    const tracks = tracksOf(writeMidi(vamp, performance, NAMES));
    expect(tracks.map(({ name, channels, programs }) => ({ name, channels, programs }))).toEqual([
      { name: 'Vamp', channels: [], programs: [] },
      // Acoustic guitar (steel) and electric bass (finger): 26 and 34 counted from 1 (General MIDI sound set).
      { name: 'Guitar', channels: [0], programs: [25] },
      { name: 'Bass', channels: [1], programs: [33] },
      { name: 'Kit', channels: [9], programs: [] },
    ]);
  });

  test('each voice has its program: 26, 25 and 28 of the General MIDI sound set, counted from 1', () => {
    const { vamp, performance } = bandIn('campfire-strum', 'Em');
    const programs = VOICES.map((voice) => tracksOf(writeMidi(vamp, performance, NAMES, voice))[1]?.programs);
    expect(programs).toEqual([[25], [24], [27]]);
  });

  test('a marker for each chord, in every loop', () => {
    const { vamp, performance } = bandIn('waltz', 'Gm C/D F#m7b5', 2);
    expect(tracksOf(writeMidi(vamp, performance, NAMES))[0]?.markers).toEqual([
      'Gm',
      'C/D',
      'F#m7b5',
      'Gm',
      'C/D',
      'F#m7b5',
    ]);
  });

  test('the kit alone is a file of two tracks', () => {
    const { vamp, performance } = bandIn('waltz', 'C');
    const kit: Performance = { ...performance, notes: [], bass: [] };
    expect(tracksOf(writeMidi(vamp, kit, NAMES)).map(({ name }) => name)).toEqual(['Vamp', 'Kit']);
  });

  test('in every groove kit and bass stand where they are performed, as loud as accented', () => {
    // General MIDI percussion key map: bass drum 1, acoustic snare, closed and open hi-hat.
    const keys = { kick: 36, snare: 38, 'closed-hat': 42, 'open-hat': 46 };
    for (const { id } of GROOVES) {
      const { vamp, performance } = bandIn(id, 'Em D');
      const perSecond = (vamp.tempo * meterFacts(vamp.meter).quarters * 480) / 60;
      const [, , bass, kit] = tracksOf(writeMidi(vamp, performance, NAMES));
      const wanted = (performance.kit ?? [])
        .map(({ time, piece, accent }) => [Math.round(time * perSecond), keys[piece], velocityOf(accent)])
        .toSorted((one, other) => (one[0] ?? 0) - (other[0] ?? 0) || (one[1] ?? 0) - (other[1] ?? 0));
      expect([id, kit?.notes.map(({ key, velocity, start }) => [start, key, velocity])]).toEqual([id, wanted]);
      expect([id, bass?.notes.map(({ key, start }) => [start, key])]).toEqual([
        id,
        performance.bass?.map(({ time, midi }) => [Math.round(time * perSecond), midi]),
      ]);
      // A drum is a moment: a sixteenth at most; an open hat rings for a quarter at most.
      for (const { key, start, end } of kit?.notes ?? []) {
        expect(end - start).toBeGreaterThan(0);
        expect(end - start).toBeLessThanOrEqual(key === 46 ? 480 : 120);
      }
    }
  });

  test('a hat that is struck closes the open one', () => {
    const { vamp, performance } = bandIn('quarter-downs', 'C');
    const beat = 60 / vamp.tempo;
    const once = { accent: 2, trim: 0, chord: 0 } as const;
    const kit = [
      { ...once, time: 0, piece: 'open-hat' as const },
      { ...once, time: beat / 2, piece: 'closed-hat' as const },
      { ...once, time: beat, piece: 'open-hat' as const, duration: beat / 4 },
      { ...once, time: 2 * beat, piece: 'open-hat' as const },
    ];
    const [, , , struck] = tracksOf(writeMidi(vamp, { ...performance, kit }, NAMES));
    expect(struck?.notes.map(({ key, start, end }) => [key, start, end - start])).toEqual([
      [46, 0, 240],
      [42, 240, 120],
      [46, 480, 120],
      [46, 960, 480],
    ]);
  });

  test('a player’s small differences stay in the file, and nothing is longer than it', () => {
    const vamp = vampIn(grooveById('driving-eighths'), 'Em D');
    const performance = withBand(vamp, perform(vamp, { human: true, loops: 2 }), ALL);
    const perSecond = (vamp.tempo * 480) / 60;
    const [, guitar] = tracksOf(writeMidi(vamp, performance, NAMES));
    const starts = performance.notes.map(({ time }) => Math.round(time * perSecond));
    expect(guitar?.notes.map(({ start }) => start)).toEqual(starts.toSorted((one, other) => one - other));
    expect(starts.some((start) => start % 240 !== 0)).toBe(true);
  });
});
