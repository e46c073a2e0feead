import { signal } from '@preact/signals';
import { act } from 'preact/test-utils';
import { expect, test, vi } from 'vitest';
import { openSeconds } from '../../../client/desk/question-clock.ts';
import { refusalSentence } from '../../../client/desk/sentences.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { draw, root, text } from './draw.tsx';
import { deskView, EM_D, GUITAR, ORDER } from './fixtures.ts';

test('a question that waits is spoken from the desk, with its right answer, its usual time and its sound', () => {
  for (const { id } of ORDER) {
    draw(deskView(id));
    expect(root.querySelector('h1')?.textContent).toMatch(/\?$/);
    expect(text()).toMatch(/right: \S/);
    expect(text()).toMatch(/usually \d+ to \d+\u00a0s · while they answer: \S/);
  }
});

test('an open question shows hands in, and who is silent or cannot hear', () => {
  draw(deskView('direction-1', 'open'), { seconds: 7 });
  expect(text()).toContain('right: down');
  expect(text()).toContain('17 of 24');
  expect(text()).toContain('7\u00a0s gone');
  expect(text()).toContain('one silent, one can’t hear');
  draw(deskView('direction-1', 'open'), { seconds: 21 });
  expect(text()).toContain('The usual time is over.');
});

test('who is asked something else, or listens, is not silent', () => {
  const view = deskView('direction-1', 'open');
  const students = view.students.map((each, index) => {
    if (index === 0) return { ...each, instead: { kind: 'quality', target: 1 } };
    return index === 1 ? { ...each, wrote: false, instead: null } : each;
  });
  draw({ ...view, students });
  expect(text()).not.toContain('silent');
  draw({ ...view, students: view.students.map((each) => ({ ...each, wrote: false })) });
  expect(text()).toContain(`${view.students.filter(({ here }) => here).length} silent`);
});

test('right numerals have their sevenths', () => {
  const view = deskView('numeral-0', 'ready');
  const slots = ['Bm7b5', 'E7', 'Am'].map((chord) => ({ chord, beats: 4, frets: [] }));
  const vamp = view.vamp && { ...view.vamp, slots };
  draw({ ...view, vamp, truths: { ...view.truths, 'numeral-0': ['iio', 'V', 'i'] } });
  expect(text()).toContain('right: iiø7 – V7 – i');
});

test('seconds are counted from when this page first saw the question open', () => {
  vi.useFakeTimers();
  try {
    const view = signal<DeskView | null>(null);
    const seconds = openSeconds(view);
    view.value = deskView('direction-1', 'ready');
    expect(seconds.value).toBeNull();
    view.value = deskView('direction-1', 'open');
    expect(seconds.value).toBe(0);
    vi.advanceTimersByTime(7300);
    view.value = deskView('direction-1', 'open', { handsIn: 20 });
    expect(seconds.value).toBe(7);
    view.value = deskView('direction-1', 'closed');
    expect(seconds.value).toBeNull();
    vi.advanceTimersByTime(5000);
    expect(seconds.value).toBeNull();
    view.value = deskView('quality-0', 'open');
    expect(seconds.value).toBe(0);
  } finally {
    vi.useRealTimers();
  }
});

const files = (): readonly (string | null)[] =>
  Array.from(root.querySelectorAll('.crib a[download]'), (link) => link.getAttribute('href'));

test('the crib prints real signs, and a vamp in a groove can be taken along as sound, notes and score', () => {
  draw(deskView(), { leaf: 'crib' });
  expect(text()).toContain('C♯ leaves D major');
  expect(files()).toEqual(['wav', 'mid', 'musicxml'].map((kind) => `/api/rooms/WAKUR/rounds/1.${kind}`));
  draw(deskView('direction-1', 'ready', GUITAR), { leaf: 'crib' });
  expect(files()).toEqual([]);
});

test('the sound follows the questions unless the teacher leads it', () => {
  const { made } = draw(deskView(), { leaf: 'room' });
  const label = Array.from(root.querySelectorAll('label')).find(
    (each) => each.textContent === 'sound follows the questions',
  );
  const box = label?.querySelector('input');
  expect(box?.checked).toBe(true);
  void act(() => box?.click());
  expect(made).toEqual([{ type: 'ChangeSettings', settings: { soundFollows: false } }]);
});

test.each([
  ['4/4', [8, 8], 3],
  ['4/4', [2, 2], 0],
  ['3/4', [6, 6], 3],
  ['4/4', [4, 4, 4, 4], 3],
] as const)('in %s, chords of %j beats have %i bar lines between the repeat signs', (meter, beats, lines) => {
  const slots = beats.map((each) => ({ chord: 'G', beats: each, frets: [] }));
  draw(deskView('direction-1', 'ready', { vamp: { ...EM_D, meter, slots } }));
  // Each repeat sign draws one thin line beside its thick bar.
  expect(root.querySelectorAll('.chord-slashes path.g3').length - 2).toBe(lines);
});

test('a refusal is a sentence with what was wrong; silence is told as such', () => {
  const detail = { found: 'G7', suggestion: 'Write G.' };
  expect(refusalSentence({ ok: false, reason: 'chords-not-readable', detail })).toBe(
    'Could not read the chords at “G7”: Write G.',
  );
  expect(refusalSentence(null)).toContain('Not confirmed');
});
