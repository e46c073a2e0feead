import type { BrowserContext, Page } from 'playwright-core';

/** What has left a page. */
export type Recording = {
  readonly samples: Float32Array;
  readonly sampleRate: number;
  /** Milliseconds since 1970 when the first sample was played, within a few hundredths of a second. */
  readonly beganAt: number;
};

type Block = {
  readonly samples: Float32Array;
  /** Frame of the audio clock of the first sample. */
  readonly first: number;
  /** The wall clock's milliseconds less the audio clock's. */
  readonly lead: number;
};

declare global {
  interface Window {
    soundTape?: { context: AudioContext | null; readonly blocks: Block[] };
  }
}

/**
 * Runs beside the sound, not beside the page: whatever holds the page up, nothing is lost. Under load the audio clock itself leaps or
 * turns back: a block ends there, so that what it holds is whole, and lies where the clock had it.
 */
export const RECORDER = `
registerProcessor('recorder', class extends AudioWorkletProcessor {
  block = new Float32Array(4096);
  length = 0;
  first = 0;
  process([[input]]) {
    if (this.length > 0 && currentFrame !== this.first + this.length) this.send();
    if (this.length === 0) this.first = currentFrame;
    if (input) this.block.set(input, this.length);
    this.length += 128;
    if (this.length === this.block.length) this.send();
    return true;
  }
  send() {
    const samples = this.block.slice(0, this.length);
    this.port.postMessage({ samples, first: this.first }, [samples.buffer]);
    this.block.fill(0);
    this.length = 0;
  }
});
`;

/**
 * Records all that the pages of a context send to the speakers, beside sending it, soon after their sound begins. To be called
 * before they are opened, at an address that a browser trusts: this machine's own. The context bypasses the pages' policy, which
 * rightly lets in no program but their own.
 */
export async function recordSound(context: BrowserContext): Promise<void> {
  await context.addInitScript((program) => {
    const connect = Object.getOwnPropertyDescriptor(AudioNode.prototype, 'connect')?.value as (
      this: AudioNode,
      ...given: unknown[]
    ) => unknown;
    const tape: NonNullable<Window['soundTape']> = { context: null, blocks: [] };
    window.soundTape = tape;
    const module = URL.createObjectURL(new Blob([program], { type: 'text/javascript' }));
    const inputs = new WeakMap<BaseAudioContext, AudioNode>();
    const mixed = (live: AudioContext): AudioNode => {
      const input = live.createGain();
      input.channelCount = 1;
      input.channelCountMode = 'explicit';
      void live.audioWorklet.addModule(module).then(() => {
        const recorder = new AudioWorkletNode(live, 'recorder', { numberOfInputs: 1, numberOfOutputs: 1 });
        recorder.port.addEventListener('message', ({ data }: MessageEvent<Pick<Block, 'samples' | 'first'>>) => {
          const lead = performance.timeOrigin + performance.now() - live.currentTime * 1000;
          // The library has a context of its own, which never runs; a sound that was lost may come back on a new one.
          if (tape.context !== live) tape.blocks.length = 0;
          tape.context = live;
          tape.blocks.push({ ...data, lead });
        });
        recorder.port.start();
        connect.call(input, recorder);
        // It gives out silence; without a way out it would not run.
        connect.call(recorder, live.destination);
      });
      return input;
    };
    AudioNode.prototype.connect = function (this: AudioNode, ...given: unknown[]) {
      const [target] = given;
      if (target instanceof AudioDestinationNode && target.context instanceof AudioContext) {
        const input = inputs.get(target.context) ?? mixed(target.context);
        inputs.set(target.context, input);
        connect.call(this, input);
      }
      return connect.apply(this, given);
    } as typeof AudioNode.prototype.connect;
  }, RECORDER);
}

/** Seconds of the audio clock up to which all is recorded; 0 before the recorder runs. */
export function recordedSeconds(page: Page): Promise<number> {
  return page.evaluate(() => {
    const tape = window.soundTape;
    const last = tape?.blocks.at(-1);
    return tape?.context && last ? (last.first + last.samples.length) / tape.context.sampleRate : 0;
  });
}

/** The tape has a hole or a fold: the machine was too busy for its sound. It tells nothing of the program. */
export class TapeFault extends Error {
  override readonly name = 'TapeFault';
}

/** Plays and records again, a few times, where a busy machine has torn the tape. */
export async function onWholeTape(play: () => Promise<void>): Promise<void> {
  for (let tries = 1; ; tries++) {
    try {
      await play();
      return;
    } catch (error) {
      if (!(error instanceof TapeFault) || tries === MOST_TRIES) throw error;
    }
  }
}

const MOST_TRIES = 5;

/**
 * All that was recorded from one second of the audio clock to another; what a jump of the clock left out is silence. `whole`: throws
 * `TapeFault` instead.
 */
export async function recording(page: Page, from: number, to: number, { whole = false } = {}): Promise<Recording> {
  const { parts, sampleRate } = await page.evaluate(
    ([from, to]) => {
      const tape = window.soundTape;
      if (!tape?.context) throw new Error('no sound has left this page');
      const { sampleRate } = tape.context;
      const some = tape.blocks.filter(
        ({ first, samples }) => first + samples.length > from * sampleRate && first < to * sampleRate,
      );
      const parts = some.map(({ samples, first, lead }) => {
        const bytes = new Uint8Array(samples.buffer);
        let coded = '';
        for (let at = 0; at < bytes.length; at += 8192) coded += String.fromCharCode(...bytes.subarray(at, at + 8192));
        return { first, lead, coded: btoa(coded) };
      });
      return { parts, sampleRate };
    },
    [from, to] as const,
  );
  const begin = parts[0]?.first ?? 0;
  const blocks = parts.map(({ coded }) => new Float32Array(Uint8Array.from(Buffer.from(coded, 'base64')).buffer));
  // A block lies where the audio clock had it, whatever came before: under load the clock turns back or leaps a little.
  const last = parts.at(-1)?.first ?? begin;
  const samples = new Float32Array(last - begin + (blocks.at(-1)?.length ?? 0));
  let end = begin;
  for (const [index, block] of blocks.entries()) {
    const first = parts[index]?.first ?? end;
    if (whole && first !== end) throw new TapeFault(`${first - end} samples from the end at ${end / sampleRate} s`);
    samples.set(block.subarray(0, samples.length - (first - begin)), first - begin);
    end = first + block.length;
  }
  const lead = Math.min(...parts.map((part) => part.lead));
  return { samples, sampleRate, beganAt: lead + (begin / sampleRate) * 1000 };
}
