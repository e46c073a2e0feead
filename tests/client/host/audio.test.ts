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
    readonly events = new EventTarget();
    readonly rawContext: { outputLatency?: unknown; addEventListener: EventTarget['addEventListener'] };
    readonly born = performance.now();
    constructor() {
      this.plan = plans[made.length] ?? {};
      this.state = 'suspended';
      const addEventListener = this.events.addEventListener.bind(this.events);
      this.rawContext =
        'latency' in this.plan ? { outputLatency: this.plan.latency, addEventListener } : { addEventListener };
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
  const shapes: ((sample: number) => number)[] = [];
  class StubNode {
    constructor(options: { readonly mapping?: (sample: number) => number }) {
      if (options.mapping) shapes.push(options.mapping);
    }
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
    WaveShaper: StubNode,
    Meter: StubNode,
  };
  return { made, shapes, load: () => Promise.resolve(tone as unknown as typeof import('tone')) };
}

const opened: AudioOut[] = [];
function open(plans: readonly ContextPlan[], patienceMs = 60) {
  const { made, shapes, load } = stubTone(plans);
  let devices = 0;
  const audio = openAudio({
    load,
    patienceMs,
    onTick: () => undefined,
    onState: () => undefined,
    onDevice: () => {
      devices += 1;
    },
  });
  opened.push(audio);
  return { audio, made, shapes, devices: () => devices };
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

  test('a context that the browser has closed is replaced', async () => {
    const { audio, made } = open([{}, {}]);
    await audio.start();
    for (const context of made) context.state = 'closed';
    expect(audio.running()).toBe(false);
    await expect(audio.start()).resolves.toBe(true);
    expect(made.map(({ disposed }) => disposed)).toEqual([true, false]);
  });

  test.each(['sinkchange', 'error'])('another way out is told: %s', async (event) => {
    const { audio, made, devices } = open([{}]);
    await audio.start();
    made[0]?.events.dispatchEvent(new Event(event));
    expect(devices()).toBe(1);
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

describe('the limiter', () => {
  /** Samples go through the curve an eighth as large as they are. */
  const through = async (sample: number): Promise<number> => {
    const { audio, shapes } = open([{}]);
    await audio.start();
    const [curve] = shapes;
    if (!curve) throw new Error('what leaves the page goes through a curve');
    return curve(Math.max(-1, Math.min(1, sample / 8)));
  };

  test.each([0, 0.1, 0.5, 0.7, -0.7])('leaves %d as it is', async (sample) => {
    expect(await through(sample)).toBeCloseTo(sample, 12);
  });

  test('lets nothing past −1 dBFS, however loud, and never gets softer as its sound gets louder', async () => {
    const ceiling = 10 ** (-1 / 20);
    const samples = [0.71, 0.75, 0.8, 0.9, 1, 1.5, 3, 8, 100];
    const out = await Promise.all(samples.map(through));
    out.forEach((sample, index) => {
      expect(sample).toBeLessThan(ceiling);
      expect(sample).toBeGreaterThanOrEqual(out[index - 1] ?? 0);
    });
    expect(await through(-100)).toBeGreaterThan(-ceiling);
  });
});
