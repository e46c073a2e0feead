import { KINDS } from '../../../shared-theory/questions/question.ts';
import { describe, expect, test } from 'vitest';
import type { Command, LessonItem } from '../../../server/protocol/messages.ts';
import type { NewEvent } from '../../../server/rooms/events.ts';
import { deskView, studentCommon } from '../../../server/rooms/view.ts';
import {
  asked,
  closed,
  DESK,
  fold,
  given,
  guitar,
  LIVE,
  opened,
  peopleIn,
  played,
  shown,
  started,
} from '../../support/given.ts';

const item = (name: string, level = 7, kinds: readonly string[] = ['count', 'direction', 'keys']): LessonItem => ({
  item: name,
  level,
  kinds,
});
const plan = (...items: LessonItem[]): Command => ({ type: 'PlanLesson', id: 'c', items });
const planned = (...items: LessonItem[]): NewEvent => ({ type: 'LessonPlanned', items });
const start = (name: string | null, after = 0, level = 7): Command => ({
  type: 'StartRound',
  id: 'c',
  after,
  level,
  item: name,
  groove: null,
  contrast: null,
});
function roundOf(command: Command, ...events: NewEvent[]) {
  const { decision } = given(opened, ...events).when(DESK, command);
  const event = decision.ok ? decision.events.find(({ type }) => type === 'RoundStarted') : undefined;
  if (event?.type !== 'RoundStarted') throw new Error(JSON.stringify(decision));
  return event.round;
}

describe('R71 a plan', () => {
  test('takes the place of the one before, once', () => {
    const room = given(opened);
    room.when(DESK, plan(item('i1'))).gives({ ok: true, events: [planned(item('i1'))] });
    room.when(DESK, plan()).gives({ ok: true, events: [] });
    given(opened, planned(item('i1')))
      .when(DESK, plan(item('i1')))
      .gives({ ok: true, events: [] });
    given(opened, planned(item('i1')))
      .when(DESK, plan())
      .gives({ ok: true, events: [planned()] });
  });

  test.each<[string, LessonItem[]]>([
    ['round 2 has the name of one before it', [item('i1'), item('i1')]],
    ['round 1 is of level 99, which there is not', [item('i1', 99)]],
    [
      `round 1 asks "keys"; level 1 asks ${KINDS.slice(0, KINDS.indexOf('count') + 1).join(', ')}`,
      [item('i1', 1, ['keys'])],
    ],
    ['round 2 asks nothing', [item('i1'), item('i2', 7, [])]],
    ['round 1 asks one kind twice', [item('i1', 7, ['keys', 'keys'])]],
  ])('%s', (what, items) => {
    given(opened)
      .when(DESK, plan(...items))
      .refused('plan-not-readable', { what });
  });
});

describe('R72 a round of the plan', () => {
  test('asks the kinds of its item, in the usual order', () => {
    const round = roundOf(start('i1'), planned(item('i1', 7, ['keys', 'direction'])));
    expect(round).toMatchObject({ item: 'i1', level: 7, kinds: ['direction', 'keys'] });
    // And what can be opened wherever a groove sounds.
    const asked = new Set(['tempo', 'drop-out', 'together', 'direction', 'keys']);
    expect(new Set(round.questions.map(({ kind }) => kind))).toEqual(asked);
    // As it stands in the plan by now.
    expect(roundOf(start('i1', 0, 3), planned(item('i1', 7))).level).toBe(7);
    expect(roundOf(start(null), planned(item('i1'))).item).toBeNull();
  });

  test('an item that there is not is refused; a second press is answered all the same', () => {
    given(opened, planned(item('i1')))
      .when(DESK, start('i2'))
      .refused('item-unknown');
    given(opened, started(guitar('G')))
      .when(DESK, start('i2'))
      .gives({ ok: true, events: [], value: { round: 'r1', number: 1 } });
  });

  test('the desk sees the plan and what of it was played', () => {
    const view = (...events: NewEvent[]) => deskView(fold([opened, ...events]), peopleIn([]), LIVE).plan;
    const items = [item('i1'), item('i2')];
    expect(view()).toEqual({ items: [], played: [] });
    const played = { ...guitar('G C'), item: 'i2' };
    expect(view(planned(...items), started(played))).toEqual({ items, played: ['i2'] });
    expect(view(planned(...items), started(played), planned(item('i1')))).toMatchObject({ played: [] });
  });

  test('with the count the loops are of one, two and three chords', () => {
    const counts = new Set<number>();
    for (let seed = 0; seed < 40; seed += 1) {
      const { decision } = given(opened, planned(item('i1'))).when(DESK, start('i1'), { seed });
      const event = decision.ok ? decision.events.find(({ type }) => type === 'RoundStarted') : undefined;
      if (event?.type === 'RoundStarted') counts.add(event.round.truth.count);
    }
    expect(counts).toEqual(new Set([1, 2, 3]));
    expect(new Set(Array.from({ length: 9 }, () => roundOf(start(null)).truth.count))).toEqual(new Set([2]));
  });
});

describe('R73 how many chords there are', () => {
  const loop = (chords: string, ...events: NewEvent[]) =>
    studentCommon(
      fold([
        opened,
        started(played(chords, 1, 'relaxed-alternate', { counted: true })),
        ...events,
        asked('a9', 'keys-0'),
      ]),
    ).asking?.loop;
  const count = [asked('a1', 'count-0'), closed('a1')];

  test('where they are counted nobody is told before the count was shown', () => {
    for (const chords of ['G', 'G C', 'G C G D']) {
      expect(loop(chords)).toBeUndefined();
      expect(loop(chords, ...count)).toBeUndefined();
    }
    expect(['G', 'G C', 'G C G D'].map((chords) => loop(chords, ...count, shown('a1')))).toEqual([
      'one',
      'two',
      'more',
    ]);
  });

  test('a later chord that was asked about is one more; a settler is none', () => {
    expect(loop('G C', asked('a1', 'quality-1'), closed('a1'))).toBe('more');
    expect(loop('G C', asked('a1', 'settler-1'), closed('a1'))).toBeUndefined();
  });
});
