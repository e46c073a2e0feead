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
      const much = change.kind === 'tempo' ? change.tempo : change.kind === 'drop-out' ? change.after : undefined;
      calls.push(much === undefined ? change.kind : `${change.kind} ${much}`);
      return Promise.resolve();
    },
    tone: (tone) => calls.push(`tone ${tone.kind}`),
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
  climb: null,
  feel: 'written',
  band: { kit: false, bass: false },
});

describe('the vamp that travels', () => {
  test('its numbers are counted before it unless they are asked', () => {
    const { desk, vamps } = bench();
    desk.vamp(EM_D, undefined, true);
    desk.obey({ order: 'play', round: 'r1' });
    desk.obey({ order: 'stop' });
    desk.vamp(EM_D);
    desk.obey({ order: 'play', round: 'r1' });
    expect(vamps.map(({ uncounted }) => uncounted)).toEqual([true, false]);
  });

  test('hands that were given a rest keep it when the sound comes back', () => {
    const { desk, calls, start } = bench({ running: false });
    desk.vamp(EM_D);
    desk.obey({ order: 'play', round: 'r1' });
    desk.took('r1', { kind: 'feel', feel: 'relaxed' });
    start();
    expect(calls).toEqual(['play r1', 'feel']);
  });

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

  test('a loop that had dropped out is heard for two bars, and drops out anew', () => {
    const { desk, calls } = bench();
    desk.vamp(EM_D);
    desk.ready(logged({ kind: 'drop-out' }, EM_D.tempo));
    expect(calls).toEqual(['play r1', 'drop-out 2']);
    desk.lost();
    desk.ready(null);
    expect(calls.slice(2)).toEqual(['play r1', 'drop-out 2']);
  });

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

describe('a vamp that broke off by itself', () => {
  test('plays when it is ordered again, and not before', async () => {
    const { desk, calls, begin } = bench();
    desk.vamp(EM_D);
    desk.obey({ order: 'play', round: 'r1' });
    desk.obey({ order: 'change', round: 'r1', change: SETTLER });
    await begin();
    desk.stopped('r1');
    desk.vamp({ ...EM_D });
    expect(calls).toEqual(['play r1', 'settler']);
    desk.obey({ order: 'play', round: 'r1' });
    expect(calls).toEqual(['play r1', 'settler', 'play r1']);
  });

  test('one that made way for the next takes nothing from it', async () => {
    const { desk, calls } = bench();
    desk.vamp({ ...EM_D, round: 'r2' });
    desk.obey({ order: 'play', round: 'r2' });
    desk.stopped('r1');
    desk.obey({ order: 'change', round: 'r2', change: SETTLER });
    expect(calls).toEqual(['play r2', 'settler']);
  });
});

describe('what stands beside', () => {
  const KIT = { kit: true, bass: false };

  test('a vamp begins with the band of the class, and goes on with the one that was wanted since', () => {
    const { desk, calls, vamps } = bench();
    desk.vamp(EM_D, KIT);
    desk.obey({ order: 'play', round: 'r1' });
    desk.obey({ order: 'change', round: 'r1', change: { kind: 'band', kit: false, bass: true } });
    desk.lost();
    desk.ready(null);
    // The room takes a beginning for one with the class's band: whoever else plays is told as a change.
    expect(vamps.map(({ band }) => band)).toEqual([KIT, KIT]);
    expect(calls).toEqual(['play r1', 'band', 'play r1', 'band']);
  });

  test('feel, tempo and climb of the log are played again after a reload, in this order, whatever sounds', () => {
    const { desk, calls, vamps } = bench();
    desk.vamp(EM_D);
    desk.ready({ ...logged({ kind: 'muted' }, 90), feel: 'relaxed', climb: 110, band: KIT });
    expect(calls).toEqual(['play r1', 'band', 'muted', 'feel', 'tempo 90', 'climb']);
    expect(vamps[0]?.band).toEqual({ kit: false, bass: false });
  });

  test('the band of the class, as the log has it too, is no change', () => {
    const { desk, calls } = bench();
    desk.vamp(EM_D, KIT);
    desk.ready({ ...logged({ kind: 'full' }, EM_D.tempo), band: KIT });
    expect(calls).toEqual(['play r1']);
  });

  test('what the player does by itself is wanted from then on', () => {
    const { desk, calls } = bench();
    desk.vamp(EM_D);
    desk.obey({ order: 'play', round: 'r1' });
    desk.obey({ order: 'change', round: 'r1', change: { kind: 'climb', to: 120 } });
    desk.obey({ order: 'change', round: 'r1', change: { kind: 'drop-out' } });
    desk.took('r1', { kind: 'tempo', tempo: 104 });
    desk.took('r1', { kind: 'full' });
    desk.took('r0', { kind: 'tempo', tempo: 60 });
    desk.lost();
    desk.ready(null);
    expect(calls.slice(3)).toEqual(['play r1', 'tempo 104', 'climb']);
  });

  test('a change that took late undoes no later order', () => {
    const { desk, calls } = bench();
    desk.vamp(EM_D);
    desk.obey({ order: 'play', round: 'r1' });
    desk.obey({ order: 'change', round: 'r1', change: { kind: 'hold', slot: 0 } });
    desk.took('r1', { kind: 'full' });
    desk.took('r1', { kind: 'tempo', tempo: 70 });
    desk.lost();
    desk.ready(null);
    expect(calls.slice(2)).toEqual(['play r1', 'hold']);
  });

  test('a tone is passed on, and wants nothing', () => {
    const { desk, calls } = bench();
    desk.obey({ order: 'tone', tone: { kind: 'reference' } });
    desk.ready(null);
    expect(calls).toEqual(['tone reference']);
  });
});
