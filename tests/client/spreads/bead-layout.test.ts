import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { BEAD_PITCH, BEAD_RADIUS, layPiles } from '../../../client/shared/spreads/bead-layout.ts';

const counts = fc.array(fc.nat({ max: 400 }), { minLength: 1, maxLength: 26 });

test('a few hands: one bead each, at full size', () => {
  const [pile] = layPiles([6, 1, 0], 400);
  expect(pile).toEqual({ pitch: BEAD_PITCH, radius: BEAD_RADIUS, beads: 6, number: null });
});

test('every hand is seen: as a bead of its own, or in the number beside its pile', () => {
  fc.assert(
    fc.property(counts, fc.integer({ min: 120, max: 1400 }), (hands, room) => {
      for (const [index, pile] of layPiles(hands, room).entries()) {
        expect(pile.number ?? pile.beads).toBe(hands[index]);
      }
    }),
  );
});

test('piles stay within their room, and all beads of a drawing have one size', () => {
  fc.assert(
    fc.property(counts, fc.integer({ min: 120, max: 1400 }), (hands, room) => {
      const piles = layPiles(hands, room);
      expect(new Set(piles.map(({ radius }) => radius)).size).toBe(1);
      for (const { beads, pitch } of piles) expect((beads - 1) * pitch).toBeLessThanOrEqual(room);
    }),
  );
});
