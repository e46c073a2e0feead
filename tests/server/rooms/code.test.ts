import { describe, expect, test } from 'vitest';
import { roomCode } from '../../../server/rooms/code.ts';
import { seededRandom } from '../../../shared-theory/random.ts';

function source(seed: number) {
  const random = seededRandom(seed);
  return (n: number) => Math.floor(random() * n);
}

describe('R56 room codes', () => {
  test('five letters, consonants and vowels by turns, no look-alikes', () => {
    const below = source(1);
    for (let count = 0; count < 5_000; count += 1) {
      expect(roomCode(below, () => false)).toMatch(/^(?:[BDFGHJKMNPRSTWZ][AEU]){2}[BDFGHJKMNPRSTWZ]$/);
    }
  });

  test('no rude part, though each could be drawn', () => {
    const below = source(2);
    const codes = Array.from({ length: 20_000 }, () => roomCode(below, () => false));
    expect(codes.filter((code) => /FUK|NAZ|KAK|RAP|PEN|SEK/.test(code))).toEqual([]);
    expect(new Set(codes).size).toBeGreaterThan(10_000);
  });

  test('never one that is taken, and longer where five letters run out', () => {
    const taken = new Set<string>();
    const below = source(3);
    for (let count = 0; count < 2_000; count += 1) {
      const code = roomCode(below, (each) => taken.has(each));
      expect(taken.has(code)).toBe(false);
      taken.add(code);
    }
    expect(roomCode(below, (code) => code.length === 5)).toHaveLength(7);
  });
});
