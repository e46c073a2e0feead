import { afterEach, describe, expect, test, vi } from 'vitest';
import type { AudioOptions, AudioOut } from '../../../client/host/audio.ts';
import { createSound, type SoundState } from '../../../client/host/sound.ts';
import { parseVamp, type VoicedVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';

type Heard = { readonly samples: Float32Array; readonly at: number; readonly gain: number };

/** A way out without a browser: its clock and its state are the test's. */
function silentHouse({ alive = true, audible = true } = {}) {
  const heard: Heard[] = [];
  const states: SoundState[] = [];
  const told: string[] = [];
  const clock = { now: 5, running: false, latency: 0 };
  let options: AudioOptions | null = null;
  let closed = 0;
  const open = (given: AudioOptions): AudioOut => {
    options = given;
    return {
      preload: () => Promise.resolve(),
      start: () => {
        clock.running = alive;
        return Promise.resolve(alive);
      },
      running: () => clock.running,
      now: () => clock.now,
      heard: () => clock.now - clock.latency,
      sampleRate: () => 44100,
      bus: (gain) => ({
        sound: (samples, at) => {
          heard.push({ samples, at, gain });
          return { end: at + samples.length / 44100, stopAt: () => undefined, drop: () => undefined };
        },
        close: () => {
          closed += 1;
        },
      }),
      level: () => (audible && heard.length > 0 ? 0.1 : 0),
      setVolume: () => undefined,
      dispose: () => undefined,
    };
  };
  const sound = createSound(open, {
    onState: (state) => states.push(state),
    onDeviceChange: () => told.push('device'),
    onStarted: (round) => told.push(`started ${round}`),
    onTook: (_round, change, bar) => told.push(`took ${change.kind} at ${bar}`),
    onSilent: (round) => told.push(`silent ${round}`),
    onStopped: (round) => told.push(`stopped ${round}`),
  });
  const say = (running: boolean) => {
    clock.running = running;
    options?.onState();
  };
  const run = (seconds: number) => {
    for (let step = 0; step < seconds / 0.1; step++) {
      clock.now += 0.1;
      options?.onTick();
    }
  };
  return { sound, heard, states, told, clock, say, run, closed: () => closed, tick: () => options?.onTick() };
}

const EM_D: VoicedVamp = voice({ slots: parseVamp('Em D', 4), groove: 'quarter-downs', tempo: 100, seed: 1 });
const C_G: VoicedVamp = voice({ slots: parseVamp('C G', 4), groove: 'quarter-downs', tempo: 100, seed: 1 });

afterEach(() => vi.restoreAllMocks());

describe('enabling sound', () => {
  test('starts, and plays a test note that leaves the page', async () => {
    const { sound, states, heard } = silentHouse();
    expect(sound.state()).toBe('off');
    await expect(sound.enableSound()).resolves.toBe('running');
    expect(states).toEqual(['starting', 'running']);
    expect(heard).toHaveLength(1);
    await expect(sound.testNote()).resolves.toBe(true);
  });

  test('a browser that does not start is said to be blocked, and nothing plays', async () => {
    const { sound, states, heard } = silentHouse({ alive: false });
    await expect(sound.enableSound()).resolves.toBe('blocked');
    expect(states).toEqual(['starting', 'off']);
    await expect(sound.play('r1', EM_D)).resolves.toBe(false);
    expect(heard).toHaveLength(0);
    await expect(sound.testNote()).resolves.toBe(false);
  });

  test('two presses start once', async () => {
    const { sound, heard } = silentHouse();
    await Promise.all([sound.enableSound(), sound.enableSound()]);
    expect(heard).toHaveLength(1);
  });

  test('a test note that never arrives at the meter is told', async () => {
    const { sound } = silentHouse({ audible: false });
    await sound.enableSound();
    await expect(sound.testNote()).resolves.toBe(false);
  });
});

describe('losing sound', () => {
  test('any state but running stops the vamp; when it comes back, sound is on again and silent', async () => {
    const { sound, states, told, say, run } = silentHouse();
    await sound.enableSound();
    await sound.play('r1', EM_D);
    run(4);
    say(false); // suspended, interrupted, closed: all alike
    expect(states.at(-1)).toBe('lost');
    expect(told).toEqual(['started r1', 'stopped r1']);
    say(true);
    expect(states.at(-1)).toBe('running');
    expect(sound.position()).toBeNull();
  });

  test('a clock that stands still for two seconds is a lost sound', async () => {
    const { sound, states, tick } = silentHouse();
    await sound.enableSound();
    tick();
    const later = performance.now() + 2500;
    vi.spyOn(performance, 'now').mockReturnValue(later);
    tick();
    expect(states.at(-1)).toBe('lost');
  });
});

describe('playing', () => {
  test('both vamps of a lesson come at one loudness: quiet shapes get more gain', async () => {
    const { sound, heard, run } = silentHouse();
    await sound.enableSound();
    await sound.play('r1', EM_D);
    run(4);
    const gains = new Set(heard.slice(1).map(({ gain }) => gain));
    // One gain for the strings, one for the ticks.
    expect(gains.size).toBe(2);
  });

  test('play while the same round is being made ready, and after, is one play', async () => {
    const { sound, told, run } = silentHouse();
    await sound.enableSound();
    await Promise.all([sound.play('r1', EM_D), sound.play('r1', EM_D)]);
    await sound.play('r1', EM_D);
    run(1);
    expect(told).toEqual(['started r1']);
  });

  test('the last order wins where two rounds are asked for', async () => {
    const { sound, told, run } = silentHouse();
    await sound.enableSound();
    await expect(Promise.all([sound.play('r1', EM_D), sound.play('r2', C_G)])).resolves.toEqual([false, true]);
    run(1);
    expect(told).toEqual(['started r2']);
    await expect(sound.play('r2', C_G)).resolves.toBe(true);
  });

  test('a stop while a round is made ready leaves silence', async () => {
    const { sound, told, heard, run } = silentHouse();
    await sound.enableSound();
    const playing = sound.play('r1', EM_D);
    sound.stop();
    await expect(playing).resolves.toBe(false);
    run(2);
    expect(told).toEqual([]);
    expect(heard).toHaveLength(1); // the test note
  });

  test('a change while a round is made ready takes with the first bar', async () => {
    const { sound, told, run } = silentHouse();
    await sound.enableSound();
    const playing = sound.play('r1', EM_D);
    await sound.change({ kind: 'bass-alone' });
    await playing;
    run(4);
    expect(told).toEqual(['started r1', 'took bass-alone at 0']);
  });

  test('changes keep the order of the presses', async () => {
    const { sound, told, run } = silentHouse();
    await sound.enableSound();
    await sound.play('r1', EM_D);
    run(3);
    await Promise.all([sound.change({ kind: 'tempo', tempo: 80 }), sound.change({ kind: 'hold', slot: 1 })]);
    run(4);
    expect(told.slice(1)).toEqual(['took tempo at 1', 'took hold at 1']);
  });

  test('a change is for the round that played when it was pressed, and for no later one', async () => {
    const { sound, told, run } = silentHouse();
    await sound.enableSound();
    await sound.play('r1', EM_D);
    run(3);
    const late = sound.change({ kind: 'silence' });
    const next = sound.play('r2', C_G);
    await Promise.all([late, next]);
    run(6);
    expect(told).toEqual(['started r1', 'stopped r1', 'started r2']);
  });

  test('two readings: every string of both is ready before their line, and nothing sounds in silence', async () => {
    const { sound, told, heard, run } = silentHouse();
    await sound.enableSound();
    await sound.play('r1', EM_D);
    run(3);
    await sound.change({
      kind: 'both',
      ask: 'a1',
      wrong: [{ chord: 'E', beats: 4, frets: [0, 2, 2, 1, 0, 0] }],
      right: [{ chord: 'Em', beats: 4, frets: [0, 2, 2, 0, 0, 0] }],
    });
    run(6);
    expect(told.at(-1)).toBe('took both at 1');
    await sound.change({ kind: 'silence' });
    run(4);
    expect(told.at(-1)).toMatch(/^took silence at \d+$/);
    const before = heard.length;
    run(10);
    expect(heard).toHaveLength(before);
    expect(sound.position()).toMatchObject({ phase: 'vamp', silent: true });
  });

  test('a wrong slot is refused, and later changes still take', async () => {
    const { sound, told, run } = silentHouse();
    await sound.enableSound();
    await sound.play('r1', EM_D);
    run(3);
    await expect(sound.change({ kind: 'hold', slot: 9 })).rejects.toThrow(RangeError);
    await sound.change({ kind: 'full' });
    run(4);
    expect(told.at(-1)).toBe('took full at 1');
  });

  test('the position runs behind by the delay of the speakers', async () => {
    const { sound, clock, run } = silentHouse();
    await sound.enableSound();
    await sound.play('r1', EM_D);
    run(3);
    const near = sound.position();
    clock.latency = 0.25;
    const late = sound.position();
    if (near?.phase !== 'vamp' || late?.phase !== 'vamp') throw new Error('a bar sounds');
    expect(near.beat - late.beat).toBeCloseTo(0.25 / 0.6, 6);
  });

  test('everything is let go at the end', async () => {
    const { sound, told, run, closed } = silentHouse();
    await sound.enableSound();
    await sound.play('r1', EM_D);
    run(1);
    sound.dispose();
    expect(told).toEqual(['started r1', 'stopped r1']);
    expect(closed()).toBe(2);
  });
});
