import { beforeAll, describe, expect, test } from 'vitest';
import { chordSymbol, soundsAs } from '../../shared-theory/chords.ts';
import { generate, type GeneratedVamp } from '../../shared-theory/generate.ts';
import { grooveById, strokesOf } from '../../shared-theory/grooves.ts';
import { FORMS } from '../../shared-theory/level.ts';
import { LEVELS, levelOf, type Level } from '../../shared-theory/levels.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { perform } from '../../shared-theory/perform.ts';
import { pitchClass } from '../../shared-theory/pitch.ts';
import { addedBy, barsOf, sameLoop } from '../../shared-theory/pools.ts';
import { truthOf } from '../../shared-theory/truth.ts';
import { evening, gap, shares } from './made-vamps.ts';

const COUNT = 3000;
const chordsOf = ({ vamp }: GeneratedVamp) => vamp.slots.map((slot) => slot.chord);

/** The levels whose loops are longer than two chords, sevenths, slash chords or of other homes. */
const LONG = LEVELS.filter(({ leadsOn }) => leadsOn);

/** Milliseconds that thousands of vamps may take on a busy machine. */
const PATIENCE = 240_000;

describe.each(LONG.map((level) => [level.level, level] as const))('level %d', (number, level: Level) => {
  let vamps: readonly GeneratedVamp[] = [];
  beforeAll(() => {
    vamps = evening(number, COUNT, level.questions.includes('count'));
  }, PATIENCE);

  test('every vamp is of its level: grooves, lengths, qualities, its own truth', () => {
    for (const made of vamps) {
      const { vamp, groove, truth } = made;
      expect(level.grooves).toContain(groove);
      const bar = BEATS_PER_BAR[vamp.meter];
      const bars = vamp.slots.map(({ beats }) => beats / bar);
      expect(bars.every((each) => Number.isInteger(each) && each <= 4 * level.barsPerChord)).toBe(true);
      for (const { quality } of chordsOf(made))
        expect([made.chords.join(' '), level.qualities]).toEqual([
          made.chords.join(' '),
          expect.arrayContaining([quality]),
        ]);
      expect(made.chords).toEqual(chordsOf(made).map(chordSymbol));
      expect(truth.keys.majors).toEqual(made.readings.map(({ key }) => key));
    }
    for (const { vamp, truth } of vamps.slice(0, 60)) expect(truthOf(vamp, perform(vamp, { loops: 2 }))).toEqual(truth);
  });

  test('the same seed and past give the same vamp; another seed another', () => {
    for (const made of vamps.slice(0, 20))
      expect(generate({ level: number, seed: made.seed })).toEqual(generate({ level: number, seed: made.seed }));
    expect(new Set(vamps.slice(0, 50).map(({ chords }) => chords.join())).size).toBeGreaterThan(35);
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

  test('the bass leads on: from chord to chord no further than the level’s largest move; what comes back keeps its shape', () => {
    for (const { vamp, chords, truth } of vamps) {
      for (const [slot, bass] of truth.bass.entries()) {
        if (slot > 0) {
          const move = Math.abs(bass - (truth.bass[slot - 1] ?? bass));
          expect([chords.join(' '), move <= level.largestMove]).toEqual([chords.join(' '), true]);
        }
        const first = chords.indexOf(chords[slot] ?? '');
        expect(vamp.slots[slot]?.frets).toBe(vamp.slots[first]?.frets);
      }
      expect(Math.max(...truth.bass)).toBeLessThanOrEqual(54);
    }
  });

  test('no chord follows itself over the same bass, but where the loop comes round', () => {
    for (const made of vamps) {
      const chords = made.chords;
      for (const [slot, chord] of chords.entries()) if (slot > 0) expect(chord).not.toBe(chords[slot - 1]);
    }
  });

  test('as many vamps in downs alone as down and up, neither now and then, every groove often', () => {
    const of = shares(vamps, ({ truth }) => truth.strokes ?? 'neither');
    const asked = (of.get('all-downs') ?? 0) + (of.get('down-up') ?? 0);
    expect(Math.abs((of.get('all-downs') ?? 0) / asked - 0.5)).toBeLessThan(0.035);
    expect(asked).toBeGreaterThan(0.85);
    for (const made of vamps) expect(made.truth.strokes).toBe(strokesOf(grooveById(made.groove)));
    expect(Math.min(...level.grooves.map((id) => shares(vamps, ({ groove }) => groove).get(id) ?? 0))).toBeGreaterThan(
      0.06,
    );
  });

  test('no home root and no distance is so usual that always saying it earns', () => {
    const roots = shares(vamps, ({ truth }) => pitchClass(truth.roots[0] ?? ''));
    expect(Math.max(...roots.values())).toBeLessThan(Math.max(0.15, 1.3 / roots.size) + 0.01);
    const distances = vamps.flatMap((made) =>
      chordsOf(made).flatMap((chord, slot) =>
        slot > 0 && chordsOf(made).findIndex((other) => soundsAs(other, chord)) === slot
          ? [made.truth.distances[slot - 1] ?? '']
          : [],
      ),
    );
    for (const [distance, share] of shares(distances, String))
      expect([distance, share < 0.26]).toEqual([distance, true]);
  });

  test('tempo, strokes and register tell nothing of the chords', () => {
    const figures = [
      ({ vamp }: GeneratedVamp) => vamp.tempo,
      ({ truth }: GeneratedVamp) => (truth.strokes === 'all-downs' ? 1 : 0),
      ({ truth }: GeneratedVamp) => truth.bass[0] ?? 0,
    ];
    for (const figure of figures) {
      expect(gap(vamps, figure, ({ truth }) => truth.sevenths[0] !== 'none')).toBeLessThan(0.2);
      expect(gap(vamps, figure, ({ truth }) => truth.qualities[0] === 'major')).toBeLessThan(0.17);
      expect(gap(vamps, figure, ({ truth }) => truth.count > 3)).toBeLessThan(0.2);
      expect(gap(vamps, figure, ({ readings }) => readings.length === 1)).toBeLessThan(0.17);
    }
  });
});

describe('what each level is for', () => {
  const of = (level: number) => evening(level, COUNT);

  test('level 9: three and four chords in three orders, home from any chord of the round, and pairs as before', () => {
    const vamps = of(9);
    const orders = shares(
      vamps.filter(({ chords }) => chords.length === 4),
      ({ chords }) => chords.map((chord) => 'ABCD'[[...new Set(chords)].indexOf(chord)]).join(''),
    );
    expect([...orders.keys()].toSorted()).toEqual(['ABAC', 'ABCB', 'ABCD']);
    expect(Math.max(...orders.values())).toBeLessThan(0.45);
    for (const { readings, chords } of vamps)
      expect([chords.join(' '), readings.length > 0]).toEqual([chords.join(' '), true]);
    // Rotations: the four-chord rounds begin on every degree of their key but the diminished one.
    const rounds = vamps.filter(({ truth }) => truth.count === 4);
    const homes = shares(rounds, ({ readings }) => readings[0]?.numerals[0] ?? '');
    expect([...homes.keys()].toSorted()).toEqual(['I', 'IV', 'V', 'ii', 'iii', 'vi'].toSorted());
    expect(Math.max(...homes.values())).toBeLessThan(0.35);
  });

  test('level 11: home is its root, but in one loop of eight at most; then a major chord stands off it', () => {
    const vamps = evening(11, COUNT);
    const off = vamps.filter((made) => chordsOf(made)[0]?.bass !== undefined);
    expect(off.length / COUNT).toBeGreaterThan(0.06);
    expect(off.length / COUNT).toBeLessThan(1 / 8);
    for (const made of off)
      expect([made.chords.join(' '), chordsOf(made)[0]?.quality]).toEqual([made.chords.join(' '), 'major']);
    // A minor chord over its third is a passing one: it is rare.
    const rare = vamps.filter((made) =>
      chordsOf(made).some(
        ({ root, bass, quality }) =>
          bass && quality === 'minor' && (pitchClass(bass) - pitchClass(root) + 12) % 12 === 3,
      ),
    );
    expect(rare.length / COUNT).toBeLessThan(0.02);
  });

  test('level 12: of three loops two are of another home or have a visitor; the third is of one key as before', () => {
    const vamps = evening(12, COUNT);
    const isAdded = FORMS.map((form) => addedBy(levelOf(12), form));
    const added = vamps.filter((made) => isAdded.some((is) => is(chordsOf(made))));
    expect(Math.abs(added.length / COUNT - 2 / 3)).toBeLessThan(0.05);
    // And no key owns nearly half of all: "none" is never sure, nor a key.
    const unowned = vamps.filter(({ readings }) => readings.length === 0);
    expect(Math.abs(unowned.length / COUNT - 0.44)).toBeLessThan(0.06);
  });

  test('a loop of three chords holds its last for two bars; other rounds have a bar a chord', () => {
    expect(barsOf('turn', [])).toEqual([1, 1, 2]);
    for (const { vamp } of of(9)) expect(new Set(vamp.slots.map(({ beats }) => beats)).size).toBe(1);
  });
});
