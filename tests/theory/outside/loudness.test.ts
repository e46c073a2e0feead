import { beforeAll, describe, expect, test } from 'vitest';
import { withBand } from '../../../shared-theory/band.ts';
import { GROOVES, type Groove } from '../../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { perform } from '../../../shared-theory/perform.ts';
import { STEEL, VOICES, type Instrument } from '../../../shared-theory/sound/instrument.ts';
import { integratedLoudness } from '../../../shared-theory/sound/loudness.ts';
import { mixPerformance, TARGET_LUFS } from '../../../shared-theory/sound/mix.ts';
import { noteShelf, type NoteShelf } from '../../../shared-theory/sound/note-shelf.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';
import { loudnessMeter, type LoudnessMeter } from '../../support/loudness-meter.ts';

/** Loudness of Rec. ITU-R BS.1770-4 and EBU R 128, ours beside another program's. */

const RATE = 44_100;
const CHORDS = ['Em D', 'C Am', 'F Bm', 'Bb5 Gm7', 'E Asus4'];
const BANDS = [
  { kit: false, bass: false },
  { kit: true, bass: true },
  { kit: true, bass: false },
  { kit: false, bass: true },
];

const INSTRUMENTS: readonly Instrument[] = [
  ...VOICES.map((voice) => ({ ...STEEL, voice })),
  { ...STEEL, smallSpeaker: true },
];

let meter: LoudnessMeter;
beforeAll(async () => {
  meter = await loudnessMeter();
});

const shelves = new Map<Instrument, NoteShelf>();

/** A round of a groove with chords, an instrument and a band chosen by number. */
function round(groove: Groove, number: number): Float32Array {
  const instrument = INSTRUMENTS[number % INSTRUMENTS.length] ?? STEEL;
  const shelf = shelves.get(instrument) ?? noteShelf(RATE, instrument);
  shelves.set(instrument, shelf);
  const chords = CHORDS[number % CHORDS.length] ?? 'Em D';
  const tempo = groove.tempo[number % 2] ?? groove.tempo[0];
  const vamp = voice({ slots: parseVamp(chords, BEATS_PER_BAR[groove.meter]), groove: groove.id, tempo, seed: number });
  // One further each time through the instruments, so that each meets all bands.
  const band = BANDS[(number + Math.floor(number / INSTRUMENTS.length)) % BANDS.length] ?? { kit: false, bass: false };
  return mixPerformance(withBand(vamp, perform(vamp), band), { sampleRate: RATE, shelf, instrument });
}

describe('the standard’s own calibration', () => {
  test.each([44_100, 48_000])('997 Hz at full scale in one channel is −3.01 LKFS for both at %i Hz', (sampleRate) => {
    const tone = Float32Array.from({ length: 4 * sampleRate }, (_, n) =>
      Math.sin((2 * Math.PI * 997 * n) / sampleRate),
    );
    expect(Math.abs(meter.integrated(tone, sampleRate) + 3.01)).toBeLessThan(0.01);
    expect(Math.abs(integratedLoudness(tone, sampleRate) + 3.01)).toBeLessThan(0.01);
    expect(Math.abs(meter.truePeak(tone, sampleRate))).toBeLessThan(0.05);
  });
});

test('three rounds are as loud for the other program as for ours, within 0.1 LU', () => {
  for (const number of [0, 1, 2]) {
    const groove = GROOVES[number];
    if (!groove) throw new Error('there are three grooves');
    const samples = round(groove, number);
    expect(Math.abs(meter.integrated(samples, RATE) - integratedLoudness(samples, RATE))).toBeLessThan(0.1);
  }
});

test('rounds of all grooves, with other chords, guitars and bands, are within 1 LU of each other', () => {
  const loudness = GROOVES.map((groove, number) => ({
    round: `${groove.id} ${number}`,
    lufs: meter.integrated(round(groove, number), RATE),
  })).toSorted((one, other) => one.lufs - other.lufs);
  const softest = loudness[0] ?? { round: '', lufs: Number.NaN };
  const loudest = loudness.at(-1) ?? softest;
  expect(loudest.lufs - softest.lufs, `${softest.round} and ${loudest.round}`).toBeLessThanOrEqual(1);
  expect(Math.abs(softest.lufs - TARGET_LUFS)).toBeLessThan(1);
});
