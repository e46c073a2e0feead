import { withBand, type Band } from '../../shared-theory/band.ts';
import { perform, type Performance } from '../../shared-theory/perform.ts';
import type { Instrument } from '../../shared-theory/sound/instrument.ts';
import { integratedLoudness } from '../../shared-theory/sound/loudness.ts';
import { mixPerformance } from '../../shared-theory/sound/mix.ts';
import type { VoicedVamp } from '../../shared-theory/vamps.ts';
import type { Expected } from './expected-sound.ts';
import { bestMatch, smoothed } from './matching.ts';

/** The page's fader where it starts: the square of 0.7. */
export const FADER = 0.7 ** 2;

/** −80 dBFS: under it nothing is heard. */
export const SILENT = 1e-4;

/** Milliseconds: two strokes so far apart are one to the ear, and no delay of a clock or a buffer is so short. */
const MOST_LATE = 1;

/** More left over than this is another sound; what a page plays a part of a sample off leaves some hundredths. */
const MOST_REST = 0.1;

/** The same of an onset without what rings: half a sample off, a hat's noise and a soft stroke over loud strings leave a quarter. */
const MOST_REST_ALONE = 0.4;

/** Seconds within which the strings of one stroke are struck. */
export const STROKE_SECONDS = 0.06;

/** A stroke is looked for so many seconds around its time: further than any that is late by mistake would need to be found late. */
const SEARCH_SECONDS = 0.008;

/** What a round is played like for some bars, and its sound made in Node. */
export function inNode(
  vamp: VoicedVamp,
  bars: number,
  options: { readonly sampleRate: number; readonly instrument: Instrument; readonly band: Band },
): { readonly performance: Performance; readonly mixed: Float32Array } {
  const { sampleRate, instrument, band } = options;
  const loops = Math.ceil(bars / perform(vamp).bars.length);
  const performance = withBand(vamp, perform(vamp, { loops, human: true }), band);
  return { performance, mixed: mixPerformance(performance, { sampleRate, instrument, tail: 1 }) };
}

/** Seconds at which each stroke of a performance begins. */
export function strokesOf({ notes }: Pick<Performance, 'notes'>): readonly number[] {
  return notes
    .map(({ time }) => time)
    .filter((time, index, all) => index === 0 || time - (all[index - 1] ?? 0) > STROKE_SECONDS);
}

/** Where a stroke was found: milliseconds by which it came late, and what is left over of it there, as `Match` has it. */
export type FoundStroke = { readonly time: number; readonly late: number; readonly rest: number };

/** Finds strokes of `expected` in `heard`, which begins `lag` samples earlier; `times` in seconds of `expected`. Both are smoothed. */
export function findStrokes(
  heard: Float32Array,
  expected: Float32Array,
  times: readonly number[],
  { sampleRate, lag }: { readonly sampleRate: number; readonly lag: number },
): readonly FoundStroke[] {
  const near = Math.round(SEARCH_SECONDS * sampleRate);
  return times.map((time) => {
    const at = Math.round(time * sampleRate);
    const window = [at, at + Math.round(STROKE_SECONDS * sampleRate)] as const;
    const best = bestMatch(heard, expected, window, [lag - near, lag + near]);
    return { time, late: ((best.lag - lag) / sampleRate) * 1000, rest: best.rest };
  });
}

/**
 * Finds each onset of `expected` in `heard`, which has its loudness, by what it adds to all that rings: many strings that ring hide a
 * soft stroke that is late. Both begin with the same sample.
 */
export function findOnsets(heard: Float32Array, expected: Expected): readonly FoundStroke[] {
  const { samples, sampleRate, onsets } = expected;
  const near = Math.round(SEARCH_SECONDS * sampleRate);
  return onsets.map(({ time, own }) => {
    const from = Math.round(time * sampleRate) - near;
    const alone = new Float32Array(own.length + 2 * near);
    alone.set(own, near);
    const left = alone.map((sample, n) => (heard[from + n] ?? 0) - (samples[from + n] ?? 0) + sample);
    const best = bestMatch(smoothed(left), smoothed(alone), [near, near + own.length], [-near, near]);
    return { time, late: (best.lag / sampleRate) * 1000, rest: best.rest };
  });
}

/** Strokes that are not what was expected, or not when it was. */
export function misplaced(found: readonly FoundStroke[]): readonly FoundStroke[] {
  return found.filter(({ late, rest }) => Math.abs(late) > MOST_LATE || !(rest < MOST_REST));
}

/** The same of onsets. */
export function misplacedOnsets(found: readonly FoundStroke[]): readonly FoundStroke[] {
  return found.filter(({ late, rest }) => Math.abs(late) > MOST_LATE || !(rest < MOST_REST_ALONE));
}

/** LU by which what left the page is louder than what was made in Node, at the same place of both, behind a fader's factor. */
export function louder(live: Float32Array, file: Float32Array, sampleRate: number, fader: number): number {
  return integratedLoudness(live, sampleRate) - integratedLoudness(file, sampleRate) - 20 * Math.log10(fader);
}

/** The highest sample, in dBFS. */
export function peakOf(samples: Float32Array): number {
  return 20 * Math.log10(samples.reduce((highest, sample) => Math.max(highest, Math.abs(sample)), 0));
}
