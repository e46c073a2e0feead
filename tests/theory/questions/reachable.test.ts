import { describe, expect, test, vi } from 'vitest';
import { markerOf } from '../../../shared-theory/diagnosis/marker.ts';
import { besideAll } from '../../../shared-theory/questions/beside.ts';
import type { ErrorKind, NoteKind } from '../../../shared-theory/questions/error-kinds.ts';
import { ERROR_KINDS, NOTE_KINDS } from '../../../shared-theory/questions/error-kinds.ts';
import type { ErrorRule } from '../../../shared-theory/questions/marks.ts';
import type { Kind } from '../../../shared-theory/questions/question.ts';
import type { Truth } from '../../../shared-theory/truth.ts';
import { EM_D, SETTINGS } from './given.ts';
import { cases, fixedTruths, generatedTruths, markIn, padAnswers } from './search.ts';

/** All that an answer shows, of which one error is kept: seen where the judges choose it. */
const { choices } = vi.hoisted(() => ({ choices: [] as ErrorKind[][] }));
vi.mock('../../../shared-theory/questions/marks.ts', async (original) => {
  const actual = await original<typeof import('../../../shared-theory/questions/marks.ts')>();
  return {
    ...actual,
    firstShown: (rules: readonly ErrorRule[]) => {
      choices.push(rules.filter(([, shown]) => shown).map(([error]) => error));
      return actual.firstShown(rules);
    },
  };
});

/** Which error is kept before which, where one answer shows several: common practice in ear-training classes. */
const PRECEDENCE: Readonly<Record<Exclude<Kind, 'home' | 'together'>, readonly ErrorKind[]>> = {
  tempo: ['taps-twice-as-fast', 'taps-half-as-fast', 'taps-three-against-two', 'rushes', 'drags', 'taps-unevenly'],
  steadiness: ['rushes', 'drags', 'taps-unevenly'],
  'drop-out': ['rushes', 'drags', 'taps-unevenly'],
  'bar-count': ['counts-the-bar-twice', 'swaps-threes-and-twos', 'counts-half-the-bar'],
  threes: ['swaps-threes-and-twos'],
  'half-time': ['swaps-full-and-half-time'],
  swing: ['swaps-straight-and-swung'],
  drive: ['swaps-driving-and-relaxed'],
  pendulum: ['stops-the-pendulum', 'keeps-the-pendulum-where-it-breaks'],
  'change-place': ['puts-the-change-on-one', 'hears-a-push-where-there-is-none'],
  accents: [
    'one-and-three-for-two-and-four',
    'starts-the-bar-elsewhere',
    'ands-heavier-than-numbers',
    'all-alike',
    'mute-heard-as-rest',
  ],
  'stroke-grid': [
    'loses-the-pendulum',
    'hears-down-up-where-all-are-down',
    'hears-all-downs-where-they-alternate',
    'mute-heard-as-rest',
  ],
  roles: ['foot-and-hat-swapped', 'open-hat-missed', 'mute-heard-as-rest'],
  opened: ['opens-one-slot-off'],
  count: ['counts-the-changes', 'merges-close-chords', 'splits-one-chord', 'hears-no-change'],
  order: ['starts-the-loop-elsewhere', 'hears-a-return-as-new', 'hears-a-new-chord-as-a-return'],
  direction: ['follows-the-top-note', 'right-note-other-octave', 'answers-the-way-back', 'says-stays', 'says-moves'],
  bass: [
    'names-the-root-over-a-slash',
    'fifth-over-the-bass',
    'third-over-the-bass',
    'one-fret-off',
    'names-the-top-note',
  ],
  quality: [
    'slow-or-low-is-minor',
    'fast-or-bright-is-major',
    'hears-the-inversion-as-minor',
    'gives-a-mood-to-a-power-chord',
    'gives-a-mood-to-a-suspended-chord',
    'hears-the-major-on-top',
    'hears-diminished-as-minor',
    'lumps-diminished-and-augmented',
    'carries-the-first-quality',
  ],
  root: [
    'names-the-shape',
    'constant-shift',
    'gives-the-bass',
    'swaps-relatives',
    'hears-the-fifth',
    'hears-the-fourth-above',
    'hears-the-third',
    'one-fret-off',
    'names-the-top-note',
  ],
  distance: [
    'right-note-other-octave',
    'measures-between-the-basses',
    'measures-from-the-key',
    'swaps-four-and-five',
    'lays-the-minor-scale',
    'measures-the-other-way',
    'starts-at-zero',
    'counts-frets-as-steps',
    'forgets-the-half-steps',
  ],
  seventh: ['seventh-swallowed', 'hears-a-seventh-too-many', 'sevenths-swapped'],
  numeral: ['takes-home-for-one', 'numeral-case-wrong', 'flat-sign-missing'],
  'one-or-several': ['settles-too-early'],
  keys: [
    'finds-no-owner',
    'relative-minors-for-majors',
    'names-one-of-the-pair',
    'stops-at-one-key',
    'leaves-an-owner-out',
    'one-step-round-the-circle',
    'roots-fit-qualities-do-not',
    'either-chord-not-both',
  ],
  settler: [
    'finds-no-owner',
    'relative-minors-for-majors',
    'names-one-of-the-pair',
    'ignores-the-settler',
    'one-step-round-the-circle',
  ],
  strokes: ['hears-down-up-where-all-are-down', 'hears-all-downs-where-they-alternate'],
};

function precedenceOf(kind: Kind): readonly ErrorKind[] {
  if (kind === 'home' || kind === 'together') throw new RangeError('Opinions show no error.');
  return PRECEDENCE[kind];
}

/** Pairs that the fixed vamps show in one answer. */
const PAIRS_MET: readonly string[] = [
  'accents: all-alike before mute-heard-as-rest',
  'accents: ands-heavier-than-numbers before mute-heard-as-rest',
  'accents: one-and-three-for-two-and-four before starts-the-bar-elsewhere',
  'accents: starts-the-bar-elsewhere before ands-heavier-than-numbers',
  'bar-count: counts-the-bar-twice before swaps-threes-and-twos',
  'bar-count: swaps-threes-and-twos before counts-half-the-bar',
  'bass: fifth-over-the-bass before names-the-top-note',
  'bass: third-over-the-bass before names-the-top-note',
  'count: counts-the-changes before splits-one-chord',
  'count: merges-close-chords before hears-no-change',
  'direction: follows-the-top-note before answers-the-way-back',
  'direction: follows-the-top-note before right-note-other-octave',
  'direction: follows-the-top-note before says-moves',
  'direction: follows-the-top-note before says-stays',
  'direction: right-note-other-octave before answers-the-way-back',
  'direction: right-note-other-octave before says-stays',
  'distance: counts-frets-as-steps before forgets-the-half-steps',
  'distance: lays-the-minor-scale before counts-frets-as-steps',
  'distance: lays-the-minor-scale before forgets-the-half-steps',
  'distance: measures-between-the-basses before counts-frets-as-steps',
  'distance: measures-from-the-key before counts-frets-as-steps',
  'distance: measures-from-the-key before forgets-the-half-steps',
  'distance: measures-from-the-key before measures-the-other-way',
  'distance: measures-from-the-key before starts-at-zero',
  'distance: measures-from-the-key before swaps-four-and-five',
  'distance: measures-the-other-way before counts-frets-as-steps',
  'distance: right-note-other-octave before counts-frets-as-steps',
  'distance: right-note-other-octave before measures-the-other-way',
  'distance: starts-at-zero before forgets-the-half-steps',
  'distance: swaps-four-and-five before counts-frets-as-steps',
  'distance: swaps-four-and-five before measures-the-other-way',
  'keys: names-one-of-the-pair before leaves-an-owner-out',
  'keys: names-one-of-the-pair before stops-at-one-key',
  'keys: one-step-round-the-circle before either-chord-not-both',
  'keys: one-step-round-the-circle before roots-fit-qualities-do-not',
  'keys: relative-minors-for-majors before leaves-an-owner-out',
  'keys: relative-minors-for-majors before stops-at-one-key',
  'keys: roots-fit-qualities-do-not before either-chord-not-both',
  'keys: stops-at-one-key before leaves-an-owner-out',
  'numeral: numeral-case-wrong before flat-sign-missing',
  'quality: gives-a-mood-to-a-power-chord before carries-the-first-quality',
  'quality: gives-a-mood-to-a-suspended-chord before carries-the-first-quality',
  'quality: hears-diminished-as-minor before carries-the-first-quality',
  'quality: lumps-diminished-and-augmented before carries-the-first-quality',
  'quality: slow-or-low-is-minor before carries-the-first-quality',
  'quality: slow-or-low-is-minor before hears-the-inversion-as-minor',
  'roles: open-hat-missed before mute-heard-as-rest',
  'root: constant-shift before gives-the-bass',
  'root: constant-shift before hears-the-fifth',
  'root: constant-shift before hears-the-fourth-above',
  'root: constant-shift before hears-the-third',
  'root: constant-shift before names-the-top-note',
  'root: constant-shift before one-fret-off',
  'root: gives-the-bass before hears-the-third',
  'root: hears-the-fifth before names-the-top-note',
  'root: hears-the-third before names-the-top-note',
  'root: names-the-shape before constant-shift',
  'root: swaps-relatives before hears-the-third',
  'settler: names-one-of-the-pair before ignores-the-settler',
  'settler: relative-minors-for-majors before ignores-the-settler',
  'stroke-grid: hears-down-up-where-all-are-down before mute-heard-as-rest',
  'stroke-grid: loses-the-pendulum before hears-all-downs-where-they-alternate',
];

/** Pairs that vamps of the levels show beside them, or may. */
const PAIRS_OF_LEVELS: readonly string[] = [
  'bass: names-the-root-over-a-slash before names-the-top-note',
  'bass: one-fret-off before names-the-top-note',
  'distance: measures-between-the-basses before measures-the-other-way',
  'distance: measures-between-the-basses before swaps-four-and-five',
  'distance: starts-at-zero before counts-frets-as-steps',
  'quality: fast-or-bright-is-major before carries-the-first-quality',
  'quality: fast-or-bright-is-major before hears-the-major-on-top',
  'quality: hears-the-inversion-as-minor before carries-the-first-quality',
  'quality: hears-the-major-on-top before carries-the-first-quality',
  'root: gives-the-bass before hears-the-fifth',
  'root: gives-the-bass before names-the-top-note',
  'root: gives-the-bass before swaps-relatives',
  'root: hears-the-fourth-above before names-the-top-note',
  'root: names-the-shape before gives-the-bass',
  'root: one-fret-off before names-the-top-note',
  'root: swaps-relatives before names-the-top-note',
];

/** What the whole search found. */
function searched(truths: readonly Truth[]) {
  const found = new Set<ErrorKind | NoteKind>();
  const met = new Set<string>();
  const faults = new Set<string>();
  for (const one of cases(truths)) {
    const { kind } = one.question;
    const alone = Object.keys(one.context.own).length === 0;
    for (const answer of padAnswers(kind, one.context)) {
      choices.length = 0;
      const { credit, exact, errors, note } = markIn(one, answer);
      const [error] = errors;
      for (const each of [...errors, ...(note === undefined ? [] : [note])]) found.add(each);
      const shown = choices[0] ?? [];
      for (const [index, first] of shown.entries()) {
        for (const later of shown.slice(index + 1)) met.add(`${kind}: ${first} before ${later}`);
      }
      const highest = precedenceOf(kind).find((each) => shown.includes(each));
      for (const each of shown) if (!precedenceOf(kind).includes(each)) faults.add(`${kind} shows ${each}`);
      if (choices.length > 0 && error !== highest) faults.add(`${kind} keeps ${error} of ${shown.join()}`);
      if (errors.length > (credit === 1 ? 0 : 1)) faults.add(`${kind} shows ${errors.join()} at ${credit}`);
      if (!(credit >= 0 && credit <= 1)) faults.add(`${kind} earns ${credit}`);
      if (exact && credit < 1) faults.add(`${kind} is right and earns ${credit}`);
      if (credit === 1 && !exact && (alone || note !== 'follows-own-answer'))
        faults.add(`${kind} is wrong and earns 1`);
    }
  }
  return { found, met: [...met].toSorted(), faults: [...faults] };
}

const fixed = searched(fixedTruths());
const generated = searched(generatedTruths());
const found = new Set([...fixed.found, ...generated.found]);

describe('a search over all answers to all sorts of vamps', () => {
  test.each(ERROR_KINDS.map((kind) => [kind]))('reaches %s', (kind) => {
    expect(found).toContain(kind);
  });

  test.each(NOTE_KINDS.filter((note) => note !== 'also-right').map((note) => [note]))('reaches the note %s', (note) => {
    expect(found).toContain(note);
  });

  test('keeps one error at most, the one that goes before the others, and no full credit for a wrong answer by itself', () => {
    expect([...fixed.faults, ...generated.faults]).toEqual([]);
  });

  test('meets these pairs of errors in one answer, and keeps the first', () => {
    expect(fixed.met).toEqual(PAIRS_MET);
  });

  test('meets no others in the vamps of the levels but these', () => {
    expect(generated.met.filter((pair) => ![...PAIRS_MET, ...PAIRS_OF_LEVELS].includes(pair))).toEqual([]);
  });
});

test('what the teacher lets stand is right and says so', () => {
  const question = { id: 'quality-0', kind: 'quality', target: 0 } as const;
  const marker = markerOf({
    question,
    questions: [question],
    truth: EM_D,
    settings: SETTINGS,
    beside: besideAll(EM_D),
    letStand: new Set(['power']),
    mayLeanOn: () => true,
  });
  const mark = marker('power', () => null);
  expect(mark).toEqual({ credit: 1, exact: true, errors: [], note: 'also-right', evidence: 'right' });
  expect(marker('major', () => null).exact).toBe(false);
});
