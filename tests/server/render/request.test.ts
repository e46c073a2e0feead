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
    const { vamp, loops, ...rest } = vampOf('--chords', 'C G', '--groove', 'quarter-downs');
    expect({ tempo: vamp.tempo, seed: vamp.seed, loops }).toEqual({ tempo: 88, seed: 1, loops: 1 });
    expect(rest).toMatchObject({
      instrument: { voice: 'steel', pitch: 440, smallSpeaker: false },
      parts: { guitar: true, kit: false, bass: false },
      human: false,
      files: { out: null, midi: null, musicxml: null },
    });
  });

  test('notes alone, or sound and notes', () => {
    const asked = ['--chords', 'C', '--groove', 'waltz', '--midi', 'c.mid'];
    expect(readRenderRequest(asked)).toMatchObject({ files: { out: null, midi: 'c.mid' }, json: false });
    expect(readRenderRequest([...asked, '--out', 'c.wav', '--musicxml', 'c.musicxml'])).toMatchObject({
      files: { out: 'c.wav', midi: 'c.mid', musicxml: 'c.musicxml' },
    });
  });

  test('a boom-chick takes turns between root and fifth', () => {
    const { vamp } = vampOf('--chords', 'C', '--groove', 'boom-chick');
    expect(grooveOf(vamp)?.slots.map(({ zone }) => zone)).toContain('other-bass');
  });

  test('a bar of seven eighths: one chord, or one token an eighth', () => {
    const beats = (chords: string) =>
      vampOf('--chords', chords, '--groove', 'seven-in-two-two-three').vamp.slots.map((slot) => slot.beats);
    expect(beats('C G')).toEqual([3.5, 3.5]);
    expect(beats('| C . . . G . . |')).toEqual([2, 1.5]);
  });

  test('who plays, and on what', () => {
    const asked = ['--chords', 'C', '--groove', 'waltz', '--voice', 'nylon', '--pitch', '442.5', '--small-speaker'];
    expect(vampOf(...asked, '--kit', '--bass', '--no-guitar', '--human')).toMatchObject({
      instrument: { voice: 'nylon', pitch: 442.5, smallSpeaker: true },
      parts: { guitar: false, kit: true, bass: true },
      human: true,
    });
  });

  test('a groove of one’s own, with an opening bar where no third would ring', () => {
    const lanes = (zone: string, touch: string) =>
      `my-own, My own | E8 | 4/4 | 90-120 | r=1 / strk DuDuDuDU / zone ${zone} / tch ${touch} / acc 30202021`;
    const own = vampOf('--chords', 'C', '--groove-text', lanes('A.A.A.AH', 'o.o.o.oo'));
    expect(own.groove).toMatchObject({ id: 'my-own', name: 'My own', tempo: [90, 120] });
    expect([own.vamp.tempo, own.groove.opening]).toEqual([105, undefined]);
    const muted = vampOf('--chords', 'C', '--groove-text', lanes('B.B.B.BH', 'p.p.p.pp'));
    expect(muted.groove.opening?.[0]).toMatchObject({ zone: 'all', touch: 'open' });
    expect(grooveOf(muted.vamp)?.opening?.[0]).toMatchObject({ zone: 'all', touch: 'open' });
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
    [['--chords', 'Em', '--groove', 'polka', ...out], /one of quarter-downs, .*waltz, .*not “polka”/],
    [
      ['--chords', 'Em', '--groove', 'waltz', '--tempo', '20', ...out],
      /waltz goes from 84 to 180 beats a minute, not 20/,
    ],
    [['--chords', 'Em', '--groove', 'waltz', '--tempo', 'fast', ...out], /--tempo is a number from .* not “fast”/],
    [
      ['--chords', 'Em', '--groove', 'waltz', '--voice', 'brass', ...out],
      /--voice is one of steel, nylon, clean, not “brass”/,
    ],
    [
      ['--chords', 'Em', '--groove', 'waltz', '--pitch', '400', ...out],
      /--pitch is a number from 415 to 466, not “400”/,
    ],
    [['--chords', 'Em', '--groove', 'waltz', '--no-guitar', ...out], /somebody else must play: add --kit or --bass/],
    [['--chords', 'Em', '--groove', 'waltz', '--groove-text', 'x', ...out], /give --groove or --groove-text/],
    [['--chords', 'Em', '--groove-text', 'x', ...out], /"x" must be a header/],
    [
      ['--chords', 'Em', ...out, '--groove-text', 'x, X | E8 | 4/4 | 90-120 | r=1 / strk D / zone A / tch o / acc 3'],
      /slot 2: strk has 1 slots, not 8/,
    ],
    [
      ['--chords', 'Em', '--groove', 'waltz', '--loops', '0', ...out],
      /--loops is a whole number from 1 to 64, not “0”/,
    ],
    [['--chords', 'Em', '--groove', 'waltz', '--seed', '1.5', ...out], /--seed is a whole number/],
    [['--chords', '| C . G . |', '--groove', 'quarter-downs', '--beats', '2', ...out], /leave out --beats/],
    [
      ['--chords', 'Em', '--groove', 'waltz', '--midi', './never.wav', ...out],
      /--out, --midi and --musicxml different names/,
    ],
    [['--chords', 'Em', '--groove', 'waltz', '--musicxml', 'never.wav', ...out], /different names/],
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
