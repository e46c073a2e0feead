import { act } from 'preact/test-utils';
import { expect, test } from 'vitest';
import type { DeskView } from '../../../server/protocol/views.ts';
import { draw, root } from './draw.tsx';
import { deskView, STILL } from './fixtures.ts';

const BASE = deskView();
const OWN = 'ours, Ours | E8 | 4/4 | 60-120 | r=1 / strk DuDuDuDu / zone A.A.A.A. / tch o.o.o.o. / acc 30202020';
const WITH_OWN: Partial<DeskView> = {
  sound: STILL,
  soundHeld: false,
  settings: { ...BASE.settings, grooves: [OWN] },
  grooves: [...BASE.grooves, { id: 'ours', name: 'Ours', meter: '4/4', tempo: [60, 120] }],
};
const level = (): HTMLSelectElement => {
  const found = root.querySelector<HTMLSelectElement>('[name=level-groove]');
  if (!found) throw new Error('no choice of a groove');
  return found;
};
const options = (list: HTMLSelectElement) =>
  Array.from(list.querySelectorAll('option'), ({ textContent, parentElement }) => [
    textContent,
    parentElement?.getAttribute('label') ?? null,
  ]);

test('a vamp of a level is played in a groove that the level draws, or in one of the class or the catalogue', () => {
  const { desk } = draw(deskView('direction-1', 'ready', WITH_OWN), { form: 'start' });
  const all = [
    ['Ours', 'of this class'],
    ['Waltz', 'known grooves'],
    ['Relaxed alternate', 'known grooves'],
  ];
  expect(options(level())).toEqual([['one that the level draws', null], ...all]);
  const own = root.querySelector<HTMLSelectElement>('[name=groove]');
  expect(own && options(own)).toEqual([['chords only', null], ...all]);
  void act(() => {
    level().value = 'ours';
    level().dispatchEvent(new Event('change', { bubbles: true }));
  });
  expect(desk.groove.value).toBe('ours');
});

test('the groove taken for the next vamp goes with it, and one that was erased meanwhile does not', async () => {
  const start = { type: 'StartRound', after: 1, level: 7, item: null, contrast: null };
  for (const [taken, groove] of [
    ['ours', 'ours'],
    ['gone', null],
  ] as const) {
    const { desk, made } = draw(deskView('direction-1', 'ready', WITH_OWN), { form: 'start', begun: 'r2' });
    void act(() => {
      desk.groove.value = taken;
    });
    expect(level().value).toBe(groove ?? '');
    void act(() => void level().form?.dispatchEvent(new Event('submit', { bubbles: true, cancelable: true })));
    await act(() => new Promise((done) => void setTimeout(done, 0)));
    expect(made[0]).toEqual({ ...start, groove });
    expect(desk.groove.value).toBeNull();
  }
});
