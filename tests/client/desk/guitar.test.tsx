import { act } from 'preact/test-utils';
import { expect, test } from 'vitest';
import { button, draw, press, root, text } from './draw.tsx';
import { deskView, ENTERED, GUITAR } from './fixtures.ts';

function field(name: string): HTMLInputElement {
  const found = root.querySelector<HTMLInputElement>(`[name=${name}]`);
  if (!found) throw new Error(`no field ${name}`);
  return found;
}

function type(name: string, value: string): void {
  const input = field(name);
  void act(() => {
    input.value = value;
    input.dispatchEvent(new Event('input', { bubbles: true }));
  });
}

function submit(): void {
  const form = field('chords').form;
  void act(() => void form?.dispatchEvent(new Event('submit', { bubbles: true, cancelable: true })));
}

test('typed chords begin a round on the teacher’s own guitar; a bass move is told only where it was changed', () => {
  const { made } = draw(deskView(), { form: 'start' });
  type('chords', '| G . D . |');
  submit();
  void act(() => root.querySelector<HTMLButtonElement>('.bass-move')?.click());
  submit();
  const common = { type: 'StartGuitarRound', after: 1, chords: '| G . D . |', groove: null, tempo: null };
  expect(made.filter((each) => typeof each === 'object' && each !== null && 'type' in each)).toEqual([
    { ...common, directions: null },
    { ...common, directions: ['up'] },
  ]);
});

test('no tempo is told that the teacher did not name: it would be the right one', () => {
  const { made } = draw(deskView(), { form: 'start' });
  type('chords', 'Em D');
  const choice = root.querySelector<HTMLSelectElement>('[name=groove]');
  if (!choice) throw new Error('grooves can be chosen');
  choice.value = 'relaxed-alternate';
  void act(() => void choice.dispatchEvent(new Event('change', { bubbles: true })));
  expect(field('tempo').value).toBe('');
  expect(text()).toContain('Without a tempo nobody is asked to tap.');
  submit();
  expect(made.at(-1)).toMatchObject({ type: 'StartGuitarRound', groove: 'relaxed-alternate', tempo: null });
});

test('chords are shown as typed, whatever is typed: only the server reads them', () => {
  draw(deskView(), { form: 'start' });
  for (const text of ['Em h', 'e m', 'Em H7#', '| | x', 'Em D']) {
    type('chords', text);
    expect(button('ask about my guitar').disabled).toBe(false);
  }
  expect(root.querySelector('.bass-move')?.textContent).toBe('D as usual');
});

const CORRECT = { type: 'CorrectRound', round: 'r1', after: 2, chords: 'Em A' };

test('what was really played is entered over what stands; nobody loses points unless the teacher says so', async () => {
  const entered = { ...ENTERED, groove: 'relaxed-alternate', tempo: 96, directions: ['up'], corrections: 2, shown: 3 };
  const { desk, made } = draw(deskView('direction-1', 'ready', { ...GUITAR, entered }));
  press('correct what I played');
  expect(field('chords').value).toBe('Em D');
  expect(field('groove').value).toBe('relaxed-alternate');
  expect(field('tempo').value).toBe('96');
  expect(root.querySelector('.bass-move')?.textContent).toBe('D up');
  const box = field('points-may-fall');
  expect(box.checked).toBe(false);
  expect(text()).toContain('nobody loses points');
  type('chords', 'Em A');
  submit();
  await act(() => Promise.resolve());
  const told = { ...CORRECT, groove: 'relaxed-alternate', tempo: 96, directions: null };
  expect(made).toContainEqual({ ...told, pointsMayFall: false });
  expect(desk.form.value).toBeNull();
});

test('points may fall where the teacher confirms it', () => {
  const entered = { ...ENTERED, corrections: 2, shown: 1 };
  const { made } = draw(deskView('direction-1', 'ready', { ...GUITAR, entered }), { form: 'correct' });
  type('chords', 'Em A');
  const box = field('points-may-fall');
  void act(() => {
    box.checked = true;
    box.dispatchEvent(new Event('change', { bubbles: true }));
  });
  submit();
  expect(made).toContainEqual({ ...CORRECT, groove: null, tempo: null, directions: null, pointsMayFall: true });
});

test('before anything was shown there are no points to lose, and Hearsay’s own rounds are not corrected', () => {
  draw(deskView('direction-1', 'ready', GUITAR), { form: 'correct' });
  expect(root.querySelector('[name=points-may-fall]')).toBeNull();
  draw(deskView());
  expect(text()).not.toContain('correct what I played');
});
