import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { withBand, type Band } from '../../shared-theory/band.ts';
import { perform } from '../../shared-theory/perform.ts';
import { STEEL } from '../../shared-theory/sound/instrument.ts';
import type { VoicedVamp } from '../../shared-theory/vamps.ts';
import {
  BACK,
  barSeconds,
  CHANGED_SECONDS,
  counted,
  DROPPED_OUT,
  FASTER,
  KIT_ALONE,
  ORDERS,
  PARTS,
  vampFor,
  WRITTEN,
} from './changed-music.ts';
import { linesOf, soundOf, type Expected, type Part } from './expected-sound.ts';
import { lastOver, longestSilence } from './matching.ts';
import { openOfflineSound, type Leaving, type OfflineSoundPage } from './offline-sound-page.ts';
import { FADER, findOnsets, inNode, louder, misplacedOnsets, peakOf, SILENT, strokesOf } from './strokes.ts';

/**
 * What leaves the host page in a real browser, on a clock that waits for the page, beside what the same music gives in Node. How a busy
 * machine tears a sound is no part of it.
 */
let page: OfflineSoundPage;

beforeAll(async () => {
  page = await openOfflineSound();
});

afterAll(() => page.end());

const ALONE: Band = { kit: false, bass: false };

/** Bars that are looked at: each chord twice, with the bar that opens it and those that go on. */
const BARS = 4;

/** What the first bars of a vamp are to sound like, when the first one begins at `start`. */
function firstPart(vamp: VoicedVamp, band: Band): Part {
  const performance = withBand(vamp, perform(vamp, { loops: BARS, human: true }), band);
  return { performance, bars: [0, BARS], measure: withBand(vamp, perform(vamp), band), instrument: STEEL, anew: false };
}

/** Plays the first bars of a vamp; its `file` and what left are cut to them. */
async function firstBars(vamp: VoicedVamp, sampleRate: number, { band = ALONE, volume = 0.7 } = {}) {
  // The last strokes ring half a second more: all of what is matched is there.
  const seconds = counted(vamp) + BARS * barSeconds(vamp) + 0.5;
  const { samples, pressed } = await page.leaves({ sampleRate, seconds, vamp: { ...vamp, band }, volume });
  const start = pressed + counted(vamp);
  const expected = soundOf([firstPart(vamp, band)], start, sampleRate);
  const [lag, length] = [Math.round(start * sampleRate), Math.round(BARS * barSeconds(vamp) * sampleRate)];
  const { mixed } = inNode(vamp, BARS, { sampleRate, instrument: STEEL, band });
  return {
    samples,
    expected,
    start,
    live: samples.subarray(lag, lag + length),
    file: mixed.subarray(0, length),
  };
}

const faded = (samples: Float32Array, fader: number): Float32Array => samples.map((sample) => sample / fader);

describe('the first bars', () => {
  // Open strokes by turns, one pushed over the line, all downs under the palm, slaps, long and short, three and six, dead strokes, seven.
  test.each([
    [44_100, 'G C', 'relaxed-alternate', 112],
    [48_000, 'G C', 'pushed-change', 100],
    [44_100, 'Em D', 'driving-eighths', 160],
    [48_000, 'Am F', 'foot-slap-hat', 112],
    [44_100, 'E A', 'low-string-shuffle', 140],
    [48_000, 'D G', 'waltz', 168],
    [44_100, 'C Am', 'six-eight-ballad', 64],
    [48_000, 'Dm7 G7', 'funk-sixteenths', 112],
    [44_100, 'Bm A', 'seven-in-two-two-three', 144],
  ])(
    'at %i Hz, %s as %s at %i: every stroke where the performance has it, as loud as the file',
    async (rate, ...of) => {
      const { samples, expected, live, file } = await firstBars(vampFor(...of), rate);
      expect(expected.onsets.length).toBeGreaterThanOrEqual(2 * BARS);
      const found = findOnsets(faded(samples, FADER), expected);
      expect(misplacedOnsets(found)).toEqual([]);
      const apart = louder(live, file, rate, FADER);
      expect(Math.abs(apart), `${apart} LU beside the file`).toBeLessThan(1);
      expect(peakOf(samples)).toBeLessThan(-1);
    },
  );

  test('a stroke two milliseconds early or late is found, a soft one over strings that ring too', async () => {
    const vamp = vampFor('D G', 'waltz', 168);
    const sampleRate = 44_100;
    const { samples, start } = await firstBars(vamp, sampleRate);
    const part = firstPart(vamp, ALONE);
    const { notes } = part.performance;
    const times = strokesOf(part.performance);
    for (const [stroke, early] of [
      [1, 0.002],
      [3, -0.002],
    ] as const) {
      const time = times[stroke] ?? 0;
      const before = times[stroke + 1] ?? Infinity;
      const moved = notes.map((note) =>
        note.time >= time && note.time < before ? { ...note, time: note.time - early } : note,
      );
      const other = soundOf([{ ...part, performance: { ...part.performance, notes: moved } }], start, sampleRate);
      // What is found of later ones is how it rings on.
      const [found] = misplacedOnsets(findOnsets(faded(samples, FADER), other));
      expect(found?.time).toBeCloseTo(start + time - early, 3);
      expect(found?.late).toBeCloseTo(1000 * early, 1);
    }
  });

  test('at the full fader the loudest groove with its band stays under −1 dBFS', async () => {
    const vamp = vampFor('E A', 'foot-slap-hat', 120);
    const sampleRate = 44_100;
    const { samples, expected, live, file } = await firstBars(vamp, sampleRate, {
      band: { kit: true, bass: true },
      volume: 1,
    });
    // Something is there to be held: as it is it would be cut off.
    expect(peakOf(expected.samples)).toBeGreaterThan(1);
    expect(peakOf(samples)).toBeLessThan(-1);
    const apart = louder(live, file, sampleRate, 1);
    expect(Math.abs(apart), `${apart} LU beside the file`).toBeLessThan(1);
  });
});

describe('changes on the bar line', () => {
  const sampleRate = 44_100;
  let left: Leaving;
  let heard: Expected;
  let lines: readonly number[];

  beforeAll(async () => {
    left = await page.leaves({ sampleRate, seconds: CHANGED_SECONDS, vamp: WRITTEN, orders: ORDERS });
    heard = soundOf(PARTS, left.pressed + counted(WRITTEN), sampleRate);
    lines = linesOf(PARTS, left.pressed + counted(WRITTEN));
  });

  test('each takes on its line, and is told there', () => {
    const took = left.told.filter(({ at, kind }) => at > left.pressed && kind !== 'started' && kind !== 'stopped');
    expect(took.map(({ kind, bar }) => [kind, bar])).toEqual([
      ['tempo', 2],
      ['bass-forward', 4],
      ['hold', 6],
      ['full', 8],
      ['band', 9],
      ['kit-only', 10],
      ['drop-out', 12],
      ['full', 14],
    ]);
  });

  test('every stroke is where the performance has it', () => {
    expect(heard.onsets.length).toBeGreaterThanOrEqual(8 * 2 * 8);
    const found = findOnsets(faded(left.samples, FADER), heard);
    expect(misplacedOnsets(found)).toEqual([]);
  });

  const at = (seconds: number): number => Math.round(seconds * sampleRate);
  const line = (part: number): number => lines[part] ?? NaN;

  test('nothing rests where strings ring', () => {
    for (const [from, to] of [
      [line(0), line(KIT_ALONE)],
      [line(BACK), line(PARTS.length)],
    ] as const) {
      const first = heard.onsets.find(({ time }) => time >= from)?.time ?? NaN;
      const silence = longestSilence(left.samples, SILENT, at(first), at(to)) / sampleRate;
      expect(silence, 'seconds of silence').toBeLessThanOrEqual(0.05);
    }
  });

  test('two bars are wholly silent where the loop drops out', () => {
    // Strings and kit are let go within the first hundredths of a second.
    const [from, to] = [line(DROPPED_OUT) + 0.05, line(BACK)];
    expect(to - from).toBeCloseTo(2 * barSeconds(FASTER) - 0.05, 6);
    expect(lastOver(left.samples.subarray(at(from), at(to) - 1), 0)).toBe(-1);
  });

  test('no line clicks: no sample leaps further from the one before it than at that place in Node', () => {
    // In stretches of 5 ms, so that the leap of a stroke hides nothing before it. Half a sample off, a stroke leaps a little otherwise.
    const stretch = Math.round(0.005 * sampleRate);
    for (const [index, change] of lines.slice(0, -1).entries()) {
      for (let from = at(change - 0.05); from < at(change + 0.1); from += stretch) {
        const allowed = 1.25 * FADER * steepest(heard.samples, from, from + stretch) + SILENT_LEAP;
        expect(steepest(left.samples, from, from + stretch), `part ${index}`).toBeLessThanOrEqual(allowed);
      }
    }
  });
});

/** −60 dBFS: a leap that nobody hears. */
const SILENT_LEAP = 1e-3;

/** The furthest that a sample lies from the one before it. */
function steepest(samples: Float32Array, from: number, to: number): number {
  let most = 0;
  for (let n = Math.max(1, from); n < to; n++)
    most = Math.max(most, Math.abs((samples[n] ?? 0) - (samples[n - 1] ?? 0)));
  return most;
}

describe('a stop', () => {
  test.each([
    ['while the count-in counts', 0.24],
    ['while strings ring', 3.3],
  ])('%s is silent within a tenth of a second', async (_when, at) => {
    const sampleRate = 48_000;
    const vamp = vampFor('G C', 'relaxed-alternate', 112);
    const left = await page.leaves({ sampleRate, seconds: at + 1.5, vamp, orders: [{ kind: 'stop', at }] });
    const stopped = left.told.find(({ kind }) => kind === 'stopped')?.at ?? NaN;
    expect(stopped - left.pressed - at).toBeLessThan(0.1);
    const index = Math.round(stopped * sampleRate);
    expect(longestSilence(left.samples, SILENT, index - sampleRate / 10, index)).toBeLessThan(sampleRate / 20);
    const last = lastOver(left.samples, 0);
    expect(last).toBeGreaterThan(index);
    expect(last - index).toBeLessThanOrEqual(sampleRate / 10);
  });
});
