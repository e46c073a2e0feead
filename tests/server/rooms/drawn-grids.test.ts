import { describe, expect, test } from 'vitest';
import { parseGroove } from '../../../shared-theory/grooves.ts';
import type { Command, EchoOf, SoundChange } from '../../../server/protocol/messages.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { refusals } from '../../../server/protocol/words/refusals.ts';
import type { HeardRound, NewEvent } from '../../../server/rooms/events.ts';
import { deskView, hostView, studentCommon, studentOwn } from '../../../server/rooms/view.ts';
import {
  asked,
  closed,
  DESK,
  fold,
  given,
  guitar,
  HOST,
  joined,
  LIVE,
  opened,
  peopleIn,
  played,
  SETTINGS,
  shown,
  started,
  student,
} from '../../support/given.ts';

const GROOVE = 'eighth-downs-backbeat';
const round = played('Em D', 1, GROOVE, { rhythm: true });
const base: NewEvent[] = [opened, joined('s1', 1), joined('s2', 2), joined('s3', 3), started(round)];
const sounding: NewEvent[] = [...base, { type: 'VampStarted', round: 'r1', tempo: 100 }];
const held = { soundHolder: 'page-1' };
const open = (question: string): Command => ({
  type: 'OpenQuestion',
  id: 'c',
  round: 'r1',
  question,
  how: 'phones',
});
const write = (answer: unknown): Command => ({
  type: 'WriteAnswer',
  id: 'c',
  ask: 'a1',
  counter: 1,
  answer,
  heldMs: 0,
});
const wrote = (id: string, answer: unknown): NewEvent =>
  ({ type: 'AnswerWritten', student: id, ask: 'a1', counter: 1, answer }) as NewEvent;
const took = (change: SoundChange): NewEvent => ({ type: 'ChangeTook', round: 'r1', change, bar: 4 });
const echo = (of: EchoOf, ask = 'a1'): Command => ({ type: 'PlayEcho', id: 'c', ask, of });
const own = (id: string, ...events: NewEvent[]) => studentOwn(fold(events), peopleIn(events), id);

describe('R100 a question on the beat grid', () => {
  test('brings its grid to the pad, and no other does', () => {
    for (const kind of ['accents', 'stroke-grid']) {
      expect(studentCommon(fold([...base, asked('a1', `${kind}-0`)])).asking).toEqual({ kind, target: 0, grid: 'E8' });
    }
    expect(studentCommon(fold([...base, asked('a1', 'bar-count-0')])).asking).not.toHaveProperty('grid');
    expect(deskView(fold([...base, asked('a1', 'accents-0')]), peopleIn(base), LIVE).current?.asking.grid).toBe('E8');
  });

  test('takes an answer that fills it; of another length it is refused, and both are named', () => {
    const drawing = given(...base, asked('a1', 'accents-0'));
    const grid = [2, 1, 2, 1, 2, 1, 2, 1];
    expect(drawing.when(student('s1'), write(grid)).decision).toMatchObject({ events: [{ answer: grid }] });
    // A zero is one zero, however it was written.
    expect(drawing.when(student('s1'), write([-0, 1, 2, 1, 2, 1, 2, 1])).decision).toMatchObject({
      events: [{ answer: [0, 1, 2, 1, 2, 1, 2, 1] }],
    });
    expect(drawing.when(student('s1'), write('not-sure')).decision.ok).toBe(true);
    drawing.when(student('s1'), write(grid.slice(2))).refused('answer-not-readable', { found: 6, slots: 8 });
    drawing.when(student('s1'), write([...grid, ...grid])).refused('answer-not-readable', { found: 16, slots: 8 });
    drawing.when(student('s1'), write([3, ...grid.slice(1)])).refused('answer-not-readable');
    expect(fill(refusals['answer-not-readable'], { found: 6, slots: 8 })).toContain('6 slots, and the grid has 8');
    expect(fill(refusals['answer-not-readable'])).toBe('That is not an answer to this question.');
    const mute: HeardRound = played('Em D', 1, 'mute-and-open', { rhythm: true });
    const opening = given(opened, joined('s1', 1), started(mute), asked('a1', 'opened-0'));
    expect(mute.questions.map(({ id }) => id)).toContain('opened-0');
    expect(opening.when(student('s1'), write([1, 7])).decision.ok).toBe(true);
    opening.when(student('s1'), write([1, 8])).refused('answer-not-readable', { found: 9, slots: 8 });
  });

  test('what lets another answer stand fits the grid as well', () => {
    const stands = (answer: unknown): Command => ({
      type: 'LetStand',
      id: 'c',
      round: 'r1',
      question: 'accents-0',
      answer,
      stands: true,
    });
    const room = given(...base, asked('a1', 'accents-0'));
    room.when(DESK, stands([2, 1, 2, 1, 2, 1])).refused('answer-not-readable', { found: 6, slots: 8 });
    expect(room.when(DESK, stands([1, 1, 1, 1, 1, 1, 1, 2])).decision).toMatchObject({ events: [{ stands: true }] });
    const taps = Array.from({ length: 10 }, (_, tap) => tap * 500);
    room
      .when(DESK, { ...stands(taps), question: 'tempo-0' } as Command)
      .refused('message-not-readable', { what: 'taps that are to stand as right' });
  });

  test('tells how long the bar is: how it is counted is asked no more, unless it was asked before', () => {
    const drawn = [...base, asked('a1', 'accents-0'), closed('a1')];
    given(...drawn)
      .when(DESK, open('bar-count-0'), held)
      .refused('bar-told');
    const before = [...base, asked('a1', 'bar-count-0'), closed('a1'), asked('a2', 'accents-0'), closed('a2')];
    expect(given(...before).when(DESK, open('bar-count-0'), held).decision).toEqual({
      ok: true,
      events: [],
      value: { ask: 'a1' },
    });
    expect(given(...before).when(DESK, { type: 'AnswerAgain', id: 'c', ask: 'a1' }, held).decision.ok).toBe(true);
    // What was asked aloud alone is no evidence any more once the grid has told it.
    const aloud = [...base, asked('a1', 'bar-count-0', 'r1', 1, 'aloud'), asked('a2', 'accents-0'), closed('a2')];
    given(...aloud)
      .when(DESK, open('bar-count-0'), held)
      .refused('bar-told');
    // The next round has a grid of its own.
    const next = [...drawn, started({ ...round, id: 'r2', number: 2 })];
    expect(given(...next).when(DESK, { ...open('bar-count-0'), round: 'r2' } as Command, held).decision.ok).toBe(true);
  });

  test('a correction that brings another grid takes it away, and back', () => {
    const beat3 = { ...SETTINGS, beatLevel: 3 };
    const entered = (groove: string) => guitar('Em D', 1, groove, beat3, 100);
    const correct = (groove: string): Command => ({
      type: 'CorrectRound',
      id: 'c',
      round: 'r1',
      after: 0,
      chords: 'Em D',
      groove,
      tempo: 100,
      directions: null,
      pointsMayFall: false,
    });
    const asking = [opened, joined('s1', 1), started(entered(GROOVE)), asked('a1', 'accents-0')];
    const ids = (groove: string, ...events: NewEvent[]) => {
      const { decision } = given(...events).when(DESK, correct(groove));
      const event = decision.ok ? decision.events.find(({ type }) => type === 'TruthCorrected') : undefined;
      return event?.type === 'TruthCorrected' ? event.round.questions.map(({ id }) => id) : [];
    };
    expect(ids('waltz', ...asking)).not.toContain('accents-0');
    expect(given(...asking).when(DESK, correct('waltz')).decision).toMatchObject({
      events: [{ type: 'QuestionClosed' }, { type: 'TruthCorrected' }],
    });
    expect(ids('waltz', ...asking.slice(0, 3))).toContain('accents-0');
    expect(ids('boom-chick', ...asking)).toContain('accents-0');
  });
});

describe('R101 a grid that is played', () => {
  const drawn: NewEvent[] = [
    ...sounding,
    asked('a1', 'accents-0'),
    wrote('s1', [2, 0, 1, 0, 2, 0, 1, 0]),
    wrote('s2', [2, 1, 0, 0, 2, 1, 0, 0]),
    closed('a1'),
  ];
  const orderOf = (of: EchoOf, ...events: NewEvent[]) => {
    const { decision } = given(...(events.length === 0 ? drawn : events)).when(DESK, echo(of), held);
    if (!decision.ok) throw new Error(decision.reason);
    const [event] = decision.events;
    if (event?.type !== 'EchoOrdered') throw new Error('no echo');
    expect(decision.effects).toEqual([
      {
        kind: 'order',
        order: { order: 'change', round: 'r1', change: { kind: 'echo', groove: event.groove } },
      },
    ]);
    return event;
  };

  test('is a groove on muted strings: a student’s, the nearest to the middle of the class, or the right one', () => {
    const mine = orderOf({ grid: 'student', student: 's1' });
    const groove = parseGroove(mine.groove);
    expect(groove).toMatchObject({ id: 'echo-1', grid: 'E8', meter: '4/4' });
    expect(groove.slots.map(({ accent }) => accent)).toEqual([3, 0, 1, 0, 3, 0, 1, 0]);
    expect(groove.slots.map(({ stroke }) => stroke)).toEqual(
      Array.from({ length: 4 }, () => ['down', 'up-silent']).flat(),
    );
    expect(groove.slots.every(({ touch }) => touch === 'dead' || touch === 'none')).toBe(true);
    // 2, 0.5, 0.5, 0: halves go up.
    const middle = parseGroove(orderOf({ grid: 'class' }).groove);
    expect(middle.slots.map(({ accent }) => accent)).toEqual([3, 1, 1, 0, 3, 1, 1, 0]);
    const right = parseGroove(orderOf({ grid: 'right' }).groove);
    const truth = deskView(fold(drawn), peopleIn(drawn), LIVE).truth?.answer as readonly number[];
    expect(right.slots.map(({ accent }) => Math.ceil(accent / 2))).toEqual(truth);
  });

  test('pressed twice it is one', () => {
    const event = orderOf({ grid: 'student', student: 's1' });
    const { decision } = given(...drawn, event).when(DESK, echo({ grid: 'student', student: 's1' }), held);
    expect(decision).toMatchObject({
      events: [],
      effects: [{ order: { change: { kind: 'echo', groove: event.groove } } }],
    });
    expect(orderOf({ grid: 'student', student: 's2' }, ...drawn, event).groove).toContain('echo-2,');
  });

  test('nobody but that student learns whose it is, and only while it sounds', () => {
    const event = orderOf({ grid: 'student', student: 's1' });
    const sounds = [...drawn, event, took({ kind: 'echo', groove: event.groove })];
    expect(own('s1', ...drawn, event)).not.toHaveProperty('echo');
    expect(own('s1', ...sounds)?.echo).toBe(true);
    expect(own('s2', ...sounds)).not.toHaveProperty('echo');
    expect(own('s1', ...sounds, took({ kind: 'full' }))).not.toHaveProperty('echo');
    expect(own('s1', ...sounds, took({ kind: 'full' }))?.v).toBeGreaterThan(own('s1', ...sounds)?.v ?? 0);
    const host = JSON.stringify(hostView(fold(sounds), peopleIn(sounds), LIVE, 'page-1').sound);
    expect(host).toContain('echo-1');
    expect(host).not.toContain('s1');
    // Another with the same grid is told nothing either, nor is anybody of the class's or the right one.
    const twin = [...drawn.slice(0, -2), wrote('s2', [2, 0, 1, 0, 2, 0, 1, 0]), closed('a1')];
    const again = orderOf({ grid: 'student', student: 's2' }, ...twin, event);
    const second = [...twin, event, again, took({ kind: 'echo', groove: again.groove })];
    expect([own('s1', ...second)?.echo, own('s2', ...second)?.echo]).toEqual([undefined, true]);
    const all = orderOf({ grid: 'class' });
    const room = [...drawn, all, took({ kind: 'echo', groove: all.groove })];
    expect(['s1', 's2', 's3'].map((id) => own(id, ...room)?.echo)).toEqual([undefined, undefined, undefined]);
  });

  test('only of a closed question about accents, of one who drew something that sounds, and while ours sounds', () => {
    const of: EchoOf = { grid: 'student', student: 's1' };
    const room = given(...drawn);
    room.when(DESK, echo(of, 'a9'), held).refused('question-unknown');
    room.when(DESK, echo({ grid: 'student', student: 's9' }), held).refused('student-unknown');
    room.when(DESK, echo({ grid: 'student', student: 's3' }), held).refused('no-grid');
    room.when(DESK, echo(of)).refused('no-host-sound');
    room.when(student('s1'), echo(of), held).refused('not-teacher');
    given(...drawn.slice(0, -1))
      .when(DESK, echo(of), held)
      .refused('question-not-closed');
    given(...drawn, asked('a2', 'bar-count-0'))
      .when(DESK, echo(of), held)
      .refused('question-still-open');
    given(...drawn, { type: 'VampStopped', round: 'r1' })
      .when(DESK, echo(of), held)
      .refused('nothing-plays');
    given(...sounding, asked('a1', 'stroke-grid-0'), closed('a1'))
      .when(DESK, echo({ grid: 'right' }), held)
      .refused('no-grid');
    for (const answer of ['not-sure', null, [0, 0, 0, 0, 0, 0, 0, 0]]) {
      const silent = given(...sounding, asked('a1', 'accents-0'), wrote('s1', answer), closed('a1'));
      silent.when(DESK, echo(of), held).refused('no-grid');
    }
    given(...sounding, asked('a1', 'accents-0'), closed('a1'))
      .when(DESK, echo({ grid: 'class' }), held)
      .refused('no-grid');
    const own = guitar('Em D', 1, GROOVE, { ...SETTINGS, beatLevel: 3 }, 100);
    given(opened, joined('s1', 1), started(own), asked('a1', 'accents-0'), closed('a1'))
      .when(DESK, echo({ grid: 'right' }), held)
      .refused('not-played-here');
    room
      .when(DESK, { type: 'RequestChange', id: 'c', round: 'r1', change: { kind: 'echo', groove: 'x' } }, held)
      .refused('message-not-readable', { what: 'a grid is played by PlayEcho, for a question' });
  });

  test('a question that opens brings the loop back', () => {
    const sounds = [...drawn, took({ kind: 'echo', groove: 'x' })];
    expect(given(...sounds).when(DESK, open('direction-1'), held).decision).toMatchObject({
      effects: [{ order: { change: { kind: 'full' } } }],
    });
    const late: Command = { type: 'ChangeTook', id: 'c', round: 'r1', change: { kind: 'echo', groove: 'x' }, bar: 8 };
    expect(given(...drawn, asked('a2', 'direction-1')).when(HOST, late, held).decision).toMatchObject({
      effects: [{ order: { change: { kind: 'full' } } }],
    });
  });

  test('the middle grid of the class stands with the spread', () => {
    const spread = deskView(fold(drawn), peopleIn(drawn), LIVE).spread;
    expect(spread?.meanGrid).toEqual([2, 0.5, 0.5, 0, 2, 0.5, 0.5, 0]);
    const nobody = [...sounding, asked('a1', 'accents-0'), closed('a1'), shown('a1')];
    expect(deskView(fold(nobody), peopleIn(nobody), LIVE).spread?.meanGrid).toBeNull();
  });
});

describe('R102 hands that were seen', () => {
  const tick = (beat: number, played = true, of = 's1'): Command => ({
    type: 'TickHand',
    id: 'c',
    student: of,
    beat,
    played,
  });
  const ticked = (beat: number, played = true): NewEvent => ({ type: 'HandTicked', student: 's1', beat, played });

  test('are ticked once, and can be taken back', () => {
    const room = given(...base);
    room.when(DESK, tick(3)).gives({ ok: true, events: [ticked(3)] as never });
    room.when(DESK, tick(3, false)).gives({ ok: true, events: [] });
    given(...base, ticked(3))
      .when(DESK, tick(3))
      .gives({ ok: true, events: [] });
    given(...base, ticked(3))
      .when(DESK, tick(3, false))
      .gives({ ok: true, events: [ticked(3, false)] as never });
    room.when(DESK, tick(9)).refused('beat-level-unknown', { found: 9, low: 1, high: 8 });
    room.when(DESK, tick(1.5)).refused('beat-level-unknown', { found: 1.5, low: 1, high: 8 });
    room.when(DESK, tick(3, true, 's9')).refused('student-unknown');
    room.when(student('s1'), tick(3)).refused('not-teacher');
  });

  test('stand on the desk alone, in order', () => {
    const events = [...base, ticked(3), ticked(1), ticked(8), ticked(8, false)];
    expect(deskView(fold(events), peopleIn(events), LIVE).students.map(({ hands }) => hands)).toEqual([[1, 3], [], []]);
    expect(JSON.stringify(own('s1', ...events))).not.toContain('hands');
  });
});

test('R102 a report says where a student stands on the beat level of the class', () => {
  const level5: NewEvent = { type: 'SettingsChanged', settings: { beatLevel: 5 } };
  const events = [
    ...base,
    level5,
    asked('a1', 'drive-0'),
    wrote('s1', 'driving'),
    wrote('s2', 'relaxed'),
    wrote('s3', 'not-sure'),
    closed('a1'),
  ];
  const beatOf = (...more: NewEvent[]) => {
    const all = [...events, ...more];
    return deskView(fold(all), peopleIn(all), LIVE).reports.map(({ beat }) => beat);
  };
  expect(beatOf()).toEqual([
    { right: 1, of: 1, needs: [5, 6], played: false },
    { right: 0, of: 1, needs: [5, 6], played: false },
    { right: 0, of: 0, needs: [5, 6], played: false },
  ]);
  expect(beatOf({ type: 'HandTicked', student: 's1', beat: 5, played: true }).map(({ played }) => played)).toEqual([
    true,
    false,
    false,
  ]);
  // Of another level other kinds count.
  expect(beatOf({ type: 'SettingsChanged', settings: { beatLevel: 6 } })[0]).toMatchObject({ right: 0, of: 0 });
  // What was struck is evidence of nothing.
  const struck: NewEvent = { type: 'QuestionStruck', round: 'r1', question: 'drive-0', struck: true };
  expect(beatOf(struck).map(({ of }) => of)).toEqual([0, 0, 0]);
});

test('R2 there are eight beat levels', () => {
  const set = (beatLevel: number): Command => ({ type: 'ChangeSettings', id: 'c', settings: { beatLevel } });
  for (const wrong of [0, 9, 2.5]) {
    given(opened).when(DESK, set(wrong)).refused('beat-level-unknown', { found: wrong, low: 1, high: 8 });
  }
  expect(given(opened).when(DESK, set(8)).decision).toMatchObject({ events: [{ settings: { beatLevel: 8 } }] });
  given(opened).when(DESK, set(1)).gives({ ok: true, events: [] });
});
