import type { AudioOptions, AudioOut } from '../../../client/host/audio.ts';
import { createSound, type SoundState } from '../../../client/host/sound.ts';

/** One sound that left: through which way, how loud, stopped when, and whether it was taken back. */
export type Left = {
  readonly samples: Float32Array;
  readonly at: number;
  readonly way: number;
  readonly gain: number | null;
  dropped: boolean;
};

/** Half the usual rate: what is rendered is shorter, and nothing here listens to it. */
const RATE = 22_050;

/** A way out without a browser: its clock and its state are the test's. */
export function silentHouse({ alive = true, audible = true, onSound = (): void => undefined } = {}) {
  const left: Left[] = [];
  const states: SoundState[] = [];
  const told: string[] = [];
  const clock = { now: 5, running: false, latency: 0, alive, rate: RATE };
  let options: AudioOptions | null = null;
  let starts = 0;
  const closed: number[] = [];
  let ways = 0;
  const open = (given: AudioOptions): AudioOut => {
    options = given;
    return {
      preload: () => Promise.resolve(),
      start: () => {
        starts += 1;
        clock.running = clock.alive;
        return Promise.resolve(clock.alive);
      },
      running: () => clock.running,
      now: () => clock.now,
      heard: () => clock.now - clock.latency,
      sampleRate: () => clock.rate,
      bus: () => {
        const way = (ways += 1);
        return {
          sound: (samples, at, { gain = null } = {}) => {
            const one: Left = { samples, at, way, gain, dropped: false };
            left.push(one);
            onSound();
            return {
              end: at + samples.length / clock.rate,
              stopAt: () => undefined,
              drop: () => {
                one.dropped = true;
              },
            };
          },
          close: () => closed.push(way),
        };
      },
      level: () => (audible && left.length > 0 ? 0.1 : 0),
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
    onRest: (round) => told.push(`rest ${round}`),
    onStopped: (round) => told.push(`stopped ${round}`),
  });
  const breath = (): Promise<void> =>
    new Promise((resolve) => {
      setTimeout(resolve, 0);
    });
  return {
    sound,
    left,
    states,
    told,
    clock,
    closed,
    starts: () => starts,
    /** What left by its own gain: strings, kit and bass; ticks and voices have none. */
    music: () => left.filter(({ gain, dropped }) => gain !== null && !dropped),
    say: (running: boolean) => {
      clock.running = running;
      options?.onState();
    },
    device: () => options?.onDevice?.(),
    tick: () => options?.onTick(),
    /** The clock goes on by `seconds`, as slowly as the rendering needs it to. */
    run: async (seconds: number) => {
      for (let step = 0; step < Math.round(seconds / 0.1); step += 1) {
        clock.now += 0.1;
        options?.onTick();
        await breath();
      }
    },
    /** What is being rendered is rendered. */
    rendered: async (want: () => boolean) => {
      for (let turn = 0; turn < 4000 && !want(); turn += 1) {
        options?.onTick();
        await breath();
      }
      if (!want()) throw new Error('It never became ready.');
    },
  };
}
