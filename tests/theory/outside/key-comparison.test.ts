import { describe, expect, test } from 'vitest';
import { diatonicChart } from '../../../shared-theory/degrees.ts';
import { relativeKey, usualKey } from '../../../shared-theory/keys.ts';
import { pitchClass } from '../../../shared-theory/pitch.ts';
import { KEY_IDS } from '../../../shared-theory/questions/keys/ask.ts';
import { keysJudge } from '../../../shared-theory/questions/keys/judge.ts';
import type { Mark, MarkingContext } from '../../../shared-theory/questions/question.ts';
import { settlerJudge } from '../../../shared-theory/questions/settler/judge.ts';
import type { Policy, Truth } from '../../../shared-theory/truth.ts';
import { context, owners } from '../questions/given.ts';

/*
 * How two keys are related, as the public evaluations of key finding compare them (MIREX, “Audio Key Detection”; the same rule
 * and its test pairs in mir_eval: Raffel et al., “mir_eval: a transparent implementation of common MIR metrics”, ISMIR 2014):
 * the same key 1, a perfect fifth 0.5, relative 0.3, parallel 0.2, any other 0. The fifth is the one above; since 2017 the one
 * below as well.
 */
type Relation = 'same' | 'fifth-above' | 'fifth-below' | 'relative' | 'parallel' | 'other';
type Sound = { readonly tonic: number; readonly mode: 'major' | 'minor' };

const SCORE: Readonly<Record<Relation, number>> = {
  same: 1,
  'fifth-above': 0.5,
  'fifth-below': 0.5,
  relative: 0.3,
  parallel: 0.2,
  other: 0,
};

function relation(reference: Sound, estimate: Sound): Relation {
  const above = (estimate.tonic - reference.tonic + 12) % 12;
  if (reference.mode === estimate.mode) {
    return above === 0 ? 'same' : above === 7 ? 'fifth-above' : above === 5 ? 'fifth-below' : 'other';
  }
  if (above === (reference.mode === 'major' ? 9 : 3)) return 'relative';
  return above === 0 ? 'parallel' : 'other';
}

const soundOf = (name: string): Sound => {
  const [tonic = '', mode] = name.split(' ');
  return { tonic: pitchClass(tonic), mode: mode === 'minor' ? 'minor' : 'major' };
};
const soundOfId = (id: string): Sound => ({
  tonic: Number.parseInt(id, 10),
  mode: id.endsWith('M') ? 'major' : 'minor',
});

describe('the published comparison', () => {
  // Test pairs of mir_eval, reference and estimate; then what the rule itself gives for C major and C minor.
  test.each([
    ['C major', 'C major', 1],
    ['G minor', 'G minor', 1],
    ['Db minor', 'Ab minor', 0.5],
    ['A minor', 'D major', 0],
    ['A major', 'F# minor', 0.3],
    ['F# minor', 'A major', 0.3],
    ['Gb major', 'Gb minor', 0.2],
    ['G minor', 'G major', 0.2],
    ['G major', 'C major', 0.5],
    ['A minor', 'C minor', 0],
    ['C major', 'G major', 0.5],
    ['C major', 'F major', 0.5],
    ['C major', 'A minor', 0.3],
    ['C major', 'C minor', 0.2],
    ['C minor', 'G minor', 0.5],
    ['C minor', 'F minor', 0.5],
    ['C minor', 'Eb major', 0.3],
    ['C minor', 'C major', 0.2],
    ['C minor', 'A minor', 0],
  ])('%s, estimated as %s: %f', (reference, estimate, score) => {
    expect(SCORE[relation(soundOf(reference), soundOf(estimate))]).toBe(score);
  });

  test('only the fifth above before 2017', () => {
    expect(relation(soundOf('G major'), soundOf('C major'))).toBe('fifth-below');
    expect(relation(soundOf('Db minor'), soundOf('Ab minor'))).toBe('fifth-above');
  });
});

/** A loop that one major key alone owns: its IV and V (common practice: the pair that pins a key). */
const pinned = (tonic: number): Partial<Truth> => {
  const key = usualKey(`${tonic}M`);
  const chords = diatonicChart(key)
    .slice(3, 5)
    .map(({ chord }) => chord);
  const majors = [`${key.tonic} major`];
  return {
    roots: chords.map(({ root }) => root),
    qualities: chords.map(({ quality }) => quality),
    keys: owners(majors, [...majors, `${relativeKey(key).tonic} minor`]),
  };
};
/** The same key as what a settler leaves of two: itself and the one a fifth above. */
const settled = (tonic: number): Partial<Truth> => {
  const { keys: left = owners([], []), ...loop } = pinned(tonic);
  const above = usualKey(`${(tonic + 7) % 12}M`);
  const keys = owners(
    [...left.majors, `${above.tonic} major`],
    [...left.relatives, `${above.tonic} major`, `${relativeKey(above).tonic} minor`],
  );
  return { ...loop, keys, settlers: [{ chord: loop.roots?.[0] ?? '', note: null, keys: left }] };
};

/** Our mark of one key alone, for each of the twelve majors and all twenty-four answers, by published relation. */
function marksBy(
  markOf: (answer: readonly string[], given: MarkingContext) => Mark,
  truthOf: (tonic: number) => Partial<Truth>,
  policy: Policy,
): ReadonlyMap<Relation, readonly { readonly id: string; readonly above: number; readonly mark: Mark }[]> {
  const marks = new Map<Relation, { id: string; above: number; mark: Mark }[]>();
  for (let tonic = 0; tonic < 12; tonic += 1) {
    const given = context(0, truthOf(tonic), { policy });
    for (const id of KEY_IDS) {
      const estimate = soundOfId(id);
      const name = relation({ tonic, mode: 'major' }, estimate);
      const row = { id, above: (estimate.tonic - tonic + 12) % 12, mark: markOf([id], given) };
      marks.set(name, [...(marks.get(name) ?? []), row]);
    }
  }
  return marks;
}

const one = (rows: readonly { readonly mark: Mark }[] | undefined): unknown => {
  const marks = new Set(
    (rows ?? []).map(({ mark: { credit, exact, errors } }) => JSON.stringify([credit, exact, errors])),
  );
  expect(marks.size).toBe(1);
  return JSON.parse([...marks][0] ?? 'null');
};

describe('our marks of a single key, majors asked', () => {
  const marks = marksBy(keysJudge.mark, pinned, 'majors');

  test('one mark for each published relation', () => {
    expect(one(marks.get('same'))).toEqual([1, true, []]);
    expect(one(marks.get('fifth-above'))).toEqual([0, false, ['one-step-round-the-circle']]);
    expect(one(marks.get('fifth-below'))).toEqual([0, false, ['one-step-round-the-circle']]);
    expect(one(marks.get('relative'))).toEqual([0.75, false, ['relative-minors-for-majors']]);
  });

  // Differences that we state. A neighbour on the circle earns nothing here: the question is which keys own the chords, and it
  // does not. A relative earns more: it has the same notes, and only its name was not asked for. A parallel key has other notes.
  test('a parallel key earns nothing, and is no step on the circle', () => {
    for (const { mark } of marks.get('parallel') ?? []) {
      expect(mark.credit).toBe(0);
      expect(mark.errors).not.toContain('one-step-round-the-circle');
      expect(mark.errors).not.toContain('relative-minors-for-majors');
    }
  });

  test('of all others only the relatives of the two neighbours are a step on the circle; none earns', () => {
    for (const { id, above, mark } of marks.get('other') ?? []) {
      const ofNeighbour = id.endsWith('m') && (above === 4 || above === 2);
      expect([id, mark.errors.includes('one-step-round-the-circle')]).toEqual([id, ofNeighbour]);
      expect(mark.credit).toBe(0);
    }
  });

  test('what the published rule scores higher earns no less here, the step on the circle apart', () => {
    const credit = (name: Relation) => marks.get(name)?.[0]?.mark.credit ?? -1;
    expect(credit('same')).toBeGreaterThan(credit('relative'));
    expect(credit('relative')).toBeGreaterThan(credit('parallel'));
    expect(credit('parallel')).toBe(credit('other'));
  });
});

test('with relatives asked, relative and same are the two halves of one pair', () => {
  const marks = marksBy(keysJudge.mark, pinned, 'relatives');
  const half = [0.75, false, ['names-one-of-the-pair']];
  expect(one(marks.get('same'))).toEqual(half);
  expect(one(marks.get('relative'))).toEqual(half);
  expect(one(marks.get('fifth-above'))).toEqual([0, false, ['one-step-round-the-circle']]);
  expect(one(marks.get('fifth-below'))).toEqual([0, false, ['one-step-round-the-circle']]);
});

test('the keys that a settler leaves are marked alike for each published relation', () => {
  const marks = marksBy(settlerJudge.mark, settled, 'majors');
  expect(one(marks.get('same'))).toEqual([1, true, []]);
  expect(one(marks.get('fifth-above'))).toEqual([0, false, ['one-step-round-the-circle']]);
  expect(one(marks.get('fifth-below'))).toEqual([0, false, ['one-step-round-the-circle']]);
  expect(one(marks.get('relative'))).toEqual([0.75, false, ['relative-minors-for-majors']]);
  expect(one(marks.get('parallel'))).toEqual([0, false, []]);
});
