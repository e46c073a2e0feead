import { expect, test } from 'vitest';
import { writeWav } from '../../../shared-theory/sound/wav.ts';

test('a RIFF/WAVE file of one channel and 16 bits (Multimedia Programming Interface and Data Specifications 1.0)', () => {
  const bytes = Buffer.from(writeWav(Float32Array.of(0, 0.5, -0.5, 1, -1, 3, -3), 44100));
  expect(bytes.toString('latin1', 0, 4)).toBe('RIFF');
  expect(bytes.readUInt32LE(4)).toBe(bytes.length - 8);
  expect(bytes.toString('latin1', 8, 16)).toBe('WAVEfmt ');
  expect(bytes.readUInt32LE(16)).toBe(16);
  expect([20, 22, 32, 34].map((at) => bytes.readUInt16LE(at))).toEqual([1, 1, 2, 16]);
  expect([bytes.readUInt32LE(24), bytes.readUInt32LE(28)]).toEqual([44100, 88200]);
  expect(bytes.toString('latin1', 36, 40)).toBe('data');
  expect(bytes.readUInt32LE(40)).toBe(14);
  const samples = Array.from({ length: 7 }, (_, n) => bytes.readInt16LE(44 + 2 * n));
  expect(samples).toEqual([0, 16384, -16383, 32767, -32767, 32767, -32767]);
});
