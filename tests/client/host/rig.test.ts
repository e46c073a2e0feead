import { describe, expect, test } from 'vitest';
import type { SoundChange } from '../../../server/protocol/messages.ts';
import type { Performance } from '../../../shared-theory/perform.ts';
import { performanceGain } from '../../../shared-theory/sound/mix.ts';
import { changedControls, fullControls } from '../../../client/host/controls.ts';
import { programOf, type Program } from '../../../client/host/live-program.ts';
import type { LiveVamp } from '../../../client/host/played-slots.ts';
import { createRig, type Rig } from '../../../client/host/rig.ts';
import { STEEL } from '../../../shared-theory/sound/instrument.ts';
import { vampOf } from './played-vamps.ts';

const RATE = 16_000;
const always = (): boolean => true;

function programAfter(vamp: LiveVamp, ...changes: readonly SoundChange[]): Program {
  return programOf(
    vamp,
    changes.reduce((controls, change) => changedControls(vamp, controls, change), fullControls(vamp)),
  );
}

/** What a program sounds of in its first bars, as it is performed live. */
function heard({ bars }: Program, count: number): Performance {
  const some = bars.slice(0, count);
  const at = <T extends { readonly time: number }>(sounds: readonly T[], time: number): readonly T[] =>
    sounds.map((sound) => ({ ...sound, time: sound.time + time }));
  return {
    seconds: some.reduce((sum, bar) => sum + bar.seconds, 0),
    loops: 1,
    bars: some.map(({ time, chord }) => ({ time, chord })),
    notes: some.flatMap((bar) => at(bar.notes, bar.time)),
    kit: some.flatMap((bar) => at(bar.kit, bar.time)),
    bass: some.flatMap((bar) => at(bar.bass, bar.time)),
  };
}

/** Decibels by which a program as it leaves the rig lies over the loudness of all vamps. */
async function over(rig: Rig, program: Program): Promise<number> {
  const bars = program.bars.slice(0, 2 * program.barsPerLoop);
  await rig.prepare(program, bars, always);
  return 20 * Math.log10(rig.gain(program) / performanceGain(heard(program, bars.length), rig.shelf));
}

describe('loudness', () => {
  const rig = createRig(RATE, STEEL);

  test.each(['relaxed-alternate', 'driving-eighths', 'boom-chick'])(
    'whatever sounds in the place of a loop of %s is within three decibels of it',
    async (groove) => {
      const vamp = vampOf('Em D', groove, groove === 'driving-eighths' ? 124 : 100);
      const loop = await over(rig, programAfter(vamp, { kind: 'full' }));
      expect(Math.abs(loop)).toBeLessThan(0.5);
      const changes: readonly SoundChange[] = [
        { kind: 'kit-only' },
        { kind: 'bass-alone' },
        { kind: 'bass-forward' },
        { kind: 'muted' },
        { kind: 'root-alone', slot: 1 },
        { kind: 'chord-alone', slot: 0 },
        { kind: 'root-then-chord', slot: 1 },
        { kind: 'hold', slot: 1 },
        { kind: 'band', kit: true, bass: true },
        { kind: 'feel', feel: 'relaxed' },
        { kind: 'tempo', tempo: 80 },
      ];
      for (const change of changes) {
        const level = await over(rig, programAfter(vamp, change));
        expect(Math.abs(level - loop), JSON.stringify(change)).toBeLessThan(3);
      }
      expect((await over(rig, programAfter(vamp, { kind: 'soft' }))) - loop).toBeCloseTo(-10, 0);
    },
  );
});

describe('what is ready', () => {
  test('a bar is ready once its level is known and each of its sounds is rendered, and not before', async () => {
    const rig = createRig(RATE, STEEL);
    const program = programAfter({ ...vampOf('Em D'), band: { kit: true, bass: true } });
    const [first] = program.bars;
    if (!first) throw new Error('there is a bar');
    expect(rig.ready(program, first)).toBe(false);
    expect(rig.gain(program)).toBe(1);
    await rig.prepare(program, [], always);
    const known = rig.gain(program);
    expect(known).not.toBe(1);
    await rig.prepare(program, [first], always);
    expect(rig.ready(program, first)).toBe(true);
    expect(rig.gain(program)).toBe(known);
    // The same loop played otherwise has its level already.
    expect(rig.gain(programAfter({ ...vampOf('Em D'), band: { kit: true, bass: true } }, { kind: 'soft' }))).toBe(
      known,
    );
    expect(rig.ready(programAfter(vampOf('C G')), first)).toBe(false);
  });

  test('what is not wanted any more is left', async () => {
    const rig = createRig(RATE, STEEL);
    const program = programAfter(vampOf('Em D'));
    let asked = 0;
    const done = await rig.prepare(program, program.bars, () => (asked += 1) < 3);
    expect(done).toBe(false);
    expect(rig.gain(program)).toBe(1);
  });
});
