import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { withBand } from '../../../shared-theory/band.ts';
import { generate } from '../../../shared-theory/generate.ts';
import {
  ACCENTS,
  emptyGroove,
  GRIDS,
  grooveLine,
  silentHand,
  type Groove,
  type GrooveSlot,
} from '../../../shared-theory/grooves.ts';
import { LEVELS } from '../../../shared-theory/levels.ts';
import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { perform } from '../../../shared-theory/perform.ts';
import { contactsOf } from '../../../shared-theory/contacts.ts';
import { heardSlot } from '../../../shared-theory/sounding.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';

const BOTH = { kit: true, bass: true };

/** A stroke that some groove may have: muted, choked or ringing anywhere, or the hand passing by. */
const anySlot = fc.oneof(
  fc.constant(null),
  fc.record({
    zone: fc.constantFrom('root', 'other-bass', 'low', 'middle', 'high', 'all'),
    touch: fc.constantFrom('open', 'ring', 'half', 'palm', 'dead', 'choke'),
    accent: fc.constantFrom(...Object.values(ACCENTS).filter((accent) => accent > 0)),
  }),
);

const anyGroove: fc.Arbitrary<Groove> = fc
  .constantFrom(...(Object.keys(GRIDS) as (keyof typeof GRIDS)[]))
  .chain((grid) =>
    fc.array(anySlot, { minLength: GRIDS[grid].slots, maxLength: GRIDS[grid].slots }).map((cells): Groove => {
      const drawn = emptyGroove(grid);
      const slots = cells.map((cell, place): GrooveSlot => {
        const silent = silentHand(drawn, place);
        if (!cell) return silent;
        return { ...cell, stroke: silent.stroke === 'down-silent' ? 'down' : 'up' };
      });
      return { ...drawn, slots };
    }),
  )
  .filter(({ slots }) => slots.some(({ accent }) => accent > 0));

test('whatever groove a teacher draws: the band keeps its grid, and the bass begins each chord', () => {
  fc.assert(
    fc.property(anyGroove, fc.integer({ min: 1, max: 1000 }), (groove, seed) => {
      const slots = parseVamp('Em D', 4).map(({ chord }) => ({ chord, beats: BEATS_PER_BAR[groove.meter] * 2 }));
      const vamp = {
        ...voice({ slots, groove: null, tempo: 80, seed }),
        meter: groove.meter,
        grooveText: grooveLine(groove),
      };
      const { kit = [], bass = [], seconds } = withBand(vamp, perform(vamp, { loops: 2 }), BOTH);
      const beat = 60 / vamp.tempo;
      const grid = contactsOf(vamp).map(({ beats }) => beats * beat);
      const onGrid = (time: number) => grid.some((place) => Math.abs((time % (seconds / 2)) - place) < 1e-6);
      for (const [index, { time }] of kit.entries()) {
        expect(onGrid(time) || Math.abs(time - seconds / 2) < 1e-6).toBe(true);
        expect(time).toBeGreaterThan(kit[index - 1]?.time ?? -1);
      }
      const begun = [0, 1, 2, 3].map((stay) => (stay * seconds) / 4);
      for (const [stay, start] of begun.entries())
        expect(bass.find(({ time }) => Math.abs(time - start) < 1e-6)?.chord).toBe(stay % 2);
      for (const { time, duration } of bass) {
        expect(duration).toBeGreaterThan(0);
        expect(time + duration).toBeLessThanOrEqual(seconds + 1e-6);
      }
    }),
    { numRuns: 80, seed: 5 },
  );
});

describe('vamps of every level', () => {
  test.each(LEVELS.map(({ level }) => level))('level %i: the bass guitar moves as the guitar’s bass does', (level) => {
    for (let seed = 0; seed < (level > 9 ? 2 : 5); seed += 1) {
      const { vamp } = generate({ level, seed });
      const { notes, bass = [] } = withBand(vamp, perform(vamp), BOTH);
      const guitar = vamp.slots.map(
        ({ chord }, slot) =>
          heardSlot(
            chord,
            notes.filter((note) => note.chord === slot),
          ).bass,
      );
      const under = vamp.slots.map((_, slot) => {
        const first = bass.find((note) => note.chord === slot);
        if (!first) throw new Error(`no bass under chord ${slot + 1} of level ${level}, seed ${seed}`);
        expect(first.midi).toBeGreaterThanOrEqual(28);
        expect(first.midi).toBeLessThanOrEqual(55);
        return first.midi;
      });
      for (const [slot, midi] of under.entries()) {
        const next = (slot + 1) % under.length;
        const [guitarMove, bassMove] = [(guitar[next] ?? 0) - (guitar[slot] ?? 0), (under[next] ?? 0) - midi];
        expect(bassMove).toBe(guitarMove);
      }
    }
  });
});
