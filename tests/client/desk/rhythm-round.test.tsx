import { signal } from '@preact/signals';
import { act } from 'preact/test-utils';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { createHandRest } from '../../../client/desk/hand-rest.ts';
import { chosenStep, nextReady } from '../../../client/desk/desk-state.ts';
import { usualChoices } from '../../../client/desk/sound-choices.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import type { Kind } from '../../../shared-theory/questions/question.ts';
import { button, draw, main, others, press, root, text } from './draw.tsx';
import { deskView, PLAYING, STILL } from './fixtures.ts';
import { rhythmView } from './rhythm-fixtures.ts';

afterEach(() => void vi.useRealTimers());

describe('the beat level and the pairs, where a vamp is begun', () => {
  test('the beat level is kept with the class at once', () => {
    const view = deskView();
    const { made } = draw({ ...view, settings: { ...view.settings, beatLevel: 3 } }, { form: 'start' });
    const levels = Array.from(root.querySelectorAll<HTMLInputElement>('[name=beat-level]'));
    expect(levels.map(({ checked }) => checked)).toEqual([false, false, true]);
    expect(text()).toContain('Heavy and light');
    void act(() => levels[1]?.click());
    expect(made).toEqual([{ type: 'ChangeSettings', settings: { beatLevel: 2 } }]);
  });

  test('a pair is played in one press, and the same pair again from the row', async () => {
    const { desk, made } = draw(deskView(), { form: 'start', begun: 'r1' });
    press('straight or swung');
    await act(() => new Promise((done) => void setTimeout(done, 0)));
    const start = { type: 'StartRound', after: 1, level: 7, item: null, groove: null, contrast: 'straight-or-swung' };
    expect(made).toEqual([start, { show: null }, { turnTo: 'round' }, { type: 'RequestPlay', round: 'r1' }]);
    expect(desk.contrast.value).toEqual({ contrast: 'straight-or-swung', level: 7, round: 'r1' });
    press('the same pair again');
    expect(made.at(-1)).toEqual(start);
  });

  test('a round beside all pairs offers none again', () => {
    const { desk } = draw(deskView());
    void act(() => void (desk.contrast.value = { contrast: 'straight-or-swung', level: 7, round: 'r0' }));
    expect(text()).not.toContain('the same pair again');
  });

  test('the groove that Hearsay plays and the teacher’s own have names of their own', () => {
    draw(deskView(), { form: 'start' });
    const names = Array.from(root.querySelectorAll('select'), (list) => list.labels?.[0]?.firstChild?.textContent);
    expect(names).toEqual(['groove it plays', 'groove I play']);
  });
});

describe('which question comes up by itself', () => {
  const first = (kinds: readonly Kind[]) =>
    chosenStep(rhythmView('count', 'ready', {}, kinds), null, new Set())?.question;

  test.each([
    [['tempo', 'drop-out', 'together', 'accents', 'count'], 'accents-0'],
    [['tempo', 'steadiness', 'drop-out', 'together', 'count'], 'tempo-0'],
    [['tempo', 'drop-out', 'together', 'count'], 'tempo-0'],
    [['tempo', 'together', 'swing', 'count'], 'swing-0'],
  ] as const)('of %j first %s', (kinds, question) => {
    expect(first(kinds)).toBe(question);
  });

  test('what can always be tapped is never next, and is a press away', () => {
    const view = rhythmView('accents', 'shown', {}, ['tempo', 'drop-out', 'together', 'accents']);
    expect(nextReady(view.steps, 'accents-0')).toBeNull();
    const { made } = draw(view);
    press('through silence, not asked yet');
    expect(made).toEqual([{ pick: 'drop-out-0' }]);
  });
});

describe('a question that is tapped', () => {
  test('is opened while the loop plays: else that comes first', () => {
    const shown = { status: 'shown' as const };
    const view = rhythmView('tempo', 'ready', { sound: STILL });
    const steps = view.steps.map((step) => (step.kind === 'count' ? { ...step, ...shown } : step));
    const { made } = draw({ ...view, steps }, { pick: 'tempo-0' });
    expect(main()).toEqual({ name: 'play', ink: true });
    expect(others()).toContain('open');
    press('play');
    expect(made).toEqual([{ type: 'RequestPlay', round: 'r1' }]);
  });

  test.each([
    ['tempo', true],
    ['drop-out', false],
    ['together', false],
  ] as const)('%s from memory: %s', (kind, remembered) => {
    draw(rhythmView(kind, 'ready'), { pick: `${kind}-0` });
    press('other ways');
    expect(text().includes('From memory')).toBe(remembered);
  });
});

test.each([
  ['accents', 'muted strings'],
  ['tempo', 'muted strings'],
  ['roles', 'hold Em'],
  ['change-place', 'softly'],
] as const)('beside %s the hand is brought out by: %s', (kind, name) => {
  const view = rhythmView(kind, 'ready', {}, [kind]);
  const [step] = view.steps;
  expect(usualChoices(view, step ?? null)[1]?.name).toBe(name);
});

describe('why the groove turned relaxed', () => {
  const sound = (change: Partial<DeskView['sound']> = {}) =>
    deskView('count-0', 'ready', { sound: { ...PLAYING, ...change } });
  const relaxed = sound({ feel: 'relaxed' });

  /** A desk on a page's clock, the loop playing from now on. */
  function playing() {
    vi.useFakeTimers();
    const view = signal<DeskView | null>(sound({ playing: false }));
    const rest = createHandRest(view);
    view.value = sound();
    return { view, ...rest };
  }

  test('is said after a minute and a half, until something is asked, and once', () => {
    const { view, rested } = playing();
    vi.advanceTimersByTime(91_000);
    view.value = relaxed;
    expect(rested.value).toBe(true);
    view.value = deskView('count-0', 'open', { sound: relaxed.sound });
    expect(rested.value).toBe(false);
    view.value = sound();
    vi.advanceTimersByTime(91_000);
    view.value = relaxed;
    expect(rested.value).toBe(false);
  });

  test.each([
    ['it was pressed here', 91_000, true, false],
    ['it came too soon for that', 60_000, false, false],
    ['a question was open meanwhile', 91_000, false, true],
  ])('is not said where %s', (_, passed, pressed, opened) => {
    const { view, rested, asked } = playing();
    vi.advanceTimersByTime(passed / 2);
    if (opened) view.value = deskView('count-0', 'open');
    if (opened) view.value = sound();
    vi.advanceTimersByTime(passed / 2);
    if (pressed) asked({ kind: 'feel', feel: 'relaxed' });
    view.value = relaxed;
    expect(rested.value).toBe(false);
  });

  test('stands beside the sound', () => {
    draw(deskView('count-0'), { rested: true });
    expect(root.querySelector('.rested')?.textContent).toMatch(/^The host goes on in the relaxed feel/);
    draw(deskView('count-0'));
    expect(root.querySelector('.rested')?.textContent).toBe('');
    expect(button('count, not asked yet').isConnected).toBe(true);
  });
});
