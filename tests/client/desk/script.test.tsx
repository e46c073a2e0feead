import { act } from 'preact/test-utils';
import { render } from 'preact';
import { expect, test } from 'vitest';
import { chosenStep, nextReady } from '../../../client/desk/desk-state.ts';
import { DeskPage } from '../../../client/desk/screens/desk-page.tsx';
import type { DeskView } from '../../../server/protocol/views.ts';
import { button, draw, main, others, press, root, text } from './draw.tsx';
import { deskOf, deskView, fallenView, GUITAR, ORDER, RIGHT, stepsAt, STILL } from './fixtures.ts';

/** A question asked aloud. */
function aloud(question: string, status: 'open' | 'closed' = 'open'): DeskView {
  const view = deskView(question, status);
  const steps = view.steps.map((step) => (step.status === status ? { ...step, aloud: true } : step));
  return { ...view, steps, current: view.current && { ...view.current, aloud: true } };
}

test('the next question is the next in the row that has not been opened, then from its beginning', () => {
  const steps = stepsAt(3, 'shown');
  expect(nextReady(steps, 'quality-0')?.question).toBe('root-0');
  expect(nextReady(steps, 'settler-1')?.question).toBe('root-0');
  expect(nextReady(stepsAt(12, 'shown'), 'settler-1')).toBeNull();
  expect(nextReady(steps, 'quality-0', new Set(['root-0']))?.question).toBe('distance-1');
});

test('a pick holds until another question is opened or another round begins; none turns away from an open one', () => {
  const pick = { question: 'keys-0', round: 'r1', over: null };
  const view = deskView('direction-1', 'ready');
  expect(chosenStep(view, pick, new Set())?.question).toBe('keys-0');
  const next = { ...view, vamp: view.vamp && { ...view.vamp, round: 'r2' } };
  expect(chosenStep(next, pick, new Set())?.question).toBe('direction-1');
  expect(chosenStep(deskView('direction-1', 'open'), pick, new Set())?.question).toBe('direction-1');
  expect(chosenStep(view, null, new Set(['direction-1']))?.question).toBe('quality-0');
  const closed = deskView('direction-1', 'closed');
  const over = { ...pick, over: closed.current?.ask ?? null };
  expect(chosenStep(closed, over, new Set())?.question).toBe('keys-0');
  const shown = deskView('direction-1', 'shown', { awaited: 'quality-0' });
  expect(chosenStep(shown, null, new Set())?.question).toBe('quality-0');
});

test('the whole order stands in the row, each question named, those asked twice by their chord', () => {
  const { made } = draw(deskView('direction-1'));
  const row = Array.from(root.querySelectorAll('.desk-steps .desk-step'), (each) => each.textContent);
  expect(row).toEqual([
    'strokes',
    'count',
    'bass',
    'quality Em',
    'root',
    'distance',
    'quality D',
    'numerals',
    'one or several',
    'keys',
    'settler C',
    'settler A',
    'new vamp',
  ]);
  expect(button('bass, not asked yet').getAttribute('aria-current')).toBe('step');
  press('keys, not asked yet', 'strokes, shown');
  expect(made).toEqual([{ pick: 'keys-0' }, { pick: 'strokes-0' }]);
});

test('every question of the order can be opened on phones, aloud and from memory; the commands name their target', () => {
  for (const { id } of ORDER) {
    const { made } = draw(deskView(id));
    expect(main()).toEqual({ name: 'open', ink: true });
    press('open', 'other ways', 'aloud', 'other ways');
    // A settler has not sounded before it is asked: there is nothing to remember.
    const remembered = !id.startsWith('settler');
    expect(text().includes('From memory')).toBe(remembered);
    if (remembered) press('from memory');
    const open = { type: 'OpenQuestion', round: 'r1', question: id };
    expect(made).toEqual([
      { ...open, how: 'phones' },
      { ...open, how: 'aloud' },
      ...(remembered ? [{ ...open, how: 'memory' }] : []),
    ]);
  }
});

test('how to ask is one press away and folds up again', () => {
  draw(deskView('direction-1'));
  expect(others()).toEqual(['skip', 'other ways']);
  expect(button('other ways').getAttribute('aria-expanded')).toBe('false');
  press('other ways');
  expect(button('other ways').getAttribute('aria-expanded')).toBe('true');
  expect(document.activeElement).toBe(button('aloud'));
  press('other ways');
  expect(text()).not.toContain('from memory');
});

test('before the first question the vamp is played first', () => {
  const { made } = draw(deskView('strokes-0', 'ready', { sound: STILL }));
  expect(main()).toEqual({ name: 'play', ink: true });
  expect(others()).toEqual(['skip', 'other ways', 'open']);
  press('play');
  expect(made).toEqual([{ type: 'RequestPlay', round: 'r1' }]);
  draw(deskView('count-0', 'ready', { sound: STILL }));
  expect(main().name).toBe('open');
});

test.each([
  ['too early', 19, 17, false],
  ['the usual time is over', 20, 17, true],
  ['all hands are in', 3, 24, true],
])('an open question: %s', (_, seconds, handsIn, ink) => {
  const { made } = draw(deskView('direction-1', 'open', { handsIn }), { seconds });
  expect(main()).toEqual({ name: 'close', ink });
  expect(text()).toContain(`${handsIn} of 24 in, ${seconds}\u00a0s`);
  expect(text()).toContain('usually 12 to 20\u00a0s');
  press('close', 'again');
  expect(made).toEqual([{ type: 'CloseQuestion', ask: 'a-direction-1' }, 'again']);
  expect(button('keys, not asked yet').disabled).toBe(true);
});

test.each([['open' as const], ['closed' as const]])('asked aloud and %s, it is shown next', (status) => {
  const { made } = draw(aloud('count-0', status));
  expect(main()).toEqual({ name: 'show', ink: true });
  expect(text()).toContain('Asked aloud');
  expect(text()).not.toContain('hands in');
  press('show');
  expect(made).toEqual([{ type: 'ShowAnswer', ask: 'a-count-0' }]);
});

test('from memory the desk waits for the silence and can call it off; no press falls on what opens meanwhile', () => {
  const { made } = draw(deskView('quality-0', 'ready', { awaited: 'quality-0' }));
  expect(main()).toEqual({ name: 'waits for silence', ink: false });
  expect(text()).toContain('It opens by itself');
  expect(button('quality Em, waits for silence').getAttribute('aria-current')).toBe('step');
  press('waits for silence', 'cancel');
  expect(made).toEqual([{ change: { kind: 'full' } }]);

  const view = deskView('quality-0', 'open');
  const silent = (step: DeskView['steps'][number]) => (step.status === 'open' ? { ...step, memory: true } : step);
  draw({ ...view, steps: view.steps.map(silent), current: view.current && { ...view.current, memory: true } });
  expect(main().name).toBe('close');
  expect(others()).toEqual([]);
});

const few = { down: 2, up: 9 };
const some = { down: 6, up: 5 };
const most = { down: 12, up: 1 };

test('after the close the share that was right says what is likeliest', () => {
  draw(fallenView('direction-1', 'closed', few, 'down'));
  expect(main()).toEqual({ name: 'again', ink: true });
  expect(others()).toEqual(['spread', 'ask again', 'show']);

  draw(fallenView('direction-1', 'closed', few, 'down'), { replayed: 'a-direction-1' });
  expect(main()).toEqual({ name: 'ask again', ink: true });

  draw(fallenView('direction-1', 'closed', some, 'down'));
  expect(main()).toEqual({ name: 'neighbour', ink: true });
  expect(others()).toEqual(['again', 'spread', 'show']);

  const { made } = draw(fallenView('direction-1', 'closed', most, 'down'));
  expect(main()).toEqual({ name: 'show', ink: true });
  press('show', 'spread', 'neighbour', 'again');
  const ask = 'a-direction-1';
  expect(made).toEqual([
    { type: 'ShowAnswer', ask },
    { type: 'ShowSpread', ask },
    { type: 'AnswerAgain', ask },
    'again',
  ]);
});

test('exactly 30 and 70 percent are for the neighbours', () => {
  draw(fallenView('direction-1', 'closed', { down: 3, up: 5 }, 'down'));
  expect(main().name).toBe('neighbour');
  draw(fallenView('direction-1', 'closed', { down: 7, up: 1 }, 'down'));
  expect(main().name).toBe('neighbour');
});

test('before the talk the spread asks first; once it is up nobody answers again', () => {
  const { made } = draw(fallenView('direction-1', 'closed', some, 'down'));
  press('spread');
  expect(made).toEqual([]);
  expect(text()).toContain('Seeing the crowd pulls people to it.');
  press('spread all the same');
  expect(made).toEqual([{ type: 'ShowSpread', ask: 'a-direction-1' }]);

  draw(fallenView('direction-1', 'closed', some, 'down', { spreadShown: true }));
  expect(main()).toEqual({ name: 'show', ink: true });
  expect(others()).toEqual(['again']);
  expect(text()).toContain('no second answer any more');
});

test('after the talk it is shown, however it fell', () => {
  const view = fallenView('direction-1', 'closed', some, 'down');
  const twice = (step: DeskView['steps'][number]) => (step.status === 'closed' ? { ...step, sheet: 2 } : step);
  draw({ ...view, steps: view.steps.map(twice), current: view.current && { ...view.current, sheet: 2 } });
  expect(main()).toEqual({ name: 'show', ink: true });
});

test('what is shown leads to the next question in one press', () => {
  const { made } = draw(fallenView('quality-0', 'shown', { minor: 9 }, 'minor'));
  expect(main()).toEqual({ name: 'next root', ink: true });
  expect(text()).toContain('next First chord: where is its root?');
  expect(others()).toEqual(['again', 'skip', 'other ways']);
  press('next root', 'skip');
  expect(made).toEqual([{ type: 'OpenQuestion', round: 'r1', question: 'root-0', how: 'phones' }, { skip: 'root-0' }]);
});

test('after the last question comes the next round of the lesson, or a new vamp', () => {
  const last = fallenView('settler-1', 'shown', { '2M': 9 }, '2M');
  const { made } = draw(last);
  expect(main()).toEqual({ name: 'new vamp', ink: true });

  const plan = { items: [{ item: 'p1', level: 4, kinds: ['root'] }], played: [] };
  const planned = draw({ ...last, plan });
  expect(main()).toEqual({ name: 'next round level 4', ink: true });
  press('next round level 4');
  expect(planned.made).toEqual([{ type: 'StartRound', after: 1, level: 4, item: 'p1', groove: null, contrast: null }]);
  expect(made).toEqual([]);
});

test('on the teacher’s own guitar nothing of ours is played', () => {
  draw(fallenView('direction-1', 'closed', few, 'down', GUITAR));
  expect(main()).toEqual({ name: 'ask again', ink: true });
  expect(others()).toEqual(['spread', 'show']);
  draw(deskView('settler-0', 'ready', GUITAR));
  expect(text()).toContain('Play C behind your loop');
  draw(deskView('direction-1', 'ready', GUITAR));
  press('other ways');
  expect(text()).toContain('From memory: stop playing, then open.');
});

test('a struck question is only shown', () => {
  const view = fallenView('direction-1', 'closed', few, 'down');
  const struck = (step: DeskView['steps'][number]) => (step.status === 'closed' ? { ...step, struck: true } : step);
  draw({ ...view, steps: view.steps.map(struck), current: view.current && { ...view.current, struck: true } });
  expect(main()).toEqual({ name: 'show', ink: true });
  expect(text()).toContain('everybody has its points');
  expect(button('bass, struck')).toBeDefined();
});

test('the press at the thumb keeps its place and the keyboard its hold while the row changes', () => {
  const { desk } = draw(deskView('direction-1'));
  const held = root.querySelector<HTMLElement>('.main');
  held?.focus();
  const after = deskOf(deskView('direction-1', 'open'), { seconds: 30 });
  void act(() => render(<DeskPage desk={after.desk} />, root));
  expect(root.querySelector('.main')).toBe(held);
  expect(document.activeElement).toBe(held);
  expect(main()).toEqual({ name: 'close', ink: true });
  expect(desk.notice.value).toBe('');
});

test('the second press of a double one does nothing', () => {
  const { made } = draw(deskView('direction-1'));
  const held = button('open');
  held.dispatchEvent(new MouseEvent('click', { bubbles: true, detail: 1 }));
  held.dispatchEvent(new MouseEvent('click', { bubbles: true, detail: 2 }));
  expect(made).toHaveLength(1);
});

test('the whole order takes three presses a question', () => {
  const presses = ORDER.map(({ id }) => {
    const right = RIGHT[id] ?? '';
    const steps = [
      () => draw(deskView(id, 'open'), { seconds: 60 }),
      () => draw(fallenView(id, 'closed', { [right]: 9 }, right)),
      () => draw(fallenView(id, 'shown', { [right]: 9 }, right)),
    ];
    return steps.map((step) => {
      step();
      const { name, ink } = main();
      return ink && name.replace(/^(next .*|new vamp)$/, 'on');
    });
  });
  expect(presses).toEqual(ORDER.map(() => ['close', 'show', 'on']));
});
