import { signal } from '@preact/signals';
import { act } from 'preact/test-utils';
import { expect, test } from 'vitest';
import { moved, nextItem, without, withKind } from '../../../client/desk/lesson-plan.ts';
import { createPlanDraft } from '../../../client/desk/plan-draft.ts';
import type { LessonItem, Reply } from '../../../server/protocol/messages.ts';
import type { DeskView, WireBreakdownLine } from '../../../server/protocol/views.ts';
import { readyLesson, roundKinds } from '../../../shared-theory/lessons.ts';
import { kindsOfLevel } from '../../../shared-theory/levels.ts';
import { button, draw, main, press, root, text } from './draw.tsx';
import { questionPrompt } from '../../../server/protocol/words/questions.ts';
import { askingOf } from '../../../client/desk/step-names.ts';
import { deskView } from './fixtures.ts';

/** The class's beat level in the fixtures. */
const BEAT = deskView('direction-1', 'ready').settings.beatLevel;

const ITEMS: readonly LessonItem[] = [
  { item: 'a', level: 3, kinds: ['strokes'] },
  { item: 'b', level: 4, kinds: ['strokes', 'root'] },
  { item: 'c', level: 5, kinds: ['distance'] },
];
const planned = (played: readonly string[] = []) =>
  deskView('direction-1', 'ready', { plan: { items: ITEMS, played } });
const order = (items: readonly LessonItem[]) => items.map(({ item }) => item).join('');
const plan = (made: readonly unknown[]) => (made.at(-1) as { readonly plan: readonly LessonItem[] }).plan;

test('the next round is the first that has not been played', () => {
  expect(nextItem(ITEMS, [])?.item).toBe('a');
  expect(nextItem(ITEMS, ['a', 'c'])?.item).toBe('b');
  expect(nextItem(ITEMS, ['c', 'b', 'a'])).toBeNull();
});

test('rounds go up, down and out', () => {
  expect(order(moved(ITEMS, 'b', -1))).toBe('bac');
  expect(order(moved(ITEMS, 'b', 1))).toBe('acb');
  expect(moved(ITEMS, 'a', -1)).toBe(ITEMS);
  expect(moved(ITEMS, 'c', 1)).toBe(ITEMS);
  expect(order(without(ITEMS, 'b'))).toBe('ac');
});

test('kinds come and go in the order of a round; the last one stays', () => {
  const kinds = ['strokes', 'count', 'direction', 'root'];
  expect(withKind(ITEMS, 'b', 'direction', kinds)[1]?.kinds).toEqual(['strokes', 'direction', 'root']);
  expect(withKind(ITEMS, 'b', 'root', kinds)[1]?.kinds).toEqual(['strokes']);
  expect(withKind(ITEMS, 'a', 'strokes', kinds)[0]?.kinds).toEqual(['strokes']);
});

test('a ready lesson of each level in one press, as the theory makes it; what was played stays', () => {
  for (const level of [1, 2, 3, 4, 5, 6, 7]) {
    const { made } = draw(planned(['a']), { leaf: 'lesson' });
    press(`a ready lesson of level ${level}`);
    const [first, ...rest] = plan(made);
    expect(first?.item).toBe('a');
    expect(rest.map((each) => [each.level, each.kinds])).toEqual(
      readyLesson(level, BEAT).map((round) => [round.level, round.kinds]),
    );
    expect(new Set(plan(made).map(({ item }) => item)).size).toBe(rest.length + 1);
  }
});

test('a round is added with all that its level asks', () => {
  const { made } = draw(planned(), { leaf: 'lesson' });
  press('add a round of level 6');
  expect(plan(made)).toHaveLength(4);
  expect(plan(made)[3]).toMatchObject({ level: 6, kinds: roundKinds(6, BEAT) });
});

test('rounds that were played stay as they were; the others change their place and their level', () => {
  const { desk, made } = draw(planned(['a']), { leaf: 'lesson' });
  const changes = Array.from(root.querySelectorAll<HTMLButtonElement>('.plan-line .desk-link'));
  expect(changes).toHaveLength(2);
  expect(text()).toContain('played');
  void act(() => changes[0]?.click());
  press('down');
  expect(order(plan(made))).toBe('acb');
  press('up');
  expect(order(plan(made))).toBe('abc');
  const level = root.querySelector<HTMLSelectElement>('.plan-edit select');
  void act(() => {
    if (level) level.value = '2';
    level?.dispatchEvent(new Event('change', { bubbles: true }));
  });
  // The root is not asked on that level.
  expect(desk.plan.items.value[1]).toMatchObject({ item: 'b', level: 2, kinds: ['strokes'] });
});

test('kinds of a round are toggles that say whether they are asked', () => {
  const one = deskView('direction-1', 'ready', { plan: { items: ITEMS.slice(1, 2), played: [] } });
  const { made } = draw(one, { leaf: 'lesson' });
  press('change');
  const toggles = Array.from(root.querySelectorAll('.kind-row button'), (each) => each.textContent);
  expect(toggles).toHaveLength(kindsOfLevel(4, BEAT).length);
  expect(button('root').getAttribute('aria-pressed')).toBe('true');
  expect(button('bass').getAttribute('aria-pressed')).toBe('false');
  press('bass');
  expect(plan(made)[0]?.kinds).toEqual(['strokes', 'direction', 'root']);
  press('take out');
  expect(plan(made)).toEqual([]);
});

test('the next round of the lesson starts in one press, from its form and from the row', () => {
  const { made } = draw(planned(['a']), { form: 'start' });
  expect(text()).toContain('Next in the lesson');
  press('next round: level 4');
  const start = { type: 'StartRound', after: 1, level: 4, item: 'b', groove: null, contrast: null };
  expect(made).toEqual([start]);
  const row = draw(planned(['a']));
  press('next round: level 4');
  expect(row.made).toEqual([start]);
  const beside = draw(planned(['a']), { form: 'start' });
  press('play level 7');
  expect(beside.made).toEqual([{ ...start, level: 7, item: null }]);
  expect(main().name).toBe('');
});

test('what is set stands until the server follows; a refusal brings back what it holds', async () => {
  const view = signal<DeskView | null>(planned());
  const replies: ((reply: Reply | null) => void)[] = [];
  const sent: unknown[] = [];
  const draft = createPlanDraft(view, (wish) => {
    sent.push(wish);
    return new Promise((resolve) => replies.push(resolve));
  });
  const told = async (reply: Reply): Promise<void> => {
    replies.shift()?.(reply);
    await Promise.resolve();
    await Promise.resolve();
  };
  draft.set(moved(draft.items.value, 'a', 1));
  draft.set(without(draft.items.value, 'c'));
  expect(order(draft.items.value)).toBe('ba');
  expect(sent).toMatchObject([{ type: 'PlanLesson' }, { type: 'PlanLesson', items: [{ item: 'b' }, { item: 'a' }] }]);
  await told({ ok: true });
  expect(order(draft.items.value)).toBe('ba');
  await told({ ok: true });
  view.value = planned();
  expect(order(draft.items.value)).toBe('abc');

  draft.set([]);
  expect(draft.next.value).toBeNull();
  await told({ ok: false, reason: 'plan-not-readable' });
  expect(order(draft.items.value)).toBe('abc');
  expect(draft.next.value?.item).toBe('a');
});

const LINE: WireBreakdownLine = {
  question: 'root-0',
  round: 1,
  kind: 'root',
  target: 0,
  asking: { kind: 'root', target: 0 },
  right: 11,
  part: 2,
  wrong: 7,
  notSure: 3,
  silent: 1,
  missed: [{ key: '5.2', answer: { string: 5, fret: 2 }, count: 5, error: 'hears-the-fifth' }],
  truth: { string: 6, fret: 0 },
  memory: false,
};
const COMMON: DeskView['common'] = [
  {
    error: 'hears-the-fifth',
    times: 9,
    chances: 23,
    interval: [0.22, 0.59],
    guessing: 0.09,
    kinds: ['root'],
    ask: 'a-root-0',
  },
  {
    error: 'swaps-four-and-five',
    times: 8,
    chances: 22,
    interval: [0.2, 0.57],
    guessing: 0.1,
    kinds: ['distance'],
    ask: null,
  },
];

test('what the class mishears stands there during the lesson, each with what to say, to play, and both to hear where it can be', () => {
  const view = deskView('direction-1', 'ready', { common: COMMON, breakdown: [LINE] });
  const { made } = draw(view, { leaf: 'lesson' });
  expect(text()).toContain('The fifth is taken for the root.');
  expect(text()).toContain('9 of 23 times that it could');
  expect(text()).toContain('11 right, 2 partly, 7 wrong, 3 not sure');
  expect(text()).toContain('5 heard B: The fifth is taken for the root.');
  expect(root.querySelectorAll('.findings .both')).toHaveLength(1);
  press('play both');
  expect(made).toEqual([{ type: 'PlayBoth', ask: 'a-root-0' }]);
});

test('after the lesson the same stands in place of the round, and the teacher can go on', () => {
  const view = deskView('direction-1', 'ready', { status: 'lesson-ended', common: COMMON, breakdown: [LINE] });
  const { made } = draw(view);
  expect(root.querySelector('h1')?.textContent).toBe('How it went');
  press('go on with another vamp');
  expect(made).toEqual([{ show: 'start' }]);
});

test('opinions stand among the questions with their counts and no mark, and in the table', () => {
  const counts = [
    { key: '0', answer: 0, count: 5 },
    { key: '2', answer: 2, count: 3 },
  ];
  const opinions = [{ round: 1, question: 'home-0', kind: 'home', target: 0, counts, notSure: 1 }];
  draw(deskView('direction-1', 'ready', { status: 'lesson-ended', opinions }));
  expect(text()).toContain('home · opinions, not marked');
  expect(text()).toContain('first chord 5, third chord 3, not sure 1');
  expect(root.querySelector('a[href$="/lesson.csv"]')).not.toBeNull();
});

test('a question that waits is named as its round asks it, whatever the class has chosen since', () => {
  const view = deskView('keys-0', 'ready');
  const chosen = { ...view, settings: { ...view.settings, policy: 'modes', qualities: ['major', 'power'] } } as const;
  const prompt = (id: string) => {
    const step = view.steps.find(({ question }) => question === id);
    return (
      step &&
      questionPrompt(askingOf({ ...chosen, askedUnder: { policy: 'majors', qualities: ['major', 'minor'] } }, step))
    );
  };
  expect(prompt('keys-0')).toContain('major keys');
  expect(prompt('quality-0')).toBe('First chord: major or minor?');
});
