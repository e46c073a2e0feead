import type { SoundChange } from '../../server/protocol/messages.ts';
import { perform } from '../../shared-theory/perform.ts';
import { countInTick, testNote as testNoteSamples } from '../../shared-theory/sound/clicks.ts';
import { performanceGain } from '../../shared-theory/sound/mix.ts';
import { noteShelf, stopSeconds, trimGain, type NoteShelf } from '../../shared-theory/sound/note-shelf.ts';
import type { AudioOptions, AudioOut, Bus } from './audio.ts';
import { changedControls, fullControls, programOf, type Program } from './live-program.ts';
import type { LiveVamp } from './played-slots.ts';
import { createPlayer, type PlayerEvents } from './player.ts';
import type { Heard } from './sound-view.ts';
import { fillShelf } from './string-buffers.ts';

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
  /**
   * Counts in and loops the vamp until stopped. Does nothing while that round plays or is made ready, or while sound is off.
   * True where that round plays now; false where it does not: no sound, still being made ready, stopped before it began.
   */
  readonly play: (round: string, vamp: LiveVamp) => Promise<boolean>;
  /** Takes effect on the next bar line of the round that plays or is made ready; `onTook` tells when it did. */
  readonly change: (change: SoundChange) => Promise<void>;
  /** Silence within a tenth of a second. */
  readonly stop: () => void;
  /** Where the vamp is as heard now; null while nothing plays. */
  readonly position: () => Heard | null;
  readonly dispose: () => void;
};

/** A context that says `running` while its clock stands for so long is lost all the same. */
const STALLED_MS = 2000;
const TEST_NOTE_WATCH_MS = 700;
const AUDIBLE = 0.002;

/** Makes the page's sound on a way out, which `open` gives. */
export function createSound(open: (options: AudioOptions) => AudioOut, events: SoundEvents): Sound {
  let state: SoundState = 'off';
  let starting: Promise<'running' | 'blocked'> | null = null;
  let shelf: NoteShelf | null = null;
  let strings: Bus | null = null;
  let ticks: Bus | null = null;
  /** What is being made ready; another play or a stop makes it stale. */
  let preparing: { readonly round: string; readonly changes: SoundChange[] } | null = null;
  let changing: Promise<void> = Promise.resolve();
  let clock = { seconds: -1, since: 0 };

  const setState = (next: SoundState): void => {
    if (next === state) return;
    state = next;
    events.onState(next);
  };

  const audio = open({
    onTick: () => {
      player.advance();
      if (state === 'running' && stalled()) lose();
    },
    onState: () => {
      if (state === 'running' && !audio.running()) lose();
      else if (state === 'lost' && audio.running()) setState('running');
    },
  });

  const player = createPlayer(
    {
      now: audio.now,
      strike: (note, at) => {
        strings ??= audio.bus(1);
        const samples = usedShelf().take(note);
        return strings.sound(samples, at, { gain: trimGain(note), stop: note.duration, ramp: stopSeconds(note) });
      },
      tick: (accented, at) => {
        ticks ??= audio.bus(1);
        return ticks.sound(countInTick(accented, audio.sampleRate()), at);
      },
      hush: () => {
        strings?.close();
        ticks?.close();
        strings = null;
        ticks = null;
      },
    },
    events,
  );

  const usedShelf = (): NoteShelf => {
    // Another device may come with another rate.
    if (shelf?.sampleRate !== audio.sampleRate()) shelf = noteShelf(audio.sampleRate());
    return shelf;
  };

  const stalled = (): boolean => {
    const seconds = audio.now();
    if (seconds !== clock.seconds) clock = { seconds, since: performance.now() };
    return performance.now() - clock.since > STALLED_MS;
  };

  const lose = (): void => {
    // Whoever hears of the stop must see why.
    state = 'lost';
    stop();
    events.onState('lost');
  };

  const enable = async (): Promise<'running' | 'blocked'> => {
    setState('starting');
    const alive = await audio.start().catch(() => false);
    clock = { seconds: -1, since: performance.now() };
    setState(alive ? 'running' : 'off');
    if (!alive) return 'blocked';
    void testNote();
    return 'running';
  };

  const testNote = async (): Promise<boolean> => {
    if (!audio.running()) return false;
    const bus = audio.bus(1);
    bus.sound(testNoteSamples(audio.sampleRate()), audio.now() + 0.05);
    let highest = 0;
    const from = performance.now();
    while (performance.now() - from < TEST_NOTE_WATCH_MS && highest < AUDIBLE) {
      await new Promise((resolve) => {
        setTimeout(resolve, 30);
      });
      highest = Math.max(highest, audio.level());
    }
    setTimeout(bus.close, 2200);
    return highest >= AUDIBLE;
  };

  const play = async (round: string, vamp: LiveVamp): Promise<boolean> => {
    if (state === 'running' && player.playing() === round) return true;
    if (state !== 'running' || preparing?.round === round) return false;
    stop();
    const mine = { round, changes: [] as SoundChange[] };
    preparing = mine;
    const stillWanted = () => preparing === mine;
    await fillShelf(usedShelf(), programOf(vamp, fullControls(vamp)).performance.notes, stillWanted);
    if (!stillWanted()) return false;
    preparing = null;
    strings = audio.bus(performanceGain(perform(vamp), usedShelf()));
    player.play(round, vamp);
    for (const waiting of mine.changes) await change(waiting);
    return player.playing() === round;
  };

  /** One after the other, in the order of the presses. */
  const change = (wanted: SoundChange): Promise<void> => {
    const round = preparing?.round ?? player.playing();
    const done = changing.then(() => applyChange(wanted, round));
    changing = done.catch(() => undefined);
    return done;
  };

  const applyChange = async (wanted: SoundChange, round: string | null): Promise<void> => {
    if (preparing) {
      if (preparing.round === round) preparing.changes.push(wanted);
      return;
    }
    const program = player.program();
    if (!program || player.playing() !== round) return;
    await fillShelf(usedShelf(), changed(program, wanted).performance.notes, () => player.playing() === round);
    if (player.playing() === round) player.change(wanted);
  };

  const stop = (): void => {
    preparing = null;
    player.stop();
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
    play,
    change,
    stop,
    position: () => player.position(audio.heard()),
    dispose: () => {
      stop();
      devices?.removeEventListener('devicechange', events.onDeviceChange);
      audio.dispose();
    },
  };
}

function changed({ vamp, controls }: Program, wanted: SoundChange): Program {
  return programOf(vamp, changedControls(vamp, controls, wanted));
}
