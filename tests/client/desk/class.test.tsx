import { expect, test } from 'vitest';
import type { DeskView } from '../../../server/protocol/views.ts';
import { draw, press, root, text } from './draw.tsx';
import { deskView, reportOf } from './fixtures.ts';

test('policy, naming, capo and slash chords are set in the room, in the order of the trade', () => {
  const { made } = draw(deskView(), { leaf: 'room' });
  const values = (name: string) => [...root.querySelectorAll<HTMLInputElement>(`input[name="${name}"]`)];
  expect(values('policy')).toHaveLength(4);
  expect(values('naming').map(({ parentElement }) => parentElement?.textContent)).toEqual([
    'English: C B♭ B',
    'German: C B H',
    'mixed: C B♭ H',
    'Dutch: C Bes B',
    'fixed do: Do Si♭ Si',
  ]);
  for (const [name, at] of [
    ['policy', 3],
    ['naming', 1],
  ] as const) {
    values(name)[at]?.dispatchEvent(new Event('change', { bubbles: true }));
  }
  const capo = root.querySelector('select');
  expect(capo?.options).toHaveLength(10);
  if (capo) capo.value = '3';
  capo?.dispatchEvent(new Event('change', { bubbles: true }));
  expect(made).toEqual([
    { type: 'ChangeSettings', settings: { policy: 'modes' } },
    { type: 'ChangeSettings', settings: { naming: 'german' } },
    { type: 'ChangeSettings', settings: { capo: 3 } },
  ]);
});

test('chords are named as the class names them', () => {
  const slots = [
    { chord: 'B', beats: 4, frets: [null, 2, 4, 4, 4, 2] },
    { chord: 'Bb', beats: 4, frets: [null, 1, 3, 3, 3, 1] },
  ];
  const view = deskView('quality-1', 'ready');
  const vamp = view.vamp && { ...view.vamp, slots };
  const named = (naming: 'english' | 'german') => {
    draw({ ...view, vamp, settings: { ...view.settings, naming } });
    return text();
  };
  expect(named('german')).toContain('quality B');
  expect(named('english')).toContain('quality B♭');
});

test('the desk warns beside a question of keys where another policy would change it, and beside no other', () => {
  const policyChanges: DeskView['policyChanges'] = [
    { change: 'minor-by-raised-seventh', keys: [{ key: 'A minor', numerals: ['i', 'V'], seventh: 'G#' }] },
  ];
  draw(deskView('keys-0', 'ready', { policyChanges }));
  expect(text()).toContain('A minor does with its seventh raised to G♯');
  draw(deskView('root-0', 'ready', { policyChanges }));
  expect(text()).not.toContain('G♯');
});

test('one press on the roll sets how far a student is asked; what is asked instead is said', () => {
  const view = deskView('keys-0', 'closed');
  const [first, second, ...rest] = view.students;
  if (!first || !second) throw new Error('nobody is here');
  const students = [
    { ...first, depth: 'floor' as const, instead: { kind: 'quality', target: 1 }, answer: 'minor' },
    { ...second, depth: 'chords' as const, instead: null },
    ...rest,
  ];
  const reports = [reportOf('s1', { memory: { right: 1, of: 2 } })];
  const { made } = draw({ ...view, students, reports }, { leaf: 'roll' });
  expect(text()).toMatch(/asked quality D · minor/);
  expect(text()).toContain('listens along');
  expect(text()).toContain('1 of 2 right from memory');
  press('asked to the floor', 'asked to the chords');
  expect(made).toEqual([
    { type: 'SetDepth', student: 's1', depth: 'keys' },
    { type: 'SetDepth', student: 's2', depth: 'floor' },
  ]);
});
