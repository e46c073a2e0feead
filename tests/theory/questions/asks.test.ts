import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { answerKey, asks, readAnswer } from '../../../shared-theory/questions/asks.ts';
import type { Kind } from '../../../shared-theory/questions/question.ts';
import { KINDS } from '../../../shared-theory/questions/question.ts';
import { answers, settings, SETTINGS, truths } from './given.ts';

describe('which slots can be asked', () => {
  test.each<[Kind, number, boolean, number[]]>([
    ['count', 0, true, []],
    ['count', 1, false, [0]],
    ['distance', 1, true, []],
    ['distance', 3, true, [1, 2]],
    ['numeral', 0, true, []],
    ['numeral', 4, true, [0]],
    ['one-or-several', 2, true, [0]],
    ['settler', 2, true, [0, 1]],
    ['direction', 0, true, []],
    ['direction', 1, true, []],
    ['direction', 4, true, [1, 2, 3]],
    ['quality', 1, true, [0]],
    ['quality', 3, false, [0, 1, 2]],
    ['root', 2, true, [0, 1]],
    ['keys', 0, true, []],
    ['keys', 4, true, [0]],
    ['strokes', 2, true, [0]],
    ['strokes', 2, false, []],
    ['strokes', 0, true, []],
  ])('%s of %i slots, groove %s: %j', (kind, slots, groove, targets) => {
    expect(asks[kind].targets(slots, { groove, settlers: 2 })).toEqual(targets);
  });
});

describe('reading what a phone sent', () => {
  const majorMinor = { ...SETTINGS, qualities: ['major', 'minor'] as const };
  const twentyFour = ['M', 'm'].flatMap((mode) => Array.from({ length: 12 }, (_, tonic) => `${tonic}${mode}`));

  test.each<[Kind, unknown, unknown]>([
    ['direction', 'up', 'up'],
    ['direction', 'same', 'same'],
    ['direction', 'Up', null],
    ['direction', 'stays', null],
    ['direction', ['up'], null],
    ['quality', 'minor', 'minor'],
    ['quality', 'power', null],
    ['quality', 'Minor', null],
    ['quality', '__proto__', null],
    ['root', { string: 6, fret: 0 }, { string: 6, fret: 0 }],
    ['root', { string: 5, fret: 12 }, { string: 5, fret: 12 }],
    ['root', { string: 5, fret: 13 }, null],
    ['root', { string: 4, fret: 2 }, null],
    ['root', { string: 6, fret: -1 }, null],
    ['root', { string: 6, fret: 2.5 }, null],
    ['root', { string: '6', fret: 2 }, null],
    ['root', { string: 6, fret: Number.NaN }, null],
    ['root', { string: 6 }, null],
    ['root', { string: 6, fret: 3, letter: 'G' }, null],
    ['root', [6, 3], null],
    ['keys', [], []],
    ['keys', ['7M'], ['7M']],
    ['keys', ['7M', '2M'], ['2M', '7M']],
    ['keys', ['4m', '7M'], ['7M', '4m']],
    ['keys', twentyFour, twentyFour],
    ['keys', [...twentyFour, '0M'], null],
    ['keys', ['7M', '7M'], null],
    ['keys', ['12M'], null],
    ['keys', ['07M'], null],
    ['keys', ['7'], null],
    ['keys', ['G major'], null],
    ['keys', '7M', null],
    ['keys', [7], null],
    ['keys', { length: 0 }, null],
    ['strokes', 'all-downs', 'all-downs'],
    ['strokes', 'down-up', 'down-up'],
    ['strokes', 'downs', null],
    ['count', 1, 1],
    ['count', 5, 5],
    ['count', 0, null],
    ['count', 6, null],
    ['count', 2.5, null],
    ['count', '2', null],
    ['distance', 12, 12],
    ['distance', -12, -12],
    ['distance', -0, 0],
    ['distance', 13, null],
    ['distance', -13, null],
    ['distance', 0.5, null],
    ['distance', '5', null],
    ['numeral', ['vi', 'V'], ['vi', 'V']],
    ['numeral', ['bVII', '#iv', 'viio', 'III+'], ['bVII', '#iv', 'viio', 'III+']],
    ['numeral', ['I', 'I', 'I', 'I', 'I'], null],
    ['numeral', [], null],
    ['numeral', ['I', 'VIII'], null],
    ['numeral', ['Vi'], null],
    ['numeral', ['I '], null],
    ['numeral', [1], null],
    ['numeral', 'I', null],
    ['one-or-several', 'one', 'one'],
    ['one-or-several', 'several', 'several'],
    ['one-or-several', 'both', null],
    ['settler', ['2M', '7M'], ['2M', '7M']],
    ['settler', [], []],
    ['settler', ['7'], null],
  ])('%s reads %j as %j', (kind, value, answer) => {
    expect(readAnswer(kind, value, majorMinor)).toEqual(answer);
  });

  test('every kind takes not sure and no nonsense', () => {
    for (const kind of KINDS) {
      expect(readAnswer(kind, 'not-sure', SETTINGS)).toBe('not-sure');
      for (const value of [null, undefined, true, '', 'constructor', {}, { string: 6 }, [[]], Symbol.iterator]) {
        expect(readAnswer(kind, value, SETTINGS)).toBeNull();
      }
    }
  });

  test('an answer of the pad is read as itself and keeps its key, however it arrived', () => {
    fc.assert(
      fc.property(fc.constantFrom(...KINDS), settings, fc.gen(), (kind, given, gen) => {
        const answer = gen(answers, kind, given);
        const arrived: unknown = JSON.parse(JSON.stringify(answer));
        const read = readAnswer(kind, arrived, given);
        expect(read).toEqual(answer);
        expect(answerKey<Kind>(kind, read ?? 'not-sure')).toBe(answerKey<Kind>(kind, answer));
      }),
    );
  });

  test('anything else is null or an answer, never an error', () => {
    fc.assert(
      fc.property(fc.constantFrom(...KINDS), fc.anything(), (kind, value) => {
        const read = readAnswer(kind, value, SETTINGS);
        if (read !== null) expect(readAnswer(kind, read, SETTINGS)).toEqual(read);
      }),
    );
  });
});

test('equal answers have one key and different answers two', () => {
  expect(answerKey('root', { string: 6, fret: 5 })).toBe('6.5');
  expect(answerKey('keys', ['7M', '2M'])).toBe('2M 7M');
  expect(answerKey('keys', ['2M', '7M'])).toBe('2M 7M');
  expect(answerKey('keys', [])).toBe('none');
  expect(answerKey('direction', 'not-sure')).toBe('not-sure');
  expect(answerKey('root', { string: 5, fret: 1 })).not.toBe(answerKey('root', { string: 5, fret: 11 }));
});

describe('a pad tells nothing early', () => {
  test('the quality pad has a letter only once the root was shown', () => {
    expect(asks.quality.ask(0, SETTINGS, {})).toStrictEqual({
      kind: 'quality',
      target: 0,
      options: SETTINGS.qualities,
    });
    expect(asks.quality.ask(0, SETTINGS, { letter: 'E' })).toHaveProperty('letter', 'E');
    for (const kind of ['direction', 'root', 'keys', 'strokes'] as const) {
      expect(asks[kind].ask(1, SETTINGS, { letter: 'E' })).not.toHaveProperty('letter');
    }
  });

  test('rounds that differ only in what is not shown yet are asked in the same bytes', () => {
    fc.assert(
      fc.property(truths, truths, settings, (one, other, given) => {
        const pads = (truth: typeof one) =>
          KINDS.flatMap((kind) =>
            asks[kind]
              .targets(truth.roots.length, { groove: true, settlers: 2 })
              .map((target) => asks[kind].ask(target, given, {})),
          );
        expect(JSON.stringify(pads(one))).toBe(JSON.stringify(pads(other)));
      }),
    );
  });
});
