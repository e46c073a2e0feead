import { describe, expect, test } from 'vitest';
import { readRenderRequest } from '../../../server/render/request.ts';
import { grooveOf } from '../../../shared-theory/perform.ts';
import { ReadingError } from '../../../shared-theory/vamps.ts';
import { UsageError } from '../../../server/command-line.ts';

function vampOf(...args: readonly string[]) {
  const request = readRenderRequest([...args, '--json']);
  if (request.what !== 'vamp') throw new Error('a vamp was asked for');
  return request;
}

describe('what is asked for', () => {
  test.each([
    [
      ['--chords', 'C G'],
      [4, 4],
    ],
    [
      ['--chords', 'C G', '--beats', '2'],
      [2, 2],
    ],
    [
      ['--chords', '| C . G . |'],
      [2, 2],
    ],
    [
      ['--chords', '| C | . | G |'],
      [8, 4],
    ],
  ])('%j in 4/4 lasts %j beats', (args, beats) => {
    const { vamp } = vampOf(...args, '--groove', 'quarter-downs');
    expect(vamp.slots.map((slot) => slot.beats)).toEqual(beats);
  });

  test('a bar of a waltz has three', () => {
    expect(vampOf('--chords', 'C G', '--groove', 'waltz').vamp.slots.map((slot) => slot.beats)).toEqual([3, 3]);
  });

  test('what is not said: once through, seed 1, the middle of the tempos, no file', () => {
    const { vamp, loops, out } = vampOf('--chords', 'C G', '--groove', 'quarter-downs');
    expect({ tempo: vamp.tempo, seed: vamp.seed, loops, out }).toEqual({ tempo: 88, seed: 1, loops: 1, out: null });
  });

  test('notes alone, or sound and notes', () => {
    const asked = ['--chords', 'C', '--groove', 'waltz', '--midi', 'c.mid'];
    expect(readRenderRequest(asked)).toMatchObject({ out: null, midi: 'c.mid', json: false });
    expect(readRenderRequest([...asked, '--out', 'c.wav'])).toMatchObject({ out: 'c.wav', midi: 'c.mid' });
  });

  test('a boom-chick takes turns between root and fifth', () => {
    const { vamp } = vampOf('--chords', 'C', '--groove', 'boom-chick');
    expect(grooveOf(vamp)?.slots.map(({ zone }) => zone)).toContain('other-bass');
  });

  test('the catalogue', () => {
    expect(readRenderRequest(['--grooves'])).toEqual({ what: 'grooves', json: false });
  });
});

describe('what is refused', () => {
  const out = ['--out', 'never.wav'];
  test.each([
    [[], /^Give chords, a groove and a file/],
    [['Em D'], /^Give chords, a groove and a file/],
    [['--chords', 'Em D', '--groove', 'waltz'], /^Give chords, a groove and a file/],
    [['--chords', 'Em', ...out], /^Give chords, a groove and a file/],
    [['--chords', 'Em', '--groove', 'polka', ...out], /one of quarter-downs, .*waltz, not “polka”/],
    [
      ['--chords', 'Em', '--groove', 'waltz', '--tempo', '20', ...out],
      /waltz goes from 84 to 180 beats a minute, not 20/,
    ],
    [['--chords', 'Em', '--groove', 'waltz', '--tempo', 'fast', ...out], /--tempo is a number from .* not “fast”/],
    [['--chords', 'Em', '--groove', 'waltz', '--voice', 'nylon', ...out], /--voice is one of steel, not “nylon”/],
    [
      ['--chords', 'Em', '--groove', 'waltz', '--loops', '0', ...out],
      /--loops is a whole number from 1 to 64, not “0”/,
    ],
    [['--chords', 'Em', '--groove', 'waltz', '--seed', '1.5', ...out], /--seed is a whole number/],
    [['--chords', '| C . G . |', '--groove', 'quarter-downs', '--beats', '2', ...out], /leave out --beats/],
    [['--chords', 'Em', '--groove', 'waltz', '--midi', './never.wav', ...out], /--out and --midi different names/],
    [['--chords', 'Em', '--groove', 'waltz', '--midi', ...out], /--midi needs a value/],
    [['--chords', 'Em', '--groove', 'waltz', '--mid', 'x.mid', ...out], /no option --mid\. Options here: .*--midi/],
  ])('%j', (args, sentence) => {
    expect(() => readRenderRequest(args)).toThrow(UsageError);
    expect(() => readRenderRequest(args)).toThrow(sentence);
  });

  test('chords that cannot be read', () => {
    expect(() => readRenderRequest(['--chords', 'Em Xq', '--groove', 'waltz', ...out])).toThrow(ReadingError);
  });
});
