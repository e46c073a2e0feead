import { describe, expect, test } from 'vitest';
import { chordSymbol, readSymbol } from '../../../shared-theory/chords.ts';
import type { Quality } from '../../../shared-theory/chords.ts';
import { distanceJudge } from '../../../shared-theory/questions/distance/judge.ts';
import { numeralJudge } from '../../../shared-theory/questions/numeral/judge.ts';
import { qualityJudge } from '../../../shared-theory/questions/quality/judge.ts';
import { neckPlaces } from '../../../shared-theory/questions/root/ask.ts';
import { rootJudge } from '../../../shared-theory/questions/root/judge.ts';
import type { AskedSeventh, NeckPlace } from '../../../shared-theory/questions/question.ts';
import { seventhJudge } from '../../../shared-theory/questions/seventh/judge.ts';
import { pitchClassAt } from '../../../shared-theory/questions/root/places.ts';
import { inversionsOfSound, readingsOfSound } from '../../../shared-theory/questions/same-sound.ts';
import { context, played } from './given.ts';

describe('other names for what sounds', () => {
  // By the notes of each: common practice.
  test.each([
    ['C', 'C'],
    ['C/E', 'C'],
    ['C6', 'C6'],
    ['C6/A', 'C6 Am7'],
    ['Am7', 'Am7'],
    ['Am7/C', 'Am7 C6'],
    ['C/A', 'C C6 Am7'],
    ['Am/G', 'Am Am7'],
    ['Am/F', 'Am Fmaj7'],
    ['Bdim/G', 'Bdim G7'],
    ['Dsus4', 'Dsus4'],
    ['Dsus4/G', 'Dsus4 Gsus2'],
    ['Caug', 'Caug Eaug Abaug'],
    ['Bdim7', 'Bdim7 Ddim7 Fdim7 G#dim7'],
    ['E5', 'E5'],
  ])('%s: %s', (text, names) => {
    const readings = readingsOfSound(readSymbol(text)).map(chordSymbol);
    expect(readings[0]).toBe(names.split(' ')[0]);
    expect(readings.toSorted()).toEqual(names.split(' ').toSorted());
  });

  test.each([
    ['C6', 'Am7'],
    ['Cm6', 'Am7b5'],
    ['C6/G', 'Am7'],
    ['Csus2', 'Gsus4'],
    ['Csus4', 'Fsus2'],
    // Known already by their bass.
    ['C6/A', ''],
    ['Dsus4/G', ''],
    // A seventh chord on its root inverts nothing.
    ['Am7', ''],
    ['C', ''],
    ['E5', ''],
  ])('%s as an inversion: %s', (text, names) => {
    expect(inversionsOfSound(readSymbol(text)).map(chordSymbol).join(' ')).toBe(names);
  });

  test.each<[string, NeckPlace, Quality, AskedSeventh]>([
    ['C6 F', { string: 5, fret: 0 }, 'minor', 'seventh'],
    ['Csus2 F', { string: 6, fret: 3 }, 'suspended-fourth', 'none'],
  ])(
    '%s from the root of an inversion: its quality and seventh are right from there alone',
    (text, root, quality, seventh) => {
      const own = context(0, played(text), {}, { 'root-0': root });
      const alone = context(0, played(text));
      expect(rootJudge.mark(root, alone)).toEqual({ credit: 1, exact: true, errors: [] });
      expect([qualityJudge.mark(quality, own).exact, qualityJudge.mark(quality, alone).exact]).toEqual([true, false]);
      expect(seventhJudge.mark(seventh, own).exact).toBe(true);
      if (seventh !== 'none') expect(seventhJudge.mark(seventh, alone).exact).toBe(false);
    },
  );

  test('are as right as the written one', () => {
    const given = context(0, played('Am7/C F'));
    for (const quality of ['major', 'minor'] as const) expect(qualityJudge.mark(quality, given).exact).toBe(true);
    expect(qualityJudge.mark('suspended-fourth', given).exact).toBe(false);
    const roots = neckPlaces()
      .filter((place) => rootJudge.mark(place, given).exact)
      .map(pitchClassAt);
    expect(new Set(roots)).toEqual(new Set([9, 0]));
    expect(rootJudge.chance(given)).toBe(roots.length / neckPlaces().length);
    // From A up a sixth and down a third, or from C, on its root, up a fourth.
    const distances = Array.from({ length: 25 }, (_, index) => index - 12);
    const right = distances.filter((place) => distanceJudge.mark(place, context(1, played('Am7/C F', ['up']))).exact);
    expect(right).toEqual([-4, 5, 8]);
    expect(numeralJudge.mark(['I', 'IV'], given).exact).toBe(true);
    expect(numeralJudge.mark(['vi', 'IV'], given).exact).toBe(true);
  });

  test.each<[string, string, number[], number]>([
    ['C F/A', 'up', [5, -7], 5],
    ['C F/A', 'down', [-7, 5], -7],
    ['C G/B', 'down', [-5, 7], -5],
    ['C C/E', 'up', [0, 12, -12], 0],
    ['C/E C', 'down', [0, 12, -12], 0],
    // The bass stays, the root does not.
    ['C F/C', 'same', [5, -7], 5],
    ['C F', 'up', [5], 5],
  ])('%s with the bass %s: either way round counts where a bass is no root', (text, direction, places, first) => {
    const given = context(1, played(text, [direction as 'up' | 'down' | 'same']));
    expect(distanceJudge.truth(given)).toBe(first);
    expect([distanceJudge.truth(given), ...distanceJudge.also(given)]).toEqual(places);
    for (const place of places)
      expect(distanceJudge.mark(place, given)).toEqual({ credit: 1, exact: true, errors: [] });
  });
});
