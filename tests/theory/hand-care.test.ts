import { describe, expect, test } from 'vitest';
import { grooveById, GROOVES } from '../../shared-theory/grooves.ts';
import {
  afterBar,
  afterUnheard,
  FAST_SECONDS,
  fastSeconds,
  RESTED,
  type HandRun,
} from '../../shared-theory/hand-care.ts';
import { barsOf } from '../../shared-theory/live.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { perform } from '../../shared-theory/perform.ts';
import { parseVamp } from '../../shared-theory/vamps.ts';
import { voice } from '../../shared-theory/voice.ts';

/** Bars of one chord in a groove, with a player's small differences. */
function barsIn(groove: string, tempo: number, human = true) {
  const { meter } = grooveById(groove);
  const beats = BEATS_PER_BAR[meter];
  const slots = parseVamp('Em', Math.ceil(beats)).map((slot) => ({ ...slot, beats: beats * 8 }));
  return barsOf(perform(voice({ slots, groove, tempo, seed: 5 }), { human, loops: 2 }));
}

const runOf = (groove: string, tempo: number): HandRun => barsIn(groove, tempo).reduce(afterBar, RESTED);

describe('fast downstrokes in a row', () => {
  // Common practice: an arm that goes down more than about four times a second without an up between soon tires.
  test('a driven bar is all of them, also with one stroke left out where its chord begins', () => {
    const bars = barsIn('driving-eighths', 160);
    const seconds = bars.reduce((sum, bar) => sum + bar.seconds, 0);
    expect(runOf('driving-eighths', 160).seconds).toBeGreaterThan(seconds - 1.5);
    expect(runOf('driving-eighths', 160).seconds).toBeLessThanOrEqual(seconds + 1e-6);
  });

  test('at four a second and slower, differences of the hand included, there are none that last', () => {
    for (const tempo of [120, 121]) {
      let run = RESTED;
      for (const bar of barsIn('driving-eighths', tempo)) run = afterBar(run, bar);
      expect(run.seconds).toBeLessThan(5);
    }
  });

  test.each(['relaxed-alternate', 'campfire-strum', 'waltz', 'quarter-downs'])(
    '%s has none at its fastest: the hand comes back by an up, or has time',
    (groove) => {
      expect(runOf(groove, grooveById(groove).tempo[1]).seconds).toBe(0);
    },
  );

  test('a bar by itself: from the first of its fast downs to the last, none where nothing sounds', () => {
    const [, bar] = barsIn('driving-eighths', 150, false);
    if (!bar) throw new Error('there are bars');
    expect(fastSeconds(bar)).toBeCloseTo(7 * 0.2, 1);
    expect(fastSeconds({ ...bar, notes: [] })).toBe(0);
  });

  test('a second of rest ends the run, less does not', () => {
    const driven = runOf('driving-eighths', 160);
    expect(afterBar(driven, { seconds: 0.5, notes: [] }).seconds).toBeGreaterThanOrEqual(driven.seconds);
    expect(afterBar(driven, { seconds: 1.2, notes: [] })).toMatchObject({ seconds: 0 });
  });

  test('what the room plays on unheard goes on with a run, and begins none', () => {
    expect(afterUnheard(runOf('driving-eighths', 160), 3).seconds).toBe(runOf('driving-eighths', 160).seconds + 3);
    expect(afterUnheard(RESTED, 3)).toEqual(RESTED);
  });

  test('no groove of the catalogue that goes down and up counts, whatever its tempo', () => {
    for (const { id, slots, tempo } of GROOVES) {
      const downs = slots.filter(({ stroke }) => stroke === 'down').length;
      const ups = slots.filter(({ stroke }) => stroke === 'up').length;
      if (ups < downs / 2) continue;
      let run = RESTED;
      for (const bar of barsIn(id, tempo[1])) {
        run = afterBar(run, bar);
        expect(run.seconds, id).toBeLessThan(8);
      }
    }
  });

  test('the threshold is a little under a quarter of a second', () => {
    expect(FAST_SECONDS).toBeGreaterThan(0.22);
    expect(FAST_SECONDS).toBeLessThan(0.25);
  });
});
