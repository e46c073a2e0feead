import { runInThisContext } from 'node:vm';
import type { Page } from 'playwright-core';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { RECORDER, recording, TapeFault } from './sound-recorder.ts';

type Block = { readonly samples: Float32Array; readonly first: number };
type Processor = { readonly process: (inputs: readonly (readonly Float32Array[])[]) => boolean };

let blocks: Block[];
let recorder: Processor;

beforeEach(() => {
  blocks = [];
  const port = { postMessage: (block: Block) => blocks.push(block) };
  vi.stubGlobal(
    'AudioWorkletProcessor',
    class {
      port = port;
    },
  );
  vi.stubGlobal('registerProcessor', (_name: string, Made: new () => Processor) => {
    recorder = new Made();
  });
  runInThisContext(RECORDER);
});

afterEach(() => vi.unstubAllGlobals());

/** The clock stands at `frame`; each sample is the number of its place in the sound that was given. */
function play(frame: number, place: number, count: number): void {
  for (let n = 0; n < count; n += 128) {
    vi.stubGlobal('currentFrame', frame + n);
    recorder.process([[Float32Array.from({ length: 128 }, (_, sample) => place + n + sample)]]);
  }
}

/** What a page tells of its tape. */
function recorded(options?: { readonly whole: boolean }) {
  const tape = { context: { sampleRate: 48_000 }, blocks: blocks.map((block) => ({ ...block, lead: 0 })) };
  vi.stubGlobal('window', { soundTape: tape });
  const page = { evaluate: (read: (given: unknown) => unknown, given: unknown) => Promise.resolve(read(given)) };
  return recording(page as unknown as Page, 0, 1, options);
}

test('what the clock plays without a leap is on the tape, in order', async () => {
  play(1024, 0, 8192);
  expect(blocks.map(({ first, samples }) => [first, samples.length])).toEqual([
    [1024, 4096],
    [5120, 4096],
  ]);
  const { samples } = await recorded({ whole: true });
  expect(samples).toEqual(Float32Array.from({ length: 8192 }, (_, place) => place));
});

test.each([
  ['leaps', 2048 + 512],
  ['turns back', 2048 - 512],
])(
  'a clock that %s within a block tears the tape there, and what follows lies where the clock had it',
  async (_how, on) => {
    play(0, 0, 2048);
    play(on, 2048, 8192);
    await expect(recorded({ whole: true })).rejects.toThrow(TapeFault);
    const { samples } = await recorded();
    expect(samples[Math.min(on, 2048) - 1]).toBe(Math.min(on, 2048) - 1);
    expect(samples[on]).toBe(2048);
    expect(samples[on + 8191]).toBe(2048 + 8191);
    if (on > 2048) expect(samples.subarray(2048, on).every((sample) => sample === 0)).toBe(true);
  },
);
