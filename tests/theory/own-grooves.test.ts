import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { withOpening } from '../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { perform } from '../../shared-theory/perform.ts';
import { truthOf } from '../../shared-theory/truth.ts';
import { parseVamp } from '../../shared-theory/vamps.ts';
import { voice } from '../../shared-theory/voice.ts';
import { anyGroove } from '../support/any-groove.ts';

test('whatever a teacher draws, with an opening bar its chords are heard, and no string sounds twice at once', () => {
  fc.assert(
    fc.property(anyGroove, fc.boolean(), fc.constantFrom('Em D', 'C7 F', 'G Bm', 'Am E'), (drawn, human, chords) => {
      const groove = withOpening(drawn);
      expect(groove.slots).toEqual(drawn.slots);
      const beats = BEATS_PER_BAR[groove.meter];
      const slots = parseVamp(chords, beats).map((slot) => ({ ...slot, beats: 2 * beats }));
      const vamp = voice({ slots, groove, tempo: groove.tempo[1], seed: 1 });
      const loud = perform(vamp, { loops: 2, human });
      const plain = voice({ slots, groove: null, meter: groove.meter, tempo: groove.tempo[1], seed: 1 });
      expect(truthOf(vamp, loud).bass).toEqual(truthOf(plain, perform(plain)).bass);
      const rings = new Map<number, number>();
      for (const note of loud.notes) {
        expect(note.duration).toBeGreaterThan(0);
        expect(note.time).toBeGreaterThanOrEqual((rings.get(note.string) ?? 0) - 1e-9);
        rings.set(note.string, note.time + note.duration);
      }
    }),
    { numRuns: 150 },
  );
});
