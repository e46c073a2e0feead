import { describe, expect, test } from 'vitest';
import { answerText, truthText } from '../../../client/shared/answer-text.ts';
import { rightSentence } from '../../../client/shared/right-sentence.ts';
import { loadPad } from '../../../client/student/pads/pads.ts';
import type { WireAsking } from '../../../server/protocol/views.ts';

/** What a phone says of an answer: its pad does. */
const onPhone = async (asking: WireAsking, answer: unknown) => (await loadPad(asking.kind))?.said?.(asking, answer);

test('of how even somebody taps no tempo is right; of other taps it is', () => {
  const taps = [0, 500, 1000, 1500, 2000, 2500, 3000, 3500];
  expect(truthText('steadiness', taps)).toBe('even taps, at any tempo');
  expect(truthText('steadiness', null)).toBe('');
  expect(truthText('tempo', taps)).toBe('about 120 a minute');
  expect(answerText('steadiness', taps)).toBe('about 120 a minute');
});

describe('an answer in a few words', () => {
  test.each([
    ['count', 1, 'one'],
    ['count', 5, 'five'],
    ['distance', 5, 'distance 4, up'],
    ['distance', -5, 'distance 5, down'],
    ['distance', -2, 'distance ♭7, down'],
    ['distance', 6, 'distance ♯4, up'],
    ['distance', 12, 'distance 8, up'],
    ['distance', -12, 'distance 1, down'],
    ['distance', 0, 'home, the same note'],
    ['numeral', ['vi', 'V'], 'vi – V'],
    ['numeral', ['bVII', 'viio', 'III+'], '♭VII – vii° – III+'],
    ['one-or-several', 'one', 'one key'],
    ['one-or-several', 'several', 'several keys'],
    ['settler', [], 'no key is left'],
    ['keys', [], 'no key owns all'],
    ['order', [0, 1, 0, 2], 'A B A C'],
    ['seventh', 'none', 'no seventh'],
    ['seventh', 'seventh', 'seventh: it leans'],
    ['seventh', 'major-seventh', 'major seventh: it is soft'],
    ['home', 0, 'first chord'],
    ['home', 3, 'fourth chord'],
    ['bar-count', 3, 'three'],
    ['swing', 'swung', 'swung'],
    ['pendulum', 'keeps', 'it keeps swinging'],
  ])('%s %j, on desk, wall and phone', async (kind, answer, text) => {
    expect(answerText(kind, answer)).toBe(text);
    expect(await onPhone({ kind, target: 0 }, answer)).toBe(text);
  });

  test('keys by their chords on the wall, by their names on a phone', async () => {
    expect(answerText('settler', ['7M', '4m'])).toBe('G and Em');
    expect(await onPhone({ kind: 'settler', target: 0 }, ['7M', '4m'])).toBe('G major, E minor');
  });

  test('a home beside the scales is named by its place', async () => {
    expect(answerText('keys', ['7M', 'h1'])).toBe('G and home: 2nd chord');
    expect(await onPhone({ kind: 'keys', target: 0, options: ['modes'] }, ['7M', 'h1'])).toBe(
      'G major, home: 2nd chord',
    );
  });

  test('a seventh over a triad that was shown is a chord', async () => {
    expect(await onPhone({ kind: 'seventh', target: 0, letter: 'Am' }, 'seventh')).toBe('Am7');
    expect(await onPhone({ kind: 'seventh', target: 0, letter: 'Bb' }, 'major-seventh')).toBe('B♭maj7');
    // No chord is diminished with a major seventh: then none of the three is written as one.
    expect(await onPhone({ kind: 'seventh', target: 0, letter: 'Bdim' }, 'seventh')).toBe('seventh: it leans');
  });

  test('a bass and a root are named as places on a phone, as notes elsewhere', async () => {
    const place = { string: 6, fret: 2 } as const;
    for (const kind of ['root', 'bass']) {
      expect(answerText(kind, place)).toBe('F♯ or G♭');
      expect(await onPhone({ kind, target: 0 }, place)).toBe('string 6, fret 2');
    }
  });

  test.each([...Array(25).keys()].map((place) => place - 12))(
    'a distance of %i: its number stands after the word alone',
    (place) => {
      const said = [answerText('distance', place), rightSentence('distance', { answer: place, key: String(place) })];
      for (const text of said) expect(text.replace(/distance [♭♯]?[1-8]/, '')).not.toMatch(/[0-9]/);
    },
  );
});

describe('the right answer as a sentence', () => {
  test.each([
    ['count', 1, '1', [], 'One chord all the way.'],
    ['count', 3, '3', [], 'Three different chords.'],
    ['distance', 5, '5', [], 'It lies at distance 4, up.'],
    ['distance', -2, '-2', [], 'It lies at distance ♭7, down.'],
    ['distance', 12, '12', [], 'It lies at distance 8, an octave up.'],
    ['distance', -12, '-12', [], 'It lies at distance 1, an octave down.'],
    ['distance', 0, '0', [], 'It is the same note as home.'],
    ['numeral', ['V'], 'V', [], 'The numeral: V.'],
    ['numeral', ['vi', 'V'], 'vi V', [], 'The numerals: vi – V.'],
    ['numeral', ['vi', 'V'], 'vi V', ['ii I', 'i VII', 'i bVII'], 'The numerals: vi – V or ii – I.'],
    ['numeral', ['i', 'IV'], 'i IV', [], 'The numerals: i – IV.'],
    ['one-or-several', 'one', 'one', [], 'One key owns them all.'],
    ['one-or-several', 'several', 'several', [], 'Several keys own them all.'],
    ['settler', ['7M'], '7M', [], 'That leaves G major.'],
    ['settler', ['7M', '4m'], '7M 4m', [], 'That leaves G major and E minor.'],
    ['settler', [], 'none', [], 'No key is left.'],
    ['direction', 'up', 'up', [], 'The bass went up.'],
    ['strokes', 'all-downs', 'all-downs', [], 'All downs.'],
    ['quality', 'minor', 'minor', [], 'It was minor.'],
  ])('%s %j', (kind, answer, key, also, sentence) => {
    expect(rightSentence(kind, { answer, key, also })).toBe(sentence);
  });
});
