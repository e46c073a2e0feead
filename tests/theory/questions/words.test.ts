import { describe, expect, test } from 'vitest';
import { QUALITIES } from '../../../shared-theory/chords.ts';
import { ERROR_KINDS } from '../../../shared-theory/questions/error-kinds.ts';
import { POLICIES } from '../../../shared-theory/truth.ts';
import { KINDS } from '../../../shared-theory/questions/question.ts';
import { errorKinds, questionWords, rightWords, stepWords } from '../../../server/protocol/words/en.ts';
import { listed } from '../../../server/protocol/words/counting.ts';
import { ordinal, figureOrdinal } from '../../../server/protocol/words/ordinals.ts';
import { questionInstruction, questionPrompt } from '../../../server/protocol/words/questions.ts';
import { keysSentence } from '../../../server/protocol/words/right-sentences.ts';

test('every error kind has a finding, a sentence to say and a thing to play, and no other has', () => {
  expect(Object.keys(errorKinds).toSorted()).toEqual([...ERROR_KINDS].toSorted());
  const findings = Object.values(errorKinds).map(({ finding }) => finding);
  expect(new Set(findings).size).toBe(findings.length);
  for (const { finding, say, play } of Object.values(errorKinds)) {
    for (const sentence of [finding, say, play]) expect(sentence).toMatch(/^[A-Z].*[.?]$/);
    expect(finding.length).toBeLessThanOrEqual(56);
  }
});

test('every kind has a step name and an instruction, every answer a word and a sentence', () => {
  for (const kind of KINDS) {
    expect(stepWords[kind]).toBeTruthy();
    expect(questionInstruction({ kind, target: 0 })).toMatch(/^[A-Z].*[.?]$/);
  }
  for (const option of ['up', 'down', 'same', 'all-downs', 'down-up', ...QUALITIES] as const) {
    expect(questionWords.options[option]).toBeTruthy();
    expect(rightWords[option]).toMatch(/^[A-Z].*\.$/);
  }
});

describe('the question as spoken', () => {
  test.each([
    ['direction', 1, [], 'From home to the next chord, where did the bass go?'],
    ['direction', 2, [], 'From home to the third chord, where did the bass go?'],
    ['quality', 0, ['major', 'minor', 'power'], 'First chord: major, minor, something else?'],
    ['quality', 1, ['minor', 'major'], 'Next chord: major or minor?'],
    ['quality', 3, [], 'Fourth chord: major, minor, something else?'],
    ['quality', 16, [], '17th chord: major, minor, something else?'],
    ['quality', 20, [], '21st chord: major, minor, something else?'],
    ['root', 0, [], 'First chord: where is its root?'],
    ['keys', 0, ['majors'], 'Which major keys own every chord here?'],
    ['keys', 0, ['relatives'], 'Which keys own every chord here, major or minor?'],
    ['strokes', 0, [], 'All downs, or down and up?'],
    ['count', 0, [], 'How many chords, each counted once?'],
    ['distance', 1, [], 'From home, how far to the next chord?'],
    ['distance', 3, [], 'From home, how far to the fourth chord?'],
    ['numeral', 0, [], 'Which numeral is each chord?'],
    ['one-or-several', 0, ['majors'], 'Does one major key own every chord, or several?'],
    ['one-or-several', 0, ['relatives'], 'Does one key own every chord, or several?'],
    ['settler', 0, ['majors'], 'A new chord joins in. Which keys are left?'],
    ['settler', 1, ['majors'], 'Another chord instead. Which keys are left?'],
    ['bass', 0, [], 'First chord: which note is in the bass?'],
    ['seventh', 2, [], 'Third chord: does it carry a seventh?'],
    ['order', 0, [], 'Which chords come back, and where?'],
    ['home', 0, [], 'Where would you stop?'],
    ['keys', 0, ['raised-seventh'], 'Which keys own every chord here, major or minor?'],
    ['keys', 0, ['modes'], 'Which scales own every chord here, and which is home?'],
    ['one-or-several', 0, ['raised-seventh'], 'Does one key own every chord, or several?'],
    ['one-or-several', 0, ['modes'], 'Does one scale own every chord, or several?'],
  ])('%s of slot %i', (kind, target, options, prompt) => {
    expect(questionPrompt({ kind, target, options })).toBe(prompt);
  });

  test.each([
    ['direction', 'two', 'majors', 'From home, where did the bass go?'],
    ['direction', 'more', 'majors', 'From home to the next chord, where did the bass go?'],
    ['keys', 'two', 'majors', 'Which major keys own all of these chords?'],
    ['keys', 'more', 'relatives', 'Which keys own all of these chords, major or minor?'],
    ['keys', 'one', 'majors', 'Which major keys own this chord?'],
    ['keys', 'one', 'relatives', 'Which keys own this chord, major or minor?'],
  ])('%s where everyone knows that the loop has %s chords, %s', (kind, loop, policy, prompt) => {
    const target = kind === 'keys' ? 0 : 1;
    expect(questionPrompt({ kind, target, options: kind === 'keys' ? [policy] : [], loop })).toBe(prompt);
  });

  test('a settler that is sung is a note', () => {
    const asked = { kind: 'settler', options: ['majors'], sung: true } as const;
    // Chords come before it: the first that is sung is no other one.
    for (const target of [0, 1, 2])
      expect(questionPrompt({ ...asked, target })).toBe('A note is sung. Which keys are left?');
  });

  test('of one chord its numeral is asked', () => {
    expect(questionPrompt({ kind: 'numeral', target: 0, loop: 'one' })).toBe('Which numeral is this chord?');
  });

  test.each([...KINDS])('%s: short enough to be said in one breath, without a digit', (kind) => {
    for (const policy of POLICIES) {
      for (const target of [0, 1]) {
        for (const loop of ['one', 'two', 'more', undefined]) {
          for (const sung of [{}, { sung: true as const }]) {
            const asked = { kind, target, options: [policy], ...(loop ? { loop } : {}), ...sung };
            expect(questionPrompt(asked).split(' ').length).toBeLessThanOrEqual(11);
            expect(`${questionPrompt(asked)} ${questionInstruction(asked)}`).not.toMatch(/[0-9]/);
          }
        }
      }
    }
  });

  test('a kind without a prompt is refused', () => {
    expect(() => questionPrompt({ kind: 'melody', target: 0 })).toThrow(/kind melody/);
  });
});

test('the keys are told in one sentence', () => {
  expect(keysSentence('majors', 2, ['D', 'G'])).toBe('Two keys own D and G.');
  expect(keysSentence('majors', 1, ['C', 'D'])).toBe('One key owns C and D.');
  expect(keysSentence('majors', 0, ['Am', 'E'])).toBe('No major key owns Am and E.');
  expect(keysSentence('relatives', 0, ['Am', 'E'])).toBe('No key on the circle owns Am and E.');
  expect(keysSentence('raised-seventh', 0, ['Am', 'Eb'])).toBe('No key, seventh raised or not, owns Am and Eb.');
  expect(keysSentence('raised-seventh', 1, ['Am', 'E'])).toBe('One key owns Am and E.');
  expect(keysSentence('modes', 1, ['G', 'F'])).toBe('One scale owns G and F.');
  expect(keysSentence('modes', 2, ['Em', 'D'])).toBe('Two scales own Em and D.');
  expect(keysSentence('modes', 0, ['Am', 'E'])).toBe('No scale owns Am and E.');
  expect(keysSentence('relatives', 6, ['C', 'Am', 'C'])).toBe('Six keys own C and Am.');
});

test('names in a row stand once each', () => {
  expect(listed([])).toBe('');
  expect(listed(['G'])).toBe('G');
  expect(listed(['D', 'G', 'D'])).toBe('D and G');
  expect(listed(['D', 'Em', 'G'])).toBe('D, Em and G');
  expect(listed(['D', 'Em', 'G'], 'or')).toBe('D, Em or G');
});

test('places in a row, as words and in figures', () => {
  expect([0, 1, 2, 3, 20].map(ordinal)).toEqual(['first', 'next', 'third', 'fourth', '21st']);
  expect([0, 1, 2, 3, 10, 12, 20].map(figureOrdinal)).toEqual(['1st', '2nd', '3rd', '4th', '11th', '13th', '21st']);
});
