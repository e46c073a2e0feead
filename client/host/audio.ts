import type { Voice } from './placed.ts';

type Tone = typeof import('tone');

/** How one sound is played. Gains are factors. */
type Sounding = {
  readonly gain?: number;
  /** Seconds after its beginning when it is stopped; to its end by default. */
  readonly stop?: number;
  /** Seconds in which it falls silent when stopped. */
  readonly ramp?: number;
};

/** A way out for sounds that are stopped together. */
export type Bus = {
  /** Plays mono samples at a time of the audio clock. */
  readonly sound: (samples: Float32Array, at: number, sounding?: Sounding) => Voice;
  /** Ramps down within 30 ms, drops what is scheduled, and frees the way. */
  readonly close: () => void;
};

/** The browser's sound behind one limiter. Nothing exists before the first `start`. */
export type AudioOut = {
  /** Fetches the library before the press that needs it: some browsers start sound only within the press itself. */
  readonly preload: () => Promise<void>;
  /** To be called in a press. True once the browser lets sound out and its clock moves. */
  readonly start: () => Promise<boolean>;
  /** The browser lets sound out now. */
  readonly running: () => boolean;
  /** Seconds of the audio clock; 0 before the first start. */
  readonly now: () => number;
  /** What is heard now by that clock: earlier by the delay of the speakers, where the browser knows it. */
  readonly heard: () => number;
  readonly sampleRate: () => number;
  readonly bus: (gain: number) => Bus;
  /** Level of what leaves the page: 0 silence, 1 full scale. */
  readonly level: () => number;
  /** 0 to 1, as a fader. */
  readonly setVolume: (volume: number) => void;
  readonly dispose: () => void;
};

export type AudioOptions = {
  /** Some ten times a second, in hidden tabs too, while an audio context exists. */
  readonly onTick: () => void;
  /** The browser's own word changed: `running`, `suspended`, `interrupted`, `closed`. */
  readonly onState: () => void;
  /** The sound goes another way out, or its way out has failed. */
  readonly onDevice?: () => void;
  /** Loads Tone; default: its own chunk. */
  readonly load?: () => Promise<Tone>;
  /** Most milliseconds that a browser may take to start: without a press it never answers. */
  readonly patienceMs?: number;
};

/** A safe start: the teacher turns up, nobody is startled. */
const START_VOLUME = 0.7;

/** No sample that leaves the page lies higher: a hair under −1 dBFS. */
const CEILING = 10 ** (-1.05 / 20);
/** Under this nothing is changed: −3 dBFS. */
const KNEE = 10 ** (-3 / 20);
/** The highest sample that is told apart from others; what is higher still comes out at the ceiling too. */
const HIGHEST = 8;
const CURVE_POINTS = 8193;

const CLOSE_SECONDS = 0.03;
/** How often Tone's worker ticks, as twice the seconds between two ticks. */
const TICK_LOOKAHEAD = 0.2;
/** A second clock beside Tone's worker, which a strict page policy may keep from starting. */
const BACKSTOP_MS = 500;
/** Some systems say `running` while the clock stands still. */
const FROZEN_MS = 300;
const POLL_MS = 20;

type Context = InstanceType<Tone['Context']>;
type Output = {
  readonly tone: Tone;
  readonly context: Context;
  readonly master: InstanceType<Tone['Gain']>;
  readonly limiter: InstanceType<Tone['WaveShaper']>;
  readonly meter: InstanceType<Tone['Meter']>;
};

/** The host page's sound. The only file that knows Tone. */
export function openAudio(options: AudioOptions): AudioOut {
  const { onTick, onState, onDevice, load = () => import('tone'), patienceMs = 1000 } = options;
  let tone: Tone | null = null;
  let output: Output | null = null;
  let volume = START_VOLUME;
  const backstop = setInterval(() => output && onTick(), BACKSTOP_MS);

  const build = (library: Tone): Output => {
    const context = new library.Context({ latencyHint: 'balanced', lookAhead: TICK_LOOKAHEAD });
    library.setContext(context);
    const master = new library.Gain({ context, gain: faderGain(volume) });
    const limiter = new library.WaveShaper({ context, mapping: limited, length: CURVE_POINTS });
    const meter = new library.Meter({ context, normalRange: true, smoothing: 0.7 });
    master.connect(limiter);
    limiter.connect(meter);
    limiter.toDestination();
    context.on('tick', onTick);
    context.on('statechange', onState);
    // Events that newer browsers send.
    if (onDevice) for (const event of ['sinkchange', 'error']) context.rawContext.addEventListener(event, onDevice);
    return { tone: library, context, master, limiter, meter };
  };

  const start = async (): Promise<boolean> => {
    // No waiting before the resume where the library is here already: the press must still count.
    const library = (tone ??= await load());
    if (output?.context.state === 'closed') {
      // The browser has let it go, and nothing brings it back.
      tearDown(output);
      output = null;
    }
    output ??= build(library);
    if (await comesAlive(output.context, patienceMs)) return true;
    if (output.context.state !== 'running') return false;
    // Running with a frozen clock: only a new context cures that.
    tearDown(output);
    output = build(library);
    return comesAlive(output.context, patienceMs);
  };

  return {
    preload: async () => {
      tone ??= await load();
    },
    start,
    running: () => output?.context.state === 'running',
    now: () => output?.context.currentTime ?? 0,
    heard: () => (output ? output.context.currentTime - outputLatency(output.context) : 0),
    sampleRate: () => output?.context.sampleRate ?? 48_000,
    bus: (gain) => {
      if (!output) throw new Error('The sound has not been started: call start in a press first.');
      return openBus(output, gain);
    },
    level: () => (output ? Number(output.meter.getValue()) : 0),
    setVolume: (wanted) => {
      volume = Math.max(0, Math.min(1, wanted));
      output?.master.gain.rampTo(faderGain(volume), 0.05);
    },
    dispose: () => {
      clearInterval(backstop);
      if (output) tearDown(output);
      output = null;
    },
  };
}

/** Squares are how a fader feels even. A shaper knows samples up to 1 only, so that all come to it `HIGHEST` times smaller. */
function faderGain(volume: number): number {
  return volume ** 2 / HIGHEST;
}

/**
 * The limiter, a curve without a corner: what lies under the knee stays as it is, what lies higher bends towards the ceiling and never
 * passes it. `share` is a sample divided by `HIGHEST`.
 */
function limited(share: number): number {
  const sample = Math.abs(share) * HIGHEST;
  if (sample <= KNEE) return share * HIGHEST;
  return Math.sign(share) * (KNEE + (CEILING - KNEE) * Math.tanh((sample - KNEE) / (CEILING - KNEE)));
}

/** Resumes a context; true once it runs and its clock has moved. A resume without a press never settles, so it is raced. */
async function comesAlive(context: Context, patienceMs: number): Promise<boolean> {
  const resumed = context.resume().then(
    () => true,
    () => false,
  );
  await Promise.race([resumed, wait(patienceMs)]);
  if (context.state !== 'running') return false;
  const before = context.currentTime;
  for (let waited = 0; waited < FROZEN_MS; waited += POLL_MS) {
    await wait(POLL_MS);
    if (context.currentTime > before) return true;
  }
  return false;
}

function wait(milliseconds: number): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, milliseconds);
  });
}

/** Delay between the audio clock and the ear; not every browser tells, and some say what is no number. */
function outputLatency(context: Context): number {
  const raw = context.rawContext;
  const latency = 'outputLatency' in raw ? raw.outputLatency : 0;
  return Number.isFinite(latency) && latency > 0 ? latency : 0;
}

function openBus({ tone, context, master }: Output, gain: number): Bus {
  const out = new tone.Gain({ context, gain });
  out.connect(master);
  const playing = new Set<Voice>();
  let closed = false;
  return {
    sound: (samples, at, { gain: own = 1, stop, ramp = CLOSE_SECONDS } = {}) => {
      const source = new tone.ToneBufferSource({
        context,
        url: audioBuffer(context, samples),
        fadeOut: ramp,
        onended: () => playing.delete(voice),
        curve: 'linear',
      });
      source.connect(out);
      const whole = samples.length / context.sampleRate;
      let end = at + Math.min(whole, stop === undefined ? whole : stop + ramp);
      const voice: Voice = {
        get end() {
          return end;
        },
        stopAt: (time) => {
          if (!playing.has(voice) || time + ramp >= end) return;
          end = time + ramp;
          source.stop(time);
        },
        drop: () => {
          if (playing.delete(voice)) source.dispose();
        },
      };
      source.start(at, 0, stop, own);
      playing.add(voice);
      return voice;
    },
    close: () => {
      if (closed) return;
      closed = true;
      out.gain.rampTo(0, CLOSE_SECONDS, context.currentTime);
      setTimeout(
        () => {
          for (const voice of playing) voice.drop();
          out.dispose();
        },
        CLOSE_SECONDS * 1000 + 150,
      );
    },
  };
}

const audioBuffers = new WeakMap<Float32Array, AudioBuffer>();

function audioBuffer(context: Context, samples: Float32Array): AudioBuffer {
  const known = audioBuffers.get(samples);
  if (known?.sampleRate === context.sampleRate) return known;
  const buffer = context.createBuffer(1, samples.length, context.sampleRate);
  buffer.getChannelData(0).set(samples);
  audioBuffers.set(samples, buffer);
  return buffer;
}

function tearDown({ context, master, limiter, meter }: Output): void {
  for (const node of [meter, limiter, master]) node.dispose();
  context.dispose();
}
