import { describe, expect, test } from 'vitest';
import { withBand } from '../../../shared-theory/band.ts';
import { GROOVES } from '../../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { perform, type Touch } from '../../../shared-theory/perform.ts';
import { midiFrequency } from '../../../shared-theory/pitch.ts';
import { STEEL, VOICES, type Instrument } from '../../../shared-theory/sound/instrument.ts';
import { mixPerformance } from '../../../shared-theory/sound/mix.ts';
import { noteShelf } from '../../../shared-theory/sound/note-shelf.ts';
import type { StruckString } from '../../../shared-theory/sound/plucked-string.ts';
import { parseVamp, type VoicedVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';
import { decibels, level, peak } from './estimate.ts';
import { LOBE_BINS, spectrum } from './spectrum.ts';
import { instrumentOf, render, secondsToFall, struck } from './strings.ts';

/** What every guitar of ours holds, whatever it plays: nothing folded back, no peaks, no offset, touches apart. */

const RATE = 44_100;
const SMALL: Instrument = { ...STEEL, smallSpeaker: true };

/** Most that may stand where no partial belongs, beside the strongest partial, in decibels. */
const FOLDED_DB = -80;

/** Frets of the first string from E5 to E6: the nearer a partial comes to half the rate, the sooner it would fold. */
const HIGH_FRETS = [12, 17, 21, 24];

describe('nothing above half the sampling rate is folded back', () => {
  test.each(VOICES.flatMap((voice) => [44_100, 48_000].map((sampleRate) => [voice, sampleRate] as const)))(
    '%s at %i Hz',
    (voice, sampleRate) => {
      for (const fret of HIGH_FRETS)
        expect(betweenPartials(struck(1, fret), instrumentOf(voice), sampleRate), String(fret)).toBeLessThan(FOLDED_DB);
    },
  );

  test('the harmonics that a small speaker is given', () => {
    for (const note of [struck(6, 0), struck(5, 2), struck(4, 5)])
      expect(betweenPartials({ ...note, bass: true }, SMALL, RATE), String(note.midi)).toBeLessThan(FOLDED_DB);
  });
});

/**
 * The strongest line between a note's partials, in decibels beside its strongest partial: a folded partial would stand there.
 * Lines alone count, since what dies fast has broad feet; what does not swing at all is offset, which has a check of its own.
 */
function betweenPartials(note: StruckString, instrument: Instrument, sampleRate: number): number {
  const size = 16_384;
  const samples = render(note, 0.6, { sampleRate, instrument });
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
  const guitars = [...VOICES.map(instrumentOf), SMALL].map((instrument) => ({
    instrument,
    shelf: noteShelf(RATE, instrument),
  }));
  for (const [index, groove] of GROOVES.entries()) {
    const guitar = guitars[index % guitars.length];
    if (!guitar) throw new Error('there are guitars');
    const slots = parseVamp('E A', BEATS_PER_BAR[groove.meter]);
    const vamp = allHeavy(voice({ slots, groove: groove.id, tempo: groove.tempo[1], seed: index }));
    const accents = perform(vamp).notes.map(({ accent }) => accent);
    expect(Math.min(...accents), groove.id).toBe(3);
    const band = { kit: index % 2 === 0, bass: index % 3 === 0 };
    const mixed = mixPerformance(withBand(vamp, perform(vamp), band), { sampleRate: RATE, ...guitar });
    expect(decibels(peak(mixed)), groove.id).toBeLessThan(-1);
    expect(decibels(offset(mixed)), groove.id).toBeLessThan(-60);
  }
});

function offset(samples: Float32Array): number {
  return Math.abs(samples.reduce((sum, sample) => sum + sample, 0)) / samples.length;
}

const TOKENS: Readonly<Record<Touch, string>> = { open: 'o', ring: 'r', half: 'h', palm: 'p', dead: 'x', choke: 'c' };

describe.each(VOICES)('strokes of a %s guitar over four seconds', (name) => {
  const instrument = instrumentOf(name);
  const shelf = noteShelf(RATE, instrument);

  /** One heavy stroke of a chord with a touch, and nothing after it. */
  const stroke = (touch: Touch, chord: string): Float32Array => {
    const header = 'one-stroke, One stroke | E8 | 4/4 | 60-60 | r=1';
    const lanes = [
      lane('strk', 'D', '-'),
      lane('zone', 'A', '.'),
      lane('tch', TOKENS[touch], '.'),
      lane('acc', '3', '0'),
    ];
    const vamp = voice({ slots: parseVamp(chord, 4), groove: null, tempo: 60, seed: 1 });
    const played = perform({ ...vamp, grooveText: [header, ...lanes].join('\n') });
    return mixPerformance(played, { sampleRate: RATE, shelf, instrument });
  };

  test.each(['Em', 'C', 'Bm'])('%s: decay tells dead, palm, half and open apart; a choke rings and is cut', (chord) => {
    const falls = (['dead', 'palm', 'half', 'open'] as const).map((touch) =>
      secondsToFall(stroke(touch, chord), RATE, 20),
    );
    for (const [index, seconds] of falls.slice(0, -1).entries())
      expect((falls[index + 1] ?? 0) / seconds, `seconds to −20 dB: ${falls.join(' ')}`).toBeGreaterThanOrEqual(1.3);
    const choked = stroke('choke', chord);
    const begun = level(choked, RATE, 0.02, 0.06);
    expect(decibels(level(choked, RATE, 0.06, 0.1) / begun)).toBeGreaterThan(-6);
    expect(decibels(level(choked, RATE, 0.25, 0.3) / begun)).toBeLessThan(-40);
  });
});

/** A lane of eight slots whose first alone is said. */
function lane(name: string, first: string, other: string): string {
  return [name, first, ...Array.from({ length: 7 }, () => other)].join(' ');
}
