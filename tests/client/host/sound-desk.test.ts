import { describe, expect, test } from 'vitest';
import type { SoundChange } from '../../../server/protocol/messages.ts';
import type { WireSound } from '../../../server/protocol/views.ts';
import { chordSymbol } from '../../../shared-theory/chords.ts';
import type { LiveVamp } from '../../../client/host/played-slots.ts';
import { createSoundDesk } from '../../../client/host/sound-desk.ts';
import { EM_D } from './fixtures.ts';

const BOTH: SoundChange = {
  kind: 'both',
  ask: 'a7',
  wrong: [{ chord: 'E', beats: 8, frets: [0, 2, 2, 1, 0, 0] }],
  right: [{ chord: 'Em', beats: 8, frets: [0, 2, 2, 0, 0, 0] }],
};
const SETTLER: SoundChange = { kind: 'settler', index: 1 };
const SILENCE: SoundChange = { kind: 'silence' };

/** A desk over a sound that notes what it is told; `begin` ends the making ready of what was asked last. */
function bench({ running = true } = {}) {
  const calls: string[] = [];
  const vamps: LiveVamp[] = [];
  let state: 'running' | 'off' = running ? 'running' : 'off';
  let ready: (begun: boolean) => void = () => undefined;
  const desk = createSoundDesk({
    play: (round, vamp) => {
      calls.push(`play ${round}`);
      vamps.push(vamp);
      return new Promise((resolve) => {
        ready = resolve;
      });
    },
    change: (change) => {
      calls.push(change.kind === 'tempo' ? `tempo ${change.tempo}` : change.kind);
      return Promise.resolve();
    },
    stop: () => calls.push('stop'),
    state: () => state,
  });
  return {
    desk,
    calls,
    vamps,
    begin: async (begun = true) => {
      ready(begun);
      await Promise.resolve();
      await Promise.resolve();
    },
    start: () => {
      state = 'running';
      desk.ready(null);
    },
  };
}

const logged = (change: SoundChange, tempo: number | null = null): WireSound => ({
  playing: true,
  round: 'r1',
  change,
  tempo,
});

describe('the vamp that travels', () => {
  test('its chords and its settlers can sound', () => {
    const { desk, vamps } = bench();
    desk.vamp(EM_D);
    desk.obey({ order: 'play', round: 'r1' });
    const [vamp] = vamps;
    expect(vamp?.slots.map(({ chord }) => chordSymbol(chord))).toEqual(['Em', 'D']);
    const settlers = vamp?.settlers?.map((each) => ('chord' in each ? [chordSymbol(each.chord), each.frets] : each));
    expect(settlers).toEqual(EM_D.settlers.map((each) => ('chord' in each ? [each.chord, each.frets] : each)));
    expect(settlers).toHaveLength(2);
  });
});

describe('orders that come while the vamp is made ready', () => {
  test.each([BOTH, SETTLER, SILENCE, { kind: 'pair', slot: 1 }, { kind: 'muted' }] as const)(
    '$kind is passed on',
    (change) => {
      const { desk, calls } = bench();
      desk.vamp(EM_D);
      desk.obey({ order: 'play', round: 'r1' });
      desk.obey({ order: 'change', round: 'r1', change });
      expect(calls).toEqual(['play r1', change.kind]);
    },
  );

  test('they come after what the log said, and the last one stands', async () => {
    const { desk, calls, begin } = bench();
    desk.vamp(EM_D);
    desk.ready(logged(BOTH));
    desk.obey({ order: 'change', round: 'r1', change: { kind: 'full' } });
    await begin();
    expect(calls).toEqual(['play r1', 'both', 'full']);
  });

  test('an order before the vamp, or before the sound runs, waits for both', () => {
    const { desk, calls, start } = bench({ running: false });
    desk.obey({ order: 'play', round: 'r1' });
    desk.obey({ order: 'change', round: 'r1', change: SETTLER });
    desk.obey({ order: 'change', round: 'r1', change: { kind: 'tempo', tempo: 80 } });
    desk.vamp(EM_D);
    expect(calls).toEqual([]);
    start();
    expect(calls).toEqual(['play r1', 'settler', 'tempo 80']);
  });

  test('a stop takes the change with it', async () => {
    const { desk, calls, begin } = bench();
    desk.vamp(EM_D);
    desk.obey({ order: 'play', round: 'r1' });
    desk.obey({ order: 'change', round: 'r1', change: BOTH });
    desk.obey({ order: 'stop' });
    await begin(false);
    desk.obey({ order: 'play', round: 'r1' });
    expect(calls).toEqual(['play r1', 'both', 'stop', 'play r1']);
  });

  test('a change for another round is none', () => {
    const { desk, calls } = bench();
    desk.vamp(EM_D);
    desk.obey({ order: 'play', round: 'r1' });
    desk.obey({ order: 'change', round: 'r9', change: SILENCE });
    expect(calls).toEqual(['play r1']);
  });
});

describe('after a reload', () => {
  test.each([BOTH, SETTLER, SILENCE, { kind: 'soft' }, { kind: 'hold', slot: 1 }] as const)(
    'what the log says plays on as it was: $kind',
    (change) => {
      const { desk, calls } = bench();
      desk.vamp(EM_D);
      desk.ready(logged(change, 80));
      expect(calls).toEqual(['play r1', change.kind, 'tempo 80']);
    },
  );

  test('a log of another round, or of one that stopped, plays nothing', () => {
    const { desk, calls } = bench();
    desk.vamp(EM_D);
    desk.ready({ ...logged(BOTH), round: 'r0' });
    desk.ready({ ...logged(BOTH), playing: false });
    expect(calls).toEqual([]);
  });

  test('once the sound is back after it was taken away, it goes on with what was wanted', async () => {
    const { desk, calls, begin } = bench();
    desk.vamp(EM_D);
    desk.obey({ order: 'play', round: 'r1' });
    await begin();
    desk.obey({ order: 'change', round: 'r1', change: SETTLER });
    desk.lost();
    desk.ready(null);
    expect(calls).toEqual(['play r1', 'settler', 'play r1', 'settler']);
  });
});
