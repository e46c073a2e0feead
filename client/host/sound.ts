import type { SoundChange, Tone } from '../../server/protocol/messages.ts';
import { STEEL, type Instrument } from '../../shared-theory/sound/instrument.ts';
import type { AudioOptions, AudioOut, Bus } from './audio.ts';
import { changedControls } from './controls.ts';
import { programOf, type Program } from './live-program.ts';
import type { LiveVamp } from './played-slots.ts';
import { createPlayer, type PlayerEvents } from './player.ts';
import { createRig, type Rig } from './rig.ts';
import type { Heard } from './sound-view.ts';
import { strikesOn } from './strikes.ts';
import { createTones } from './tones.ts';

/** `running`: the browser lets sound out and its clock moves. `lost`: it ran and was taken away. All else is off. */
export type SoundState = 'off' | 'starting' | 'running' | 'lost';

export type SoundEvents = PlayerEvents & {
  readonly onState: (state: SoundState) => void;
  /** Speakers were plugged or unplugged: time for a test note. */
  readonly onDeviceChange: () => void;
};

/** The sound of the host page: what the teacher's controls and the room's orders act on. */
export type Sound = {
  /** Fetches what the press will need; to be called once the page is drawn. */
  readonly preload: () => Promise<void>;
  /** To be called in a press. Plays a test note where sound runs. */
  readonly enableSound: () => Promise<'running' | 'blocked'>;
  /** Plays the test note; true where it really left the page. */
  readonly testNote: () => Promise<boolean>;
  readonly state: () => SoundState;
  /** Level of what leaves the page: 0 silence, 1 full scale. */
  readonly level: () => number;
  /** 0 to 1, as a fader; starts at 0.7. */
  readonly setVolume: (volume: number) => void;
  /** What is played on; a vamp that sounds goes on with it from a bar line. Steel strings until it is said. */
  readonly setInstrument: (instrument: Instrument) => void;
  /** Seconds by which the speakers are late beyond what the browser knows: they move the position, and nothing else. */
  readonly setDelay: (seconds: number) => void;
  /**
   * Counts in and loops the vamp until stopped. Does nothing while that round plays, or while sound is off. True where that round
   * plays now.
   */
  readonly play: (round: string, vamp: LiveVamp) => Promise<boolean>;
  /** Takes effect on the next bar line of the round that plays; `onTook` tells when it did. */
  readonly change: (change: SoundChange) => Promise<void>;
  /** Whether the room plays along: hands that do are given a rest in time. */
  readonly playAlong: (along: boolean) => void;
  /** Plays a tone while no vamp sounds; another tone or a vamp ends it. */
  readonly tone: (tone: Tone) => void;
  /** Clicks once a second while no vamp sounds, until something else is to sound; false ends them. True where they sound now. */
  readonly click: (on: boolean) => boolean;
  /** Seconds since the last of those clicks as heard now; null where there is none. */
  readonly sinceClick: () => number | null;
  /** Silence within a tenth of a second. */
  readonly stop: () => void;
  /** Where the vamp is as heard now; null while nothing plays. */
  readonly position: () => Heard | null;
  readonly dispose: () => void;
};

/** A context that says `running` while its clock stands for so long is lost all the same. */
const STALLED_MS = 2000;
/** While the sound is away, it is asked back so often. */
const REVIVE_MS = 2000;
const TEST_NOTE_WATCH_MS = 700;
const AUDIBLE = 0.002;

/** Makes the page's sound on a way out, which `open` gives. */
export function createSound(open: (options: AudioOptions) => AudioOut, events: SoundEvents): Sound {
  let state: SoundState = 'off';
  let starting: Promise<'running' | 'blocked'> | null = null;
  let instrument = STEEL;
  let rig: Rig | null = null;
  let music: Bus | null = null;
  /** A bar is being made ready that the player waits for. */
  let filling = false;
  let changing: Promise<void> = Promise.resolve();
  /** Stops so far: a round that was stopped and begun anew is not the one that a change was pressed for. */
  let stops = 0;
  let clock = { seconds: -1, since: 0 };
  let delay = 0;
  let revivedAt = 0;

  const setState = (next: SoundState): void => {
    if (next === state) return;
    state = next;
    events.onState(next);
  };

  const audio = open({
    onTick: () => {
      player.advance();
      tones.advance();
      if (state === 'running' && stalled()) lose();
      else if (state === 'lost') revive();
    },
    onState: () => {
      if (state === 'running' && !audio.running()) lose();
      else if (state === 'lost' && audio.running()) alive();
    },
    onDevice: () => {
      events.onDeviceChange();
      revivedAt = 0;
    },
  });
  const tones = createTones(audio);

  const usedRig = (): Rig => {
    // Another device may come with another rate.
    if (rig?.shelf.sampleRate !== audio.sampleRate() || rig.instrument !== instrument)
      rig = createRig(audio.sampleRate(), instrument);
    return rig;
  };
  /** What sounds now is struck on this one, until another is ready. */
  const playedRig = (): Rig => (rig?.shelf.sampleRate === audio.sampleRate() ? rig : usedRig());
  const way = (): Bus => (music ??= audio.bus(1));

  const player = createPlayer(
    {
      now: audio.now,
      ready: (program, bar) => {
        const used = playedRig();
        if (used.ready(program, bar)) return true;
        if (filling) return false;
        filling = true;
        void used.prepare(program, [bar], stillPlays()).then(
          () => {
            filling = false;
            player.advance();
          },
          (error: unknown) => {
            // What cannot be rendered must not be waited for.
            filling = false;
            stop();
            throw error;
          },
        );
        return false;
      },
      ...strikesOn(audio, way, playedRig),
      hush: () => {
        music?.close();
        music = null;
      },
    },
    events,
  );

  const stalled = (): boolean => {
    const seconds = audio.now();
    if (seconds !== clock.seconds) clock = { seconds, since: performance.now() };
    return performance.now() - clock.since > STALLED_MS;
  };

  const lose = (): void => {
    // Whoever hears of the stop must see why.
    state = 'lost';
    stop();
    revivedAt = performance.now();
    events.onState('lost');
  };

  const alive = (): void => {
    clock = { seconds: -1, since: performance.now() };
    setState('running');
  };

  /** A page that has been pressed once may start its sound again by itself. */
  const revive = (): void => {
    if (starting || performance.now() - revivedAt < REVIVE_MS) return;
    revivedAt = performance.now();
    void audio
      .start()
      .catch(() => false)
      .then((runs) => {
        if (runs && state === 'lost') alive();
      });
  };

  const enable = async (): Promise<'running' | 'blocked'> => {
    setState('starting');
    const runs = await audio.start().catch(() => false);
    if (!runs) {
      setState('off');
      // What may have played until then is on a clock that stands.
      stop();
      return 'blocked';
    }
    alive();
    void testNote();
    return 'running';
  };

  const testNote = async (): Promise<boolean> => {
    if (!audio.running()) return false;
    tones.test(instrument);
    let highest = 0;
    const from = performance.now();
    while (performance.now() - from < TEST_NOTE_WATCH_MS && highest < AUDIBLE) {
      await new Promise((resolve) => {
        setTimeout(resolve, 30);
      });
      highest = Math.max(highest, audio.level());
    }
    return highest >= AUDIBLE;
  };

  const play = (round: string, vamp: LiveVamp): Promise<boolean> => {
    if (state !== 'running') return Promise.resolve(false);
    if (player.playing() !== round) {
      stop();
      usedRig();
      // The count-in begins at once; the bars are made ready under it.
      player.play(round, vamp);
    }
    return Promise.resolve(player.playing() === round);
  };

  /** One after the other, in the order of the presses. */
  const inOrder = (work: () => Promise<void>): Promise<void> => {
    const done = changing.then(work);
    changing = done.catch(() => undefined);
    return done;
  };

  const change = (wanted: SoundChange): Promise<void> => {
    const plays = stillPlays();
    return inOrder(async () => {
      const program = player.program();
      if (!program || !plays()) return;
      const changed = programOf(program.vamp, changedControls(program.vamp, program.controls, wanted));
      for (const each of withReturn(changed)) await playedRig().prepare(each, each.bars, plays);
      if (plays()) player.change(wanted);
    });
  };

  const setInstrument = (wanted: Instrument): void => {
    if (JSON.stringify(wanted) === JSON.stringify(instrument)) return;
    instrument = wanted;
    void inOrder(async () => {
      const same = stillPlays();
      const plays = (): boolean => same() && instrument === wanted;
      const program = player.program();
      // Nothing sounds: the next vamp begins with it.
      if (!program || !plays()) return;
      const next = createRig(audio.sampleRate(), wanted);
      for (const each of withReturn(program)) await next.prepare(each, each.bars, plays);
      if (!plays()) return;
      rig = next;
      player.renew();
    });
  };

  const stop = (): void => {
    stops += 1;
    tones.end();
    player.stop();
  };

  /** Tells from now on whether what plays now still plays, without having stopped. */
  const stillPlays = (): (() => boolean) => {
    const [round, before] = [player.playing(), stops];
    return () => round !== null && stops === before && player.playing() === round;
  };

  const devices = navigator.mediaDevices as MediaDevices | undefined; // only on secure pages
  devices?.addEventListener('devicechange', events.onDeviceChange);

  return {
    preload: audio.preload,
    enableSound: () =>
      (starting ??= enable().finally(() => {
        starting = null;
      })),
    testNote,
    state: () => state,
    level: audio.level,
    setVolume: audio.setVolume,
    setInstrument,
    setDelay: (seconds) => {
      delay = seconds;
    },
    play,
    change,
    playAlong: (along) => player.playAlong(along),
    tone: (tone) => {
      if (state === 'running' && player.playing() === null) tones.play(tone, instrument);
    },
    click: (on) => {
      const free = state === 'running' && player.playing() === null;
      if (free && on) tones.click();
      else if (!on) tones.end();
      return free && on;
    },
    sinceClick: () => tones.sinceClick(audio.heard() - delay),
    stop,
    position: () => player.position(audio.heard() - delay),
    dispose: () => {
      stop();
      devices?.removeEventListener('devicechange', events.onDeviceChange);
      audio.dispose();
    },
  };
}

/** A program, and what comes back by itself after it. */
function withReturn(program: Program): readonly Program[] {
  const { vamp, controls } = program;
  if (controls.mode.kind !== 'drop-out') return [program];
  return [program, programOf(vamp, { ...controls, mode: { kind: 'full' } })];
}
