import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import type { SoundChange } from '../../../server/protocol/messages.ts';
import type { NewEvent } from '../../../server/rooms/events.ts';
import { fold, opened, played, started } from '../../support/given.ts';
import { vampOf } from './played-vamps.ts';
import { bench } from './stage.ts';

const CHANGES: readonly SoundChange[] = [
  { kind: 'full' },
  { kind: 'again' },
  { kind: 'muted' },
  { kind: 'drop-out' },
  { kind: 'silence' },
  {
    kind: 'echo',
    groove: 'drawn, Drawn | E8 | 4/4 | 60-160 | r=1 / strk d-DU-UD- / zone ..AA.AA. / tch ..oo.oo. / acc 00120130',
  },
  { kind: 'bass-alone' },
  { kind: 'kit-only' },
  { kind: 'hold', slot: 1 },
  { kind: 'root-then-chord', slot: 0 },
  { kind: 'pair', slot: 1 },
  { kind: 'feel', feel: 'driving' },
  { kind: 'feel', feel: 'relaxed' },
  { kind: 'feel', feel: 'written' },
  { kind: 'climb', to: 112 },
  { kind: 'climb', to: 90 },
  { kind: 'tempo', tempo: 90 },
  { kind: 'tempo', tempo: 108 },
  { kind: 'band', kit: true, bass: true },
  { kind: 'band', kit: false, bass: false },
];

/** A press, time that passes on a quick or on a hidden page's clock, another guitar, or bars that are not ready until further notice. */
const act = fc.oneof(
  { weight: 5, arbitrary: fc.record({ change: fc.constantFrom(...CHANGES) }) },
  {
    weight: 6,
    arbitrary: fc.record({ seconds: fc.double({ min: 0.02, max: 4, noNaN: true }), step: fc.constantFrom(0.1, 1) }),
  },
  { weight: 2, arbitrary: fc.record({ ready: fc.boolean() }) },
  { weight: 1, arbitrary: fc.constant('renew' as const) },
);
const grooves = fc.constantFrom('quarter-downs', 'pushed-change', 'campfire-strum');

test('whatever is pressed whenever: no string sounds twice, each press takes in its turn, and the log has what sounds', () => {
  const round = started(played('Em D C'));
  fc.assert(
    fc.property(grooves, fc.array(act, { maxLength: 25 }), (groove, acts) => {
      let ready = true;
      const side = bench(() => ready);
      side.player.play('r1', vampOf('Em D C', groove));
      const pressed: string[] = [];
      for (const each of acts) {
        if (each === 'renew') side.player.renew();
        else if ('ready' in each) ready = each.ready;
        else if ('seconds' in each) side.run(each.seconds, each.step);
        else {
          side.player.change(each.change);
          pressed.push(each.change.kind);
        }
      }
      ready = true;
      side.run(30);
      // What is scheduled runs ahead of what was told while a climb goes on; in silence none does.
      for (let more = 0; more < 8 && side.player.program()?.controls.climb !== null; more += 1) side.run(10);

      const struck = [
        ...side.notes().map((each) => ({ ...each, string: `guitar ${each.note.string}` })),
        ...side.heard('bass').map((each) => ({ ...each, string: 'bass' })),
      ].toSorted((one, other) => one.at - other.at);
      const ends = new Map<string, number>();
      for (const { string, at, end } of struck) {
        expect(ends.get(string) ?? 0).toBeLessThanOrEqual(at + 0.0011);
        ends.set(string, end);
      }

      const took = side.told.flatMap((each): { change: SoundChange; bar: number }[] => {
        const [, change, bar] = /^took (\{.*\}) at bar (\d+) of r1$/.exec(each) ?? [];
        return change === undefined ? [] : [{ change: JSON.parse(change) as SoundChange, bar: Number(bar) }];
      });
      const bars = took.map(({ bar }) => bar);
      expect(bars).toEqual(bars.toSorted((one, other) => one - other));
      // What goes by itself stands between.
      let next = 0;
      for (const { change } of took) if (change.kind === pressed[next]) next += 1;
      expect(next).toBe(pressed.length);

      const events = took.map(({ change, bar }): NewEvent => ({ type: 'ChangeTook', round: 'r1', change, bar }));
      const { sound } = fold([opened, round, { type: 'VampStarted', round: 'r1', tempo: 100 }, ...events]);
      const controls = side.player.program()?.controls;
      const { mode } = controls ?? {};
      expect({
        change: sound.change,
        tempo: sound.tempo,
        climb: sound.climb,
        feel: sound.feel,
        band: sound.band,
      }).toEqual({
        change: mode?.kind === 'again' ? { kind: 'full' } : mode,
        tempo: controls?.tempo,
        climb: controls?.climb,
        feel: controls?.feel,
        band: controls?.band,
      });
    }),
    { numRuns: 60 },
  );
});
