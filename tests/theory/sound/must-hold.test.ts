import { describe, expect, test } from 'vitest';
import { withBand } from '../../../shared-theory/band.ts';
import { GROOVES, parseGroove } from '../../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { STANDARD_TUNING } from '../../../shared-theory/neck.ts';
import { perform, type Touch } from '../../../shared-theory/perform.ts';
import { midiFrequency } from '../../../shared-theory/pitch.ts';
import { STEEL, VOICES, type Instrument } from '../../../shared-theory/sound/instrument.ts';
import { mixPerformance } from '../../../shared-theory/sound/mix.ts';
import { noteShelf } from '../../../shared-theory/sound/note-shelf.ts';
import { renderString, type StruckString } from '../../../shared-theory/sound/plucked-string.ts';
import { parseVamp, type VoicedVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';
import { centsByPhase, decibels, level, peak } from './estimate.ts';
import { LOBE_BINS, spectrum } from './spectrum.ts';

/** What every guitar of ours holds, whatever it plays: in tune, nothing folded back, no peaks, no offset, touches apart. */

const RATES = [44_100, 48_000] as const;
const RATE = 44_100;

const GUITARS: readonly Instrument[] = VOICES.map((voice) => ({ ...STEEL, voice }));
const SMALL: Instrument = { ...STEEL, smallSpeaker: true };

/** Most that may stand where no partial belongs, beside the strongest partial, in decibels. */
const FOLDED_DB = -80;

const E2 = 40;
const E6 = 88;

function struck(midi: number, string: number): StruckString {
  const fret = midi - (STANDARD_TUNING[6 - string] ?? 0);
  return { midi, string, fret, touch: 'open', accent: 3, stroke: 'down' };
}

/** The strings low to high, each from its open note to the next one's, the last up to E6. */
const NOTES: readonly StruckString[] = Array.from({ length: E6 - E2 + 1 }, (_, index) => {
  const midi = E2 + index;
  return struck(midi, 6 - STANDARD_TUNING.findLastIndex((open) => open <= midi));
});

describe.each(GUITARS)('$voice strings', (instrument) => {
  test.each(RATES)('E2 to E6 within a cent at %i Hz', (sampleRate) => {
    for (const note of NOTES) {
      const samples = renderString(note, { seconds: 0.9, sampleRate, seed: 1, instrument });
      expect(Math.abs(centsByPhase(samples, sampleRate, note.midi)), String(note.midi)).toBeLessThan(1);
    }
  });

  test.each(RATES)('nothing above half the sampling rate is folded back at %i Hz', (sampleRate) => {
    for (const midi of [76, 81, 85, 88])
      expect(betweenPartials(struck(midi, 1), instrument, sampleRate), String(midi)).toBeLessThan(FOLDED_DB);
  });
});

test('the harmonics that a small speaker is given are not folded back either', () => {
  for (const note of [struck(E2, 6), struck(47, 5), struck(55, 4)])
    expect(betweenPartials({ ...note, bass: true }, SMALL, RATE), String(note.midi)).toBeLessThan(FOLDED_DB);
});

/**
 * The strongest line between a note's partials, in decibels beside its strongest partial: a folded partial would stand there.
 * Lines alone count, since what dies fast has broad feet; what does not swing at all is offset, which has a check of its own.
 */
function betweenPartials(note: StruckString, instrument: Instrument, sampleRate: number): number {
  const size = 16_384;
  const samples = renderString(note, { seconds: 0.6, sampleRate, seed: 1, instrument });
  const amplitudes = spectrum(samples, Math.round(0.15 * sampleRate), size);
  const fundamental = (midiFrequency(note.midi) * size) / sampleRate;
  let [strongest, between] = [0, 0];
  for (const [bin, amplitude] of amplitudes.entries()) {
    const nearest = Math.max(1, Math.round(bin / fundamental)) * fundamental;
    // Stiff strings stretch their partials by a few in a hundred at most.
    const belongs = Math.abs(bin - nearest) <= Math.max(LOBE_BINS + 2, 0.02 * nearest);
    const line = bin > LOBE_BINS && amplitude > (amplitudes[bin - 1] ?? 0) && amplitude > (amplitudes[bin + 1] ?? 0);
    if (belongs) strongest = Math.max(strongest, amplitude);
    else if (line) between = Math.max(between, amplitude);
  }
  return decibels(between / strongest);
}

/** The groove with every sounding stroke as heavy as can be. */
function allHeavy(vamp: VoicedVamp): VoicedVamp {
  const grooveText = vamp.grooveText.replaceAll(/^(?:open-)?acc\b.*$/gm, (lane) => lane.replaceAll(/[12]/g, '3'));
  return { ...vamp, grooveText };
}

test('no groove peaks over −1 dBFS with all accents heavy, nor has it an offset over −60 dBFS, with the band too', () => {
  const guitars = [...GUITARS, SMALL].map((instrument) => ({ instrument, shelf: noteShelf(RATE, instrument) }));
  for (const [index, groove] of GROOVES.entries()) {
    const guitar = guitars[index % guitars.length];
    if (!guitar) throw new Error('there are guitars');
    const slots = parseVamp('E A', BEATS_PER_BAR[groove.meter]);
    const vamp = allHeavy(voice({ slots, groove: groove.id, tempo: groove.tempo[1], seed: index }));
    const accents = perform(vamp).notes.map(({ accent }) => accent);
    expect(Math.min(...accents), groove.id).toBe(3);
    const band = { kit: index % 2 === 0, bass: index % 2 === 0 };
    const mixed = mixPerformance(withBand(vamp, perform(vamp), band), { sampleRate: RATE, ...guitar });
    expect(decibels(peak(mixed)), groove.id).toBeLessThan(-1);
    expect(decibels(offset(mixed)), groove.id).toBeLessThan(-60);
  }
});

function offset(samples: Float32Array): number {
  return Math.abs(samples.reduce((sum, sample) => sum + sample, 0)) / samples.length;
}

describe.each(GUITARS)('touches of $voice strings', (instrument) => {
  const shelf = noteShelf(RATE, instrument);
  const TOKENS: Readonly<Record<Touch, string>> = { open: 'o', ring: 'r', half: 'h', palm: 'p', dead: 'x', choke: 'c' };

  /** One heavy stroke of a chord with a touch, and four seconds after it. */
  const stroke = (touch: Touch, chord: string): Float32Array => {
    const token = TOKENS[touch];
    const grooveText = parseGroove(
      ['one-stroke, One stroke | E8 | 4/4 | 60-60 | r=1', lane('strk', 'D', '-'), lane('zone', 'A', '.')]
        .concat(lane('tch', token, '.'), lane('acc', '3', '0'))
        .join('\n'),
    ).text;
    const vamp = voice({ slots: parseVamp(chord, 4), groove: null, tempo: 60, seed: 1 });
    return mixPerformance(perform({ ...vamp, grooveText }), { sampleRate: RATE, shelf, instrument });
  };

  test('decay tells dead, palm-muted, half-muted and open strokes apart; a choke rings and is cut', () => {
    for (const chord of ['Em', 'C', 'Bm']) {
      const falls = (['dead', 'palm', 'half', 'open'] as const).map((touch) => secondsToFall(stroke(touch, chord), 20));
      for (const [index, seconds] of falls.slice(0, -1).entries())
        expect((falls[index + 1] ?? 0) / seconds, `${chord} ${falls.join(' ')}`).toBeGreaterThanOrEqual(1.5);
      const choked = stroke('choke', chord);
      const early = decibels(level(choked, RATE, 0.06, 0.1) / level(choked, RATE, 0.02, 0.06));
      const late = decibels(level(choked, RATE, 0.25, 0.3) / level(choked, RATE, 0.02, 0.06));
      expect(early, chord).toBeGreaterThan(-6);
      expect(late, chord).toBeLessThan(-40);
    }
  });
});

/** A lane of eight slots whose first alone is said. */
function lane(name: string, first: string, other: string): string {
  return [name, first, ...Array.from({ length: 7 }, () => other)].join(' ');
}

/** Seconds until the level stays more than `fall` decibels under its loudest hundredth of a second. */
function secondsToFall(samples: Float32Array, fall: number): number {
  const windows = Array.from({ length: Math.floor(samples.length / RATE / 0.01) }, (_, index) =>
    level(samples, RATE, index * 0.01, (index + 1) * 0.01),
  );
  const floor = Math.max(...windows) * 10 ** (-fall / 20);
  return (windows.findLastIndex((value) => value > floor) + 1) * 0.01;
}
