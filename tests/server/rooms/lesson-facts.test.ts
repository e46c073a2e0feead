import { describe, expect, test } from 'vitest';
import type { Command, SoundChange } from '../../../server/protocol/messages.ts';
import type { NewEvent } from '../../../server/rooms/events.ts';
import { versioned } from '../../../server/rooms/events.ts';
import { evolve } from '../../../server/rooms/evolve.ts';
import type { RoomState } from '../../../server/rooms/state.ts';
import { unopenedRoom } from '../../../server/rooms/state.ts';
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
  moment,
  opened,
  peopleIn,
  played,
  shown,
  started,
} from '../../support/given.ts';

const STUDENTS = ['s1', 's2', 's3', 's4', 's5', 's6'];
const seats: NewEvent[] = [opened, ...STUDENTS.map((id, index) => joined(id, index + 1))];
const people = peopleIn(seats);
const wrote = (student: string, ask: string, answer: unknown): NewEvent =>
  ({ type: 'AnswerWritten', student, ask, counter: 1, answer }) as NewEvent;
const begun: NewEvent = { type: 'VampStarted', round: 'r1', tempo: 100 };
const took = (change: SoundChange): NewEvent => ({ type: 'ChangeTook', round: 'r1', change, bar: 4 });
const desk = (events: readonly NewEvent[], live = LIVE) => deskView(fold(events), people, live);
/** All answer the same wrong way, but the last. */
const answered = (ask: string, question: string, wrong: unknown, right: unknown): NewEvent[] => [
  asked(ask, question),
  ...STUDENTS.map((id, index) => wrote(id, ask, index < 5 ? wrong : right)),
  closed(ask),
];
const base = [...seats, started(played('Em D'))];

describe('R68 playing both', () => {
  const play = (ask = 'a1'): Command => ({ type: 'PlayBoth', id: 'c', ask });
  const held = { soundHolder: 'page-1' };
  const wrong = [...base, begun, ...answered('a1', 'quality-0', 'major', 'minor')];

  test('orders both readings of a closed question', () => {
    const { decision } = given(...wrong).when(DESK, play(), held);
    expect(decision).toMatchObject({
      ok: true,
      events: [],
      effects: [
        {
          kind: 'order',
          order: { order: 'change', round: 'r1', change: { kind: 'both', ask: 'a1', right: [{ chord: 'Em' }] } },
        },
      ],
    });
    const change = decision.ok && decision.effects?.[0]?.kind === 'order' ? decision.effects[0].order : null;
    expect(JSON.stringify(change)).toContain('"chord":"E"');
    expect(given(...wrong, shown('a1')).when(DESK, play(), held).decision.ok).toBe(true);
    expect(desk(wrong).topWrong).toMatchObject({ key: 'major', playable: true });
    expect(desk(wrong, { ...LIVE, soundHolder: null }).topWrong).toMatchObject({ playable: false });
  });

  test('says why not', () => {
    const at = (events: readonly NewEvent[], reason: string, context = held) =>
      given(...events)
        .when(DESK, play(), context)
        .refused(reason);
    at([...base, begun], 'question-unknown');
    at([...base, begun, asked('a1', 'quality-0')], 'question-not-closed');
    at([...wrong, asked('a2', 'keys-0')], 'question-still-open');
    at([...seats, started(guitar('Em D')), ...answered('a1', 'quality-0', 'major', 'minor')], 'not-played-here');
    at([...base, ...answered('a1', 'quality-0', 'major', 'minor')], 'nothing-plays');
    at([...base, begun, ...answered('a1', 'quality-0', 'minor', 'not-sure')], 'nothing-to-compare');
    at([...base, begun, ...answered('a1', 'one-or-several-0', 'one', 'several')], 'nothing-to-compare');
    at([...base, begun, asked('a1', 'quality-0', 'r1', 1, 'aloud')], 'nothing-to-compare');
    at([...wrong, started(played('G C', 2))], 'round-unknown');
    const noHolder = given(...wrong).when(DESK, play());
    noHolder.refused('no-host-sound');
  });

  test('R38 students hear nothing of it', () => {
    const both = took({ kind: 'both', ask: 'a1', wrong: [], right: [] });
    expect(studentCommon(fold([...wrong, both]))).toEqual(studentCommon(fold(wrong)));
  });
});

describe('R74 beside own answers', () => {
  // The bass goes up to D; who says down, and then finds D below, has made one mistake.
  const round = [...seats, started(guitar('Em D'))];
  const direction = answered('a1', 'direction-1', 'down', 'up');
  const distance = answered('a2', 'distance-1', -2, 10);
  const mark = (events: readonly NewEvent[]) => studentOwn(fold(events), people, 's1')?.mark;

  test('the teacher’s mark leans on all closed questions, the student’s on those that were shown', () => {
    const both = [...round, ...direction, ...distance];
    expect(desk(both).students[0]?.mark).toMatchObject({ exact: false, note: 'follows-own-answer', credit: 1 });
    const hidden = [...both, shown('a2')];
    expect(mark(hidden)).not.toHaveProperty('note');
    const told = [...round, ...direction, shown('a1'), ...distance, shown('a2')];
    expect(mark(told)).toMatchObject({ exact: false, note: 'follows-own-answer', credit: 1 });
  });
});

describe('R75 whether the loop had come home', () => {
  /** Events at their moments, in milliseconds. */
  function at(...timed: readonly (readonly [number, NewEvent])[]): RoomState {
    const state = unopenedRoom();
    for (const event of base) evolve(state, versioned(event), moment(0));
    for (const [ms, event] of timed) evolve(state, versioned(event), moment(ms));
    return state;
  }
  const returned = (...timed: readonly (readonly [number, NewEvent])[]) => at(...timed).sheets.get('a1')?.returned;
  const ask = asked('a1', 'direction-1');
  // At 100 beats a minute a bar lasts 2.4 s: one counted in, two of the loop.
  const home = 7_200;

  test('is known where it played whole from its beginning', () => {
    expect(returned([0, begun], [home - 1, ask])).toBe(false);
    expect(returned([0, begun], [home, ask])).toBe(true);
    expect(returned([0, begun], [100, took({ kind: 'again' })], [home, ask])).toBe(true);
    expect(returned([0, begun], [home, took({ kind: 'bass-alone' })], [home + 1, ask])).toBe(true);
    expect(returned([0, begun], [home, { type: 'VampStopped', round: 'r1' }], [99_000, ask])).toBe(true);
    expect(returned([0, begun], [home, begun], [home + 1, ask])).toBe(true);
  });

  test('is not where nothing played, or not the whole', () => {
    expect(returned([0, ask])).toBeNull();
    expect(returned([0, begun], [100, took({ kind: 'hold', slot: 0 })], [99_000, ask])).toBeNull();
    expect(returned([0, begun], [100, took({ kind: 'tempo', tempo: 90 })], [99_000, ask])).toBeNull();
    expect(returned([0, begun], [100, { type: 'VampStopped', round: 'r1' }], [99_000, ask])).toBeNull();
    expect(fold([...seats, started(guitar('Em D')), ask]).sheets.get('a1')?.returned).toBeNull();
  });
});

describe('R82 the lesson as it goes', () => {
  const wrong = [...base, begun, ...answered('a1', 'quality-0', 'major', 'minor')];
  const end: NewEvent = { type: 'LessonEnded' };

  test('the desk sees common errors and reports at any time, the wall at the end and without names', () => {
    const direction = [...wrong, ...answered('a2', 'direction-1', 'same', 'up')];
    const view = desk(direction);
    expect(view.common).toMatchObject([{ error: 'says-stays', times: 5, chances: 6, kinds: ['direction'], ask: 'a2' }]);
    expect(desk(direction, { ...LIVE, soundHolder: null }).common).toMatchObject([{ ask: null }]);
    expect(view.reports[0]).toMatchObject({
      student: 's1',
      wrong: 2,
      of: 2,
      points: 0,
      errors: [{ error: 'says-stays', times: 1 }],
    });
    expect(view.breakdown).toHaveLength(2);
    const host = (events: readonly NewEvent[]) => hostView(fold(events), people, LIVE, 'page-1');
    expect(host(direction)).toMatchObject({ common: [], breakdown: null });
    expect(host([...direction, end]).common).toMatchObject([{ error: 'says-stays', ask: null }]);
    expect(JSON.stringify(host([...direction, end]).common)).not.toMatch(/"s\d"/);
    expect(JSON.stringify(studentOwn(fold([...direction, end]), people, 's1'))).not.toMatch(/habit|common|errors/);
  });

  test('an answer to an open question costs nothing of it; one that comes late counts', () => {
    const state = fold([...wrong, asked('a2', 'direction-1')]);
    const before = deskView(state, people, LIVE);
    evolve(state, versioned(wrote('s1', 'a2', 'same')), moment(9_000));
    const after = deskView(state, people, LIVE);
    expect(after.reports).toBe(before.reports);
    expect(after.breakdown).toBe(before.breakdown);
    evolve(state, versioned(closed('a2')), moment(9_100));
    expect(deskView(state, people, LIVE).reports[0]).toMatchObject({ of: 2 });
    const silent = deskView(state, people, LIVE).reports[1];
    evolve(state, versioned(wrote('s2', 'a2', 'up')), moment(9_200));
    expect([silent?.silent, deskView(state, people, LIVE).reports[1]?.silent]).toEqual([1, 0]);
  });
});
