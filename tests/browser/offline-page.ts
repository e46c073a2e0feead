import * as Tone from 'tone';
import { openAudio } from '../../client/host/audio.ts';
import type { LiveVamp } from '../../client/host/played-slots.ts';
import { createSound, type Sound } from '../../client/host/sound.ts';
import type { SoundChange } from '../../server/protocol/messages.ts';
import type { Instrument } from '../../shared-theory/sound/instrument.ts';

/** What the teacher does, so many seconds after the press that plays the vamp. */
export type Order = { readonly at: number } & (
  | { readonly kind: 'change'; readonly change: SoundChange }
  | { readonly kind: 'instrument'; readonly instrument: Instrument }
  | { readonly kind: 'stop' }
);

/** One playing: a vamp, from the press on for so many seconds, with the fader (0 to 1) where it stands by itself or elsewhere. */
export type Playing = {
  readonly sampleRate: number;
  readonly seconds: number;
  readonly vamp: LiveVamp;
  readonly volume?: number;
  readonly orders?: readonly Order[];
};

export type Told = { readonly kind: string; readonly bar: number; readonly at: number };

/** What left the page: samples as bytes in base64, from its start; the press; what the page told. Seconds from the start of the sound. */
export type Left = { readonly coded: string; readonly pressed: number; readonly told: readonly Told[] };

declare global {
  interface Window {
    leaves?: (playing: Playing) => Promise<Left>;
  }
}

/** The clock stands still for the page's work after so many blocks of 128 samples: some twenty times a second, as timers do. */
const BLOCKS = 16;
const BLOCK = 128;

/**
 * Turns of work that the page gets while the clock stands. The page gives way after each piece of work on the slowest machine, and has
 * fewer pieces for a bar than fit in: what it can do in time does not depend on the machine.
 */
const TURNS = 40;

/** From the beginning to the press: time for the sound to start and its test note to fade. */
const PRESS_SECONDS = 1;

/** One channel for all turns: there are some ten thousand in a playing. */
const { port1, port2 } = new MessageChannel();
port1.start();
const turn = (): Promise<void> =>
  new Promise((resolve) => {
    port1.addEventListener('message', () => resolve(), { once: true });
    port2.postMessage(null);
  });

/** The page's timers by the audio clock; `advance` calls those that are due. */
function timersBy(clock: () => number): { readonly advance: () => void } {
  type Timer = { readonly call: () => void; readonly every: number | null; at: number };
  const timers = new Map<number, Timer>();
  let last = 0;
  const add = (call: () => void, milliseconds: number, repeats: boolean): number => {
    const seconds = milliseconds / 1000;
    last += 1;
    timers.set(last, { call, every: repeats ? seconds : null, at: clock() + seconds });
    return last;
  };
  const remove = (id: number): void => void timers.delete(id);
  Object.assign(window, {
    setTimeout: (call: () => void, milliseconds = 0) => add(call, milliseconds, false),
    setInterval: (call: () => void, milliseconds: number) => add(call, milliseconds, true),
    clearTimeout: remove,
    clearInterval: remove,
  });
  return {
    advance: () => {
      for (const [id, timer] of [...timers].toSorted(([, one], [, other]) => one.at - other.at)) {
        if (timer.at > clock() || !timers.has(id)) continue;
        if (timer.every === null) timers.delete(id);
        else timer.at = clock() + timer.every;
        timer.call();
      }
    },
  };
}

/** A context of the library that renders as fast as it can, and stands still whenever the page is to work. */
function simulated(native: OfflineAudioContext) {
  return class extends Tone.Context {
    constructor(options: { readonly latencyHint: AudioContextLatencyCategory; readonly lookAhead: number }) {
      super({ ...options, context: native, clockSource: 'offline' });
      contexts.set(native, this);
    }
    override get state(): AudioContextState {
      return 'running';
    }
  };
}
const contexts = new WeakMap<OfflineAudioContext, Tone.Context>();

function obey(sound: Sound, order: Order): void {
  if (order.kind === 'change') void sound.change(order.change);
  else if (order.kind === 'instrument') sound.setInstrument(order.instrument);
  else sound.stop();
}

window.leaves = async ({ sampleRate, seconds, vamp, volume, orders = [] }) => {
  const length = Math.ceil((PRESS_SECONDS + seconds) * sampleRate);
  const native = new OfflineAudioContext(1, length, sampleRate);
  const now = (): number => native.currentTime;
  const timers = timersBy(now);
  const told: Told[] = [];
  const tell = (kind: string, bar = 0): void => void told.push({ kind, bar, at: now() });
  const library = { ...Tone, Context: simulated(native) } as unknown as typeof Tone;
  const sound = createSound((options) => openAudio({ ...options, load: () => Promise.resolve(library) }), {
    onState: tell,
    onDeviceChange: () => tell('device'),
    onStarted: () => tell('started'),
    onTook: (_round, change, bar) => tell(change.kind, bar),
    onSilent: () => tell('silent'),
    onRest: () => tell('rest'),
    onStopped: () => tell('stopped'),
  });
  if (volume !== undefined) sound.setVolume(volume);

  let pressed: number | null = null;
  /** Seconds after the press up to which all orders are given. */
  let acted = 0;
  const act = (): void => {
    timers.advance();
    contexts.get(native)?.emit('tick');
    if (pressed === null && now() >= PRESS_SECONDS) {
      pressed = now();
      void sound.play('round', vamp);
    }
    const since = pressed === null ? -1 : now() - pressed;
    for (const order of orders) if (order.at > acted && order.at <= since) obey(sound, order);
    acted = since;
  };

  void sound.enableSound();
  let arrived = native.suspend(0);
  const finished = native.startRendering();
  for (let frame = 0; ;) {
    await arrived;
    act();
    for (let turns = 0; turns < TURNS; turns += 1) await turn();
    frame += BLOCKS * BLOCK;
    if (frame >= length) break;
    // Half a sample more, so that no rounding makes it the block before.
    arrived = native.suspend((frame + 0.5) / sampleRate);
    void native.resume();
  }
  void native.resume();
  const samples = (await finished).getChannelData(0);
  sound.dispose();

  const bytes = new Uint8Array(samples.buffer, samples.byteOffset, samples.byteLength);
  let coded = '';
  for (let at = 0; at < bytes.length; at += 8192) coded += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return { coded: btoa(coded), pressed: pressed ?? 0, told };
};
