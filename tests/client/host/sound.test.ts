import { afterEach, describe, expect, test, vi } from 'vitest';
import { parseVamp, type VoicedVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';
import { silentHouse } from './silent-house.ts';

const EM_D: VoicedVamp = voice({ slots: parseVamp('Em D', 4), groove: 'quarter-downs', tempo: 100, seed: 1 });
const C_G: VoicedVamp = voice({ slots: parseVamp('C G', 4), groove: 'quarter-downs', tempo: 100, seed: 1 });

/** A house whose sound runs; `playing` has brought a vamp to its first bar. */
async function running() {
  const house = silentHouse();
  await house.sound.enableSound();
  return house;
}
async function playing(vamp = EM_D) {
  const house = await running();
  await house.sound.play('r1', vamp);
  await house.run(0.5);
  await house.rendered(() => house.music().length > 0);
  return house;
}

afterEach(() => vi.restoreAllMocks());

describe('enabling sound', () => {
  test('starts, and plays a test note that leaves the page', async () => {
    const { sound, states, left } = silentHouse();
    expect(sound.state()).toBe('off');
    await expect(sound.enableSound()).resolves.toBe('running');
    expect(states).toEqual(['starting', 'running']);
    expect(left).toHaveLength(1);
    await expect(sound.testNote()).resolves.toBe(true);
  });

  test('a browser that does not start is said to be blocked, and nothing plays', async () => {
    const { sound, states, left } = silentHouse({ alive: false });
    await expect(sound.enableSound()).resolves.toBe('blocked');
    expect(states).toEqual(['starting', 'off']);
    await expect(sound.play('r1', EM_D)).resolves.toBe(false);
    sound.tone({ kind: 'reference' });
    expect(sound.click(true)).toBe(false);
    expect(left).toHaveLength(0);
    await expect(sound.testNote()).resolves.toBe(false);
  });

  test('two presses start once', async () => {
    const { sound, left } = silentHouse();
    await Promise.all([sound.enableSound(), sound.enableSound()]);
    expect(left).toHaveLength(1);
  });

  test('a test note that never arrives at the meter is told', async () => {
    const { sound } = silentHouse({ audible: false });
    await sound.enableSound();
    await expect(sound.testNote()).resolves.toBe(false);
  });
});

describe('losing sound', () => {
  test('any state but running stops the vamp; when it comes back, sound is on again and silent', async () => {
    const { sound, states, told, say, run } = await playing();
    await run(1);
    say(false); // suspended, interrupted, closed: all alike
    expect(states.at(-1)).toBe('lost');
    expect(told).toEqual(['started r1', 'stopped r1']);
    say(true);
    expect(states.at(-1)).toBe('running');
    expect(sound.position()).toBeNull();
  });

  test('a clock that stands still for two seconds is a lost sound', async () => {
    const { states, tick } = await running();
    tick();
    const later = performance.now() + 2500;
    vi.spyOn(performance, 'now').mockReturnValue(later);
    tick();
    expect(states.at(-1)).toBe('lost');
  });

  test('while it is away it is asked back, now and then, and comes without a press where the browser lets it', async () => {
    const { states, say, tick, clock, starts } = await running();
    clock.alive = false;
    say(false);
    const before = starts();
    const from = performance.now();
    const now = vi.spyOn(performance, 'now');
    for (let second = 0; second < 10; second += 1) {
      now.mockReturnValue(from + second * 1000);
      tick();
      await Promise.resolve();
    }
    expect(starts() - before).toBeGreaterThanOrEqual(3);
    expect(starts() - before).toBeLessThanOrEqual(6);
    expect(states.at(-1)).toBe('lost');
    clock.alive = true;
    now.mockReturnValue(from + 13_000);
    tick();
    await vi.waitFor(() => expect(states.at(-1)).toBe('running'));
  });

  test('another way out is told, and a lost sound is asked back at once', async () => {
    const { told, say, device, tick, clock, starts } = await running();
    clock.alive = false;
    say(false);
    const before = starts();
    tick();
    expect(starts()).toBe(before);
    device();
    expect(told.at(-1)).toBe('device');
    vi.spyOn(performance, 'now').mockReturnValue(performance.now() + 2100);
    tick();
    expect(starts()).toBe(before + 1);
  });

  test('what plays after it is back counts in again and begins with its first bar', async () => {
    const { sound, say, run, left, clock, music, rendered } = await playing();
    await run(1);
    say(false);
    say(true);
    const before = left.length;
    const from = clock.now;
    await sound.play('r1', EM_D);
    expect(left.slice(before).map(({ gain }) => gain)).toEqual(Array.from({ length: 8 }, () => null));
    const played = music().length;
    await run(0.5);
    await rendered(() => music().length > played);
    expect(music()[played]?.at).toBeCloseTo(from + 0.15 + 2.4, 1);
  });
});

describe('playing', () => {
  test('the level of all that is struck of a vamp is one, whatever its chords', async () => {
    const { music } = await playing(C_G);
    const levels = new Set(music().map(({ gain }) => Math.round(20 * Math.log10(gain ?? 1))));
    // A decibel up or down is the player's hand.
    expect(levels.size).toBeLessThanOrEqual(3);
  });

  test('play while the same round plays is one play', async () => {
    const { sound, told, run } = await running();
    await Promise.all([sound.play('r1', EM_D), sound.play('r1', EM_D)]);
    await sound.play('r1', EM_D);
    await run(1);
    expect(told).toEqual(['started r1']);
  });

  test('the last order wins where two rounds are asked for', async () => {
    const { sound, told, run } = await running();
    await Promise.all([sound.play('r1', EM_D), sound.play('r2', C_G)]);
    await run(1);
    expect(told).toEqual(['started r2']);
    await expect(sound.play('r2', C_G)).resolves.toBe(true);
  });

  test('a stop in the count-in leaves silence', async () => {
    const { sound, told, run, closed, music } = await running();
    await sound.play('r1', EM_D);
    sound.stop();
    await run(3);
    expect(told).toEqual([]);
    expect(music()).toEqual([]);
    // The way of the count-in is closed within the moment, and the test note's before it.
    expect(closed).toEqual([1, 2]);
  });

  test('a change in the count-in takes with the first bar', async () => {
    const { sound, told, run, music, rendered } = await running();
    await sound.play('r1', EM_D);
    await sound.change({ kind: 'bass-alone' });
    await run(0.5);
    await rendered(() => music().length > 0);
    await run(2.5);
    expect(told).toEqual(['started r1', 'took bass-alone at 0']);
  });

  test('changes keep the order of the presses', async () => {
    const { sound, told, run } = await playing();
    await run(2.5);
    await Promise.all([sound.change({ kind: 'tempo', tempo: 80 }), sound.change({ kind: 'hold', slot: 1 })]);
    await run(4);
    expect(told.slice(1)).toEqual(['took tempo at 1', 'took hold at 1']);
  });

  test('a change is for the round that played when it was pressed, and for no later one', async () => {
    const { sound, told, run } = await playing();
    await run(1);
    const late = sound.change({ kind: 'silence' });
    const next = sound.play('r2', C_G);
    await Promise.all([late, next]);
    await run(1);
    expect(told).toEqual(['started r1', 'stopped r1', 'started r2']);
  });

  test('a change is for the playing that it was pressed in: stopped and begun anew, the round is played as it begins', async () => {
    const { sound, told, run } = await playing();
    await run(1);
    const late = sound.change({ kind: 'silence' });
    sound.stop();
    await Promise.all([sound.play('r1', EM_D), late]);
    await run(3.5);
    expect(told).toEqual(['started r1', 'stopped r1', 'started r1']);
  });

  test('two readings: every string of both is ready before their line, and nothing sounds in silence', async () => {
    const { sound, told, music, run } = await playing();
    await run(2.5);
    await sound.change({
      kind: 'both',
      ask: 'a1',
      wrong: [{ chord: 'E', beats: 4, frets: [0, 2, 2, 1, 0, 0] }],
      right: [{ chord: 'Em', beats: 4, frets: [0, 2, 2, 0, 0, 0] }],
    });
    await run(4);
    expect(told.at(-1)).toBe('took both at 1');
    await sound.change({ kind: 'silence' });
    await run(3);
    expect(told.at(-1)).toMatch(/^took silence at \d+$/);
    const before = music().length;
    await run(4);
    expect(music()).toHaveLength(before);
    expect(sound.position()).toMatchObject({ phase: 'vamp', silent: true });
  });

  test('a wrong slot is refused, and later changes still take', async () => {
    const { sound, told, run } = await playing();
    await run(2.5);
    await expect(sound.change({ kind: 'hold', slot: 9 })).rejects.toThrow(RangeError);
    await sound.change({ kind: 'full' });
    await run(3);
    expect(told.at(-1)).toBe('took full at 1');
  });

  test('the loop that dropped out is ready to be back, and is', async () => {
    const { sound, told, run, music, clock } = await playing();
    await run(2.5);
    await sound.change({ kind: 'drop-out' });
    await run(8);
    expect(told.slice(1)).toEqual(['took drop-out at 1', 'took full at 3']);
    const back = 5.15 + 2.4 * 4;
    const times = music().map(({ at }) => at);
    expect(times.filter((at) => at > back - 4.7 && at < back - 0.01)).toEqual([]);
    expect(Math.min(...times.filter((at) => at > back - 0.01))).toBeCloseTo(back, 1);
    expect(clock.now).toBeGreaterThan(back);
  });
});

describe('the guitar of the class', () => {
  test('changes on a bar line while the vamp goes on, and nothing is told', async () => {
    const { sound, told, run, music, rendered, left } = await playing();
    await run(2.5);
    const steel = new Set(music().map(({ samples }) => samples));
    sound.setInstrument({ voice: 'nylon', pitch: 440, smallSpeaker: false });
    await rendered(() => left.some(({ gain, samples, dropped }) => gain !== null && !dropped && !steel.has(samples)));
    await run(5);
    const other = music().filter(({ samples }) => !steel.has(samples));
    const first = Math.min(...other.map(({ at }) => at));
    const bar = (first - 5.15) / 2.4;
    expect(Math.abs(bar - Math.round(bar))).toBeLessThan(0.02);
    // From that line on no string is the old one, and no beat is missing.
    expect(music().filter(({ at, samples }) => at > first + 0.1 && steel.has(samples))).toEqual([]);
    const beats = new Set(music().map(({ at }) => Math.round((at - 7.55 - 0.01) / 0.6)));
    const last = Math.max(...beats);
    expect(beats.size).toBe(last + 1);
    expect(told).toEqual(['started r1']);
  });

  test('while nothing plays it is the one of the next vamp, and of the tones', async () => {
    const { sound, left } = await running();
    const toneOf = (pitch: number): Float32Array | undefined => {
      sound.setInstrument({ voice: 'steel', pitch, smallSpeaker: false });
      sound.tone({ kind: 'string', string: 5 });
      return left.at(-1)?.samples;
    };
    expect(toneOf(415)).not.toEqual(toneOf(440));
  });
});

describe('tones', () => {
  test('sound one at a time, and a vamp ends them', async () => {
    const { sound, left, closed, run } = await running();
    await run(0.1);
    for (const tone of [{ kind: 'reference' }, { kind: 'string', string: 6 }, { kind: 'bass-check' }] as const) {
      const before = left.length;
      sound.tone(tone);
      expect(left).toHaveLength(before + 1);
      expect(left.at(-1)?.samples.some((sample) => Math.abs(sample) > 0.01)).toBe(true);
    }
    expect(closed).toEqual([1, 2, 3]);
    await sound.play('r1', EM_D);
    expect(closed).toEqual([1, 2, 3, 4]);
  });

  test('none sounds over a vamp', async () => {
    const { sound, left } = await running();
    await sound.play('r1', EM_D);
    const before = left.length;
    sound.tone({ kind: 'reference' });
    expect(sound.click(true)).toBe(false);
    expect(left).toHaveLength(before);
  });

  test('clicks come once a second for as long as they are wanted', async () => {
    const { sound, left, run, clock } = await running();
    const before = left.length;
    expect(sound.click(true)).toBe(true);
    await run(5);
    const clicks = left.slice(before).map(({ at }) => at);
    clicks.slice(1).forEach((at, index) => expect(at - (clicks[index] ?? 0)).toBeCloseTo(1, 9));
    expect(clicks.length).toBeGreaterThanOrEqual(6);
    expect(sound.sinceClick()).toBeCloseTo((clock.now - 5.05) % 1, 6);
    sound.setDelay(0.3);
    expect(sound.sinceClick()).toBeCloseTo((clock.now - 5.05 - 0.3 + 1) % 1, 6);
    sound.click(false);
    expect(sound.sinceClick()).toBeNull();
    await run(3);
    expect(left).toHaveLength(before + clicks.length);
  });
});

describe('where the music is', () => {
  test('the position runs behind by the delay of the speakers: the browser’s and the teacher’s', async () => {
    const { sound, clock, run } = await playing();
    await run(2.8);
    const at = (): number => {
      const heard = sound.position();
      if (heard?.phase !== 'vamp') throw new Error('a bar sounds');
      return heard.beat;
    };
    const near = at();
    clock.latency = 0.1;
    expect(near - at()).toBeCloseTo(0.1 / 0.6, 6);
    sound.setDelay(0.05);
    expect(near - at()).toBeCloseTo(0.15 / 0.6, 6);
  });

  test('everything is let go at the end', async () => {
    const { sound, told, run, closed } = await playing();
    await run(0.3);
    sound.dispose();
    expect(told).toEqual(['started r1', 'stopped r1']);
    expect(closed).toEqual([1, 2]);
  });
});
