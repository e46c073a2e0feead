import { describe, expect, test } from 'vitest';
import { STANDARD_TUNING } from '../../../shared-theory/neck.ts';
import { VOICES, type Voice } from '../../../shared-theory/sound/instrument.ts';
import { pluckerOf, voiceSound } from '../../../shared-theory/sound/voices.ts';
import { band, decibels, level } from './estimate.ts';
import { instrumentOf, render, struck, STRINGS } from './strings.ts';

const RATE = 44100;

/** Octaves and what of the level lies in each, in decibels, from `from` for `seconds`. */
const OCTAVES = [88, 177, 354, 707, 1414, 2828, 5657] as const;

/** Six open strings strummed together, so that a voice is heard and not a note. */
function strum(voice: Voice, rest: Parameters<typeof struck>[2] = {}): Float32Array {
  const sum = new Float32Array(Math.round(1.2 * RATE));
  for (const string of STRINGS) {
    const samples = render(struck(string, 0, rest), 1.2, { instrument: instrumentOf(voice), seed: string });
    for (let n = 0; n < sum.length; n++) sum[n] = (sum[n] ?? 0) + (samples[n] ?? 0);
  }
  return sum;
}

function colour(samples: Float32Array, from: number, to: number): readonly number[] {
  const whole = level(samples, RATE, from, to);
  return OCTAVES.map((low) => decibels(level(band(samples, RATE, low, 2 * low), RATE, from, to) / whole));
}

function share(samples: Float32Array, low: number, high: number, from: number, to: number): number {
  return decibels(level(band(samples, RATE, low, high), RATE, from, to) / level(samples, RATE, from, to));
}

describe('voices', () => {
  test('are clearly different: some octave is apart by 5 dB in the attack, or the decay is', () => {
    const colours = VOICES.map((voice) => {
      const samples = strum(voice);
      const late = decibels(level(samples, RATE, 0.9, 1.1) / level(samples, RATE, 0.1, 0.3));
      return [...colour(samples, 0, 0.15), late];
    });
    for (const [index, one] of colours.entries())
      for (const other of colours.slice(index + 1))
        expect(Math.max(...one.map((value, place) => Math.abs(value - (other[place] ?? 0))))).toBeGreaterThan(5);
  });

  test('nylon is soft: under −30 dB above 6 kHz even in the attack of a heavy stroke, and darker than steel', () => {
    expect(share(strum('nylon'), 6000, 20_000, 0, 0.1)).toBeLessThan(-30);
    const [steel, nylon] = (['steel', 'nylon'] as const).map((voice) => share(strum(voice), 2000, 6000, 0, 0.2));
    expect((steel ?? 0) - (nylon ?? 0)).toBeGreaterThan(5);
  });

  test('steel has its shine: 2 to 6 kHz within 26 dB of the whole in a heavy strum, none of it screaming', () => {
    const shine = share(strum('steel'), 2000, 6000, 0, 0.2);
    expect(shine).toBeGreaterThan(-26);
    expect(shine).toBeLessThan(-8);
  });

  test('the clean electric has nothing far above its pickup, and keeps its upper mids while it rings', () => {
    expect(share(strum('clean'), 8000, 20_000, 0, 0.1)).toBeLessThan(-28);
    const kept = (voice: Voice) => share(strum(voice), 700, 3000, 0.8, 1.1);
    expect(kept('clean')).toBeGreaterThan(kept('nylon') + 3);
  });

  test.each(VOICES)('%s does not boom: no low note sticks out of its neighbours by more than 4 dB', (voice) => {
    const levels = Array.from({ length: 13 }, (_, fret) =>
      decibels(level(render(struck(6, fret), 0.5, { instrument: instrumentOf(voice) }), RATE, 0.1, 0.4)),
    );
    for (const [index, now] of levels.entries()) {
      if (index === 0 || index === levels.length - 1) continue;
      expect(Math.abs(now - ((levels[index - 1] ?? 0) + (levels[index + 1] ?? 0)) / 2)).toBeLessThan(4);
    }
  });

  test.each(VOICES)('%s: every length has its six strings, and all numbers are sensible', (voice) => {
    const sound = voiceSound(voice);
    expect(sound.ring).toHaveLength(STANDARD_TUNING.length);
    for (const [index, ring] of sound.ring.entries()) expect(sound.brightRing[index]).toBeLessThan(ring);
    for (const pluck of Object.values(sound.plucks)) {
      expect(pluck.position).toBeGreaterThan(0.05);
      expect(pluck.position).toBeLessThan(0.5);
      expect(pluck.corner[3]).toBeGreaterThan(pluck.corner[2]);
      expect(pluck.corner[2]).toBeGreaterThan(pluck.corner[1]);
    }
  });
});

describe('hands', () => {
  test('a thumb goes down and a finger up; without either it is a pick', () => {
    expect(pluckerOf({ stroke: 'down' })).toBe('down');
    expect(pluckerOf({ stroke: 'up' })).toBe('up');
    expect(pluckerOf({ stroke: 'down', by: 'thumb' })).toBe('thumb');
    expect(pluckerOf({ stroke: 'up', by: 'finger' })).toBe('finger');
  });

  test.each(VOICES)('%s: the thumb is darkest, the finger softer than the pick, the upstroke brightest', (voice) => {
    const bright = (rest: Parameters<typeof struck>[2]) => share(strum(voice, rest), 1500, 10_000, 0, 0.2);
    const up = bright({ stroke: 'up' });
    const down = bright({});
    const finger = bright({ stroke: 'up', by: 'finger' });
    const thumb = bright({ by: 'thumb' });
    expect(up - down).toBeGreaterThan(1);
    expect(down - finger).toBeGreaterThan(1.5);
    expect(finger - thumb).toBeGreaterThan(2);
  });

  test.each(VOICES)('%s: a thumb makes no click: its first 10 ms have little above 3 kHz', (voice) => {
    for (const string of [4, 5, 6]) {
      const note = (rest: Parameters<typeof struck>[2]) =>
        render(struck(string, 0, rest), 0.3, { instrument: instrumentOf(voice) });
      const click = (samples: Float32Array) =>
        level(band(samples, RATE, 3000, 12_000), RATE, 0, 0.01) / level(samples, RATE, 0.05, 0.2);
      expect(decibels(click(note({})) / click(note({ by: 'thumb' })))).toBeGreaterThan(8);
      expect(decibels(click(note({ by: 'thumb' })))).toBeLessThan(-22);
    }
  });
});
