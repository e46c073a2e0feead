import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chordSymbol, soundsAs } from '../../shared-theory/chords.ts';
import { generate, type GeneratedVamp } from '../../shared-theory/generate.ts';
import { allDowns, grooveById } from '../../shared-theory/grooves.ts';
import { keyOwns } from '../../shared-theory/degrees.ts';
import { levelOf, LEVELS, type Level } from '../../shared-theory/levels.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { shapeNotes } from '../../shared-theory/neck.ts';
import { perform } from '../../shared-theory/perform.ts';
import { pitchClass } from '../../shared-theory/pitch.ts';
import { sameLoop } from '../../shared-theory/pools.ts';
import { truthOf } from '../../shared-theory/truth.ts';
import { evening, gap, shares } from './made-vamps.ts';

const COUNT = 4000;

const chordsOf = ({ vamp }: GeneratedVamp) => vamp.slots.map((slot) => slot.chord);

/** Levels of one and two chords; those of longer rounds have tests of their own. */
const TWO_CHORD_LEVELS = LEVELS.filter(({ leadsOn }) => !leadsOn);

describe.each(TWO_CHORD_LEVELS.map((level) => [level.level, level] as const))('level %d', (number, level: Level) => {
  const vamps = evening(number, COUNT, false);
  const pairs = vamps.filter(({ vamp }) => vamp.slots.length === 2);
  const moving = pairs.filter(({ truth }) => truth.directions[0] !== 'same');
  const direction = ({ truth }: GeneratedVamp) => truth.directions[0] ?? '';

  test('every vamp is of its level: grooves, lengths, qualities, its own truth', () => {
    for (const made of vamps) {
      const { vamp, groove, truth } = made;
      expect(level.grooves).toContain(groove);
      const beats = level.barsPerChord * BEATS_PER_BAR[vamp.meter];
      expect(vamp.slots.every((slot) => slot.beats === beats && level.qualities.includes(slot.chord.quality))).toBe(
        true,
      );
      expect(made.chords).toEqual(chordsOf(made).map(chordSymbol));
      expect(truth.keys.majors).toEqual(made.readings.map(({ key }) => key));
    }
    for (const { vamp, truth } of vamps.slice(0, 100))
      expect(truthOf(vamp, perform(vamp, { loops: 2 }))).toEqual(truth);
  });

  test('the same seed and past give the same vamp; another seed another', () => {
    for (const made of vamps.slice(0, 20)) {
      const again = () => generate({ level: number, seed: made.seed });
      expect(again()).toEqual(again());
    }
    expect(new Set(vamps.slice(0, 50).map(({ chords }) => chords.join())).size).toBeGreaterThan(15);
  });

  test('none of the last eight comes again, nor the last tempo; tempos go by twos within the groove', () => {
    for (const [index, made] of vamps.entries()) {
      const before = vamps.slice(Math.max(0, index - 8), index);
      expect(before.some((earlier) => sameLoop(chordsOf(earlier), chordsOf(made)))).toBe(false);
      expect(made.vamp.tempo).not.toBe(before.at(-1)?.vamp.tempo);
      const [low, high] = grooveById(made.groove).tempo;
      const [slowest, fastest] = level.tempo ?? [low, high];
      const { tempo } = made.vamp;
      expect(tempo >= Math.max(low, slowest) && tempo <= Math.min(high, fastest) && (tempo - low) % 2 === 0).toBe(true);
    }
  });

  test.skipIf(number === 1)(
    'directions are even; each distance that goes both ways within 36 to 64 %, each home root 25 to 75 %, each second root 10 to 90 %',
    () => {
      const { stays, forms } = level.balance;
      expect(Math.abs(1 - pairs.length / vamps.length - (forms.held ?? 0))).toBeLessThan(0.03);
      const of = shares(pairs, direction);
      expect(Math.abs((of.get('up') ?? 0) - (1 - stays) / 2)).toBeLessThan(0.03);
      expect(Math.abs((of.get('down') ?? 0) - (1 - stays) / 2)).toBeLessThan(0.03);
      expect(Math.abs((of.get('same') ?? 0) - stays)).toBeLessThan(0.03);
      const even = (group: (made: GeneratedVamp) => string | number, least: number) => {
        for (const [name, share] of shares(moving, group)) {
          if (share * moving.length < 120) continue;
          const ways = shares(
            moving.filter((made) => String(group(made)) === name),
            direction,
          );
          const up = ways.get('up') ?? 0;
          // Where the low strings leave one way only, as from the lowest E, there is nothing to balance.
          expect([name, ways.size === 1 || (up > least && up < 1 - least)]).toEqual([name, true]);
        }
      };
      even((made) => pitchClass(made.truth.roots[0] ?? ''), 0.25);
      even((made) => made.truth.distances[0] ?? '', 0.36);
      even((made) => made.truth.qualities.join(), 0.36);
      even((made) => pitchClass(made.truth.roots[1] ?? ''), 0.1);
      const both = shares(
        moving.filter(({ truth }) => ['4', '5'].includes(truth.distances[0] ?? '')),
        direction,
      );
      expect(Math.abs((both.get('up') ?? 0) - 0.5)).toBeLessThan(0.05);
    },
  );

  test.skipIf(number === 1)('neither where the bass starts nor where the top goes tells much of its direction', () => {
    const bassOf = ({ truth }: GeneratedVamp) => truth.bass[0] ?? 0;
    const accuracies = Array.from({ length: 20 }, (_, step) => {
      const right = moving.filter((made) => (bassOf(made) < 40 + step ? 'up' : 'down') === direction(made));
      return right.length / moving.length;
    });
    // Below G a guitar has little room to fall: common moves in first position tell up to this much.
    expect(Math.max(...accuracies)).toBeLessThan(number <= 3 ? 0.78 : 0.72);
    const follows = moving.filter(({ truth }) => {
      const [first = 0, second = 0] = truth.top;
      return Math.sign(second - first) === (truth.directions[0] === 'up' ? 1 : -1);
    });
    expect(follows.length / moving.length).toBeLessThan(0.63);
  });

  test('is played where a class plays: root on string 6 or 5, or open D; barres low; the bass no higher than E3', () => {
    for (const { vamp, chords, truth } of vamps) {
      for (const [slot, { frets }] of vamp.slots.entries()) {
        const [root] = shapeNotes(frets);
        const openD = /^Dm?$/.test(chords[slot] ?? '') && root?.string === 4 && root.fret === 0;
        // A home on E lies on the seventh fret as well, for there alone its bass can fall.
        const highE = slot === 0 || truth.directions[0] === 'same';
        const onE = highE && /^Em?5?$/.test(chords[slot] ?? '');
        const low = (root?.string ?? 0) >= 5 && (root?.fret ?? 12) <= (number >= 6 || (number > 1 && onE) ? 7 : 5);
        expect([chords[slot], frets.join(), low || openD]).toEqual([chords[slot], frets.join(), true]);
      }
      expect(Math.max(...truth.bass)).toBeLessThanOrEqual(number > 1 ? 52 : 50);
      expect(Math.min(...truth.bass)).toBeGreaterThanOrEqual(40);
    }
  });

  test('the bass goes the common way: a seventh or sixth is never leapt where a step or third would do', () => {
    for (const { truth, chords } of pairs) {
      const [first = 0, second = 0] = truth.bass;
      expect([chords.join(' '), Math.abs(second - first) <= (number >= 7 ? 9 : 7)]).toEqual([chords.join(' '), true]);
      if (truth.distances[0] === 'b7') expect([chords.join(' '), second - first]).toEqual([chords.join(' '), -2]);
      if (truth.distances[0] === '2') expect([chords.join(' '), second - first]).toEqual([chords.join(' '), 2]);
      if (truth.distances[0] === '6' && number < 7) expect(second - first).toBe(-3);
      if (truth.distances[0] === '4') expect([5, -7]).toContain(second - first);
      if (truth.distances[0] === '5') expect([-5, 7]).toContain(second - first);
    }
  });

  // Level 1 asks neither quality nor root.
  test.skipIf(number === 1)('major and minor by halves in each slot', () => {
    for (const slot of [0, 1]) {
      // The home chord of level 5 is major: what is asked there is the second.
      if (number === 5 && slot === 0) continue;
      const thirds = vamps.flatMap(({ truth }) => truth.qualities[slot] ?? []).filter((quality) => quality !== 'power');
      expect(Math.abs((shares(thirds, String).get('major') ?? 0) - 0.5)).toBeLessThan(0.03);
    }
    const all = vamps.flatMap(({ truth }) => truth.qualities);
    expect(Math.abs((shares(all, String).get('power') ?? 0) - level.balance.power)).toBeLessThan(0.02);
  });

  test.skipIf(number === 1)('no root, no distance is so usual that always saying it earns', () => {
    for (const slot of [0, 1]) {
      const roots = vamps.flatMap(({ truth }) =>
        truth.roots[slot] === undefined ? [] : [pitchClass(truth.roots[slot])],
      );
      const of = shares(roots, (root) => root);
      // Only the root of the first chord is asked.
      const luck = slot === 0 ? 0 : 0.01;
      expect(Math.max(...of.values())).toBeLessThanOrEqual(Math.max(0.15, 1.3 / of.size) + luck);
    }
    const distances = shares(pairs, ({ truth }) => truth.distances[0] ?? '');
    expect(distances.get('5') ?? 0).toBeLessThanOrEqual(0.25);
    for (const [distance, share] of distances)
      if (distance !== '1') expect([distance, share < 0.26]).toEqual([distance, true]);
  });

  test('I–IV and V–I are as usual as IV–I and I–V', () => {
    const majors = pairs.filter(({ truth }) => truth.qualities.join() === 'major,major');
    const of = shares(majors, ({ truth }) => truth.distances[0] ?? '');
    const ratio = (of.get('4') ?? 0) / (of.get('5') ?? 0);
    expect(ratio).toBeGreaterThan(0.7);
    expect(ratio).toBeLessThan(1.4);
  });

  test('as many vamps in downs alone as with ups', () => {
    const of = shares(vamps, ({ truth }) => truth.strokes ?? '');
    expect(Math.abs((of.get('all-downs') ?? 0) - 0.5)).toBeLessThan(0.03);
    expect((of.get('all-downs') ?? 0) + (of.get('down-up') ?? 0)).toBeCloseTo(1, 9);
    for (const made of vamps) expect(made.truth.strokes === 'all-downs').toBe(allDowns(grooveById(made.groove)));
    expect(Math.min(...level.grooves.map((id) => shares(vamps, ({ groove }) => groove).get(id) ?? 0))).toBeGreaterThan(
      0.08,
    );
  });

  test('where home lies tells nothing of its quality, nor of how many keys own the loop', () => {
    const register = ({ truth }: GeneratedVamp) => truth.bass[0] ?? 0;
    expect(gap(vamps, register, ({ truth }) => truth.qualities[0] === 'major')).toBeLessThan(0.2);
    expect(gap(vamps, register, ({ readings }) => readings.length === 1)).toBeLessThan(0.2);
  });

  test('tempo and strokes tell nothing of the chords', () => {
    // With some thousands of vamps, means of independent figures stand within 0.15 deviations of each other.
    const tempo = ({ vamp }: GeneratedVamp) => vamp.tempo;
    const downs = ({ truth }: GeneratedVamp) => (truth.strokes === 'all-downs' ? 1 : 0);
    for (const figure of [tempo, downs]) {
      expect(gap(moving, figure, (made) => direction(made) === 'up')).toBeLessThan(0.15);
      if (number !== 5) expect(gap(vamps, figure, ({ truth }) => truth.qualities[0] === 'major')).toBeLessThan(0.15);
      expect(gap(pairs, figure, ({ truth }) => truth.qualities[1] === 'major')).toBeLessThan(0.15);
      // A pair that holds its home's I is never owned by one key alone: level 6 has none.
      if (vamps.some(({ readings }) => readings.length === 1))
        expect(gap(vamps, figure, ({ readings }) => readings.length === 1)).toBeLessThan(0.2);
    }
  });
});

describe('what each level is for', () => {
  const of = (level: number) => Array.from({ length: COUNT }, (_, seed) => generate({ level, seed, counting: false }));

  test('level 1: the first open chords, a step, fourth or fifth apart, in one key; slowly', () => {
    const vamps = Array.from({ length: COUNT }, (_, seed) => generate({ level: 1, seed }));
    // Common practice: the open chords that a class begins with.
    expect(new Set(vamps.flatMap(({ chords }) => chords))).toEqual(new Set('E Em A Am D Dm G C'.split(' ')));
    for (const { vamp, chords, truth, readings } of vamps) {
      for (const { frets } of vamp.slots)
        expect([chords.join(' '), frets.includes(0)]).toEqual([chords.join(' '), true]);
      for (const distance of truth.distances) expect(['1', '2', '4', '5', 'b7']).toContain(distance);
      expect(readings.length).toBeGreaterThan(0);
      expect(vamp.tempo >= 60 && vamp.tempo <= 90).toBe(true);
    }
    expect(new Set(vamps.map(({ truth }) => truth.count))).toEqual(new Set([1, 2, 3]));
    expect(new Set(vamps.map(({ groove }) => groove))).toEqual(new Set(['quarter-downs', 'relaxed-alternate']));
  });

  test('chords are counted where the level asks it, else where the caller does', () => {
    const lengths = (level: number, counting?: boolean) =>
      new Set(
        Array.from({ length: 200 }, (_, seed) =>
          generate(counting === undefined ? { level, seed } : { level, seed, counting }),
        ).map(({ chords }) => chords.length),
      );
    for (const { level, questions } of TWO_CHORD_LEVELS) {
      expect([level, lengths(level).has(4)]).toEqual([level, questions.includes('count')]);
      expect([level, lengths(level, true).has(4)]).toEqual([level, true]);
      expect([level, lengths(level, false).has(4)]).toEqual([level, false]);
    }
  });

  test('level 2: one quality a vamp; what stays is one chord, its top sometimes not', () => {
    const vamps = of(2);
    for (const made of vamps) {
      const [home, other] = chordsOf(made);
      expect(home?.quality).toBe(other?.quality);
      if (made.truth.directions[0] === 'same') expect(home && other && soundsAs(home, other)).toBe(true);
    }
    const still = vamps.filter(({ truth }) => truth.directions[0] === 'same');
    expect(still.some(({ truth }) => truth.top[0] !== truth.top[1])).toBe(true);
    expect(still.some(({ truth }) => truth.bass[0] === 40)).toBe(true);
  });

  test('level 2: the bass stands alone where the chord changes, in the foot grooves and the waltz', () => {
    const alone = new Set(['waltz', 'foot-and-closed-hat', 'foot-and-open-hat']);
    const vamps = of(2).slice(0, 400);
    expect(new Set(vamps.map(({ groove }) => groove))).toEqual(new Set(levelOf(2).grooves));
    for (const { vamp, groove, truth } of vamps) {
      expect(vamp.grooveText).not.toMatch(/^open-/m);
      const { notes, bars } = perform(vamp);
      for (const { time, chord } of bars) {
        const stroke = notes.filter((note) => note.time >= time - 1e-9 && note.time < time + 0.06);
        expect(stroke[0]?.midi).toBe(truth.bass[chord]);
        expect([groove, stroke.length === 1]).toEqual([groove, alone.has(groove)]);
      }
    }
    for (const { vamp, groove } of of(5).slice(0, 200))
      expect(vamp.grooveText.split('\n')).toHaveLength(grooveById(groove).text.split('\n').length);
  });

  test('level 3: one chord alone, two qualities on one root, two roots', () => {
    const vamps = of(3);
    expect(vamps.some(({ truth }) => truth.roots.length === 1 && truth.qualities[0] === 'power')).toBe(true);
    const oneRoot = vamps.filter(({ truth }) => truth.distances[0] === '1');
    expect(
      oneRoot.every(({ truth }) => truth.qualities[0] !== truth.qualities[1] && truth.directions[0] === 'same'),
    ).toBe(true);
    expect(new Set(oneRoot.map(({ truth }) => truth.qualities.join())).size).toBe(6);
  });

  test('level 5: from a major home to a chord of one of its keys', () => {
    const vamps = of(5);
    for (const { truth, readings } of vamps) {
      expect(truth.qualities[0]).toBe('major');
      expect(readings.length).toBeGreaterThan(0);
    }
    expect(new Set(vamps.map(({ truth }) => truth.distances[0]))).toEqual(
      new Set(['2', '3', '4', '5', '6', '7', 'b7']),
    );
  });

  test('level 6: home is I or i; its partner is of that key', () => {
    for (const made of of(6)) {
      const home = made.vamp.slots[0]?.chord;
      const mode = home?.quality === 'major' ? 'major' : 'minor';
      const owner = made.truth.keys.relatives.includes(`${home?.root} ${mode}`);
      expect([made.chords.join(' '), owner]).toEqual([made.chords.join(' '), true]);
    }
  });

  test('level 7: all 18 ordered pairs, of the parent keys, half with a single key', () => {
    const vamps = of(7);
    // The two-chord table: pairs of root distance and qualities that at least one major key owns (arithmetic).
    const table = 'MM2 MM4 MM5 MMb7 Mm2 Mm3 Mm5 Mm6 Mm7 mMb2 mMb3 mM4 mMb6 mMb7 mm2 mm4 mm5 mmb7';
    const kinds = vamps.map(({ truth }) => {
      const letters = truth.qualities.map((quality) => (quality === 'major' ? 'M' : 'm')).join('');
      return letters + (truth.distances[0] ?? '');
    });
    const counts = shares(kinds, String);
    expect([...counts.keys()].toSorted()).toEqual(table.split(' ').toSorted());
    expect(Math.min(...counts.values())).toBeGreaterThan(0.008);
    const single = vamps.filter(({ readings }) => readings.length === 1).length / vamps.length;
    expect(Math.abs(single - 0.5)).toBeLessThan(0.03);
    expect(vamps.every(({ readings }) => readings.length >= 1 && readings.length <= 3)).toBe(true);
    const { keys } = levelOf(7);
    for (const made of vamps)
      expect(keys.some((key) => chordsOf(made).every((chord) => keyOwns(key, chord)))).toBe(true);
  });
});

describe('asking for a vamp', () => {
  test('any seed will do, and any past', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...LEVELS),
        fc.maxSafeInteger(),
        fc.array(fc.nat(), { maxLength: 12 }),
        (level, seed, past) => {
          const recent = past.map((number) => generate({ level: level.level, seed: number }).vamp);
          const { vamp } = generate({ level: level.level, seed, recent });
          const chords = vamp.slots.map((slot) => slot.chord);
          const heard = recent.slice(-8).map((one) => one.slots.map((slot) => slot.chord));
          expect(heard.some((loop) => sameLoop(loop, chords))).toBe(false);
          expect(vamp.tempo).not.toBe(recent.at(-1)?.tempo);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('a level that is none, a seed that is none', () => {
    expect(() => generate({ level: 13, seed: 1 })).toThrow(/no level 13.*1 to 12/);
    expect(() => generate({ level: 2.5, seed: 1 })).toThrow(RangeError);
    expect(() => generate({ level: 2, seed: 0.5 })).toThrow(/seed/);
  });
});
