import { assert, boolean, integer, property } from 'fast-check';
import { expect, test } from 'vitest';
import {
  joinPath,
  keyLabel,
  keyName,
  layCircle,
  neighbourRuns,
} from '../../../client/shared/drawings/circle-layout.ts';
import { nameSize } from '../../../client/shared/drawings/circle.tsx';
import { chordEms } from '../../../client/shared/chord-text.tsx';
import { nameBy } from '../../../client/shared/names.ts';
import { letterCells } from '../../../client/shared/drawings/letter-cells.ts';
import { countSlashes } from '../../../client/shared/drawings/count-bar-layout.ts';
import { isBetween, layDistance } from '../../../client/shared/drawings/distance-layout.ts';
import { forkProngs } from '../../../client/shared/drawings/fork-layout.ts';
import { fretDistance, layNeck, neckPages, type Rect } from '../../../client/shared/drawings/neck-layout.ts';
import { stair } from '../../../client/shared/drawings/stairs-layout.ts';
import { chordSymbol } from '../../../shared-theory/chords.ts';
import { keyId, keyName as nameOfKey, relativeKey, usualKey } from '../../../shared-theory/keys.ts';
import { namesOf } from '../../../shared-theory/namings/names-of.ts';
import { NAMINGS } from '../../../shared-theory/printer.ts';
import { KEY_IDS } from '../../../shared-theory/questions/keys/ask.ts';

// Common practice of guitar building: the twelfth fret halves the string, the fifth leaves three quarters, the seventh two thirds.
test.each([
  [12, 1 / 2],
  [5, 3 / 4],
  [7, 2 / 3],
  [24, 1 / 4],
])('fret %i leaves %f of the string', (fret, rest) => {
  expect(1 - fretDistance(fret) / 2).toBeCloseTo(rest, 2);
});

const ground = { x: 40, y: 58, width: 280, height: 404 };

test('upright, string 6 lies left, and right for left-handers; the nut is on top', () => {
  const right = layNeck({ flat: false, ground, from: 1, to: 7, open: 44 });
  const left = layNeck({ flat: false, mirrored: true, ground, from: 1, to: 7, open: 44 });
  expect(right.place(6, 3)[0]).toBeLessThan(right.place(5, 3)[0]);
  expect(left.place(6, 3)[0]).toBeGreaterThan(left.place(5, 3)[0]);
  expect(right.place(6, 0)[1]).toBeLessThan(ground.y);
  expect(right.nut && right.nut.y + right.nut.height).toBeCloseTo(ground.y);
});

test('flat, string 6 lies lowest; the nut lies left, and right for left-handers', () => {
  const right = layNeck({ flat: true, ground, from: 1, to: 12, open: 60 });
  const left = layNeck({ flat: true, mirrored: true, ground, from: 1, to: 12, open: 60 });
  for (const layout of [right, left]) expect(layout.place(6, 3)[1]).toBeGreaterThan(layout.place(5, 3)[1]);
  expect(right.place(6, 1)[0]).toBeLessThan(right.place(6, 2)[0]);
  expect(left.place(6, 1)[0]).toBeGreaterThan(left.place(6, 2)[0]);
  expect(left.place(6, 0)[0]).toBeGreaterThan(ground.x + ground.width);
});

test('every place lies in its own zone, and zones do not overlap', () => {
  assert(
    property(
      boolean(),
      boolean(),
      integer({ min: 1, max: 6 }),
      integer({ min: 2, max: 6 }),
      (flat, mirrored, from, more) => {
        const layout = layNeck({ flat, mirrored, ground, from, to: from + more, open: from === 1 ? 44 : 0 });
        const places = ([6, 5] as const).flatMap((string) =>
          Array.from({ length: more + 1 }, (_, index) => ({ string, fret: from + index })),
        );
        for (const { string, fret } of places) {
          const [x, y] = layout.place(string, fret);
          const holding = places.filter((other) => {
            const zone = layout.zone(other.string, other.fret);
            return x > zone.x && x < zone.x + zone.width && y > zone.y && y < zone.y + zone.height;
          });
          expect(holding).toEqual([{ string, fret }]);
        }
      },
    ),
  );
});

test('a capo lies across all strings on its own fret, its open strings on it, and what lies behind it begins before its bar', () => {
  for (const capo of [1, 2, 3, 5, 9]) {
    for (const flat of [true, false]) {
      const from = Math.max(1, capo - 1);
      const layout = layNeck({ flat, ground, from, to: from + 6, open: 30, capo });
      const { bar, behind, words } = layout.capo ?? expect.fail('no capo is drawn');
      const zones = ([6, 5] as const).map((string) => layout.zone(string, capo));
      const length = ({ x, y, width, height }: Rect) => (flat ? [x, x + width] : [y, y + height]);
      for (const [index, zone] of zones.entries()) {
        const [start = 0, end = 0] = length(bar);
        expect(start).toBeGreaterThan(length(zone)[0] ?? 0);
        expect(end).toBeLessThan(length(zone)[1] ?? 0);
        const [x, y] = layout.place(index === 0 ? 6 : 5, capo);
        expect(x > bar.x && x < bar.x + bar.width && y > bar.y && y < bar.y + bar.height).toBe(true);
      }
      expect(flat ? bar.height > ground.height : bar.width > ground.width).toBe(true);
      expect(length(behind)[1]).toBeCloseTo(length(bar)[0] ?? 0);
      // Flat, the words lie behind the bar, clear of the beads on it; upright, on it.
      expect(flat ? words[0] < bar.x : words[1] > bar.y && words[1] < bar.y + bar.height).toBe(true);
    }
  }
  expect(layNeck({ flat: true, ground, from: 1, to: 7, open: 30 }).capo).toBeNull();
  expect(layNeck({ flat: true, ground, from: 8, to: 12, open: 0, capo: 3 }).capo).toBeNull();
});

test('the pages of a neck hold each fret once, none narrower than asked', () => {
  assert(
    property(integer({ min: 150, max: 900 }), (length) => {
      const pages = neckPages(length, 44);
      expect(pages.flatMap(([from, to]) => Array.from({ length: to - from + 1 }, (_, index) => from + index))).toEqual([
        1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12,
      ]);
      for (const [from, to] of pages) {
        const span = fretDistance(to) - fretDistance(from - 1);
        expect((length * (fretDistance(to) - fretDistance(to - 1))) / span).toBeGreaterThanOrEqual(44);
      }
    }),
  );
  expect(neckPages(404, 44)).toEqual([
    [1, 7],
    [8, 12],
  ]);
  expect(neckPages(420, 24)).toEqual([[1, 12]]);
});

test('the circle goes by fifths, sharps clockwise, each minor under its relative major', () => {
  const { majors, minors } = layCircle(0, 0, 100, true);
  expect(majors.map(({ id }) => keyLabel(id)).slice(0, 4)).toEqual(['C', 'G', 'D', 'A']);
  expect(majors.map(({ id }) => id).toSorted()).toEqual(KEY_IDS.filter((id) => id.endsWith('M')).toSorted());
  majors.forEach((major, place) => {
    expect(minors[place]?.id).toBe(keyId(relativeKey(usualKey(major.id))));
  });
});

/** A key's name upright on its turned peg, by its corners, as shares of half the peg's length and depth. */
test.each(NAMINGS)('every name stays on its peg: %s', (naming) => {
  nameBy(namesOf(naming));
  const layout = layCircle(0, 0, 100, true);
  for (const peg of [...layout.majors, ...layout.minors]) {
    const ems = chordEms(keyLabel(peg.id));
    const size = 100 * nameSize(peg.id);
    const [length, depth] = peg.id.endsWith('m') ? [32, 26] : [40, 33];
    const angle = (peg.place * Math.PI) / 6;
    for (const side of [-1, 1]) {
      const [x, y] = [(side * ems * size) / 2, (0.7 * size) / 2];
      expect(Math.abs(x * Math.cos(angle) + y * Math.sin(angle)) * 2).toBeLessThan(length);
      expect(Math.abs(y * Math.cos(angle) - x * Math.sin(angle)) * 2).toBeLessThan(depth);
    }
    expect(size).toBeGreaterThan(peg.id.endsWith('m') ? 6.5 : 11);
  }
  nameBy(namesOf('english'));
});

test.each([...KEY_IDS])('peg %s bears the usual spelling of its key', (id) => {
  const { tonic, mode } = usualKey(id);
  expect(keyLabel(id)).toBe(chordSymbol({ root: tonic, quality: mode === 'minor' ? 'minor' : 'major' }));
  expect(keyName(id)).toBe(nameOfKey({ tonic, mode }));
});

test.each([
  [[1, 2], [{ from: 1, steps: 1 }]],
  [[11, 0, 1], [{ from: 11, steps: 2 }]],
  [[0, 2], []],
  [
    [3, 4, 7, 8, 9],
    [
      { from: 3, steps: 1 },
      { from: 7, steps: 2 },
    ],
  ],
  [[0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11], [{ from: 0, steps: 12 }]],
  [[], []],
])('neighbours of %j join', (places, runs) => {
  expect(neighbourRuns(places)).toEqual(runs);
});

test('an arc over more than half of the circle takes the long way', () => {
  const layout = layCircle(0, 0, 100);
  expect(joinPath(layout, { from: 0, steps: 8 })).toContain(' 0 1 1 ');
  expect(joinPath(layout, { from: 0, steps: 2 })).toContain(' 0 0 1 ');
});

test.each([
  ['up', -1],
  ['down', 1],
  ['same', 0],
] as const)('the stair that goes %s arrives there', (direction, way) => {
  const { from, to } = stair(direction, 100, 50, 80, 30);
  expect(Math.sign(to[1] - from[1])).toBe(way);
});

test('cells fill the pad', () => {
  const cells = letterCells(6, 328, 444);
  expect(cells.reduce((sum, { width, height }) => sum + width * height, 0)).toBeCloseTo(328 * 444);
  expect(letterCells(7, 300, 400)).toHaveLength(7);
});

test('slashes stand on one grid in every bar, inside its bar lines', () => {
  for (const bar of [
    { x: 0, width: 328, height: 48 },
    { x: 10, width: 140, height: 23 },
  ]) {
    const five = countSlashes(bar, 5);
    for (const count of [1, 2, 3, 4]) expect(countSlashes(bar, count)).toEqual(five.slice(0, count));
    expect(five[4]).toBeLessThan(bar.x + bar.width - bar.height * 0.3);
  }
});

const HALVES = [
  { from: 0, to: 12 },
  { from: -12, to: 0 },
] as const;

// common practice: between the degrees of the major scale lie five notes, none between three and four or seven and eight.
test('the notes in between are those that the major scale leaves out, in either direction', () => {
  expect(Array.from({ length: 13 }, (_, place) => place).filter(isBetween)).toEqual([1, 3, 6, 8, 10]);
  for (let place = -12; place <= 0; place += 1) expect(isBetween(place)).toBe(isBetween(place + 12));
});

test.each(HALVES)(
  'every place of the line from $from to $to lies in its own zone, and no two zones overlap',
  (half) => {
    for (const lying of [false, true]) {
      const layout = layDistance({ ...half, lying, home: 24, ground: lying ? { ...ground, height: 130 } : ground });
      const area = layout.places.map((place) => ({ place, ...layout.zone(place) }));
      for (const place of layout.places) {
        const [x, y] = layout.number(place);
        const holding = area.filter(
          (zone) => x > zone.x && x < zone.x + zone.width && y > zone.y && y < zone.y + zone.height,
        );
        expect(holding.map((zone) => zone.place)).toEqual([place]);
      }
      for (const one of area)
        for (const other of area) {
          if (one.place === other.place) continue;
          const apart = 0.001;
          expect(
            one.x + one.width <= other.x + apart ||
              other.x + other.width <= one.x + apart ||
              one.y + one.height <= other.y + apart ||
              other.y + other.height <= one.y + apart,
          ).toBe(true);
        }
    }
  },
);

test('the line has true spacing: standing it climbs, lying it goes right, equal steps for equal semitones', () => {
  for (const half of HALVES)
    for (const lying of [false, true]) {
      const layout = layDistance({ ...half, lying, home: 24, ground });
      const along = layout.places.map((place) => layout.across(place)[0][lying ? 0 : 1]);
      along.slice(1).forEach((at, index) => {
        expect(at - (along[index] ?? 0)).toBeCloseTo(lying ? layout.pitch : -layout.pitch);
      });
    }
});

test('zones are high enough for a thumb where the line stands, and wide enough where it lies', () => {
  const standing = layDistance({
    from: 0,
    to: 12,
    lying: false,
    home: 24,
    ground: { ...ground, width: 151, height: 430 },
  });
  const lying = layDistance({ from: 0, to: 12, lying: true, home: 24, ground: { ...ground, width: 280, height: 110 } });
  for (const place of standing.places) expect(standing.zone(place).height).toBeGreaterThanOrEqual(44);
  for (const place of lying.places) {
    expect(lying.zone(place).width).toBeGreaterThanOrEqual(24);
    expect(lying.zone(place).height).toBeGreaterThanOrEqual(44);
  }
});

test('home lies at the end of a half, and across the middle of the whole line', () => {
  const whole = layDistance({ from: -12, to: 12, lying: true, home: 60, ground });
  expect(whole.home.x + whole.home.width / 2).toBeCloseTo(ground.x + ground.width / 2);
  const [up, down] = HALVES.map((half) => layDistance({ ...half, lying: true, home: 24, ground }));
  expect(up?.home.x).toBeCloseTo(ground.x);
  expect(down && down.home.x + down.home.width).toBeCloseTo(ground.x + ground.width);
});

test('a fork has one tip or several, the middle one in line with its stem', () => {
  const place = { x: 0, y: 50, width: 200, height: 80 };
  expect(forkProngs({ ...place, prongs: 'one' }).tips).toEqual([[200, 50]]);
  expect(forkProngs({ ...place, prongs: 'several' }).tips).toEqual([
    [200, 10],
    [200, 50],
    [200, 90],
  ]);
});
