import { describe, expect, test } from 'vitest';
import { lessonTable } from '../../../server/export/lesson-table.ts';
import type { NewEvent } from '../../../server/rooms/events.ts';
import { deskView, hostView, studentCommon, studentOwn } from '../../../server/rooms/view.ts';
import {
  asked,
  closed,
  DESK,
  fold,
  given,
  guitar,
  joined,
  LIVE,
  opened,
  peopleIn,
  SETTINGS,
  shown,
  started,
  student,
} from '../../support/given.ts';

const wrote = (id: string, ask: string, answer: unknown): NewEvent =>
  ({ type: 'AnswerWritten', student: id, ask, counter: 1, answer }) as NewEvent;
const base: NewEvent[] = [opened, joined('s1', 1), joined('s2', 2), joined('s3', 3), started(guitar('G F C G/B'))];
const home = [...base, asked('a1', 'home-0'), wrote('s1', 'a1', 0), wrote('s2', 'a1', 2), closed('a1')];
const people = peopleIn(base);

describe('R86 where the loop would stop', () => {
  test('is collected: nobody is right or wrong, and nobody earns', () => {
    const write = { type: 'WriteAnswer', id: 'c', ask: 'a1', counter: 1, answer: 9, heldMs: 0 } as const;
    given(...base, asked('a1', 'home-0'))
      .when(student('s1'), write)
      .refused('answer-not-readable');
    const state = fold([...home, shown('a1')]);
    expect(studentCommon(state)).toMatchObject({ phase: 'shown', asking: { kind: 'home' } });
    expect(studentCommon(state)).not.toHaveProperty('truth');
    expect(studentOwn(state, people, 's1')).not.toHaveProperty('mark');
    const desk = deskView(state, people, LIVE);
    expect(desk).toMatchObject({ truth: null, topWrong: null, breakdown: [], reports: [] });
    expect(desk.truths).not.toHaveProperty('home-0');
    expect(desk.spread).toMatchObject({ silent: 1, of: 3 });
    expect(studentOwn(fold([...home, shown('a1'), { type: 'LessonEnded' }]), people, 's1')?.lesson).toEqual({
      right: 0,
      part: 0,
      of: 0,
    });
    given(...home)
      .when(DESK, { type: 'LetStand', id: 'c', round: 'r1', question: 'home-0', answer: 0, stands: true })
      .refused('never-marked');
    given(...home)
      .when(DESK, { type: 'PlayBoth', id: 'c', ask: 'a1' })
      .refused('not-played-here');
  });

  test('both crowds stand on the wall with the reveal, or before it', () => {
    const wall = (events: readonly NewEvent[]) => hostView(fold(events), people, LIVE, 'page-1');
    expect(wall(home).spread).toBeNull();
    for (const more of [shown('a1'), { type: 'SpreadShown', ask: 'a1' } as const]) {
      expect(wall([...home, more])).toMatchObject({ truth: null, spread: { counts: [{ count: 1 }, { count: 1 }] } });
    }
  });

  test('stands among the questions of the lesson: on the desk once closed, on the wall at the end if it was shown', () => {
    const fell = {
      round: 1,
      question: 'home-0',
      kind: 'home',
      target: 0,
      counts: [
        { key: '0', answer: 0, count: 1 },
        { key: '2', answer: 2, count: 1 },
      ],
      notSure: 1,
    };
    const all = [...home.slice(0, -1), wrote('s3', 'a1', 'not-sure'), closed('a1')];
    const end: NewEvent = { type: 'LessonEnded' };
    const desk = (events: readonly NewEvent[]) => deskView(fold(events), people, LIVE).opinions;
    const wall = (events: readonly NewEvent[]) => hostView(fold(events), people, LIVE, 'page-1').opinions;
    expect(desk(all.slice(0, -1))).toEqual([]);
    expect(desk(all)).toEqual([fell]);
    expect([wall([...all, shown('a1')]), wall([...all, end])]).toEqual([[], []]);
    expect(wall([...all, shown('a1'), end])).toEqual([fell]);
    const struck: NewEvent = { type: 'QuestionStruck', round: 'r1', question: 'home-0', struck: true };
    expect(desk([...all, struck])).toEqual([]);
  });

  test('the table says the answer, and no mark', () => {
    expect(lessonTable(fold(home), people).slice(1)).toEqual([
      [1, 'G F C G/B', 'home-0', 1, 's1', 'chord 1', '', null, '', '', ''],
      [1, 'G F C G/B', 'home-0', 2, 's2', 'chord 3', '', null, '', '', ''],
      [1, 'G F C G/B', 'home-0', 3, 's3', '', '', null, 'silent', '', ''],
    ]);
  });
});

describe('questions of order, bass and seventh', () => {
  test('are asked, marked, shown and written into the table', () => {
    const answers: readonly (readonly [string, unknown, string])[] = [
      ['order-0', [0, 1, 2, 0], '0 1 2 0'],
      ['bass-3', { string: 5, fret: 2 }, 'string 5, fret 2'],
    ];
    for (const [question, right, said] of answers) {
      const events = [...base, asked('a1', question), wrote('s1', 'a1', right), closed('a1'), shown('a1')];
      const state = fold(events);
      expect(studentOwn(state, people, 's1')).toMatchObject({ mark: { credit: 1, exact: true } });
      expect(deskView(state, people, LIVE)).toMatchObject({ breakdown: [{ question, right: 1, silent: 2 }] });
      expect(lessonTable(state, people)[1]?.slice(5, 9)).toEqual([said, said, 1, 'right']);
    }
    const bass = fold([...base, asked('a1', 'bass-3'), closed('a1'), shown('a1')]);
    expect(studentCommon(bass).truth).toMatchObject({ name: 'B' });
  });

  test('another bass makes another chord only where the class says so', () => {
    const count = (slashIsNew: boolean) => {
      const settings = { ...SETTINGS, slashIsNew };
      const round = guitar('G F C G/B', 1, null, settings);
      return deskView(fold([opened, started(round)]), people, LIVE).truths['count-0'];
    };
    expect([count(false), count(true)]).toEqual([3, 4]);
  });

  test('what is typed is read in the naming of the class', () => {
    const german = { ...SETTINGS, naming: 'german' as const };
    expect(guitar('H B', 1, null, german).slots.map(({ chord }) => chord)).toEqual(['B', 'Bb']);
  });
});

describe('R69 the help that was given', () => {
  test('from memory stands in evidence, reports and table', () => {
    const events = [
      ...base,
      asked('a1', 'root-0', 'r1', 1, 'memory'),
      wrote('s1', 'a1', { string: 6, fret: 3 }),
      closed('a1'),
      asked('a2', 'quality-0'),
      wrote('s1', 'a2', 'major'),
      closed('a2'),
    ];
    const desk = deskView(fold(events), people, LIVE);
    expect(desk.reports[0]).toMatchObject({ right: 2, memory: { right: 1, of: 1 } });
    expect(desk.breakdown?.map(({ question, memory }) => [question, memory])).toEqual([
      ['quality-0', false],
      ['root-0', true],
    ]);
    const helps = lessonTable(fold(events), people).map((row) => [row[2], row[10]]);
    expect(helps).toContainEqual(['root-0', 'from memory']);
    expect(helps).toContainEqual(['quality-0', '']);
  });
});
