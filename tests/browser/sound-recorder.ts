import type { BrowserContext, Page } from 'playwright-core';

/** The latest recorder is three seconds late; a busy page may keep it longer. */
const PATIENCE_MS = 20_000;

/** What has left a page. */
export type Recording = {
  readonly samples: Float32Array;
  readonly sampleRate: number;
  /** Milliseconds since 1970 when the first sample was played, within a few hundredths of a second. */
  readonly beganAt: number;
};

type Kept = { block: Float32Array; first: number };

type Tape = {
  context: AudioContext | null;
  kept: Kept[];
  /** Least of the wall clock's milliseconds less the audio clock's: whoever looks late only makes it larger. */
  lead: number;
  /** Frame of the audio clock at which the ramp begins. */
  begins: number;
};

declare global {
  interface Window {
    soundTape?: Tape;
  }
}

/**
 * Records all that the pages of a context send to the speakers, beside sending it. To be called before they are opened.
 * Beside the sound runs a ramp that counts the samples of the audio clock. A recorder that a busy page holds up leaves holes, so
 * three of them record, two some seconds late, and the ramp tells where each block belongs.
 */
export async function recordSound(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const RAMP = 2 ** 20;
    const BLOCK = 16_384;
    const DELAYS = [0, 65_536, 131_072];
    const connect = Object.getOwnPropertyDescriptor(AudioNode.prototype, 'connect')?.value as (
      this: AudioNode,
      ...given: unknown[]
    ) => unknown;
    const tape: Tape = { context: null, kept: [], lead: Infinity, begins: 0 };
    window.soundTape = tape;
    const inputs = new WeakMap<BaseAudioContext, AudioNode>();
    const recorder = (live: AudioContext): AudioNode => {
      const merger = live.createChannelMerger(2);
      const mono = live.createGain();
      mono.channelCount = 1;
      mono.channelCountMode = 'explicit';
      connect.call(mono, merger, 0, 0);
      const ramp = live.createBufferSource();
      const count = live.createBuffer(1, RAMP, live.sampleRate);
      const steps = count.getChannelData(0);
      for (let index = 0; index < RAMP; index++) steps[index] = index / RAMP;
      ramp.buffer = count;
      ramp.loop = true;
      connect.call(ramp, merger, 0, 1);
      for (const frames of DELAYS) {
        const delay = live.createDelay(10);
        delay.delayTime.value = frames / live.sampleRate;
        const script = live.createScriptProcessor(BLOCK, 2, 1);
        let last = 0;
        script.addEventListener('audioprocess', ({ inputBuffer }) => {
          tape.lead = Math.min(tape.lead, performance.timeOrigin + performance.now() - live.currentTime * 1000);
          const counted = inputBuffer.getChannelData(1);
          // Before the ramp begins there is nothing to count by.
          if (counted[0] === 0 && counted[1] === 0) return;
          let first = Math.round((counted[0] ?? 0) * RAMP);
          while (first < last) first += RAMP;
          last = first;
          tape.kept.push({ block: inputBuffer.getChannelData(0).slice(), first });
        });
        connect.call(merger, delay);
        connect.call(delay, script);
        connect.call(script, live.destination);
      }
      // It begins with a whole quantum of the audio clock, a little ahead.
      const begins = (Math.ceil((live.currentTime * live.sampleRate) / 128) + 32) * 128;
      ramp.start(begins / live.sampleRate);
      Object.assign(tape, { context: live, kept: [], lead: Infinity, begins });
      return mono;
    };
    AudioNode.prototype.connect = function (this: AudioNode, ...given: unknown[]) {
      const [target] = given;
      if (target instanceof AudioDestinationNode && target.context instanceof AudioContext) {
        const input = inputs.get(target.context) ?? recorder(target.context);
        inputs.set(target.context, input);
        connect.call(this, input);
      }
      return connect.apply(this, given);
    } as typeof AudioNode.prototype.connect;
  });
}

/** Seconds recorded so far. */
export function recordedSeconds(page: Page): Promise<number> {
  return page.evaluate(() => {
    const tape = window.soundTape;
    if (!tape?.context) return 0;
    return Math.max(0, ...tape.kept.map(({ first, block }) => first + block.length)) / tape.context.sampleRate;
  });
}

/**
 * All that was recorded from one second of the ramp to another, once the late recorders have brought what the first missed.
 * Throws where none has it.
 */
export async function recording(page: Page, from: number, to: number): Promise<Recording> {
  for (const end = Date.now() + PATIENCE_MS; ;) {
    const { parts, sampleRate, lead, begins } = await taped(page, from, to);
    const first = Math.round(from * sampleRate);
    const samples = new Float32Array(Math.round(to * sampleRate) - first);
    const known = new Uint8Array(samples.length);
    for (const { first: at, block } of parts) {
      const skipped = Math.max(0, first - at);
      const part = block.subarray(skipped, Math.max(skipped, first + samples.length - at));
      samples.set(part, at + skipped - first);
      known.fill(1, at + skipped - first, at + skipped - first + part.length);
    }
    const hole = known.indexOf(0);
    if (hole < 0) return { samples, sampleRate, beganAt: lead + ((begins + first) / sampleRate) * 1000 };
    if (Date.now() > end) throw new Error(`no recorder has the sound at ${(first + hole) / sampleRate} s`);
    await new Promise((resolve) => void setTimeout(resolve, 200));
  }
}

/** The recorders' blocks that touch the stretch. */
async function taped(page: Page, from: number, to: number) {
  const { parts, ...rest } = await page.evaluate(
    ([from, to]) => {
      const tape = window.soundTape;
      if (!tape?.context) throw new Error('no sound has left this page');
      const { sampleRate } = tape.context;
      const some = tape.kept.filter(
        ({ first, block }) => first + block.length > from * sampleRate && first < to * sampleRate,
      );
      const coded = some.map(({ block, first }) => {
        const bytes = new Uint8Array(block.buffer);
        let text = '';
        for (let at = 0; at < bytes.length; at += 8192) text += String.fromCharCode(...bytes.subarray(at, at + 8192));
        return { first, coded: btoa(text) };
      });
      return { parts: coded, sampleRate, lead: tape.lead, begins: tape.begins };
    },
    [from, to] as const,
  );
  const blocks = parts.map(({ first, coded }) => {
    const bytes = Uint8Array.from(Buffer.from(coded, 'base64'));
    return { first, block: new Float32Array(bytes.buffer) };
  });
  return { ...rest, parts: blocks };
}
