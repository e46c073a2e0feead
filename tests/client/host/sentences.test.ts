import { describe, expect, test } from 'vitest';
import { familiesOf, forkOf, layRows } from '../../../client/host/key-rows.ts';
import { heardSentence } from '../../../client/host/heard-sentence.ts';
import { deciderSentence, legend, revealSentence } from '../../../client/host/sentences.ts';
import { positionWords } from '../../../client/host/words.ts';
import type { WireSettler } from '../../../server/protocol/views.ts';
import { setQuestion } from '../../../client/host/frame.ts';
import { parseChord } from '../../../shared-theory/chords.ts';
import { chartRows, cribOf } from '../../../shared-theory/crib.ts';
import { parseKeyName } from '../../../shared-theory/keys.ts';
import type { Policy } from '../../../shared-theory/truth.ts';
import {
  KEYS_AM_E,
  KEYS_C_AM,
  KEYS_C_D,
  KEYS_D_G,
  KEYS_EM_D,
  KEYS_SPREAD,
  ROOT_SPREAD,
  roundAt,
  spreadOf,
} from './fixtures.ts';

describe('the notes that decide', () => {
  // Common practice: two neighbours on the circle of fifths part in one note; the middle one of three needs two.
  test.each([
    ['two keys', KEYS_D_G, 'One note decides: C♯ says D, C says G.'],
    ['two keys of another vamp', KEYS_EM_D, 'One note decides: C♯ says D, C says G.'],
    ['three keys', KEYS_C_AM, 'These notes decide: F♯ says G, F with B says C, B♭ says F.'],
    ['one key', KEYS_C_D, 'These chords have settled it.'],
    ['no key', KEYS_AM_E, 'Each chord has its keys, and none of them is shared.'],
  ])('%s', (_, reveal, sentence) => {
    expect(deciderSentence(reveal)).toBe(sentence);
  });
});

describe('more owners than can be told apart in one breath', () => {
  const reveal = (text: string, policy: Policy) => {
    const chords = text.split(' ').map((symbol) => parseChord(symbol));
    const { keys, deciders } = cribOf(chords, policy);
    return { chords: [], rows: keys.map(({ key }) => chartRows(chords, parseKeyName(key))), deciders };
  };

  // Four neighbours C G D A part in F/F#, C/C#, G/G#: common practice.
  test.each(['majors', 'relatives'] as const)('only the notes that leave an outer key alone, %s', (policy) => {
    expect(deciderSentence(reveal('E5 D5', policy))).toBe('These notes decide: G♯ says A, F says C.');
    expect(deciderSentence(reveal('C5', policy))).toBe('These notes decide: F♯ says G, D♭ says A♭.');
    expect(deciderSentence(reveal('C Am', policy))).toBe('These notes decide: F♯ says G, B with F says C, B♭ says F.');
  });
});

describe('under the other policies', () => {
  const reveal = (text: string, policy: Policy) => {
    const chords = text.split(' ').map((each) => parseChord(each));
    const { keys, deciders } = cribOf(chords, policy);
    return { chords: [], rows: keys.map(({ key }) => chartRows(chords, parseKeyName(key), policy)), deciders };
  };

  // common practice: Em D stand in G and in D, which part in C/C#, whichever chord is home.
  test('scales part as their majors do', () => {
    expect(deciderSentence(reveal('Em D', 'modes'))).toBe('One note decides the scale: C♯ says D, C says G.');
    expect(deciderSentence(reveal('G F', 'modes'))).toBe('These chords have settled it.');
  });

  test('homes of one scale share a row of letters and have a line of numerals each', () => {
    const families = familiesOf(reveal('Em D', 'modes'));
    expect(families.map(({ keys }) => keys.map(({ key }) => key))).toEqual([
      ['E dorian', 'D ionian'],
      ['E aeolian', 'D mixolydian'],
    ]);
  });

  test('a minor key with its seventh raised is settled by it', () => {
    expect(deciderSentence(reveal('Am E', 'raised-seventh'))).toBe('These chords have settled it.');
  });

  test('the sentence counts scales, not their homes', () => {
    const view = roundAt(5, 'shown');
    // Under the policy that was asked: the class's own is the same throughout.
    const under = (policy: Policy) =>
      revealSentence(
        {
          ...view,
          current: { ...view.current!, kind: 'keys', asking: { kind: 'keys', target: 0, options: [policy] } },
          keysReveal: { ...reveal('Em D', policy), chords: ['Em', 'D'] },
        },
        { answer: [], key: '' },
      );
    expect(under('modes')).toBe('Two scales own Em and D.');
    expect(under('relatives')).toBe('Four keys own Em and D.');
  });
});

test('where no key owns all, the likeliest is named with its visitors', () => {
  const visited = {
    key: 'D minor',
    numerals: ['ii', 'V', 'i'],
    visitors: [
      { chord: 'Em', numeral: 'ii', visit: 'dorian' as const },
      { chord: 'A', numeral: 'V', visit: 'raised-seventh' as const },
    ],
  };
  expect(deciderSentence({ chords: ['Em', 'A', 'Dm'], rows: [], deciders: [], visited })).toBe(
    'At home in D minor as ii–V–i, with Em and A on its raised sixth and seventh.',
  );
});

describe('numerals', () => {
  const reveal = (status: 'ready' | 'shown' | null) => {
    const view = roundAt(2, 'shown');
    const vamp = { ...view.vamp!, slots: ['Bm7b5', 'E7', 'Am'].map((chord) => ({ chord, beats: 4, frets: [] })) };
    const current = { ...view.current!, kind: 'numeral', target: 0, asking: { kind: 'numeral', target: 0 } };
    const steps = status === null ? [] : [{ ...view.steps[0]!, kind: 'seventh', status }];
    return revealSentence({ ...view, vamp, current, steps }, { answer: ['iio', 'V', 'i'], key: 'iio V i' });
  };

  test('have their sevenths on the wall, once no seventh is left to ask', () => {
    expect(reveal(null)).toBe('The numerals: iiø7 – V7 – i.');
    expect(reveal('shown')).toBe('The numerals: iiø7 – V7 – i.');
    expect(reveal('ready')).toBe('The numerals: ii° – V – i.');
  });

  test('one for each chord, not for each bar, though both are right', () => {
    const view = roundAt(2, 'shown');
    const current = { ...view.current!, kind: 'numeral', target: 0, asking: { kind: 'numeral', target: 0 } };
    const truth = { answer: ['I', 'IV', 'V'], key: 'I IV V', also: ['I IV V I'] };
    expect(revealSentence({ ...view, current, vamp: null }, truth)).toBe('The numerals: I – IV – V.');
  });
});

describe('of a chord no more is said than was asked', () => {
  const asked = (kind: string, letter?: string) => {
    const view = roundAt(2, 'shown');
    const vamp = { ...view.vamp!, slots: [{ chord: 'Am7/G', beats: 8, frets: [] }] };
    const asking = { kind, target: 0, ...(letter ? { letter } : {}) };
    return { ...view, vamp, current: { ...view.current!, kind, target: 0, asking } };
  };

  test.each([
    ['quality', 'A', 'minor', 'It was Am.'],
    ['seventh', 'Am', 'seventh', 'It was Am7.'],
    ['seventh', 'Am', 'none', 'It was Am.'],
    ['seventh', undefined, 'seventh', 'It has a seventh: it leans.'],
    ['seventh', undefined, 'none', 'No seventh in it.'],
  ])('%s over %s: %s', (kind, letter, answer, sentence) => {
    expect(revealSentence(asked(kind, letter), { answer, key: answer })).toBe(sentence);
  });

  test('a bass by its note, an order by its letters', () => {
    const place = { string: 6, fret: 3 } as const;
    expect(revealSentence(asked('bass'), { answer: place, key: '6.3', name: 'G' })).toBe('The bass is G.');
    expect(revealSentence(asked('order'), { answer: [0, 1, 0, 2], key: '0 1 0 2' })).toBe('The order is A B A C.');
  });
});

describe('tuning forks', () => {
  test('the sharpest key stands on top', () => {
    expect(familiesOf(KEYS_C_AM).map(({ keys }) => keys[0]?.key)).toEqual(['G major', 'C major', 'F major']);
  });

  test('shared notes keep their columns, the two that differ are the prongs', () => {
    const [upper, lower] = familiesOf(KEYS_EM_D);
    if (!upper || !lower) throw new Error('two keys own the vamp');
    expect(forkOf(upper, lower)).toEqual({
      stem: ['E', 'F#', 'G', 'A', 'B', null, 'D'],
      upper: 'C#',
      lower: 'C',
      column: 5,
    });
  });

  test('a major key and its relative minor share one row', () => {
    const minor = KEYS_C_D.rows.map((row) => ({ ...row, key: 'E minor', id: '4m' }));
    const [family, ...more] = familiesOf({ ...KEYS_C_D, rows: [...KEYS_C_D.rows, ...minor] });
    expect(more).toEqual([]);
    expect(family?.keys.map(({ key }) => key)).toEqual(['G major', 'E minor']);
  });

  test.each([1, 2, 3])('%i rows stay within the height', (count) => {
    const families = familiesOf(KEYS_C_AM).slice(0, count);
    const { rules, forks, scale } = layRows(families, 600);
    expect(rules).toHaveLength(count);
    expect(forks).toHaveLength(count - 1);
    expect(Math.max(...rules) + 74 * scale).toBeLessThanOrEqual(600);
    expect([...rules, ...forks].toSorted((a, b) => a - b)).toEqual(
      rules.flatMap((rule, index) => [rule, ...forks.slice(index, index + 1)]),
    );
  });
});

describe('the right answer as a sentence', () => {
  test('the quality alone while the root has not been shown, then the chord', () => {
    const truth = { answer: 'minor', key: 'minor' };
    expect(revealSentence(roundAt(2, 'shown'), truth)).toBe('It was minor.');
    expect(revealSentence(roundAt(2, 'shown', 'E'), truth)).toBe('It was Em.');
  });

  test('the root as the chord spells it', () => {
    expect(revealSentence(roundAt(3, 'shown'), { answer: { string: 6, fret: 0 }, key: '6.0', name: 'Bb' })).toBe(
      'The root is B♭.',
    );
  });

  test('every neck place of the root counts as heard', () => {
    const truth = { answer: { string: 6, fret: 0 }, key: '6.0', also: ['6.12', '5.7'] };
    expect(heardSentence(ROOT_SPREAD, truth)).toBe('5 of 24 heard it.');
    expect(heardSentence(null, truth)).toBeNull();
  });
});

describe('legend', () => {
  test.each([
    ['beads', ROOT_SPREAD, 'one bead, one hand: 22 marked it, 2 not sure'],
    ['keys', KEYS_SPREAD, 'one bead, one hand: 20 marked keys, 2 said no key, 2 not sure'],
    ['strokes', spreadOf('strokes', 0, { 'all-downs': 3 }), 'one stroke, one hand: 3 marked it, 2 not sure'],
    ['nobody', spreadOf('root', 0, {}, { notSure: 0, silent: 9 }), 'No hand is in.'],
  ])('%s', (_, spread, sentence) => {
    expect(legend(spread)).toBe(sentence);
  });
});

test('a question takes the largest size at which it fits its lines, and says how many lines the smallest takes', () => {
  const sizes = [106, 96, 85] as const;
  expect(setQuestion('Two keys own D and G.', 1696, 1, sizes)).toEqual({ size: 106, lines: 1 });
  expect(setQuestion('First chord: major, minor, something else?', 1696, 1, sizes)).toEqual({ size: 85, lines: 2 });
});

describe('a settler', () => {
  // common practice: of G and D, which own Em and D, C stands in G alone and A in D and not in G; B is a note of both.
  const at = (settler: WireSettler, left: readonly string[], owners: readonly string[] = ['2M', '7M']) => {
    const view = roundAt(0, 'shown');
    if (!view.current || !view.vamp) throw new Error('no round');
    const asking = { kind: 'settler', target: 0, options: ['majors', ...owners] };
    const current = { ...view.current, kind: 'settler', target: 0, asking };
    const vamp = { ...view.vamp, settlers: [settler] };
    return revealSentence(
      { current, vamp, keysReveal: null, steps: view.steps },
      { answer: left, key: left.join(' ') },
    );
  };
  const C = { chord: 'C', beats: 4, frets: [null, 3, 2, 0, 1, 0] } as const;

  test.each([
    [C, ['7M'], undefined, 'C throws out D major and leaves G major.'],
    [{ note: 'C', midi: 72 }, ['7M'], undefined, 'The note C throws out D major and leaves G major.'],
    [{ note: 'B', midi: 71 }, ['2M', '7M'], undefined, 'The note B leaves D major and G major.'],
    [{ ...C, chord: 'Eb' }, [], undefined, 'E♭ throws out D major and G major: no key is left.'],
    [C, ['7M'], [], 'C leaves G major.'],
  ])('is named with what it threw out', (settler, left, owners, sentence) => {
    expect(at(settler, left, owners)).toBe(sentence);
  });
});

test('a place in an order: words, or figures where one of the two would be one', () => {
  expect([positionWords(2, 5), positionWords(2, 13), positionWords(13, 13)]).toEqual([
    'two of five',
    '2 of 13',
    '13 of 13',
  ]);
});
