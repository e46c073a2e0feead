import { expect, test } from 'vitest';
import { meanwhileName, soundName } from '../../../client/desk/sound-choices.ts';
import type { SoundChange } from '../../../server/protocol/messages.ts';
import { button, draw, press, root, text } from './draw.tsx';
import { deskView, EM_D, GUITAR, stepsAt } from './fixtures.ts';

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
  press('from the top', 'softly', 'muted strings', 'silence', 'faster');
  expect(made).toEqual(
    [
      { kind: 'hold', slot: 1 },
      { kind: 'pair', slot: 1 },
      { kind: 'root-alone', slot: 0 },
      { kind: 'root-alone', slot: 1 },
      { kind: 'settler', index: 0 },
      { kind: 'settler', index: 1 },
      { kind: 'again' },
      { kind: 'soft' },
      { kind: 'muted' },
      { kind: 'silence' },
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
  draw(deskView('quality-0', 'open', { sound: { playing: true, round: 'r1', change, tempo: 92 } }));
  expect(text()).toContain('now: hold Em');
  expect(text()).toContain('92 a minute');
  expect(button('hold Em').getAttribute('aria-pressed')).toBe('true');
  expect(button('full').getAttribute('aria-pressed')).toBe('false');
});

test('nothing can be changed while nothing plays, and the reason stands there', () => {
  const sound = { playing: false, round: null, change: { kind: 'full' }, tempo: null } as const;
  draw(deskView('quality-0', 'open', { sound }));
  expect(text()).toContain('Nothing plays.');
  expect(button('hold Em').disabled).toBe(true);
  draw(deskView('quality-0', 'open', { sound, soundHeld: false }));
  expect(text()).toContain('No host screen has its sound on.');
});

test('what plays can be stopped from any leaf, and played again', () => {
  const { made } = draw(deskView('quality-0', 'open'), { leaf: 'roll' });
  press('stop');
  expect(made).toEqual([{ type: 'RequestStop' }]);
  const sound = { playing: false, round: null, change: { kind: 'full' }, tempo: null } as const;
  const stopped = draw(deskView('quality-0', 'open', { sound }), { leaf: 'crib' });
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
    { kind: 'tempo', tempo: 92 },
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
