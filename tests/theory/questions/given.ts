import * as fc from 'fast-check';
import type { Quality } from '../../../shared-theory/chords.ts';
import { chordSymbol, QUALITIES } from '../../../shared-theory/chords.ts';
import { WEIGHTS } from '../../../shared-theory/questions/accents/ask.ts';
import { BAR_COUNTS } from '../../../shared-theory/questions/bar-count/ask.ts';
import { besideAll } from '../../../shared-theory/questions/beside.ts';
import { KEY_IDS } from '../../../shared-theory/questions/keys/ask.ts';
import { MOST_CHORDS } from '../../../shared-theory/questions/count/ask.ts';
import { OCTAVE } from '../../../shared-theory/questions/distance/ask.ts';
import { MOST_HOMES } from '../../../shared-theory/questions/home/ask.ts';
import { MOST_NUMERALS } from '../../../shared-theory/questions/numeral/ask.ts';
import { ORDERS } from '../../../shared-theory/questions/order/ask.ts';
import { ASKED_SEVENTHS } from '../../../shared-theory/questions/seventh/ask.ts';
import { ROLES } from '../../../shared-theory/questions/roles/ask.ts';
import { neckPlaces } from '../../../shared-theory/questions/root/ask.ts';
import { GRID_STROKES } from '../../../shared-theory/questions/stroke-grid/ask.ts';
import type {
  Answer,
  Kind,
  MarkingContext,
  OwnAnswers,
  QuestionSettings,
} from '../../../shared-theory/questions/question.ts';
import { guitarTruth, POLICIES } from '../../../shared-theory/truth.ts';
import type { Direction, Truth } from '../../../shared-theory/truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { filled, rhythms, taps } from './rhythms.ts';

/** Every quality on the pad, majors only. */
export const SETTINGS: QuestionSettings = { policy: 'majors', qualities: QUALITIES };

/** Keys by policy. Where nothing else is said no minor owns the loop by its raised seventh, and no modes are named. */
export function owners(
  majors: readonly string[],
  relatives: readonly string[],
  more: Partial<Truth['keys']> = {},
): Truth['keys'] {
  return { majors, relatives, 'raised-seventh': relatives, modes: [], ...more };
}

/** Em to D as an open-shape strum sounds it: E2 to D3, top E4 to F#4; keys and their settlers by common practice. */
export const EM_D: Truth = {
  count: 2,
  directions: ['up'],
  chords: ['Em', 'D'],
  qualities: ['minor', 'major'],
  sevenths: ['none', 'none'],
  roots: ['E', 'D'],
  distances: ['b7'],
  bass: [40, 50],
  top: [64, 66],
  keys: owners(['G major', 'D major'], ['G major', 'E minor', 'D major', 'B minor'], {
    modes: ['E aeolian', 'D mixolydian', 'E dorian', 'D ionian'],
  }),
  tempo: 100,
  strokes: 'down-up',
  settlers: [
    {
      chord: 'C',
      note: null,
      keys: owners(['G major'], ['G major', 'E minor'], { modes: ['E aeolian', 'D mixolydian'] }),
    },
    { chord: 'A', note: null, keys: owners(['D major'], ['D major', 'B minor'], { modes: ['E dorian', 'D ionian'] }) },
  ],
};

/** What is known when a mark is made, with the truth, and what the student answered before, changed where a case needs it. */
export function context(
  target: number,
  truth: Partial<Truth> = {},
  settings: Partial<QuestionSettings> = {},
  own: OwnAnswers = {},
): MarkingContext {
  const heard = withChords({ ...EM_D, ...truth }, truth.chords);
  return { truth: heard, target, settings: { ...SETTINGS, ...settings }, beside: besideAll(heard), own };
}

/** Chords named by their roots and qualities, where a case does not name them. */
function withChords(truth: Truth, named: readonly string[] | undefined): Truth {
  if (named !== undefined) return truth;
  const { roots, qualities } = truth;
  const chords = roots.map((root, slot) => chordSymbol({ root, quality: qualities[slot] ?? 'major' }));
  return { ...truth, chords, sevenths: chords.map(() => 'none') };
}

/** What sounds where chords are played in their usual open shapes, the bass sent where a case says. Tops are not known. */
export function played(chords: string, directions: readonly Direction[] | null = null): Truth {
  return guitarTruth(parseVamp(chords, 4), { directions });
}

const ROOTS = ['C', 'C#', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B', 'Cb'] as const;
const MAJORS = ['C', 'G', 'D', 'A', 'E', 'B', 'F#', 'Db', 'Ab', 'Eb', 'Bb', 'F'] as const;
const RELATIVES = ['A', 'E', 'B', 'F#', 'C#', 'G#', 'D#', 'Bb', 'F', 'C', 'G', 'D'] as const;

/** Truths of two slots whose parts agree with one another: direction with bass, relatives with majors. */
export const truths: fc.Arbitrary<Truth> = fc
  .record({
    roots: fc.tuple(fc.constantFrom(...ROOTS), fc.constantFrom(...ROOTS)),
    qualities: fc.tuple(fc.constantFrom(...QUALITIES), fc.constantFrom(...QUALITIES)),
    bass: fc.tuple(fc.integer({ min: 40, max: 57 }), fc.integer({ min: 40, max: 57 })),
    top: fc.tuple(fc.integer({ min: 60, max: 76 }), fc.integer({ min: 60, max: 76 })),
    tempo: fc.option(fc.integer({ min: 60, max: 180 })),
    strokes: fc.option(fc.constantFrom('all-downs' as const, 'down-up' as const)),
    rhythm: fc.option(rhythms),
    owners: fc.record({ start: fc.nat(11), length: fc.nat(3) }),
  })
  .map(({ owners: arc, ...heard }) => {
    const places = Array.from({ length: arc.length }, (_, index) => (arc.start + index) % 12);
    const majors = places.map((place) => `${MAJORS[place]} major`);
    const minors = places.map((place) => `${RELATIVES[place]} minor`);
    const step = heard.bass[1] - heard.bass[0];
    const direction: Direction = step === 0 ? 'same' : step > 0 ? 'up' : 'down';
    const keys = owners(majors, [...majors, ...minors]);
    // One key is left by a settler to each side, where there are sides.
    const sides = places.length < 2 ? [] : [0, places.length - 1];
    const settlers = sides.map((place) => ({
      chord: 'C',
      note: null,
      keys: owners(
        majors.slice(place, place + 1),
        [majors, minors].flatMap((each) => each[place] ?? []),
      ),
    }));
    const chords = heard.roots.map((root, slot) => chordSymbol({ root, quality: heard.qualities[slot] ?? 'major' }));
    const sevenths = ['none' as const, 'none' as const];
    return { ...heard, chords, sevenths, count: 2, directions: [direction], distances: ['1' as const], keys, settlers };
  });

/** Pads of at least two qualities, every policy. */
export const settings: fc.Arbitrary<QuestionSettings> = fc.record({
  policy: fc.constantFrom(...POLICIES),
  qualities: fc.subarray<Quality>([...QUALITIES], { minLength: 2 }),
});

/** A numeral as the pad writes it, with or without sense. */
const numerals = fc
  .record({
    sign: fc.constantFrom('', 'b', '#'),
    degree: fc.constantFrom('I', 'II', 'III', 'IV', 'V', 'VI', 'VII'),
    small: fc.boolean(),
    after: fc.constantFrom('', 'o', '+'),
  })
  .map(({ sign, degree, small, after }) => `${sign}${small ? degree.toLowerCase() : degree}${after}`);

/** Any answer of a kind that the pad could give. */
export function answers(kind: Kind, { qualities }: QuestionSettings): fc.Arbitrary<Answer> {
  switch (kind) {
    case 'order':
      return fc.constantFrom(...ORDERS);
    case 'direction':
      return fc.constantFrom('up', 'down', 'same');
    case 'quality':
      return fc.constantFrom(...qualities);
    case 'bass':
    case 'root':
      return fc.constantFrom(...neckPlaces());
    case 'seventh':
      return fc.constantFrom(...ASKED_SEVENTHS);
    case 'count':
      return fc.integer({ min: 1, max: MOST_CHORDS });
    case 'distance':
      return fc.integer({ min: -OCTAVE, max: OCTAVE });
    case 'numeral':
      return fc.array(numerals, { minLength: 1, maxLength: MOST_NUMERALS });
    case 'one-or-several':
      return fc.constantFrom('one', 'several');
    case 'keys':
    case 'settler':
      return fc.oneof(fc.subarray([...KEY_IDS], { maxLength: 4 }), fc.subarray([...KEY_IDS]));
    case 'tempo':
    case 'steadiness':
    case 'together':
      return taps;
    case 'drop-out':
      return fc.tuple(taps, fc.option(fc.nat(8))).map(([tapped, silentFrom]) => ({ taps: tapped, silentFrom }));
    case 'bar-count':
      return fc.constantFrom(...BAR_COUNTS);
    case 'threes':
      return fc.constantFrom('two-threes', 'three-twos');
    case 'half-time':
      return fc.constantFrom('full-time', 'half-time');
    case 'swing':
      return fc.constantFrom('straight', 'swung');
    case 'drive':
      return fc.constantFrom('driving', 'relaxed');
    case 'strokes':
      return fc.constantFrom('all-downs', 'down-up');
    case 'pendulum':
      return fc.constantFrom('keeps', 'breaks');
    case 'change-place':
      return fc.constantFrom('on-one', 'pushed');
    case 'accents':
      return filled(WEIGHTS);
    case 'stroke-grid':
      return filled(GRID_STROKES);
    case 'roles':
      return filled(ROLES);
    case 'opened':
      return fc.subarray([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15], { minLength: 1 });
    case 'home':
      return fc.nat(MOST_HOMES - 1);
  }
}
