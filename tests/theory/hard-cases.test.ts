import { describe, expect, test } from 'vitest';
import { readSymbol } from '../../shared-theory/chords.ts';
import { judgeOf } from '../../shared-theory/questions/judges.ts';
import type { Answer, Kind, NeckPlace, QuestionSettings } from '../../shared-theory/questions/question.ts';
import { guitarTruth } from '../../shared-theory/truth.ts';
import { context } from './questions/given.ts';

/*
 * The cases in which a marker is most easily musically wrong. Each with the answers that are right, each for its reason (common
 * practice, where no source is named), and with one beside them that is not, so that leniency has its bounds.
 */
type Asked = {
  readonly loop: string;
  readonly kind: Exclude<Kind, 'home'>;
  readonly target?: number;
  readonly settings?: Partial<QuestionSettings>;
  readonly right: readonly Answer[];
  readonly wrong: readonly Answer[];
};
type HardCase = { readonly title: string; readonly reason: string; readonly asked: readonly Asked[] };

const at = (string: 5 | 6, fret: number): NeckPlace => ({ string, fret });

const HARD_CASES: readonly HardCase[] = [
  {
    title: 'a plateau loop',
    reason:
      '“Am–F–C–G can sound like VI–IV–I–V in C major, or like I–VI–III–VII in A minor” (Open Music Theory, “Harmony in pop/rock music”): neither tonic is forced, and flats before III, VI and VII are a way of writing.',
    asked: [
      {
        loop: 'Am F C G',
        kind: 'numeral',
        right: [
          ['vi', 'IV', 'I', 'V'],
          ['i', 'VI', 'III', 'VII'],
          ['i', 'bVI', 'bIII', 'bVII'],
        ],
        wrong: [['I', 'VI', 'III', 'VII']],
      },
      { loop: 'Am F C G', kind: 'keys', settings: { policy: 'majors' }, right: [['0M']], wrong: [['7M']] },
      { loop: 'Am F C G', kind: 'keys', settings: { policy: 'relatives' }, right: [['0M', '9m']], wrong: [['9m']] },
      {
        loop: 'Am F C G',
        kind: 'keys',
        settings: { policy: 'modes' },
        // The parent is certain; where home is, each ear says for itself.
        right: [
          ['0M', 'h0'],
          ['0M', 'h1'],
          ['0M', 'h2'],
          ['0M', 'h3'],
        ],
        wrong: [['7M', 'h0']],
      },
    ],
  },
  {
    title: 'the flat seventh degree of rock',
    reason: 'G F is V–IV of C by its notes, and I–♭VII where G is home: the chart says one, the ear the other.',
    asked: [
      {
        loop: 'G F',
        kind: 'numeral',
        right: [
          ['V', 'IV'],
          ['I', 'bVII'],
        ],
        wrong: [['I', 'VII']],
      },
      {
        loop: 'C Bb F',
        kind: 'numeral',
        right: [
          ['V', 'IV', 'I'],
          ['I', 'bVII', 'IV'],
        ],
        wrong: [['I', 'VII', 'IV']],
      },
      {
        loop: 'G F',
        kind: 'keys',
        settings: { policy: 'modes' },
        right: [
          ['0M', 'h0'],
          ['0M', 'h1'],
        ],
        wrong: [['7M', 'h0']],
      },
    ],
  },
  {
    title: 'V–vi or I–ii',
    reason: 'A Bm is in D and in A: a teacher who thinks of one does not strike the other.',
    asked: [
      {
        loop: 'A Bm',
        kind: 'numeral',
        right: [
          ['V', 'vi'],
          ['I', 'ii'],
        ],
        wrong: [['IV', 'v']],
      },
      { loop: 'A Bm', kind: 'keys', right: [['2M', '9M']], wrong: [['9M'], ['2M', '9M', '4M']] },
      { loop: 'A Bm', kind: 'one-or-several', right: ['several'], wrong: ['one'] },
    ],
  },
  {
    title: 'the dorian IV',
    reason: 'F#m B is ii–V of E, where E never sounds; with F# for home the major IV is what makes it dorian.',
    asked: [
      {
        loop: 'F#m B',
        kind: 'numeral',
        right: [
          ['ii', 'V'],
          ['i', 'IV'],
        ],
        wrong: [['i', 'iv']],
      },
      {
        loop: 'Dm7 G7',
        kind: 'numeral',
        right: [
          ['ii', 'V'],
          ['i', 'IV'],
        ],
        wrong: [['ii', 'v']],
      },
      { loop: 'F#m B', kind: 'keys', right: [['4M']], wrong: [['9M']] },
    ],
  },
  {
    title: 'the harmonic V',
    reason:
      'The raised seventh announces a minor home and does not leave it: Am E is i–V of A minor, and no major key owns G# with C.',
    asked: [
      { loop: 'Am E', kind: 'numeral', right: [['i', 'V']], wrong: [['i', 'v']] },
      { loop: 'Am E', kind: 'keys', settings: { policy: 'majors' }, right: [[]], wrong: [['0M']] },
      { loop: 'Am E', kind: 'keys', settings: { policy: 'raised-seventh' }, right: [['9m']], wrong: [['0M'], []] },
      {
        loop: 'Am G F E',
        kind: 'numeral',
        right: [
          ['i', 'VII', 'VI', 'V'],
          ['i', 'bVII', 'bVI', 'V'],
        ],
        wrong: [['i', 'VII', 'VI', 'v']],
      },
      { loop: 'B C', kind: 'numeral', right: [['V', 'VI']], wrong: [['v', 'VI']] },
      // Both sevenths in one loop are one key still.
      { loop: 'Am Em E', kind: 'numeral', right: [['i', 'v', 'V']], wrong: [['i', 'V', 'v']] },
    ],
  },
  {
    title: 'the spellings of a diminished seventh',
    reason:
      'It divides the octave evenly: any of its four notes may be its root, and it leads to Am however it is written.',
    asked: ['G#dim7', 'Bdim7', 'Ddim7', 'Fdim7'].flatMap((chord): readonly Asked[] => [
      { loop: `${chord} Am`, kind: 'numeral', right: [['viio', 'i']], wrong: [['VII', 'i']] },
      { loop: `${chord} Am`, kind: 'root', right: [at(6, 4), at(5, 2), at(5, 5), at(6, 1)], wrong: [at(6, 0)] },
      { loop: `${chord} Am`, kind: 'keys', settings: { policy: 'raised-seventh' }, right: [['9m']], wrong: [['0M']] },
    ]),
  },
  {
    title: 'the three roots of an augmented triad',
    reason: 'C E G# is E G# B# and Ab C E: by sound it is III+ of three minor keys, and of no major.',
    asked: [
      { loop: 'Caug', kind: 'root', right: [at(5, 3), at(6, 0), at(6, 4)], wrong: [at(6, 3)] },
      {
        loop: 'Caug',
        kind: 'keys',
        settings: { policy: 'raised-seventh' },
        right: [['1m', '5m', '9m']],
        wrong: [['9m']],
      },
      { loop: 'Caug', kind: 'keys', settings: { policy: 'majors' }, right: [[]], wrong: [['0M']] },
    ],
  },
  {
    title: 'keys by two names',
    reason: 'F# and Gb, C# and Db, B and Cb sound alike: one place on the circle, whichever the chords are written in.',
    asked: ['F# C#', 'Gb Db', 'F# Db', 'Gb C#'].flatMap((loop): readonly Asked[] => [
      { loop, kind: 'keys', right: [['6M', '1M']], wrong: [['6M']] },
      {
        loop,
        kind: 'numeral',
        right: [
          ['I', 'V'],
          ['IV', 'I'],
        ],
        wrong: [['I', 'IV']],
      },
      { loop, kind: 'root', right: [at(6, 2)], wrong: [at(6, 3)] },
    ]),
  },
  {
    title: 'slash chords',
    reason:
      'The bass is one thing and the root another: C/E is C, its bass E; steps count from root to root, and a foreign bass is a note that a key must hold.',
    asked: [
      { loop: 'C/E F', kind: 'root', right: [at(5, 3)], wrong: [at(6, 0)] },
      { loop: 'C/E F', kind: 'bass', right: [at(6, 0)], wrong: [at(5, 3)] },
      { loop: 'C/E F', kind: 'direction', target: 1, right: ['up'], wrong: ['down'] },
      // Up a fourth or down a fifth: where the bass is not the root, nobody heard the root go either way.
      { loop: 'C/E F', kind: 'distance', target: 1, right: [5, -7], wrong: [1] },
      {
        loop: 'C/E F',
        kind: 'numeral',
        right: [
          ['V', 'I'],
          ['I', 'IV'],
        ],
        wrong: [['iii', 'IV']],
      },
      { loop: 'C C/E F', kind: 'count', right: [2], wrong: [3] },
      { loop: 'C/Bb F', kind: 'keys', right: [['5M']], wrong: [['0M', '5M']] },
    ],
  },
  {
    title: 'power chords and suspended chords',
    reason: 'Without a third no ear says major or minor: either case of the numeral is right, and a mood is invented.',
    asked: [
      {
        loop: 'E5 A5',
        kind: 'numeral',
        right: [
          ['I', 'IV'],
          ['i', 'iv'],
          ['I', 'iv'],
          ['V', 'I'],
        ],
        wrong: [['I', 'V']],
      },
      { loop: 'E5 A5', kind: 'quality', right: ['power'], wrong: ['minor', 'major'] },
      {
        loop: 'Am Esus4 E',
        kind: 'numeral',
        right: [
          ['i', 'V', 'V'],
          ['i', 'v', 'V'],
        ],
        wrong: [['i', 'IV', 'V']],
      },
      { loop: 'Dsus4 A', kind: 'quality', right: ['suspended-fourth'], wrong: ['major'] },
    ],
  },
  {
    title: 'a blues and a borrowed chord',
    reason: 'Sevenths of a blues are at home on I and IV, so that no key owns them; a visitor leaves home where it is.',
    asked: [
      { loop: 'C7 F7 G7', kind: 'keys', right: [[]], wrong: [['0M'], ['5M']] },
      { loop: 'C7 F7 G7', kind: 'numeral', right: [['I', 'IV', 'V']], wrong: [['V', 'I', 'II']] },
      {
        loop: 'C Fm',
        kind: 'numeral',
        right: [
          ['I', 'iv'],
          ['V', 'i'],
        ],
        wrong: [['I', 'IV']],
      },
      { loop: 'D F G', kind: 'numeral', right: [['I', 'bIII', 'IV']], wrong: [['I', 'III', 'IV']] },
      {
        loop: 'C E7 Am',
        kind: 'numeral',
        right: [
          ['I', 'III', 'vi'],
          ['III', 'V', 'i'],
        ],
        wrong: [['I', 'iii', 'vi']],
      },
    ],
  },
  {
    title: 'one sound by two names',
    reason:
      'C6 and Am7/C are one sound, so nobody hears a change between them; over another bass, one chord or two is a matter of the name.',
    asked: [
      { loop: 'C6 Am7/C F', kind: 'count', right: [2], wrong: [3] },
      { loop: 'G7 Bdim/G', kind: 'count', right: [1], wrong: [2] },
      { loop: 'Csus2 Gsus4/C', kind: 'count', right: [1], wrong: [2] },
      { loop: 'C6 Am7', kind: 'count', right: [2, 1], wrong: [3] },
      { loop: 'Bdim7 Ddim7', kind: 'count', right: [2, 1], wrong: [3] },
      { loop: 'Bdim7 Ddim7', kind: 'count', settings: { slashIsNew: true }, right: [2], wrong: [1] },
      {
        loop: 'C6 F Am7 F',
        kind: 'order',
        right: [
          [0, 1, 2, 1],
          [0, 1, 0, 1],
        ],
        wrong: [[0, 1, 2, 3]],
      },
      { loop: 'C6 F Am7/C F', kind: 'order', right: [[0, 1, 0, 1]], wrong: [[0, 1, 2, 1]] },
      // The root of C6 may be A, of Csus2 G: each is an inversion of the other's chord.
      { loop: 'C6 F', kind: 'root', right: [at(5, 3), at(5, 0)], wrong: [at(6, 0)] },
      { loop: 'C6 F', kind: 'quality', right: ['major'], wrong: ['minor'] },
      { loop: 'Cm6 F', kind: 'root', right: [at(5, 3), at(5, 0)], wrong: [at(6, 3)] },
      { loop: 'Csus2 F', kind: 'root', right: [at(5, 3), at(6, 3)], wrong: [at(5, 5)] },
      { loop: 'Csus4 F', kind: 'root', right: [at(5, 3), at(6, 1)], wrong: [at(6, 3)] },
      // Am7 on its root is no inverted C6: who says C has heard the major on top.
      { loop: 'Am7 F', kind: 'root', right: [at(5, 0)], wrong: [at(5, 3)] },
    ],
  },
  {
    title: 'a dominant with its fifth raised',
    reason:
      'An augmented triad before F is V+ of F, or I+ of C that leads to IV; before Am it is V+, or III+ by its own letters.',
    asked: [
      {
        loop: 'Caug F',
        kind: 'numeral',
        right: [
          ['V+', 'I'],
          ['I+', 'IV'],
        ],
        wrong: [
          ['V', 'I'],
          ['I+', 'V'],
        ],
      },
      ...['Eaug Am', 'Caug Am', 'Abaug Am'].map((loop): Asked => ({
        loop,
        kind: 'numeral',
        right: [
          ['V+', 'i'],
          ['III+', 'i'],
        ],
        wrong: [['V', 'i']],
      })),
      {
        loop: 'C Caug F',
        kind: 'numeral',
        right: [
          ['I', 'I+', 'IV'],
          ['V', 'V+', 'I'],
        ],
        wrong: [['I', 'I', 'IV']],
      },
      { loop: 'C Daug G', kind: 'numeral', right: [['I', 'II+', 'V']], wrong: [['I', 'II', 'V']] },
    ],
  },
  {
    title: 'phrygian and lydian from home',
    reason: 'Em F with E for home is i–♭II, C D with C for home I–II: as good a home as a dorian or mixolydian one.',
    asked: [
      {
        loop: 'Em F',
        kind: 'numeral',
        right: [
          ['iii', 'IV'],
          ['i', 'bII'],
        ],
        wrong: [['i', 'II']],
      },
      {
        loop: 'C D',
        kind: 'numeral',
        right: [
          ['IV', 'V'],
          ['I', 'II'],
        ],
        wrong: [['I', 'ii']],
      },
      // No scale owns these chords, whatever their home: what is said of it is no fault.
      { loop: 'Am E', kind: 'keys', settings: { policy: 'modes' }, right: [[], ['h0']], wrong: [['0M', 'h0']] },
    ],
  },
  {
    title: 'three owners, and the one between',
    reason: 'C Am is in F, C and G. A pair with its own I is always open: whoever names C alone has stopped early.',
    asked: [
      {
        loop: 'C Am',
        kind: 'keys',
        right: [['0M', '5M', '7M']],
        wrong: [['0M'], ['0M', '7M'], ['0M', '5M', '7M', '2M']],
      },
      {
        loop: 'C Am',
        kind: 'numeral',
        right: [
          ['I', 'vi'],
          ['V', 'iii'],
          ['IV', 'ii'],
        ],
        wrong: [['VI', 'i']],
      },
      { loop: 'C Am', kind: 'one-or-several', right: ['several'], wrong: ['one'] },
    ],
  },
  {
    title: 'a minor home that does not open the loop',
    reason:
      'Ascending, a minor key raises its sixth with its seventh: ii or IV beside V is one key, wherever the loop starts.',
    asked: [
      { loop: 'Am D Gm', kind: 'numeral', right: [['ii', 'V', 'i']], wrong: [['ii', 'v', 'i']] },
      { loop: 'C D Gm', kind: 'numeral', right: [['IV', 'V', 'i']], wrong: [['iv', 'V', 'i']] },
      { loop: 'D E Am', kind: 'numeral', right: [['IV', 'V', 'i']], wrong: [['IV', 'v', 'i']] },
      { loop: 'Bb C Fm C', kind: 'numeral', right: [['IV', 'V', 'i']], wrong: [['IV', 'V', 'I']] },
      ...['Bm E Am E', 'F#m B Em B', 'Dm G Cm G'].map((loop): Asked => ({
        loop,
        kind: 'numeral',
        right: [['ii', 'V', 'i']],
        wrong: [['ii', 'V', 'I']],
      })),
      { loop: 'Bm D E Am', kind: 'numeral', right: [['ii', 'IV', 'V', 'i']], wrong: [['ii', 'iv', 'V', 'i']] },
    ],
  },
  {
    title: 'a minor by its V, and its relative major’s frame',
    reason:
      'The raised seventh names the minor, its tonic sounding or not; who thinks in the relative major writes the same V as III of it, V of vi.',
    asked: [
      ...['Dm E7 Am C', 'Em F#7 Bm D', 'Am B7 Em G', 'Cm D7 Gm Bb'].map((loop): Asked => ({
        loop,
        kind: 'numeral',
        right: [
          ['iv', 'V', 'i', 'III'],
          ['iv', 'V', 'i', 'bIII'],
          ['ii', 'III', 'vi', 'I'],
        ],
        wrong: [['iv', 'V', 'i', 'iii']],
      })),
      { loop: 'Gm Dm A Dm', kind: 'numeral', right: [['iv', 'i', 'V']], wrong: [['iv', 'i', 'v']] },
      ...['Cm D', 'Dm E'].map((loop): Asked => ({ loop, kind: 'numeral', right: [['iv', 'V']], wrong: [['iv', 'v']] })),
      { loop: 'Am G F E', kind: 'numeral', right: [['vi', 'V', 'IV', 'III']], wrong: [['vi', 'V', 'IV', 'iii']] },
      { loop: 'Am E', kind: 'numeral', right: [['vi', 'III']], wrong: [['ii', 'VI']] },
      { loop: 'Dm E Am', kind: 'numeral', right: [['ii', 'III', 'vi']], wrong: [['ii', 'iii', 'vi']] },
    ],
  },
  {
    title: 'the minor that a class of majors does not count',
    reason:
      'No key signature has the raised note, and no teacher marks A minor wrong for it: “no key” is right by the class’s rule, A minor by ear.',
    asked: (['majors', 'relatives'] as const).flatMap((policy) =>
      ['Am G F E', 'Am E', 'Am F E'].map((loop): Asked => ({
        loop,
        kind: 'keys',
        settings: { policy },
        right: [[], ['9m']],
        wrong: [['0M'], ['0M', '9m'], ['4m']],
      })),
    ),
  },
  {
    title: 'diminished sevenths that go to a major home',
    reason:
      'vii°7 borrows the sixth of the minor and goes to I as it is written; ♯iv°7 goes to V or straight to I, between IV and I.',
    asked: [
      { loop: 'Bdim7 C', kind: 'numeral', right: [['viio', 'I']], wrong: [['vii', 'I']] },
      { loop: 'A#dim7 B', kind: 'numeral', right: [['viio', 'I']], wrong: [['VII', 'I']] },
      { loop: 'F F#dim7 C', kind: 'numeral', right: [['IV', '#ivo', 'I']], wrong: [['IV', 'ivo', 'I']] },
      { loop: 'C F F#dim7 C', kind: 'numeral', right: [['I', 'IV', '#ivo']], wrong: [['I', 'IV', 'ivo']] },
      { loop: 'F F#dim7 G C', kind: 'numeral', right: [['IV', '#ivo', 'V', 'I']], wrong: [['IV', 'bvo', 'V', 'I']] },
    ],
  },
  {
    title: 'a blues from its V',
    reason: 'Two dominant sevenths a fourth apart are I and IV of a blues, or V and I of one: both have them at home.',
    asked: [
      {
        loop: 'E7 A7',
        kind: 'numeral',
        right: [
          ['I', 'IV'],
          ['V', 'I'],
        ],
        wrong: [['IV', 'I']],
      },
    ],
  },
  {
    title: 'a minor sixth chord by its other name',
    reason: 'Dm6 and Bm7♭5 over D are the same notes over the same bass: either root is right for both.',
    asked: ['Dm6', 'Bm7b5/D'].map((loop): Asked => ({
      loop,
      kind: 'root',
      right: [at(5, 5), at(5, 2)],
      wrong: [at(6, 1)],
    })),
  },
  {
    title: 'a foreign bass under a chord that came before',
    reason: 'The bass is a note that a key must hold, in whichever slot it sounds first.',
    asked: ['C C/B Am F', 'C/B C Am F', 'Am F C C/B'].flatMap((loop): readonly Asked[] => [
      { loop, kind: 'keys', right: [['0M']], wrong: [['0M', '5M'], ['5M']] },
    ]),
  },
];

/** What is named first is what the sheet and the host write. */
test.each([
  ['Am D Gm', 'ii V i'],
  ['D E Am', 'IV V i'],
  ['Dm E7 Am C', 'iv V i III'],
  ['Em F#7 Bm D', 'iv V i III'],
  ['Am B7 Em G', 'iv V i III'],
  ['Cm D7 Gm Bb', 'iv V i III'],
  ['Gm Dm A Dm', 'iv i V'],
  ['Cm D', 'iv V'],
  ['Dm E', 'iv V'],
  ['Bdim7 C', 'viio I'],
  ['A#dim7 B', 'viio I'],
  ['Bdim7 Am', 'viio i'],
  ['F F#dim7 C', 'IV #ivo I'],
  ['C E7 Am', 'I III vi'],
  ['E7 A7', 'I IV'],
])('%s is %s before anything else', (loop, first) => {
  const slots = loop.split(' ').map((symbol) => ({ chord: readSymbol(symbol), beats: 4 }));
  for (const policy of ['majors', 'relatives'] as const) {
    expect(
      judgeOf('numeral')
        .truth(context(0, guitarTruth(slots), { policy }))
        ?.join(' '),
    ).toBe(first);
  }
});

test.each([
  // The name on the student's own root: Am7 over C, Bm7 flat five over D.
  ['C6', at(5, 0), 'minor'],
  ['Dm6', at(5, 2), 'diminished'],
] as const)('%s by the root of its other name has that name’s quality and seventh', (loop, root, quality) => {
  const given = { ...context(0, guitarTruth([{ chord: readSymbol(loop), beats: 4 }])), own: { 'root-0': root } };
  expect(judgeOf('quality').mark(quality, given)).toMatchObject({ credit: 1, exact: true });
  expect(judgeOf('seventh').mark('seventh', given)).toMatchObject({ credit: 1, exact: true });
});

test('a minor that the class does not count is noted, and no remedy goes with it', () => {
  const slots = 'Am G F E'.split(' ').map((symbol) => ({ chord: readSymbol(symbol), beats: 4 }));
  for (const policy of ['majors', 'relatives'] as const) {
    const given = context(0, guitarTruth(slots), { policy });
    expect(judgeOf('keys').mark(['9m'], given)).toEqual({
      credit: 1,
      exact: true,
      errors: [],
      note: 'names-the-raised-seventh-minor',
    });
    expect(judgeOf('keys').mark([], given)).not.toHaveProperty('note');
    // One right minor and its relative, which is not: half of it.
    expect(judgeOf('keys').mark(['0M', '9m'], given).credit).toBe(0.5);
  }
});

test('the keys that settle a loop hold every bass of it, wherever the loop starts', () => {
  const settlers = (loop: string) =>
    guitarTruth(loop.split(' ').map((symbol) => ({ chord: readSymbol(symbol), beats: 4 })))
      .settlers.map(({ chord, note, keys }) => `${chord ?? note} ${keys.majors.join()}`)
      .join('; ');
  expect(settlers('Am Am/F#')).toBe(settlers('Am/F# Am'));
  expect(settlers('Am Am/F#')).not.toMatch(/\b[FC] major/);
});

describe.each(HARD_CASES)('$title', ({ asked }) => {
  test.each(asked)('$loop: $kind', ({ loop, kind, target = 0, settings = {}, right, wrong }) => {
    const slots = loop.split(' ').map((symbol) => ({ chord: readSymbol(symbol), beats: 4 }));
    const given = context(target, guitarTruth(slots), settings);
    const judge = judgeOf<Kind>(kind);
    for (const answer of right) {
      const { credit, exact, errors } = judge.mark(answer, given);
      expect([answer, credit, exact, errors]).toEqual([answer, 1, true, []]);
    }
    for (const answer of wrong) {
      const { credit, exact } = judge.mark(answer, given);
      expect([answer, exact, credit < 1]).toEqual([answer, false, true]);
    }
  });
});

test('each case has its reason, and asks something', () => {
  for (const { reason, asked } of HARD_CASES) {
    expect(reason).toMatch(/\.$/);
    expect(asked.length).toBeGreaterThan(0);
  }
});

test('where a loop would stop is collected and never marked', () => {
  const slots = 'Am F C G'.split(' ').map((symbol) => ({ chord: readSymbol(symbol), beats: 4 }));
  expect(() => judgeOf<Kind>('home').mark(0, context(0, guitarTruth(slots)))).toThrow(RangeError);
});
