import { describe, expect, test } from 'vitest';
import { beatX, layStave } from '../../../client/host/stave-layout.ts';

const slots = (...beats: number[]) => beats.map((count) => ({ chord: 'C', beats: count, frets: [] }));

describe('layStave', () => {
  // Common practice: 6/8 is felt in two dotted quarters.
  test.each([
    ['4/4', [8, 8], 4, 16],
    ['3/4', [3, 3], 2, 6],
    ['6/8', [2, 2], 2, 4],
    ['12/8', [4], 1, 4],
    ['4/4', [2, 2], 1, 4],
    ['4/4', [4, 4, 2, 6], 4, 16],
  ] as const)('%s with slots of %j beats: %i bars, %i slashes', (meter, beats, bars, slashes) => {
    const layout = layStave({ meter, slots: slots(...beats) }, 112, 1696);
    expect(layout.bars).toHaveLength(bars);
    expect(layout.slashes).toHaveLength(slashes);
    expect(layout.slots).toHaveLength(beats.length);
  });

  test('bars and slots fill the line without gaps', () => {
    const { bars, slots: places } = layStave({ meter: '4/4', slots: slots(8, 2, 6) }, 112, 1696);
    expect(bars[0]?.x).toBe(112);
    for (const [index, bar] of bars.entries()) expect(bar.x).toBeCloseTo(112 + index * 424);
    expect(places.reduce((sum, { width }) => sum + width, 0)).toBeCloseTo(1696);
    expect(places[1]?.x).toBe(bars[2]?.x);
  });

  test('the sweep stands on the slash of the beat that sounds, and runs on over a bar line without a leap', () => {
    const { bars, slashes } = layStave({ meter: '4/4', slots: slots(8, 8) }, 112, 1696);
    for (const [bar, place] of bars.entries()) {
      for (let beat = 0; beat < 4; beat += 1) expect(beatX(place, beat)).toBeCloseTo(slashes[bar * 4 + beat] ?? 0);
    }
    const [, second, third] = bars;
    if (!second || !third) throw new Error('four bars were laid');
    expect(beatX(second, 4)).toBeCloseTo(beatX(third, 0), -1);
  });
});
