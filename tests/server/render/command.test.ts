import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseMidi } from 'midi-file';
import { afterAll, describe, expect, test } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'hearsay-render-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Runs the command as `npm run render` does. */
function render(...args: readonly string[]) {
  const run = spawnSync(process.execPath, ['--import', 'tsx', 'server/render/command.ts', ...args], {
    encoding: 'utf8',
  });
  return { status: run.status, out: run.stdout, error: run.stderr };
}

type Rendered = {
  readonly seconds: number;
  readonly sampleRate: number;
  readonly performance: readonly {
    readonly time: number;
    readonly duration: number;
    readonly string: number;
    readonly fret: number;
    readonly midi: number;
    readonly stroke: string;
    readonly touch: string;
    readonly accent: number;
    readonly chord: number;
  }[];
  readonly kit?: readonly { readonly time: number; readonly piece: string }[];
  readonly truth: Record<string, unknown>;
};

function rendered(...args: readonly string[]): Rendered {
  const { status, out, error } = render(...args, '--json');
  expect({ status, error, lines: out.split('\n').length }).toEqual({ status: 0, error: '', lines: 2 });
  return JSON.parse(out) as Rendered;
}

describe('render', () => {
  test('Em D: a file of the length, rate and strokes that the JSON tells, with its truth', () => {
    const file = join(folder, 'vamp.wav');
    const { seconds, sampleRate, performance, truth } = rendered(
      '--chords',
      'Em D',
      '--groove',
      'relaxed-alternate',
      '--tempo',
      '100',
      '--out',
      file,
    );
    const bytes = readFileSync(file);
    expect(bytes.toString('latin1', 0, 4)).toBe('RIFF');
    expect(bytes.readUInt32LE(24)).toBe(sampleRate);
    expect((bytes.length - 44) / 2).toBe(Math.round(seconds * sampleRate));
    expect(truth).toMatchObject({
      count: 2,
      directions: ['up'],
      qualities: ['minor', 'major'],
      roots: ['E', 'D'],
      distances: ['b7'],
      bass: [40, 50],
      keys: { majors: ['G major', 'D major'] },
      tempo: 100,
    });
    const [first] = performance;
    expect(first).toMatchObject({ string: 6, fret: 0, midi: 40, stroke: 'down', touch: 'open', accent: 3, chord: 0 });
    // Silence up to the first stroke, sound within a millisecond after it.
    const samples = Array.from({ length: 8000 }, (_, n) => Math.abs(bytes.readInt16LE(44 + 2 * n)));
    const begins = samples.findIndex((sample) => sample > 100) / sampleRate;
    expect(Math.abs(begins - (first?.time ?? 0))).toBeLessThan(0.001);
    // Two bars of four beats at 100: the second chord begins 4.8 / 2 s after the first.
    const second = performance.find((note) => note.chord === 1);
    expect((second?.time ?? 0) - (first?.time ?? 0)).toBeCloseTo(2.4, 5);
  });

  test('the notes as a MIDI file, alone and beside the sound', () => {
    const [midi, wav] = [join(folder, 'vamp.mid'), join(folder, 'beside.wav')];
    const asked = ['--chords', 'Em D', '--groove', 'six-eight-ballad', '--tempo', '60', '--midi', midi];
    const alone = render(...asked);
    expect([alone.status, alone.error]).toEqual([0, '']);
    expect(alone.out).toBe(`${midi}: 4.0 s, Em D, six-eight-ballad, 60 beats a minute\n`);
    const bytes = readFileSync(midi);
    const { header, tracks } = parseMidi(bytes);
    expect(header).toMatchObject({ format: 1, numTracks: 2, ticksPerBeat: 480 });
    expect(tracks[0]?.[0]).toMatchObject({ type: 'trackName', text: 'Em D, Six-eight ballad' });
    const { performance } = rendered(...asked, '--out', wav);
    expect(readFileSync(midi)).toEqual(bytes);
    expect(readFileSync(wav).toString('latin1', 0, 4)).toBe('RIFF');
    expect(tracks[1]?.filter(({ type }) => type === 'noteOn')).toHaveLength(performance.length);
  });

  test('a score for notation programs, and the parts of a band in every file', () => {
    const [score, midi, wav] = ['band.musicxml', 'band.mid', 'band.wav'].map((file) => join(folder, file));
    const asked = ['--chords', 'Em D', '--groove', 'pushed-change', '--tempo', '100', '--kit', '--bass', '--human'];
    const files = ['--musicxml', String(score), '--midi', String(midi), '--out', String(wav)];
    const { status, out, error } = render(...asked, '--voice', 'nylon', ...files);
    expect([status, error]).toEqual([0, '']);
    expect(out.trimEnd().split('\n')).toEqual([
      `${wav}: 6.4 s, Em D, pushed-change, 100 beats a minute`,
      `${midi}: 4.8 s, Em D, pushed-change, 100 beats a minute`,
      `${score}: the score, Em D, pushed-change, 100 beats a minute`,
    ]);
    const xml = readFileSync(String(score), 'utf8');
    expect([...xml.matchAll(/<part-name>([^<]*)</g)].map(([, name]) => name)).toEqual([
      'Nylon guitar',
      'Bass guitar',
      'Kit',
    ]);
    const names = parseMidi(readFileSync(String(midi))).tracks.map((track) =>
      track.flatMap((event) => (event.type === 'trackName' ? [event.text] : [])),
    );
    expect(names).toEqual([['Em D, Pushed change'], ['Nylon guitar'], ['Bass guitar'], ['Kit']]);
  });

  test('the kit alone: no string sounds, and the truth stays', () => {
    const { performance, truth, kit } = rendered('--chords', 'Em', '--groove', 'waltz', '--no-guitar', '--kit');
    expect(performance).toEqual([]);
    expect(truth).toMatchObject({ count: 1, roots: ['E'] });
    expect(kit?.[0]).toMatchObject({ time: 0.1, piece: 'kick', chord: 0 });
  });

  test('grooves: every groove with its name, meter and tempos', () => {
    const { status, out } = render('--grooves', '--json');
    expect(status).toBe(0);
    const grooves = JSON.parse(out) as readonly { readonly id: string }[];
    expect(grooves[0]).toEqual({ id: 'quarter-downs', name: 'Quarter downs', meter: '4/4', tempo: [60, 116] });
    expect(grooves).toHaveLength(27);
    expect(new Set(grooves.map(({ id }) => id)).size).toBe(27);
  });

  test.each([
    [['--chords', 'Em Xq', '--groove', 'waltz', '--json'], /Could not read the chords at “Xq”/],
    [['--chords', 'Em', '--groove', 'waltz', '--out', join(folder, 'no', 'such', 'place.wav')], /Could not write/],
    [['--chords', 'Em', '--groove', 'waltz', '--midi', join(folder, 'no', 'such', 'place.mid')], /Could not write/],
  ])('%j ends with status 2 and one sentence', (args, sentence) => {
    const { status, out, error } = render(...args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(error).toMatch(sentence);
    expect(error.trimEnd().split('\n')).toHaveLength(1);
  });
});
