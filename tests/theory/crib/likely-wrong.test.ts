import { describe, expect, test } from 'vitest';
import { QUALITIES } from '../../../shared-theory/chords.ts';
import { likelyWrong, MOST_WRONG } from '../../../shared-theory/crib/likely-wrong.ts';
import { plausibleAnswers } from '../../../shared-theory/crib/plausible.ts';
import { asks } from '../../../shared-theory/questions/asks.ts';
import { besideAll } from '../../../shared-theory/questions/beside.ts';
import { askableQuestions, judgeOf } from '../../../shared-theory/questions/judges.ts';
import type { Kind, QuestionSettings } from '../../../shared-theory/questions/question.ts';
import { parseQuestionId } from '../../../shared-theory/questions/round-questions.ts';
import { guitarTruth, POLICIES } from '../../../shared-theory/truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';

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
