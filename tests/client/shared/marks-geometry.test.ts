import { assert, nat, property } from 'fast-check';
import { expect, test } from 'vitest';
import { lensAmplitude, lensPath, slashPath, tallyLayout } from '../../../client/shared/marks-geometry.ts';
import { pencilRingPath } from '../../../client/shared/pencil.ts';

const numbers = (path: string): number[] => (path.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);

test('a pencil ring is the same at every drawing and turns once and a sixth', () => {
  expect(pencilRingPath(50, 50, 40, 20)).toBe(pencilRingPath(50, 50, 40, 20));
  const path = numbers(pencilRingPath(0, 0, 100, 100));
  const [x0 = 0, y0 = 0] = path;
  const [x1 = 0, y1 = 0] = path.slice(-2);
  const degrees = ((Math.atan2(y1, x1) - Math.atan2(y0, x0)) * 180) / Math.PI;
  expect((degrees + 360) % 360).toBeCloseTo(60, -1);
  expect(Math.hypot(x1, y1) - Math.hypot(x0, y0)).toBeCloseTo(2.6 * 3.6, 0);
});

test('a slash stands on its height with its lean', () => {
  // Start, lean and rise, thickness, and back down.
  expect(slashPath(34, 50, 100)).toBe('M0 100l44 -100h24l-44 100z');
});

test('a lens keeps its nodes, and low strings swing wider', () => {
  expect(numbers(lensPath([0, 0], [100, 0], 10)).slice(0, 6)).toEqual([0, 0, 50, 20, 100, 0]);
  expect(lensAmplitude(6, 34)).toBeGreaterThan(lensAmplitude(1, 34));
});

test('a tally counts hands in and hands missing on one grid', () => {
  assert(
    property(nat(60), nat(60), (hands, more) => {
      const { strokes, dots } = tallyLayout(hands, hands + more, 10, 40);
      expect(strokes).toHaveLength(hands);
      expect(dots).toHaveLength(more);
    }),
  );
});

test('the fifth hand crosses the four before it', () => {
  const { strokes } = tallyLayout(5, 5, 10, 40);
  const [from, to] = strokes[4] ?? [];
  expect(from?.[0]).toBeLessThan(0);
  expect(to?.[0]).toBeGreaterThan(30);
});
