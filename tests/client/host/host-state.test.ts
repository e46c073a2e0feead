import { signal } from '@preact/signals';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { createHost, type HostState } from '../../../client/host/host-state.ts';
import type { Sound, SoundEvents, SoundState } from '../../../client/host/sound.ts';
import type { ConnectionStatus } from '../../../client/shared/connection.ts';
import { createKeep } from '../../../client/shared/storage.ts';
import type { Command, Reply, SoundOrder } from '../../../server/protocol/messages.ts';
import type { HostView } from '../../../server/protocol/views.ts';
import { EM_D, REGISTER, roundAt } from './fixtures.ts';

const settle = () => vi.waitFor(() => Promise.resolve());
const flush = async (): Promise<void> => {
  for (let turn = 0; turn < 20; turn += 1) await Promise.resolve();
};

/** A sound that does at once what it is told (a slow one begins when the test says), and a room that is played by hand. */
function stage(options: { readonly cautioned?: boolean; readonly slow?: boolean } = {}) {
  const calls: string[] = [];
  const delays: number[] = [];
  const alongs: boolean[] = [];
  const instruments: string[] = [];
  const sent: Command[] = [];
  const status = signal<ConnectionStatus>({ kind: 'live' });
  let answer: (command: Command) => Reply | null = () => ({ ok: true });
  let events: SoundEvents | null = null;
  let state: SoundState = 'off';
  let playing: string | null = null;
  let allowed = true;
  let preparing: { readonly round: string; readonly begin: (begun: boolean) => void } | null = null;
  const stop = (): void => {
    const round = playing;
    playing = null;
    preparing?.begin(false);
    preparing = null;
    if (round !== null) events?.onStopped(round);
  };
  const sound: Sound = {
    preload: () => Promise.resolve(),
    enableSound: () => {
      calls.push('enable');
      if (!allowed) return Promise.resolve('blocked');
      state = 'running';
      events?.onState(state);
      return Promise.resolve('running');
    },
    testNote: () => Promise.resolve(true),
    state: () => state,
    level: () => 0,
    setVolume: () => undefined,
    setInstrument: ({ voice, pitch, smallSpeaker }) =>
      instruments.push(`${voice} ${pitch}${smallSpeaker ? ' small' : ''}`),
    setDelay: (seconds) => delays.push(seconds),
    tone: (tone) => calls.push(`tone ${tone.kind}`),
    click: (on) => {
      calls.push(on ? 'clicks' : 'no clicks');
      return on;
    },
    sinceClick: () => null,
    playAlong: (along) => alongs.push(along),
    play: (round, vamp) => {
      if (playing === round) return Promise.resolve(true);
      stop();
      calls.push(`play ${round} ${vamp.slots.map(({ chord }) => chord.root).join(' ')}`);
      return new Promise((resolve) => {
        const begun = (yes: boolean): void => {
          if (yes) events?.onStarted(round, vamp.tempo);
          resolve(yes);
        };
        preparing = { round, begin: begun };
        if (!options.slow) begin();
      });
    },
    change: (change) => {
      calls.push(change.kind === 'tempo' ? `tempo ${change.tempo}` : change.kind);
      if (playing !== null) events?.onTook(playing, change, 4);
      return Promise.resolve();
    },
    stop: () => {
      calls.push('stop');
      stop();
    },
    position: () => null,
    dispose: () => undefined,
  };
  const begin = (): void => {
    playing = preparing?.round ?? null;
    preparing?.begin(true);
    preparing = null;
  };
  let listen: { readonly [event: string]: ((payload: never) => void) | undefined } = {};
  const keep = createKeep(() => {
    throw new Error('private window');
  });
  if (options.cautioned !== false) keep.set('hearsay-ears-first', 'yes');
  const host: HostState = createHost('WAKUR', {
    keep,
    makeSound: (made) => {
      events = made;
      return sound;
    },
    connect: (_, on) => {
      listen = on;
      return {
        status,
        send: (command) => {
          const reply = answer(command);
          if (reply !== null) sent.push(command);
          return Promise.resolve(reply);
        },
        reconnect: () => undefined,
        close: () => undefined,
      };
    },
  });
  return {
    host,
    keep,
    calls,
    delays,
    instruments,
    sent,
    status,
    order: (order: SoundOrder) => (listen.sound as (order: SoundOrder) => void)(order),
    view: (view: HostView) => (listen.view as (view: HostView) => void)(view),
    patch: (patch: Partial<HostView>) => (listen.patch as (patch: Partial<HostView>) => void)(patch),
    /** What was made ready begins to sound. */
    begin,
    playing: () => playing,
    /** What was made ready is dropped without a word. */
    giveUp: () => {
      preparing?.begin(false);
      preparing = null;
    },
    answer: (next: typeof answer) => {
      answer = next;
    },
    block: () => {
      allowed = false;
    },
    lose: () => {
      state = 'lost';
      stop();
      events?.onState('lost');
    },
    plugged: () => events?.onDeviceChange(),
    alongs,
    rest: (seconds: number) => events?.onRest('r1', seconds),
    types: () => sent.map(({ type }) => type),
  };
}

const PLAYING = roundAt(1, 'open');
const SILENT: HostView = {
  ...PLAYING,
  sound: { ...PLAYING.sound, playing: false, round: null, change: { kind: 'full' }, tempo: null },
};

afterEach(() => {
  vi.useRealTimers();
});

describe('the press for sound', () => {
  test('the first press on a machine shows the caution; the second begins the sound and holds it', async () => {
    const { host, calls, types, view } = stage({ cautioned: false });
    view(REGISTER);
    host.actions.pressForSound();
    expect(host.sound.value.cautioning).toBe(true);
    expect(calls).toEqual([]);
    host.actions.acceptCaution();
    expect(calls).toEqual(['enable']);
    await flush();
    expect(host.sound.value).toMatchObject({ cautioning: false, state: 'on' });
    expect(types()).toEqual(['HoldSound']);
  });

  test('afterwards one press is enough, and sound begins inside it', () => {
    const { host, calls } = stage();
    host.actions.pressForSound();
    expect(calls).toEqual(['enable']);
  });

  test('a browser that keeps the sound back is told, and nothing is held', async () => {
    const { host, types, block } = stage();
    block();
    host.actions.pressForSound();
    await flush();
    expect(host.sound.value.state).toBe('failed');
    expect(types()).toEqual([]);
  });

  test('held elsewhere: this page stays silent until its teacher takes over', async () => {
    const { host, sent, answer, view, calls } = stage();
    view({ ...REGISTER, soundHeld: true });
    answer((command) =>
      command.type === 'HoldSound' && !command.takeOver ? { ok: false, reason: 'sound-held-elsewhere' } : { ok: true },
    );
    host.actions.pressForSound();
    await flush();
    expect(calls.at(-1)).toBe('stop');
    host.actions.takeOver();
    await flush();
    expect(sent.at(-1)).toMatchObject({ type: 'HoldSound', takeOver: true });
  });
});

describe('orders', () => {
  test('play waits for the vamp that the order names', async () => {
    const { host, calls, view, order, types } = stage();
    view(REGISTER);
    host.actions.pressForSound();
    await flush();
    order({ order: 'play', round: 'r1' });
    expect(calls).not.toContain('play r1 E D');
    view(SILENT);
    expect(calls).toContain('play r1 E D');
    await flush();
    expect(types()).toEqual(['HoldSound', 'VampStarted']);
  });

  test('changes and stop reach the sound, and the facts go out in order', async () => {
    const { host, calls, view, order, types } = stage();
    view(SILENT);
    host.actions.pressForSound();
    await flush();
    order({ order: 'play', round: 'r1' });
    order({ order: 'change', round: 'r1', change: { kind: 'bass-alone' } });
    order({ order: 'change', round: 'gone', change: { kind: 'full' } });
    order({ order: 'stop' });
    await flush();
    expect(calls).toEqual(['enable', 'play r1 E D', 'bass-alone', 'stop']);
    expect(types()).toEqual(['HoldSound', 'VampStarted', 'ChangeTook', 'VampStopped']);
  });

  test('the next round makes way for itself and plays', async () => {
    const { host, calls, view, order, types } = stage();
    view(SILENT);
    host.actions.pressForSound();
    await flush();
    order({ order: 'play', round: 'r1' });
    const next = { ...EM_D, round: 'r2', slots: EM_D.slots.toReversed() };
    view({ ...SILENT, vamp: next });
    order({ order: 'play', round: 'r2' });
    await flush();
    expect(calls.filter((call) => call.startsWith('play'))).toEqual(['play r1 E D', 'play r2 D E']);
    expect(types()).toEqual(['HoldSound', 'VampStarted', 'VampStopped', 'VampStarted']);
    order({ order: 'change', round: 'r2', change: { kind: 'full' } });
    expect(calls.at(-1)).toBe('full');
  });

  test('the teacher’s guitar is never played', async () => {
    const { host, calls, view, order } = stage();
    view({ ...SILENT, vamp: { ...EM_D, source: 'guitar' } });
    host.actions.pressForSound();
    await flush();
    order({ order: 'play', round: 'r1' });
    expect(calls).toEqual(['enable']);
  });
});

describe('what a lesson goes through', () => {
  test('after a reload the log says what plays: one press, and it goes on as it was', async () => {
    const { host, calls, view } = stage();
    view({
      ...PLAYING,
      holdsSound: false,
      soundHeld: false,
      sound: {
        playing: true,
        round: 'r1',
        change: { kind: 'hold', slot: 1 },
        tempo: 80,
        climb: null,
        feel: 'written',
        band: { kit: false, bass: false },
      },
    });
    expect(calls).toEqual([]);
    host.actions.pressForSound();
    await flush();
    expect(calls).toEqual(['enable', 'play r1 E D', 'hold', 'tempo 80']);
  });

  test('sound that the system took away goes on with the next press', async () => {
    const { host, calls, view, order, lose } = stage();
    view(SILENT);
    host.actions.pressForSound();
    await flush();
    order({ order: 'play', round: 'r1' });
    lose();
    await flush();
    expect(host.sound.value.state).toBe('lost');
    host.actions.pressForSound();
    await flush();
    expect(calls).toEqual(['enable', 'play r1 E D', 'enable', 'play r1 E D']);
    expect(host.sound.value.state).toBe('on');
  });

  test('a lost connection loses no fact and no hold', async () => {
    const { host, view, order, status, answer, types } = stage();
    view(SILENT);
    host.actions.pressForSound();
    await flush();
    answer(() => null);
    status.value = { kind: 'lost' };
    order({ order: 'play', round: 'r1' });
    await flush();
    expect(host.lost.value).toBe(true);
    expect(types()).toEqual(['HoldSound']);
    answer(() => ({ ok: true }));
    status.value = { kind: 'live' };
    await flush();
    expect(types().slice(1).toSorted()).toEqual(['HoldSound', 'VampStarted']);
  });

  test('taken over by another page, it falls silent and does not ask for the sound again', async () => {
    const { host, calls, view, order, status, types } = stage();
    view(SILENT);
    host.actions.pressForSound();
    await flush();
    order({ order: 'play', round: 'r1' });
    view({ ...PLAYING, holdsSound: false, soundHeld: true });
    expect(calls.at(-1)).toBe('stop');
    status.value = { kind: 'lost' };
    status.value = { kind: 'live' };
    await flush();
    expect(types().filter((type) => type === 'HoldSound')).toHaveLength(1);
  });

  test('other speakers ask for a test note, and one answers', async () => {
    const { host, plugged } = stage();
    plugged();
    expect(host.sound.value.deviceChanged).toBe(false);
    host.actions.pressForSound();
    await flush();
    plugged();
    expect(host.sound.value.deviceChanged).toBe(true);
    host.actions.testNote();
    expect(host.sound.value.deviceChanged).toBe(false);
    await settle();
  });
});

describe('no sound without a way to stop it', () => {
  const R2 = { ...EM_D, round: 'r2' };

  /** A host page with its sound on and a round ordered, which begins when the test says. */
  async function ordered() {
    const page = stage({ slow: true });
    page.view(SILENT);
    page.host.actions.pressForSound();
    await flush();
    page.order({ order: 'play', round: 'r1' });
    return page;
  }

  test.each([
    ['the next round', { ...SILENT, vamp: R2 }],
    ['the end of the lesson', { ...SILENT, status: 'lesson-ended' }],
    ['the end of the room', { ...SILENT, status: 'room-ended' }],
  ] as const)('%s ends a sound that the log never heard of, before its first tick and after', async (_, view) => {
    const early = await ordered();
    early.view(view);
    early.begin();
    expect(early.playing()).toBeNull();
    const late = await ordered();
    late.answer(() => null);
    late.begin();
    expect(late.playing()).toBe('r1');
    late.view(view);
    expect(late.playing()).toBeNull();
  });

  test('an order for the next round that comes before its view is played with it, and ends with it', async () => {
    const { order, view, begin, playing, calls } = await ordered();
    begin();
    order({ order: 'play', round: 'r2' });
    expect(playing()).toBe('r1');
    view({ ...SILENT, vamp: R2 });
    begin();
    expect(playing()).toBe('r2');
    view({ ...SILENT, status: 'lesson-ended', vamp: R2 });
    expect(playing()).toBeNull();
    expect(calls.filter((call) => call.startsWith('play'))).toHaveLength(2);
  });

  test('one round that is left before another was ordered stays silent for good', async () => {
    const { order, view, begin, playing } = await ordered();
    begin();
    order({ order: 'play', round: 'r2' });
    view({ ...SILENT, vamp: { ...EM_D, round: 'r3' } });
    expect(playing()).toBeNull();
  });

  test('a beginning that the room refuses is stopped', async () => {
    const { answer, begin, playing } = await ordered();
    answer((command) => (command.type === 'VampStarted' ? { ok: false, reason: 'round-unknown' } : { ok: true }));
    begin();
    expect(playing()).toBe('r1');
    await flush();
    expect(playing()).toBeNull();
  });

  test.each([
    ['could not be saved', { ok: false, reason: 'not-saved' }],
    ['was not acknowledged', null],
  ] as const)('a beginning that %s is told again and plays on', async (_, reply) => {
    const { answer, begin, playing, sent } = await ordered();
    vi.useFakeTimers();
    answer(() => reply);
    begin();
    await flush();
    expect(playing()).toBe('r1');
    sent.length = 0;
    answer(() => ({ ok: true }));
    await vi.advanceTimersByTimeAsync(1000);
    expect(sent).toMatchObject([{ type: 'VampStarted', round: 'r1' }]);
    expect(playing()).toBe('r1');
  });

  test('a view that is older than the beginning stops nothing; a later one that is silent does', async () => {
    const { answer, begin, playing, patch, status, view } = await ordered();
    answer(() => null);
    status.value = { kind: 'lost' };
    begin();
    await flush();
    patch({ handsIn: 3 });
    expect(playing()).toBe('r1');
    answer(() => ({ ok: true }));
    status.value = { kind: 'live' };
    view(SILENT);
    expect(playing()).toBe('r1');
    await flush();
    patch({ sound: PLAYING.sound });
    expect(playing()).toBe('r1');
    // Stopped at the desk while no page held the sound.
    patch({ sound: SILENT.sound });
    expect(playing()).toBeNull();
  });

  test('stopped and begun anew, the log of the first time stops nothing', async () => {
    const { begin, playing, patch, order, answer } = await ordered();
    begin();
    await flush();
    patch({ sound: PLAYING.sound });
    order({ order: 'stop' });
    answer(() => null);
    order({ order: 'play', round: 'r1' });
    begin();
    patch({ sound: SILENT.sound });
    expect(playing()).toBe('r1');
  });

  test('stopped here, it does not begin again by an old view when the connection is back', async () => {
    const { view, begin, playing, order, status, calls, answer } = await ordered();
    begin();
    await flush();
    view(PLAYING);
    answer(() => null);
    order({ order: 'stop' });
    status.value = { kind: 'lost' };
    answer(() => ({ ok: true }));
    status.value = { kind: 'live' };
    await flush();
    expect(playing()).toBeNull();
    expect(calls.filter((call) => call.startsWith('play'))).toHaveLength(1);
  });

  test('a fresh page plays nothing that the log does not say plays', async () => {
    const { host, view, calls } = stage();
    view(SILENT);
    host.actions.pressForSound();
    await flush();
    view(PLAYING);
    await flush();
    expect(calls).toEqual(['enable']);
  });
});

describe('a round that was stopped while it was made ready', () => {
  const TAKEN: HostView = { ...SILENT, holdsSound: false, soundHeld: true };

  test('by a take-over: it plays when it is ordered again', async () => {
    const { host, view, order, calls, begin, playing } = stage({ slow: true });
    view(SILENT);
    host.actions.pressForSound();
    await flush();
    order({ order: 'play', round: 'r1' });
    view(TAKEN);
    await flush();
    expect(calls.at(-1)).toBe('stop');
    view(SILENT);
    host.actions.takeOver();
    await flush();
    order({ order: 'play', round: 'r1' });
    begin();
    expect(playing()).toBe('r1');
  });

  test('by the sound itself: it plays when it is ordered again', async () => {
    const { host, view, order, begin, playing, giveUp } = stage({ slow: true });
    view(SILENT);
    host.actions.pressForSound();
    await flush();
    order({ order: 'play', round: 'r1' });
    giveUp();
    await flush();
    order({ order: 'play', round: 'r1' });
    begin();
    expect(playing()).toBe('r1');
  });

  test('stopped and ordered again at once, it takes changes', async () => {
    const { host, view, order, begin, calls } = stage({ slow: true });
    view(SILENT);
    host.actions.pressForSound();
    await flush();
    order({ order: 'play', round: 'r1' });
    order({ order: 'stop' });
    order({ order: 'play', round: 'r1' });
    await flush();
    begin();
    order({ order: 'change', round: 'r1', change: { kind: 'bass-alone' } });
    expect(calls.at(-1)).toBe('bass-alone');
  });
});

describe('what stands on the wall without a view', () => {
  test('a refusal is a sentence', () => {
    const { host, status } = stage();
    expect(host.waiting.value).toBe('Looking for the room.');
    status.value = { kind: 'refused', reason: 'room-not-found', detail: { room: 'WAKUR' } };
    expect(host.waiting.value).toContain('WAKUR');
  });

  test('a minute without a seat, and the page says why phones may not get through; the first seat ends it', () => {
    vi.useFakeTimers();
    const { host, view } = stage();
    view({ ...REGISTER, seats: [] });
    vi.advanceTimersByTime(59_000);
    expect(host.unreached.value).toBe(false);
    vi.advanceTimersByTime(1_000);
    expect(host.unreached.value).toBe(true);
    view(REGISTER);
    expect(host.unreached.value).toBe(false);
  });
});

describe('the settings of the class', () => {
  test('guitar, pitch and speaker reach the sound, now and when they change', () => {
    const { view, patch, instruments } = stage();
    view(REGISTER);
    const { settings } = REGISTER;
    patch({ settings: { ...settings, voice: 'nylon', pitch: 415, smallSpeaker: true } });
    expect([...new Set(instruments)]).toEqual(['steel 440', 'nylon 415 small']);
  });
});

describe('the delay of the speakers', () => {
  test('is kept by the machine, in steps, within its bounds', () => {
    const { host, delays, keep } = stage();
    expect(host.sound.value.delayMs).toBe(0);
    for (const [wanted, kept] of [
      [120, 120],
      [123, 120],
      [9999, 500],
      [-20, 0],
      [Number.NaN, 0],
      [250, 250],
    ] as const) {
      host.actions.setDelay(wanted);
      expect(host.sound.value.delayMs).toBe(kept);
      expect(delays.at(-1)).toBe(kept / 1000);
    }
    expect(keep.get('hearsay-speaker-delay')).toBe('250');
  });

  test('clicks are compared until a press ends them, or a vamp', async () => {
    const { host, calls, view, order } = stage();
    view(REGISTER);
    host.actions.pressForSound();
    await flush();
    host.actions.compare(true);
    expect(host.sound.value.comparing).toBe(true);
    host.actions.compare(false);
    expect(host.sound.value.comparing).toBe(false);
    host.actions.compare(true);
    order({ order: 'play', round: 'r1' });
    await flush();
    expect(host.sound.value.comparing).toBe(false);
    expect(calls.filter((call) => call.endsWith('clicks'))).toEqual(['clicks', 'no clicks', 'clicks']);
  });

  test('a tone of the desk sounds', async () => {
    const { host, calls, view, order } = stage();
    view(REGISTER);
    host.actions.pressForSound();
    await flush();
    order({ order: 'tone', tone: { kind: 'string', string: 6 } });
    expect(calls.at(-1)).toBe('tone string');
  });
});

describe('hands', () => {
  test('the room plays along except while a question is open', () => {
    const { view, alongs } = stage();
    expect(alongs).toEqual([true]);
    for (const status of ['open', 'closed', 'shown', 'open'] as const) view(roundAt(1, status));
    expect(alongs).toEqual([true, false, true, false]);
  });

  test('are to be shaken out once a lesson, for some bars, and never while a question is open', () => {
    vi.useFakeTimers();
    const { host, view, rest } = stage();
    const shaking = (): boolean => host.sound.value.shaking;
    view(roundAt(1, 'shown'));
    expect(shaking()).toBe(false);
    rest(12);
    expect(shaking()).toBe(true);
    view(roundAt(2, 'open'));
    expect(shaking()).toBe(false);
    view(roundAt(2, 'closed'));
    expect(shaking()).toBe(true);
    vi.advanceTimersByTime(12_000);
    expect(shaking()).toBe(false);
    rest(12);
    expect(shaking()).toBe(false);
    view({ ...roundAt(2, 'shown'), status: 'lesson-ended' });
    view(roundAt(1, 'shown'));
    rest(12);
    expect(shaking()).toBe(true);
  });
});
