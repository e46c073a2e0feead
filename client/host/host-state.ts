import { computed, effect, signal, type ReadonlySignal } from '@preact/signals';
import { PROTOCOL_VERSION, type HostCommand, type Reason, type SoundOrder } from '../../server/protocol/messages.ts';
import type { HostView } from '../../server/protocol/views.ts';
import { hostWords, refusals } from '../../server/protocol/words/en.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import { createView, openConnection, type ConnectionStatus } from '../shared/connection.ts';
import { newId } from '../shared/ids.ts';
import { AGAIN_MS, passes } from '../shared/passing.ts';
import { createKeep, type Keep } from '../shared/storage.ts';
import { createFacts } from './facts.ts';
import { barsUntold } from './shown-facts.ts';
import { createSoundDesk } from './sound-desk.ts';
import { createSpeakerDelay } from './speaker-delay.ts';
import type { HostActions, LocalSound } from './sound-view.ts';
import type { Sound, SoundEvents } from './sound.ts';

/** What a host page shows and does; all of it signals, so that drawing stays a function of them. */
export type HostState = {
  readonly view: ReadonlySignal<HostView | null>;
  readonly waiting: ReadonlySignal<string>;
  readonly lost: ReadonlySignal<boolean>;
  readonly sound: ReadonlySignal<LocalSound>;
  readonly unreached: ReadonlySignal<boolean>;
  readonly actions: HostActions;
};

export type HostParts = {
  readonly makeSound: (events: SoundEvents) => Sound;
  readonly connect?: typeof openConnection;
  readonly keep?: Keep;
  readonly ringSwitch?: boolean;
};

const CAUTIONED = 'hearsay-ears-first';
/** The room whose lesson has been reminded of its hands. */
const SHAKEN = 'hearsay-hands-shaken';
/** A room open for so long without a seat: phones may not get through. */
const UNREACHED_MS = 60_000;

/** The host page of one room: the view from the server, the page's own sound, and what passes between them. */
export function createHost(room: string, parts: HostParts): HostState {
  const { makeSound, connect = openConnection, keep = createKeep(), ringSwitch = false } = parts;
  const { view, listeners } = createView<HostView>();
  const state = signal<LocalSound['state']>('off');
  const cautioning = signal<'press' | 'take-over' | null>(null);
  const deviceChanged = signal(false);
  /** Clicks sound, to be compared with the flash of the mark. */
  const comparing = signal(false);
  /** This page means to hold the sound: it asks again after each lost connection. */
  let holding = false;
  /** Held by a press: what the log says plays goes on here. After a lost connection the page knows better than an old view. */
  let pressed = false;

  const sound = makeSound({
    onStarted: (round, tempo) => {
      comparing.value = false;
      facts.tell({ type: 'VampStarted', round, tempo }, desk.started(round));
    },
    onTook: (round, change, bar) => {
      facts.tell({ type: 'ChangeTook', round, change, bar });
      desk.took(round, change);
    },
    onSilent: (round) => facts.tell({ type: 'SilenceKept', round }),
    onRest: (_round, seconds) => remind(seconds),
    onStopped: (round) => {
      facts.tell({ type: 'VampStopped', round });
      desk.stopped(round);
    },
    onState: (next) => {
      if (next === 'running') {
        state.value = 'on';
        if (holding) desk.ready(null);
        return;
      }
      comparing.value = false;
      if (next === 'lost') desk.lost();
      if (next !== 'off') state.value = next;
    },
    onDeviceChange: () => {
      if (state.value !== 'off') deviceChanged.value = true;
    },
  });
  const desk = createSoundDesk(sound);
  /** The room is told to shake its hands out. */
  const shaking = signal(false);
  const remind = (seconds: number): void => {
    if (keep.get(SHAKEN) === room) return;
    keep.set(SHAKEN, room);
    shaking.value = true;
    setTimeout(() => {
      shaking.value = false;
    }, seconds * 1000);
  };

  const connection = connect(
    { role: 'host', room, version: PROTOCOL_VERSION, page: newId() },
    {
      view: (whole: HostView) => {
        listeners.view(whole);
        desk.logged(whole.sound);
      },
      patch: (patch: Partial<HostView>) => {
        listeners.patch(patch);
        if (view.value) desk.logged(view.value.sound);
      },
      sound: (order: SoundOrder) => {
        comparing.value = false;
        desk.obey(order);
      },
    },
  );
  const facts = createFacts((command) => connection.send(command));

  const hold = async (takeOver: boolean): Promise<void> => {
    const command: HostCommand = { type: 'HoldSound', id: newId(), takeOver };
    const reply = (await connection.send(command)) ?? (await connection.send(command));
    // Not reached: it is asked again with the next connection.
    if (reply === null) return;
    if (!reply.ok && passes(reply.reason)) {
      setTimeout(() => void hold(takeOver), AGAIN_MS);
      return;
    }
    holding = reply.ok;
    if (reply.ok) desk.ready(pressed ? (view.value?.sound ?? null) : null);
    else desk.silence();
    pressed = false;
  };

  /** Must run inside a press: browsers let sound begin only there. */
  const enable = async (takeOver: boolean): Promise<void> => {
    deviceChanged.value = false;
    const outcome = await sound.enableSound();
    if (outcome === 'blocked') {
      state.value = 'failed';
      return;
    }
    holding = true;
    pressed = true;
    await hold(takeOver);
  };

  const press = (wish: 'press' | 'take-over'): void => {
    if (keep.get(CAUTIONED) === null) cautioning.value = wish;
    else void enable(wish === 'take-over');
  };

  effect(() => {
    const { status, vamp, settings, steps, current } = view.value ?? {};
    desk.vamp(status === 'round' ? (vamp ?? null) : null, settings?.band, barsUntold(steps ?? [], current ?? null));
  });
  effect(() => {
    if (!view.value) return;
    const { voice, pitch, smallSpeaker } = view.value.settings;
    sound.setInstrument({ voice, pitch, smallSpeaker });
  });
  const answering = computed(() => view.value?.current?.status === 'open');
  effect(() => sound.playAlong(!answering.value));
  effect(() => {
    // The next lesson of the room is reminded once more.
    if (view.value?.status === 'lesson-ended') keep.remove(SHAKEN);
  });
  const delay = createSpeakerDelay(keep);
  effect(() => sound.setDelay(delay.value / 1000));
  effect(() => {
    if (connection.status.value.kind !== 'live') return;
    facts.resume();
    if (holding) void hold(false);
  });
  const taken = computed(() => view.value !== null && view.value.soundHeld && !view.value.holdsSound);
  effect(() => {
    // Another page took the sound over: this one falls silent and does not ask for it again.
    if (!taken.value || connection.status.value.kind !== 'live' || !holding) return;
    holding = false;
    desk.silence();
  });

  return {
    view,
    waiting: computed(() => waitingSentence(connection.status.value)),
    lost: computed(() => connection.status.value.kind === 'lost'),
    unreached: unreachedAfter(view),
    sound: computed(() => ({
      state: state.value,
      ringSwitch,
      cautioning: cautioning.value !== null,
      shaking: shaking.value && !answering.value,
      deviceChanged: deviceChanged.value,
      level: sound.level,
      position: sound.position,
      delayMs: delay.value,
      comparing: comparing.value,
      sinceClick: sound.sinceClick,
    })),
    actions: {
      pressForSound: () => press('press'),
      takeOver: () => press('take-over'),
      acceptCaution: () => {
        const wish = cautioning.value;
        keep.set(CAUTIONED, 'yes');
        cautioning.value = null;
        void enable(wish === 'take-over');
      },
      setDelay: (milliseconds) => {
        delay.value = milliseconds;
      },
      compare: (on) => {
        comparing.value = sound.click(on);
      },
      testNote: () => {
        deviceChanged.value = false;
        comparing.value = false;
        void sound.testNote().then((heard) => {
          if (sound.state() === 'running') state.value = heard ? 'on' : 'silent';
        });
      },
    },
  };
}

/** What stands on the wall before the first view: where we are, or why not. */
function waitingSentence(status: ConnectionStatus): string {
  if (status.kind !== 'refused') return hostWords.connecting;
  return fill(refusals[status.reason as Reason] ?? status.reason, status.detail);
}

/** True once the register page has stood for a minute without a seat taken; false again with the first seat. */
function unreachedAfter(view: ReadonlySignal<HostView | null>): ReadonlySignal<boolean> {
  const unreached = signal(false);
  const empty = computed(() => view.value?.status === 'register' && view.value.seats.length === 0);
  effect(() => {
    if (!empty.value) {
      unreached.value = false;
      return;
    }
    const timer = setTimeout(() => {
      unreached.value = true;
    }, UNREACHED_MS);
    return () => clearTimeout(timer);
  });
  return unreached;
}
