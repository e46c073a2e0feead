import { QUALITIES } from '../../../shared-theory/chords.ts';
import { plausibleAnswers } from '../../../shared-theory/crib/plausible.ts';
import { blindAnswers } from '../../../shared-theory/diagnosis/blind.ts';
import { generate } from '../../../shared-theory/generate.ts';
import { grooveById } from '../../../shared-theory/grooves.ts';
import { LEVELS_THAT_STAND } from '../../../shared-theory/levels.ts';
import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { perform } from '../../../shared-theory/perform.ts';
import { asks } from '../../../shared-theory/questions/asks.ts';
import { besideAll } from '../../../shared-theory/questions/beside.ts';
import { MOST_CHORDS } from '../../../shared-theory/questions/count/ask.ts';
import { OCTAVE } from '../../../shared-theory/questions/distance/ask.ts';
import { askableQuestions, judgeOf } from '../../../shared-theory/questions/judges.ts';
import { KEY_IDS } from '../../../shared-theory/questions/keys/ask.ts';
import { COLLECTED_KINDS, RHYTHM_KINDS, TAPPED_KINDS } from '../../../shared-theory/questions/question.ts';
import type {
  Answer,
  Kind,
  Mark,
  MarkingContext,
  QuestionSettings,
} from '../../../shared-theory/questions/question.ts';
import { ORDERS } from '../../../shared-theory/questions/order/ask.ts';
import { ASKED_SEVENTHS } from '../../../shared-theory/questions/seventh/ask.ts';
import { neckPlaces } from '../../../shared-theory/questions/root/ask.ts';
import type { RoundQuestion } from '../../../shared-theory/questions/round-questions.ts';
import type { Direction, Truth } from '../../../shared-theory/truth.ts';
import { POLICIES, truthOf } from '../../../shared-theory/truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';
import { played } from './given.ts';

/** Vamps that sound, by a groove, its tempo and the way the bass goes: chords near and far, of every quality. */
const SOUNDED: readonly (readonly [string, string, number, (readonly Direction[])?])[] = [
  ['A E', 'quarter-downs', 70],
  ['E A', 'driving-eighths', 132],
  ['Am D', 'driving-eighths', 132],
  ['C Am', 'relaxed-alternate', 100],
  ['Em F#m', 'relaxed-alternate', 100],
  ['B5 F#sus4', 'quarter-downs', 90],
  ['Dsus2 G5', 'quarter-downs', 90],
  ['Dsus4 A', 'quarter-downs', 90],
  ['D Dm', 'quarter-downs', 90],
  ['A E5', 'quarter-downs', 90],
  ['A Dsus4', 'quarter-downs', 90],
  ['Am Bdim', 'quarter-downs', 90],
  ['Caug Bdim', 'quarter-downs', 90],
  ['Bdim C', 'quarter-downs', 90],
  ['Caug F', 'quarter-downs', 90],
  ['A B A C', 'quarter-downs', 90],
];

/** Grooves that are asked about, two bars a chord, so that a bar that opens a chord is one of two. */
const GROOVED: readonly (readonly [string, string, number])[] = [
  ['Em G', 'foot-slap-hat', 96],
  ['Em G', 'foot-and-open-hat', 112],
  ['G C', 'campfire-strum', 100],
  ['G C', 'eighth-downs-backbeat', 140],
  ['G C', 'mute-and-open', 112],
  ['G C', 'pushed-change', 100],
  ['Am Em', 'six-eight-ballad', 56],
  ['Am Em', 'waltz', 100],
  ['E A', 'half-time', 132],
  ['E A', 'low-string-shuffle', 100],
  ['C F', 'three-three-two', 100],
  ['C F', 'sixteenth-ballad', 66],
  ['C F', 'boom-chick', 120],
  ['C G', 'seven-in-two-two-three', 120],
];

/** What a teacher might play on his own guitar: all distances, one to five chords, keys that own them or none. */
const PLAYED: readonly (readonly [string, (readonly Direction[])?])[] = [
  ['C'],
  ['E E', ['up']],
  ['C Am'],
  ['Em D'],
  ['Em D', ['down']],
  ['Dm G', ['up']],
  ['Dm G', ['down']],
  ['G F', ['down']],
  ['Am F', ['up']],
  ['Am C', ['up']],
  ['C F#dim', ['down']],
  ['C Db', ['down']],
  ['Bdim Em', ['up']],
  ['Bb C'],
  ['E A E A', ['up', 'same', 'down']],
  ['E A E', ['up', 'down']],
  ['A D E', ['up', 'down']],
  ['C F G Am', ['up', 'down', 'down']],
  ['Bdim C Em', ['up', 'up']],
  ['C Dm Em F G', ['up', 'up', 'up', 'up']],
  ['C F', ['up']],
  ['C/E F', ['up']],
  ['G C/E', ['up']],
  ['Am7 D7', ['up']],
  ['Cmaj7 C', ['same']],
  ['Bm7b5 E7', ['up']],
];

const SEEDS = 4;

/** Truths of vamps of every level: which they are hangs on the pools. */
export function generatedTruths(): readonly Truth[] {
  return LEVELS_THAT_STAND.flatMap((level) =>
    Array.from({ length: SEEDS }, (_, seed) => generate({ level, seed }).truth),
  );
}

/** Truths of all sorts, each built of chords that sound, always the same. */
export function fixedTruths(): readonly Truth[] {
  const sound = (chords: string, beats: number, groove: string, tempo: number, way: object) => {
    const { meter } = grooveById(groove);
    const vamp = voice({ slots: parseVamp(chords, beats), meter, groove, tempo, seed: 1, ...way });
    return truthOf(vamp, perform(vamp));
  };
  const sounded = SOUNDED.map(([chords, groove, tempo, directions]) =>
    sound(chords, 4, groove, tempo, directions === undefined ? {} : { directions }),
  );
  const grooved = GROOVED.map(([chords, groove, tempo]) => {
    const beats = 2 * BEATS_PER_BAR[grooveById(groove).meter];
    return sound(chords, beats, groove, tempo, { opening: true });
  });
  return [...sounded, ...grooved, ...PLAYED.map(([chords, directions]) => played(chords, directions ?? null))];
}

const SIGNS = ['', 'b', '#'] as const;
const ENDINGS = ['', 'o', '+'] as const;
const DEGREES = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'].flatMap((degree) => [degree, degree.toLowerCase()]);
const NUMERALS = SIGNS.flatMap((sign) =>
  DEGREES.flatMap((degree) => ENDINGS.map((ending) => `${sign}${degree}${ending}`)),
);
const CHART = ['I', 'ii', 'iii', 'IV', 'V', 'vi', 'VII', 'i', 'II', 'v', 'bVII', 'VI', 'io', 'bII'];

/** Every set of up to two keys, and three neighbours on the circle of fifths. */
const KEY_SETS: readonly (readonly string[])[] = [
  [],
  ...KEY_IDS.flatMap((first, one) => [[first], ...KEY_IDS.slice(one + 1).map((second) => [first, second])]),
  ...Array.from({ length: 12 }, (_, start) => [0, 7, 2].map((step) => `${(start + step) % 12}M`)),
];

/** Rows of numerals, one for each bar. */
function rows(numerals: readonly string[], bars: number): readonly (readonly string[])[] {
  return Array.from({ length: bars }).reduce<readonly (readonly string[])[]>(
    (longer) => longer.flatMap((row) => numerals.map((numeral) => [...row, numeral])),
    [[]],
  );
}

/** So many of the answers that hear nothing are searched. */
const BLIND = 40;

/**
 * Every answer of the pad; of keys the sets above, of numerals for more than one bar the usual ones, of grids and taps what a class is
 * likely to give, of grids some that hear nothing too.
 */
export function padAnswers(
  kind: Kind,
  { truth, settings }: Pick<MarkingContext, 'truth' | 'settings'>,
): readonly Answer[] {
  const asked = { truth, settings, target: 0 };
  const read = (values: readonly unknown[]) =>
    values.flatMap((value) => {
      const answer = asks[kind].read(value, settings);
      return answer === null ? [] : [answer];
    });
  switch (kind) {
    case 'tempo':
    case 'steadiness':
    case 'drop-out':
    case 'together':
    case 'bar-count':
    case 'threes':
    case 'half-time':
    case 'swing':
    case 'drive':
    case 'strokes':
    case 'pendulum':
    case 'change-place':
    case 'accents':
    case 'stroke-grid':
    case 'roles':
    case 'opened':
      return [
        ...plausibleAnswers(kind, asked).map(({ answer }) => answer),
        ...(TAPPED_KINDS.has(kind) ? [] : blindAnswers(kind, asked).slice(0, BLIND)),
      ];
    case 'count':
      return Array.from({ length: MOST_CHORDS }, (_, index) => index + 1);
    case 'order':
      return ORDERS;
    case 'direction':
      return read(['up', 'down', 'same']);
    case 'quality':
      return read(QUALITIES);
    case 'bass':
    case 'root':
      return neckPlaces();
    case 'seventh':
      return ASKED_SEVENTHS;
    case 'distance':
      return Array.from({ length: 2 * OCTAVE + 1 }, (_, index) => index - OCTAVE);
    case 'numeral':
      return truth.count === 1 ? rows(NUMERALS, 1) : rows(CHART, Math.min(3, truth.count));
    case 'one-or-several':
      return read(['one', 'several']);
    case 'keys':
    case 'settler':
      return read(KEY_SETS);
    case 'home':
      return [];
  }
}

/** A capo that makes no shape's name an interval that is misheard elsewhere: roots two frets lower. */
const CAPO = 2;

/** Pads with so many answers that they are searched alone, and not beside own answers nor as own answers in full. */
const WIDE: ReadonlySet<Kind> = new Set(['numeral', 'keys', 'settler']);

/** One question of a round with a student's own other answers. */
export type Case = { readonly question: RoundQuestion; readonly context: MarkingContext };

/** Every question of the truths under every policy, alone and beside every single own answer that its marks lean on. */
export function* cases(truths: readonly Truth[]): Generator<Case> {
  for (const truth of truths) {
    for (const policy of POLICIES) {
      const settings: QuestionSettings = { policy, qualities: QUALITIES, capo: CAPO };
      const questions = askableQuestions(truth, settings).filter(({ kind }) => !COLLECTED_KINDS.has(kind));
      for (const question of questions) {
        const { kind, target } = question;
        // No key policy changes a groove.
        if (RHYTHM_KINDS.has(kind) && policy !== 'majors') continue;
        const context = { truth, settings, target, beside: besideAll(truth, { returned: true }), own: {} };
        yield { question, context };
        if (WIDE.has(kind)) continue;
        const leaning = judgeOf<Kind>(kind).leansOn?.(target, questions) ?? [];
        for (const other of questions.filter(({ id }) => leaning.includes(id))) {
          const given = WIDE.has(other.kind) ? KEY_IDS.map((id) => [id]) : padAnswers(other.kind, context);
          for (const answer of given) yield { question, context: { ...context, own: { [other.id]: answer } } };
        }
      }
    }
  }
}

/** The mark of an answer. */
export function markIn({ question, context }: Case, answer: Answer): Mark {
  return judgeOf<Kind>(question.kind).mark(answer, context);
}
