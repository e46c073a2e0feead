import { describe, expect, test } from 'vitest';
import { QUALITIES } from '../../../shared-theory/chords.ts';
import { likelyWrong, MOST_WRONG } from '../../../shared-theory/crib/likely-wrong.ts';
import { plausibleAnswers } from '../../../shared-theory/crib/plausible.ts';
import { grooveById } from '../../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { perform } from '../../../shared-theory/perform.ts';
import { asks } from '../../../shared-theory/questions/asks.ts';
import { besideAll } from '../../../shared-theory/questions/beside.ts';
import { askableQuestions, judgeOf } from '../../../shared-theory/questions/judges.ts';
import { COLLECTED_KINDS, RHYTHM_KINDS } from '../../../shared-theory/questions/question.ts';
import type { Kind, QuestionSettings } from '../../../shared-theory/questions/question.ts';
import { parseQuestionId } from '../../../shared-theory/questions/round-questions.ts';
import { guitarTruth, POLICIES, truthOf } from '../../../shared-theory/truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';

const VAMPS = [
  'Em D',
  'C Am F G',
  'F Dm',
  'A B A C',
  'Bb C',
  'Am E',
  'G F',
  'Am7 D7 Gmaj7 C/E',
  'C5 G5',
  'Dsus4 A',
  'Bdim C',
  'E',
];
const heard = (text: string) => guitarTruth(parseVamp(text, 4));
const settingsOf = (policy: QuestionSettings['policy']): QuestionSettings => ({ policy, qualities: QUALITIES });
const wrongOf = (text: string, id: string, policy: QuestionSettings['policy'] = 'majors') => {
  const question = parseQuestionId(id);
  if (question === null) throw new RangeError(id);
  return likelyWrong(question, heard(text), settingsOf(policy));
};
const errors = (text: string, id: string) => wrongOf(text, id).map(({ error }) => error);

describe.each(POLICIES)('likely wrong answers under %s', (policy) => {
  test.each(VAMPS)('%s: each is an answer of the pad, and its judge marks it wrong with that very error', (text) => {
    const truth = heard(text);
    const settings = settingsOf(policy);
    for (const { kind, target, id } of askableQuestions(truth, settings)) {
      const asked = { truth, target, settings };
      if (judgeOf<Kind>(kind).truth(asked) === null) continue;
      const wrong = likelyWrong({ kind, target }, truth, settings);
      expect(wrong.length, id).toBeGreaterThan(0);
      expect(wrong.length, id).toBeLessThanOrEqual(MOST_WRONG);
      const beside = besideAll(truth, { returned: true });
      for (const { answer, error, own, credit } of wrong) {
        const json: unknown = JSON.parse(JSON.stringify(answer));
        expect(asks[kind].read(json, settings), `${id} ${JSON.stringify(answer)}`).toEqual(answer);
        const mark = judgeOf<Kind>(kind).mark(answer, { ...asked, beside, own });
        expect({ exact: mark.exact, errors: mark.errors, credit: mark.credit }, id).toEqual({
          exact: false,
          errors: error === null ? [] : [error],
          credit,
        });
        expect(credit, id).toBeLessThan(1);
      }
      const kinds = wrong.map(({ error }) => error);
      expect(new Set(kinds).size, id).toBe(kinds.length);
    }
  });
});

/** What classes mostly answer instead: common practice. */
describe('what a class will most likely answer', () => {
  test('root: the fifth, the third, the relative with its quality', () => {
    expect(errors('Em D', 'root-0')).toEqual(['hears-the-fifth', 'hears-the-third', 'swaps-relatives']);
    expect(wrongOf('Em D', 'root-0')[2]?.own).toEqual({ 'quality-0': 'major' });
  });

  test('distance: four for five; the other way round', () => {
    expect(errors('C F', 'distance-1')[0]).toBe('swaps-four-and-five');
    expect(errors('C Am', 'distance-1')[0]).toBe('measures-the-other-way');
    // Down to 4 in the open shapes, as the right answer goes: the likely slip is on the same side.
    expect(wrongOf('C G', 'distance-1')[0]?.answer).toBe(-7);
  });

  test('keys: stops at one, in the first chord’s own key', () => {
    expect(wrongOf('C Am', 'keys-0')[0]).toMatchObject({ answer: ['0M'], error: 'stops-at-one-key' });
    expect(wrongOf('Em D', 'keys-0')[0]).toMatchObject({ answer: ['7M'], error: 'stops-at-one-key' });
  });

  test('settler: nothing has changed', () => {
    expect(errors('Em D', 'settler-0')[0]).toBe('ignores-the-settler');
  });

  test('numerals: capital and small exchanged', () => {
    expect(wrongOf('Em D', 'numeral-0')[0]).toMatchObject({ answer: ['VI', 'V'], error: 'numeral-case-wrong' });
  });

  test('count: every change, two close chords as one', () => {
    expect(errors('C Am C F', 'count-0').slice(0, 2)).toEqual(['counts-the-changes', 'merges-close-chords']);
  });

  test('bass of a slash chord: its root', () => {
    expect(errors('C/E Am', 'bass-0')[0]).toBe('names-the-root-over-a-slash');
  });

  test('no answer that nobody gives', () => {
    // Down eight frets: an octave up is no slip of it; of E down a fourth the octave is none either.
    for (const text of ['D F#7', 'C E7', 'C F', 'Am E'])
      for (const { answer } of wrongOf(text, 'distance-1')) expect([0, 12, -12]).not.toContain(answer);
    // A minor home needs no flats, and nobody writes one of two.
    expect(errors('Am G F E', 'numeral-0')).not.toContain('flat-sign-missing');
    expect(errors('C Bb F', 'numeral-0')).toContain('flat-sign-missing');
    // Where no key owns the loop the keys of its chords are named, none from elsewhere.
    expect(wrongOf('Am E', 'keys-0').map(({ answer }) => answer)).not.toContainEqual(['11M']);
  });

  test('under modes a parent scale is named by its major key', () => {
    for (const text of ['Em D', 'A Bm', 'C Am'])
      for (const id of ['keys-0', 'settler-0'])
        for (const { answer } of wrongOf(text, id, 'modes')) expect(JSON.stringify(answer)).not.toMatch(/\dm/);
  });

  test('no answer to an opinion is plausible before another', () => {
    const truth = heard('Em D');
    expect(plausibleAnswers('home', { truth, target: 0, settings: settingsOf('majors') })).toEqual([]);
  });
});

/** What is likely heard of a groove instead: common practice. */
describe('what a class will most likely answer about the groove', () => {
  const grooved = (groove: string) => {
    const { meter, tempo } = grooveById(groove);
    const slots = parseVamp('Em G', 2 * BEATS_PER_BAR[meter]);
    const vamp = voice({ slots, meter, groove, tempo: tempo[0], seed: 1, opening: true });
    return truthOf(vamp, perform(vamp));
  };
  const of = (groove: string, kind: Kind) => likelyWrong({ kind, target: 0 }, grooved(groove), settingsOf('majors'));
  const shown = (groove: string, kind: Kind) => of(groove, kind).map(({ error }) => error);

  test.each(['relaxed-alternate', 'foot-and-open-hat', 'six-eight-ballad', 'mute-and-open', 'funk-sixteenths'])(
    '%s: each is an answer of the pad, and its judge marks it wrong with that very error',
    (groove) => {
      const truth = grooved(groove);
      const settings = settingsOf('majors');
      const asked = askableQuestions(truth, settings).filter(({ kind }) => RHYTHM_KINDS.has(kind));
      expect(asked.length).toBeGreaterThan(4);
      for (const { kind, target, id } of asked) {
        if (COLLECTED_KINDS.has(kind)) continue;
        const context = { truth, target, settings, beside: besideAll(truth, { returned: true }), own: {} };
        const wrong = likelyWrong({ kind, target }, truth, settings);
        expect(wrong.length, id).toBeGreaterThan(0);
        for (const { answer, error } of wrong) {
          const json: unknown = JSON.parse(JSON.stringify(answer));
          expect(asks[kind].read(json, settings), `${id} ${JSON.stringify(answer)}`).toEqual(answer);
          const { exact, errors } = judgeOf<Kind>(kind).mark(answer, context);
          expect({ exact, errors }, id).toEqual({ exact: false, errors: error === null ? [] : [error] });
        }
      }
    },
  );

  test('tempo: twice as fast, half as fast', () => {
    expect(shown('quarter-downs', 'tempo').slice(0, 2)).toEqual(['taps-twice-as-fast', 'taps-half-as-fast']);
  });

  test('accents: the right shape from another one on; strokes: down and up where all are down', () => {
    expect(shown('relaxed-alternate', 'accents')[0]).toBe('starts-the-bar-elsewhere');
    expect(shown('driving-eighths', 'stroke-grid')[0]).toBe('hears-down-up-where-all-are-down');
    expect(shown('campfire-strum', 'stroke-grid')).toEqual([
      'hears-all-downs-where-they-alternate',
      'loses-the-pendulum',
    ]);
  });

  test('roles: the open hat closed; a six-eight counted in three; what opens, one slot late', () => {
    expect(shown('foot-and-open-hat', 'roles')[0]).toBe('open-hat-missed');
    expect(of('six-eight-ballad', 'bar-count')[0]).toMatchObject({ answer: 3, error: 'swaps-threes-and-twos' });
    expect(of('mute-and-open', 'opened')[0]).toMatchObject({ answer: [0, 7], error: 'opens-one-slot-off' });
  });
});
