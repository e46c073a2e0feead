import { describe, expect, test } from 'vitest';
import { strums } from '../../../server/listen/strums.ts';
import { hearStrums, RATE, sheetOf } from '../../../server/listen/listening.ts';
import { passes, printTable } from '../../../server/listen/print.ts';
import { parseChord, chordPitchClasses } from '../../../shared-theory/chords.ts';
import { GROOVES } from '../../../shared-theory/grooves.ts';
import { VOICES } from '../../../shared-theory/sound/instrument.ts';
import { peak } from '../../theory/sound/estimate.ts';

const HUNDRED = strums(100, 1);

describe('the spread', () => {
  test('a hundred strums hold every root, quality, voice and groove, and a quality in several of each', () => {
    const some = (what: (strum: (typeof HUNDRED)[number]) => string) => new Set(HUNDRED.map(what));
    expect(some(({ bass }) => String(bass % 12)).size).toBe(12);
    expect(some(({ quality }) => quality).size).toBe(7);
    expect(some(({ voice }) => voice).size).toBe(VOICES.length);
    expect(some(({ groove }) => groove.id).size).toBe(GROOVES.length);
    for (const quality of ['major', 'minor']) {
      const of = HUNDRED.filter((strum) => strum.quality === quality);
      expect(new Set(of.map(({ bass }) => bass % 12)).size).toBeGreaterThanOrEqual(9);
      expect(new Set(of.map(({ voice }) => voice)).size).toBe(VOICES.length);
      expect(new Set(of.map(({ frets }) => frets.join())).size).toBeGreaterThanOrEqual(15);
    }
  });

  test('the same seed gives the same, another seed others', () => {
    expect(strums(12, 7)).toEqual(strums(12, 7));
    expect(strums(12, 8)).not.toEqual(strums(12, 7));
  });

  test('each sounds its own notes alone, the root lowest', () => {
    for (const { symbol, bass, performance } of HUNDRED) {
      const chord = parseChord(symbol);
      const sounding = performance.notes.map(({ midi }) => midi);
      expect(Math.min(...sounding), symbol).toBe(bass);
      expect(
        sounding.every((midi) => chordPitchClasses(chord).includes(midi % 12)),
        symbol,
      ).toBe(true);
    }
  });
});

describe('the sheet', () => {
  const some = HUNDRED.slice(0, 3);
  const sheet = sheetOf(some);

  test('holds one strum after another, each in its place', () => {
    expect(sheet.places.map(({ strum }) => strum)).toEqual(some);
    let before = 0;
    for (const { from, to, strum } of sheet.places) {
      expect(from).toBeGreaterThan(before);
      expect(to - from).toBeGreaterThan(strum.performance.seconds);
      const loudest = (start: number, end: number) =>
        peak(sheet.samples.subarray(Math.round(start * RATE), Math.round(end * RATE)));
      expect(loudest(from, to)).toBeGreaterThan(0.01);
      expect(loudest(to + 0.01, to + 0.25)).toBe(0);
      before = to;
    }
  });

  test('an ear that hears what is played is right; one that hears a fret too high is wrong everywhere', () => {
    const played = (up: number) =>
      sheet.places.flatMap(({ strum, from }) =>
        strum.performance.notes.map(({ time, duration, midi }) => ({
          midi: midi + up,
          start: from + time,
          end: from + time + duration,
          amplitude: 0.7,
        })),
      );
    const right = hearStrums(sheet, played(0));
    expect(right.every(({ bassRight, qualityRight }) => bassRight && qualityRight)).toBe(true);
    expect(passes(right)).toBe(true);
    const wrong = hearStrums(sheet, played(1));
    expect(wrong.every(({ bassRight, qualityRight }) => !bassRight && qualityRight)).toBe(true);
    expect(passes(wrong)).toBe(false);
    const table = printTable(wrong).join('\n');
    expect(table).toContain('WRONG');
    expect(table).toContain('bass note: 0 of 3, 0.0 %');
    expect(table).toContain('quality: 3 of 3, 100.0 %');
  });
});
