import { afterEach, describe, expect, test, vi } from 'vitest';
import { openAudio, type AudioOut } from '../../../client/host/audio.ts';

type ContextPlan = {
  readonly state?: string;
  readonly frozen?: boolean;
  readonly resume?: 'at once' | 'never' | 'refuses';
  readonly latency?: unknown;
};

/** What audio.ts uses of Tone, with contexts that behave as planned, one plan for each that is made. */
function stubTone(plans: readonly ContextPlan[]) {
  const made: StubContext[] = [];
  class StubContext {
    readonly plan: ContextPlan;
    state: string;
    sampleRate = 48000;
    resumes = 0;
    disposed = false;
    readonly rawContext: { outputLatency?: unknown };
    readonly born = performance.now();
    constructor() {
      this.plan = plans[made.length] ?? {};
      this.state = 'suspended';
      this.rawContext = 'latency' in this.plan ? { outputLatency: this.plan.latency } : {};
      made.push(this);
    }
    get currentTime() {
      return this.plan.frozen ? 1 : 1 + (performance.now() - this.born) / 1000;
    }
    resume() {
      this.resumes += 1;
      if (this.plan.resume === 'never') return new Promise<void>(() => undefined);
      if (this.plan.resume === 'refuses') return Promise.reject(new Error('refused'));
      this.state = this.plan.state ?? 'running';
      return Promise.resolve();
    }
    on() {
      return this;
    }
    dispose() {
      this.disposed = true;
    }
  }
  class StubNode {
    readonly gain = { rampTo: () => undefined };
    connect() {
      return this;
    }
    toDestination() {
      return this;
    }
    dispose() {
      return this;
    }
    getValue() {
      return 0.25;
    }
  }
  const tone = {
    Context: StubContext,
    setContext: () => undefined,
    Gain: StubNode,
    Limiter: StubNode,
    Meter: StubNode,
  };
  return { made, load: () => Promise.resolve(tone as unknown as typeof import('tone')) };
}

const opened: AudioOut[] = [];
function open(plans: readonly ContextPlan[], patienceMs = 60) {
  const { made, load } = stubTone(plans);
  const audio = openAudio({ load, patienceMs, onTick: () => undefined, onState: () => undefined });
  opened.push(audio);
  return { audio, made };
}

afterEach(() => {
  for (const audio of opened.splice(0)) audio.dispose();
});

describe('starting', () => {
  test('no context exists before the press', async () => {
    const { audio, made } = open([{}]);
    await audio.preload();
    expect(made).toHaveLength(0);
    expect(audio.running()).toBe(false);
    expect([audio.now(), audio.heard(), audio.level()]).toEqual([0, 0, 0]);
    expect(() => audio.bus(1)).toThrow('call start in a press first');
  });

  test('a press that counts: running, one resume', async () => {
    const { audio, made } = open([{}]);
    await expect(audio.start()).resolves.toBe(true);
    expect(made.map(({ resumes }) => resumes)).toEqual([1]);
    expect(audio.level()).toBe(0.25);
  });

  test.each(['never', 'refuses'] as const)('a resume that %s settles is not waited for', async (resume) => {
    const { audio, made } = open([{ resume }]);
    await expect(audio.start()).resolves.toBe(false);
    expect(made).toHaveLength(1);
    // The next press tries again with the same context.
    await expect(audio.start()).resolves.toBe(false);
    expect(made.map(({ resumes }) => resumes)).toEqual([2]);
  });

  test('the state interrupted is sound off', async () => {
    const { audio } = open([{ state: 'interrupted' }]);
    await expect(audio.start()).resolves.toBe(false);
    expect(audio.running()).toBe(false);
  });

  test('running with a frozen clock: a new context is made and the old one let go', async () => {
    const { audio, made } = open([{ frozen: true }, {}]);
    await expect(audio.start()).resolves.toBe(true);
    expect(made.map(({ disposed }) => disposed)).toEqual([true, false]);
  });

  test('frozen twice is blocked', async () => {
    const { audio } = open([{ frozen: true }, { frozen: true }]);
    await expect(audio.start()).resolves.toBe(false);
  });
});

describe('delay of the speakers', () => {
  test.each([
    [undefined, 0],
    [Number.NaN, 0],
    [0, 0],
    [-1, 0],
    [0.25, 0.25],
  ])('outputLatency %s: what is heard is %s s behind', async (latency, behind) => {
    const { audio, made } = open([{ latency }]);
    await audio.start();
    vi.useFakeTimers({ toFake: ['performance'] });
    const [context] = made;
    expect((context?.currentTime ?? 0) - audio.heard()).toBeCloseTo(behind, 6);
    vi.useRealTimers();
  });
});
