import type { Tone } from '../../server/protocol/messages.ts';
import { countInTick, testNote } from '../../shared-theory/sound/clicks.ts';
import type { Instrument } from '../../shared-theory/sound/instrument.ts';
import { bassCheck, openStringTone, referenceTone } from '../../shared-theory/sound/tones.ts';
import type { AudioOut, Bus } from './audio.ts';

/** Tones beside the vamp, one at a time: for tuning, for judging the speaker, and for setting its delay. */
export type Tones = {
  readonly play: (tone: Tone, instrument: Instrument) => void;
  /** The note that proves that sound runs. */
  readonly test: (instrument: Instrument) => void;
  /** Clicks once a second, until something else is to sound. */
  readonly click: () => void;
  /** Schedules what is due of the clicks. */
  readonly advance: () => void;
  /** Seconds since the last click at a time of the audio clock; null where none has come. */
  readonly sinceClick: (at: number) => number | null;
  /** Falls silent within 30 ms. */
  readonly end: () => void;
};

/** Scheduled so far ahead, in seconds. */
const SOON_SECONDS = 0.05;
const LOOKAHEAD_SECONDS = 2.2;
const CLICK_SECONDS = 1;
/** Delays of speakers are shorter. */
const REMEMBERED_SECONDS = 2;

export function createTones(audio: Pick<AudioOut, 'bus' | 'now' | 'sampleRate'>): Tones {
  let bus: Bus | null = null;
  /** Times of the clicks that are scheduled or were heard a moment ago; null while none are wanted. */
  let clicks: number[] | null = null;

  const end = (): void => {
    bus?.close();
    bus = null;
    clicks = null;
  };
  const sound = (samples: Float32Array): void => {
    end();
    bus = audio.bus(1);
    bus.sound(samples, audio.now() + SOON_SECONDS);
  };
  const advance = (): void => {
    if (!clicks || !bus) return;
    const now = audio.now();
    clicks = clicks.filter((at) => at > now - REMEMBERED_SECONDS);
    for (let next = nextClick(clicks, now); next < now + LOOKAHEAD_SECONDS; next = nextClick(clicks, now)) {
      bus.sound(countInTick(true, audio.sampleRate()), next);
      clicks.push(next);
    }
  };

  return {
    play: (tone, instrument) => sound(samplesOf(tone, instrument, audio.sampleRate())),
    test: (instrument) => sound(testNote(audio.sampleRate(), instrument)),
    click: () => {
      end();
      bus = audio.bus(1);
      clicks = [];
      advance();
    },
    advance,
    sinceClick: (at) => {
      const last = clicks?.findLast((click) => click <= at);
      return last === undefined ? null : at - last;
    },
    end,
  };
}

function nextClick(clicks: readonly number[], now: number): number {
  const last = clicks.at(-1);
  return last === undefined || last < now - CLICK_SECONDS ? now + SOON_SECONDS : last + CLICK_SECONDS;
}

function samplesOf(tone: Tone, instrument: Instrument, sampleRate: number): Float32Array {
  switch (tone.kind) {
    case 'reference':
      return referenceTone(instrument, sampleRate);
    case 'string':
      return openStringTone(tone.string, instrument, sampleRate);
    case 'bass-check':
      return bassCheck(instrument, sampleRate);
  }
}
