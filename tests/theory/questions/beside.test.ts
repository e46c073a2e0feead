import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { besideAll, besideShown } from '../../../shared-theory/questions/beside.ts';
import { KINDS } from '../../../shared-theory/questions/question.ts';
import { guitarTruth } from '../../../shared-theory/truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { EM_D, owners, played, truths } from './given.ts';

/** A, B minor, A an octave up, D: what is asked of a chord is asked of its first slot. */
const LOOP = played('A Bm A D', ['up', 'up', 'up']);

describe('what the teacher’s marks may read', () => {
  test('all that sounded, by slot', () => {
    expect(besideAll(EM_D)).toEqual({
      qualities: ['minor', 'major'],
      roots: [4, 2],
      sevenths: ['none', 'none'],
      basses: [4, 2],
      distances: [null, 10],
      bass: [40, 50],
      top: [64, 66],
      slots: 2,
      sameChordVaries: false,
      chords: [
        { root: 'E', quality: 'minor' },
        { root: 'D', quality: 'major' },
      ],
      keys: EM_D.keys,
      returned: null,
      tempo: 100,
    });
    expect(besideAll(LOOP).distances).toEqual([null, 2, 12, 5]);
  });

  test('and how the round went', () => {
    expect(besideAll(EM_D, { steady: false }).tempo).toBeNull();
    expect(besideAll(EM_D, { returned: true }).returned).toBe(true);
    expect(besideAll(EM_D, { returned: false }).returned).toBe(false);
  });

  test('a place that the line does not have is none', () => {
    expect(besideAll({ ...EM_D, directions: ['same'] }).distances).toEqual([null, null]);
  });

  test('each chord once, and how often one comes', () => {
    expect(besideAll(LOOP).slots).toBe(4);
    expect(besideAll(LOOP).chords.map(({ root }) => root)).toEqual(['A', 'B', 'D']);
  });

  test('a chord that sounds in two ways', () => {
    const groove = (id: string) => besideAll(guitarTruth(parseVamp('C', 4), { groove: id })).sameChordVaries;
    expect([groove('boom-chick'), groove('quarter-downs')]).toEqual([true, false]);
    expect(besideAll(LOOP).sameChordVaries).toBe(true);
    const steady = played('A Bm A D', ['up', 'same', 'up']);
    expect(besideAll(steady).sameChordVaries).toBe(false);
    expect(besideAll({ ...steady, top: [64, 66, 64, 66] }).sameChordVaries).toBe(false);
    expect(besideAll({ ...steady, top: [64, 66, 69, 66] }).sameChordVaries).toBe(true);
  });
});

describe('what a student’s marks may read', () => {
  const NOTHING = {
    qualities: [null, null, null, null],
    roots: [null, null, null, null],
    sevenths: [null, null, null, null],
    basses: [null, null, null, null],
    distances: [null, null, null, null],
    bass: [],
    top: [],
    slots: null,
    chords: [],
    sameChordVaries: false,
    keys: owners([], []),
    returned: null,
    tempo: null,
  };

  test.each<[string, Parameters<typeof besideShown>[1], Partial<typeof NOTHING> | object]>([
    ['nothing before anything is shown', [], {}],
    [
      'the quality of a chord, wherever it stands',
      [{ kind: 'quality', target: 0 }],
      { qualities: ['major', null, 'major', null] },
    ],
    ['its root', [{ kind: 'root', target: 0 }], { roots: [9, null, 9, null] }],
    ['its seventh', [{ kind: 'seventh', target: 2 }], { sevenths: ['none', null, 'none', null] }],
    ['its bass', [{ kind: 'bass', target: 0 }], { basses: [9, null, 9, null] }],
    ['of the other chord', [{ kind: 'root', target: 1 }], { roots: [null, 11, null, null] }],
    ['a distance, of its own slot alone', [{ kind: 'distance', target: 1 }], { distances: [null, 2, null, null] }],
    [
      'no more by the count or the way',
      [
        { kind: 'count', target: 0 },
        { kind: 'direction', target: 1 },
      ],
      {},
    ],
    [
      'with the keys each chord, no distance, and not how often it comes',
      [{ kind: 'keys', target: 0 }],
      {
        qualities: ['major', 'minor', 'major', 'major'],
        roots: [9, 11, 9, 2],
        sevenths: ['none', 'none', 'none', 'none'],
        basses: [9, 11, 9, 2],
        chords: [
          { root: 'A', quality: 'major' },
          { root: 'B', quality: 'minor' },
          { root: 'D', quality: 'major' },
        ],
        keys: LOOP.keys,
      },
    ],
  ])('%s', (_case, shown, told) => {
    expect(besideShown(LOOP, shown)).toEqual({ ...NOTHING, ...told });
  });

  test('a seventh, and another bass, make another chord of it: neither tells of the other', () => {
    const slash = played('C C7 C/E C', ['same', 'up', 'same']);
    expect(besideShown(slash, [{ kind: 'quality', target: 0 }]).qualities).toEqual(['major', null, 'major', 'major']);
    expect(besideShown(slash, [{ kind: 'bass', target: 0 }]).basses).toEqual([0, null, null, 0]);
    expect(besideShown(slash, [{ kind: 'bass', target: 2 }]).basses).toEqual([null, null, 4, null]);
  });

  test('is never other than what sounded, and never tempo, register or top', () => {
    const shown = fc.array(fc.record({ kind: fc.constantFrom(...KINDS), target: fc.nat(2) }));
    fc.assert(
      fc.property(truths, shown, (truth, questions) => {
        const [told, all] = [besideShown(truth, questions), besideAll(truth)];
        for (const list of ['qualities', 'roots', 'sevenths', 'basses', 'distances'] as const) {
          expect(told[list]).toHaveLength(all[list].length);
          for (const [slot, each] of told[list].entries()) if (each !== null) expect(each).toBe(all[list][slot]);
        }
        if (told.chords.length > 0) expect(told.chords).toEqual(all.chords);
        if (told.keys.majors.length > 0) expect(told.keys).toEqual(all.keys);
        expect(told).toMatchObject({
          bass: [],
          top: [],
          slots: null,
          sameChordVaries: false,
          returned: null,
          tempo: null,
        });
      }),
    );
  });
});
