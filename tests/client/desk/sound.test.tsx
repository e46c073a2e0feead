import type { Signal } from '@preact/signals';
import { act } from 'preact/test-utils';
import { expect, test, vi } from 'vitest';
import type { Desk } from '../../../client/desk/desk-state.ts';
import { meanwhileName, soundName } from '../../../client/desk/sound-choices.ts';
import type { SoundChange } from '../../../server/protocol/messages.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { button, draw, press, root, text } from './draw.tsx';
import { deskView, EM_D, GUITAR, PLAYING, stepsAt, STILL } from './fixtures.ts';

/** The view that a desk of a test draws, to be changed under it. */
const signalOf = ({ view }: Desk) => view as Signal<DeskView | null>;

const row = (): readonly string[] =>
  Array.from(root.querySelectorAll('.control-row button'), (each) => each.textContent ?? '');

test('four sounds are at hand: all of it, what goes with the question, the bass, slower', () => {
  draw(deskView('direction-1', 'open'));
  expect(row()).toEqual(['full', 'hold Em', 'bass alone', 'slower']);
  draw(deskView('quality-1', 'open'));
  expect(row()).toEqual(['full', 'hold D', 'bass alone', 'slower']);
  draw(deskView('distance-1', 'open'));
  expect(row()).toEqual(['full', 'Em and D', 'bass alone', 'slower']);
  draw(deskView('keys-0', 'open'));
  expect(row()).toEqual(['full', 'softly', 'bass alone', 'slower']);
  const { made } = draw(deskView('settler-1', 'open'));
  expect(row()).toEqual(['full', 'with A', 'bass alone', 'slower']);
  press('with A', 'slower', 'bass alone', 'full');
  expect(made).toEqual([
    { change: { kind: 'settler', index: 1 } },
    { change: { kind: 'tempo', tempo: 92 } },
    { change: { kind: 'bass-alone' } },
    { change: { kind: 'full' } },
  ]);
});

test('all other sounds are one press away, named in full', () => {
  const { made } = draw(deskView('direction-1', 'open'));
  expect(text()).not.toContain('muted strings');
  press('more sounds', 'hold D', 'Em and D', 'root of Em', 'root of D', 'with C', 'with A');
  press('Em alone', 'D alone', 'root, then Em', 'root, then D');
  press('from the top', 'softly', 'bass forward', 'muted strings', 'two bars out', 'silence');
  press('kit only', 'faster');
  expect(made).toEqual(
    [
      { kind: 'hold', slot: 1 },
      { kind: 'pair', slot: 1 },
      { kind: 'root-alone', slot: 0 },
      { kind: 'root-alone', slot: 1 },
      { kind: 'settler', index: 0 },
      { kind: 'settler', index: 1 },
      { kind: 'chord-alone', slot: 0 },
      { kind: 'chord-alone', slot: 1 },
      { kind: 'root-then-chord', slot: 0 },
      { kind: 'root-then-chord', slot: 1 },
      { kind: 'again' },
      { kind: 'soft' },
      { kind: 'bass-forward' },
      { kind: 'muted' },
      { kind: 'drop-out' },
      { kind: 'silence' },
      { kind: 'kit-only' },
      { kind: 'tempo', tempo: 108 },
    ].map((change) => ({ change })),
  );
  press('fewer sounds');
  expect(text()).not.toContain('muted strings');
});

test('a loop that comes back to a chord offers it once, and one chord alone offers no turns', () => {
  const slot = (chord: string) => ({ chord, beats: 4, frets: [] });
  const loop = (chords: readonly string[]) =>
    deskView('direction-1', 'open', { vamp: { ...EM_D, slots: chords.map(slot), settlers: [] } });
  draw(loop(['Am', 'F', 'Am', 'G']));
  press('more sounds');
  const group = (name: string) =>
    Array.from(root.querySelectorAll(`[role=group][aria-label="${name}"] button`), (each) => each.textContent);
  expect(group('hold one chord')).toEqual(['Am', 'F', 'G']);
  expect(group('home and another by turns')).toEqual(['F', 'G']);
  draw(loop(['Am']));
  press('more sounds');
  expect(text()).not.toContain('by turns');
});

test('what sounds now is said and marked', () => {
  const change: SoundChange = { kind: 'hold', slot: 0 };
  draw(deskView('quality-0', 'open', { sound: { ...PLAYING, change, tempo: 92 } }));
  expect(text()).toContain('now: hold Em');
  expect(text()).toContain('92 a minute');
  expect(button('hold Em').getAttribute('aria-pressed')).toBe('true');
  expect(button('full').getAttribute('aria-pressed')).toBe('false');
});

/** Buttons of a group of the further sounds that are marked as standing. */
const standing = (title: string): readonly (string | null)[] =>
  Array.from(
    root.querySelectorAll(`[role=group][aria-label="${title}"] button[aria-pressed="true"]`),
    (each) => each.getAttribute('aria-label') ?? each.textContent,
  );

test('feel and band stand beside what sounds of the loop, each marked in its own group', () => {
  const { made } = draw(
    deskView('quality-0', 'open', {
      sound: {
        ...PLAYING,
        change: { kind: 'chord-alone', slot: 1 },
        feel: 'relaxed',
        band: { kit: true, bass: false },
      },
    }),
  );
  press('more sounds');
  expect(text()).toContain('now: D alone');
  expect(standing('one chord, once a bar, left to ring')).toEqual(['D alone']);
  expect(standing('feel')).toEqual(['relaxed']);
  expect(standing('who plays')).toEqual(['with kit']);
  expect(standing('the whole loop')).toEqual([]);
  press('driving', 'as written', 'with both', 'with bass', 'guitar only');
  expect(made).toEqual(
    [
      { kind: 'feel', feel: 'driving' },
      { kind: 'feel', feel: 'written' },
      { kind: 'band', kit: true, bass: true },
      { kind: 'band', kit: false, bass: true },
      { kind: 'band', kit: false, bass: false },
    ].map((change) => ({ change })),
  );
});

test('from the kit alone one press brings the guitar back, with whom it is to play', async () => {
  const sound = { ...PLAYING, change: { kind: 'kit-only' }, band: { kit: true, bass: false } } as const;
  const { made } = draw(deskView('quality-0', 'open', { sound }));
  press('more sounds');
  expect(standing('who plays')).toEqual(['kit only']);
  press('with kit');
  await act(() => Promise.resolve());
  expect(made).toEqual([{ change: { kind: 'full' } }]);
  press('guitar only');
  await act(() => Promise.resolve());
  expect(made.slice(1)).toEqual([{ change: { kind: 'full' } }, { change: { kind: 'band', kit: false, bass: false } }]);
});

const CATALOGUED = { ...EM_D, grooveText: 'relaxed-alternate, Relaxed alternate | E8 | 4/4 | 80-126 | r=1' };
const climb = (): HTMLInputElement => {
  const found = root.querySelector<HTMLInputElement>('[name=climb]');
  if (!found) throw new Error('no field for a climb');
  return found;
};
const submit = (): void => {
  void act(() => void climb().form?.dispatchEvent(new Event('submit', { bubbles: true, cancelable: true })));
};

test('a climb ends two steps faster unless another mark is typed, never beyond the groove', () => {
  const { made } = draw(deskView('quality-0', 'open', { vamp: CATALOGUED }));
  press('more sounds');
  expect([climb().min, climb().value, climb().max]).toEqual(['101', '116', '126']);
  submit();
  void act(() => {
    climb().value = '124';
    climb().dispatchEvent(new Event('input', { bubbles: true }));
  });
  submit();
  expect(made).toEqual([{ change: { kind: 'climb', to: 116 } }, { change: { kind: 'climb', to: 124 } }]);
  draw(deskView('quality-0', 'open', { vamp: CATALOGUED, sound: { ...PLAYING, tempo: 120 } }));
  press('more sounds');
  expect(climb().value).toBe('126');
  draw(deskView('quality-0', 'open', { vamp: CATALOGUED, sound: { ...PLAYING, tempo: 126 } }));
  press('more sounds');
  expect(button('climb').disabled).toBe(true);
  expect(text()).toContain('this groove goes no faster than 126');
});

test('what was pressed stands as next until the sound has changed, or could have', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  const { desk } = draw(deskView('quality-0', 'open', { vamp: EM_D }));
  press('full');
  expect(text()).not.toContain('next bar');
  press('bass alone');
  expect(text()).toContain('now: full · next bar: bass alone');
  void act(() => {
    signalOf(desk).value = deskView('quality-0', 'open', { sound: { ...PLAYING, change: { kind: 'bass-alone' } } });
  });
  expect(text()).toContain('now: bass alone');
  expect(text()).not.toContain('next bar');
  press('full');
  expect(text()).toContain('next bar: full');
  await act(async () => {
    await vi.advanceTimersByTimeAsync(5000);
  });
  expect(text()).not.toContain('next bar');
  vi.useRealTimers();
});

test('while it climbs the mark is said, and one press stays', () => {
  const { made } = draw(
    deskView('quality-0', 'open', { vamp: CATALOGUED, sound: { ...PLAYING, climb: 116, tempo: 104 } }),
  );
  expect(text()).toContain('104 a minute, climbing to 116');
  press('more sounds');
  expect(button('climb').getAttribute('aria-pressed')).toBe('true');
  press('stay at 104');
  expect(made).toEqual([{ change: { kind: 'tempo', tempo: 104 } }]);
});

test('nothing can be changed while nothing plays, and the reason stands there', () => {
  draw(deskView('quality-0', 'open', { sound: STILL }));
  expect(text()).toContain('Nothing plays.');
  press('more sounds');
  const enabled = root.querySelectorAll('.sound-controls :is(button:not(.desk-link), input):not(:disabled)');
  expect(enabled).toHaveLength(0);
  expect(root.querySelector('.sound-controls .ring')).toBeNull();
  draw(deskView('quality-0', 'open', { sound: STILL, soundHeld: false }));
  expect(text()).toContain('No host screen has its sound on.');
});

test('what plays can be stopped from any leaf, and played again', () => {
  const { made } = draw(deskView('quality-0', 'open'), { leaf: 'roll' });
  press('stop');
  expect(made).toEqual([{ type: 'RequestStop' }]);
  const stopped = draw(deskView('quality-0', 'open', { sound: STILL }), { leaf: 'crib' });
  press('play');
  expect(stopped.made).toEqual([{ type: 'RequestPlay', round: 'r1' }]);
});

test('the teacher’s own guitar has no controls', () => {
  draw(deskView('quality-0', 'open', GUITAR));
  expect(root.querySelector('.sound-controls')).toBeNull();
  expect(root.querySelector('.desk-stop')).toBeNull();
});

test('every change of the sound has its words, and every question its sound', () => {
  const all: readonly SoundChange[] = [
    { kind: 'full' },
    { kind: 'again' },
    { kind: 'hold', slot: 1 },
    { kind: 'pair', slot: 1 },
    { kind: 'bass-alone' },
    { kind: 'root-alone', slot: 0 },
    { kind: 'muted' },
    { kind: 'soft' },
    { kind: 'settler', index: 0 },
    { kind: 'both', ask: 'a1', wrong: [], right: [] },
    { kind: 'silence' },
    { kind: 'bass-forward' },
    { kind: 'kit-only' },
    { kind: 'chord-alone', slot: 0 },
    { kind: 'root-then-chord', slot: 0 },
    { kind: 'drop-out' },
    { kind: 'tempo', tempo: 92 },
    { kind: 'climb', to: 108 },
    { kind: 'feel', feel: 'written' },
    { kind: 'feel', feel: 'driving' },
    { kind: 'feel', feel: 'relaxed' },
    { kind: 'band', kit: false, bass: false },
    { kind: 'band', kit: true, bass: false },
    { kind: 'band', kit: false, bass: true },
    { kind: 'band', kit: true, bass: true },
  ];
  const names = all.map((change) => soundName({ vamp: EM_D }, change));
  expect(new Set(names).size).toBe(all.length);
  expect(stepsAt(0, 'ready').map((step) => meanwhileName({ vamp: EM_D }, step))).toEqual([
    'full',
    'full',
    'full',
    'hold Em',
    'hold Em',
    'Em and D',
    'hold D',
    'softly',
    'softly',
    'softly',
    'with C',
    'with A',
  ]);
});
