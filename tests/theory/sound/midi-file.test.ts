import { parseMidi } from 'midi-file';
import { describe, expect, test } from 'vitest';
import {
  headerChunk,
  noteOff,
  noteOn,
  programChange,
  setTempo,
  timeSignature,
  trackChunk,
  trackName,
  variableLength,
} from '../../../shared-theory/sound/midi-file.ts';

const hex = (bytes: readonly number[]) => bytes.map((byte) => byte.toString(16).padStart(2, '0')).join(' ');
const bytesOf = (text: string) => Uint8Array.from(text.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));

// Tables and examples of the Standard MIDI File 1.0 specification (RP-001, International MIDI Association).
describe('the Standard MIDI File specification', () => {
  test.each([
    [0x00000000, '00'],
    [0x00000040, '40'],
    [0x0000007f, '7f'],
    [0x00000080, '81 00'],
    [0x00002000, 'c0 00'],
    [0x00003fff, 'ff 7f'],
    [0x00004000, '81 80 00'],
    [0x00100000, 'c0 80 00'],
    [0x001fffff, 'ff ff 7f'],
    [0x00200000, '81 80 80 00'],
    [0x08000000, 'c0 80 80 00'],
    [0x0fffffff, 'ff ff ff 7f'],
  ])('%d as a variable-length quantity', (value, bytes) => {
    expect(hex(variableLength(value))).toBe(bytes);
  });

  test.each([-1, 0.5, 0x10000000, Number.NaN])('%d is no variable-length quantity', (value) => {
    expect(() => variableLength(value)).toThrow(RangeError);
  });

  test('a header of format 1, two tracks, 96 ticks a quarter', () => {
    expect(hex(headerChunk(2, 96))).toBe('4d 54 68 64 00 00 00 06 00 01 00 02 00 60');
  });

  test('the events of its example', () => {
    expect(hex(timeSignature(4, 4, 24))).toBe('ff 58 04 04 02 18 08');
    expect(hex(timeSignature(6, 8, 36))).toBe('ff 58 04 06 03 24 08');
    expect(hex(setTempo(500_000))).toBe('ff 51 03 07 a1 20');
    expect(hex(trackChunk([], 384))).toBe('4d 54 72 6b 00 00 00 05 83 00 ff 2f 00');
    expect(hex(trackName('Em D'))).toBe('ff 03 04 45 6d 20 44');
    expect(hex(trackName('F♯m\n'))).toBe('ff 03 04 46 3f 6d 3f');
  });

  test.each([
    [60, '0f 42 40'],
    [80, '0b 71 b0'],
    [90, '0a 2c 2b'],
    [100, '09 27 c0'],
    [120, '07 a1 20'],
    [140, '06 8a 1b'],
  ])('%d quarters a minute', (tempo, bytes) => {
    expect(hex(setTempo(Math.round(60_000_000 / tempo)))).toBe(`ff 51 03 ${bytes}`);
  });

  test('its example music reads the same from our bytes as from its own', () => {
    // Its bytes use running status and three channels; ours neither, so only times, notes and meter are compared.
    const printed = parseMidi(
      bytesOf(
        '4D546864000000060000000100604D54726B0000003B00FF58040402180800FF510307A120' +
          '00C00500C12E00C24600923060003C606091434060904C20' +
          '8140823040003C400081434000804C4000FF2F00',
      ),
    );
    const notes = [
      [0, 48, 96],
      [0, 60, 96],
      [96, 67, 64],
      [192, 76, 32],
    ] as const;
    const ours = parseMidi(
      Uint8Array.from([
        ...headerChunk(1, 96),
        ...trackChunk(
          [
            { tick: 0, bytes: timeSignature(4, 4, 24) },
            { tick: 0, bytes: setTempo(500_000) },
            ...notes.map(([tick, midi, velocity]) => ({ tick, bytes: noteOn(midi, velocity) })),
            ...notes.map(([, midi]) => ({ tick: 384, bytes: noteOff(midi) })),
          ],
          384,
        ),
      ]),
    );
    const music = ({ tracks }: typeof ours) => {
      let tick = 0;
      return (tracks[0] ?? []).flatMap(({ deltaTime, ...event }) => {
        tick += deltaTime;
        if (event.type === 'programChange') return [];
        const { channel: _, running: _running, ...rest } = event as { channel?: number; running?: boolean };
        return [{ tick, ...rest }];
      });
    };
    expect(ours.header.ticksPerBeat).toBe(printed.header.ticksPerBeat);
    expect(music(ours)).toEqual(music(printed));
    expect(music(ours)).toHaveLength(11);
  });
});

test('a track is the one that midi-file 1.2.4 (MIT) writes, byte for byte', () => {
  const written = '4d546864000000060000000101e04d54726b0000001700ff510307a12000c01900902840836080284000ff2f00';
  const track = trackChunk(
    [
      { tick: 0, bytes: setTempo(500_000) },
      { tick: 0, bytes: programChange(25) },
      { tick: 0, bytes: noteOn(40, 64) },
      { tick: 480, bytes: noteOff(40) },
    ],
    480,
  );
  expect(hex(track).replaceAll(' ', '')).toBe(written.slice(28));
  expect(parseMidi(Uint8Array.from([...headerChunk(1, 480), ...track])).tracks).toEqual(
    parseMidi(bytesOf(written)).tracks,
  );
});
