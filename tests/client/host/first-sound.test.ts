import { expect, test, vi } from 'vitest';
import { renderBass } from '../../../shared-theory/sound/bass-guitar.ts';
import { renderKit } from '../../../shared-theory/sound/kit.ts';
import { renderString } from '../../../shared-theory/sound/plucked-string.ts';
import { vampOf } from './played-vamps.ts';
import { silentHouse } from './silent-house.ts';

vi.mock('../../../shared-theory/sound/plucked-string.ts', async (original) => {
  const module = await original<typeof import('../../../shared-theory/sound/plucked-string.ts')>();
  return { ...module, renderString: vi.fn<typeof renderString>(module.renderString) };
});
vi.mock('../../../shared-theory/sound/kit.ts', async (original) => {
  const module = await original<typeof import('../../../shared-theory/sound/kit.ts')>();
  return { ...module, renderKit: vi.fn<typeof renderKit>(module.renderKit) };
});
vi.mock('../../../shared-theory/sound/bass-guitar.ts', async (original) => {
  const module = await original<typeof import('../../../shared-theory/sound/bass-guitar.ts')>();
  return { ...module, renderBass: vi.fn<typeof renderBass>(module.renderBass) };
});

const rendered = (): number =>
  [renderString, renderKit, renderBass].reduce((sum, each) => sum + vi.mocked(each).mock.calls.length, 0);

test('no note is rendered before the first tick is scheduled, 0.15 s after the press; what plays is rendered once', async () => {
  const renderedAt: number[] = [];
  const {
    sound,
    left,
    clock,
    run,
    rendered: ready,
    music,
  } = silentHouse({ onSound: () => renderedAt.push(rendered()) });
  await sound.enableSound();
  const before = { left: left.length, rendered: rendered() };
  const pressed = clock.now;
  void sound.play('r1', { ...vampOf('Em D', 'driving-eighths', 120), band: { kit: true, bass: true } });
  // Within the press, before anything else of the page could run: four ticks and four voices.
  expect(renderedAt.slice(before.left).map((count) => count - before.rendered)).toEqual([0, 0, 0, 0, 0, 0, 0, 0]);
  const counted = left.slice(before.left);
  expect(counted).toHaveLength(8);
  expect(Math.min(...counted.map(({ at }) => at))).toBeCloseTo(pressed + 0.15, 9);
  expect(counted.every(({ samples }) => samples.some((sample) => sample !== 0))).toBe(true);

  await run(0.5);
  await ready(() => music().length > 0);
  await run(6);
  const after = rendered();
  // Every sound of the vamp is on the shelf by now: nothing more is rendered, however long it plays.
  await run(10);
  expect(rendered()).toBe(after);
  expect(music().length).toBeGreaterThan(200);
});
