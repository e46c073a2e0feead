import { describe, expect, test } from 'vitest';
import type { Command } from '../../../server/protocol/messages.ts';
import type { NewEvent } from '../../../server/rooms/events.ts';
import {
  asked,
  closed,
  DESK,
  given,
  guitar,
  joined,
  moment,
  opened,
  shown,
  started,
  student,
} from '../../support/given.ts';

const room: NewEvent[] = [opened, joined('s1', 1), started(guitar('Em D'))];
const open = (question: string, round = 'r1'): Command => ({
  type: 'OpenQuestion',
  id: 'c',
  round,
  question,
  how: 'phones',
});
const onAsk = (type: 'CloseQuestion' | 'ShowSpread' | 'ShowAnswer' | 'AnswerAgain', ask = 'a1'): Command => ({
  type,
  id: 'c',
  ask,
});
const write = (answer: unknown, changed: { ask?: string; counter?: number; heldMs?: number } = {}): Command => ({
  type: 'WriteAnswer',
  id: 'c',
  ask: 'a1',
  counter: 1,
  heldMs: 0,
  answer,
  ...changed,
});
const wrote = (answer: 'up' | 'down' | 'same' | 'not-sure' | null, counter = 1): NewEvent => ({
  type: 'AnswerWritten',
  student: 's1',
  ask: 'a1',
  counter,
  answer,
});

describe('questions', () => {
  test('R19 any question of the running round opens, one at a time', () => {
    given(...room)
      .when(DESK, open('keys-0'))
      .gives({ ok: true, events: [asked('a1', 'keys-0')], value: { ask: 'a1' } });
    given(...room, asked('a1', 'keys-0'), closed('a1'))
      .when(DESK, open('direction-1'))
      .gives({ ok: true, events: [asked('a2', 'direction-1')], value: { ask: 'a2' } });
    given(...room, asked('a1', 'keys-0'))
      .when(DESK, open('direction-1'))
      .refused('question-still-open');
  });

  test('R20 everything takes effect once', () => {
    const opening = given(...room, asked('a1', 'direction-1'));
    opening.when(DESK, open('direction-1')).gives({ ok: true, events: [], value: { ask: 'a1' } });
    opening.when(DESK, onAsk('CloseQuestion')).gives({ ok: true, events: [closed('a1')] });
    const after = given(...room, asked('a1', 'direction-1'), closed('a1'));
    after.when(DESK, onAsk('CloseQuestion')).gives({ ok: true, events: [] });
    after.when(DESK, onAsk('ShowSpread')).gives({ ok: true, events: [{ type: 'SpreadShown', ask: 'a1' }] });
    after.when(DESK, onAsk('ShowAnswer')).gives({ ok: true, events: [shown('a1')] });
    const done = given(
      ...room,
      asked('a1', 'direction-1'),
      closed('a1'),
      { type: 'SpreadShown', ask: 'a1' },
      shown('a1'),
    );
    done.when(DESK, onAsk('ShowSpread')).gives({ ok: true, events: [] });
    done.when(DESK, onAsk('ShowAnswer')).gives({ ok: true, events: [] });
    done.when(DESK, open('direction-1')).gives({ ok: true, events: [], value: { ask: 'a1' } });
  });

  test('R21 nothing is shown of an open question, nor while another is open', () => {
    const opening = given(...room, asked('a1', 'direction-1'));
    opening.when(DESK, onAsk('ShowSpread')).refused('question-not-closed');
    opening.when(DESK, onAsk('ShowAnswer')).refused('question-not-closed');
    const other = given(...room, asked('a1', 'direction-1'), closed('a1'), asked('a2', 'keys-0'));
    other.when(DESK, onAsk('ShowSpread')).refused('question-still-open');
    other.when(DESK, onAsk('ShowAnswer')).refused('question-still-open');
  });

  test('R22 a second sheet of a closed question', () => {
    const after = [...room, asked('a1', 'direction-1'), closed('a1')];
    const second = asked('a2', 'direction-1', 'r1', 2);
    given(...after)
      .when(DESK, onAsk('AnswerAgain'))
      .gives({ ok: true, events: [second], value: { ask: 'a2' } });
    given(...after, second)
      .when(DESK, onAsk('AnswerAgain'))
      .gives({ ok: true, events: [], value: { ask: 'a2' } });
    given(...after, second)
      .when(DESK, onAsk('AnswerAgain', 'a2'))
      .refused('question-not-closed');
    given(...room, asked('a1', 'direction-1'))
      .when(DESK, onAsk('AnswerAgain'))
      .refused('question-not-closed');
    given(...after, shown('a1'))
      .when(DESK, onAsk('AnswerAgain'))
      .refused('question-shown');
    given(...after, asked('a2', 'keys-0'))
      .when(DESK, onAsk('AnswerAgain'))
      .refused('question-still-open');
  });

  test('R23 what there is not, or what is over, is refused by name', () => {
    given(opened).when(DESK, open('keys-0')).refused('no-round');
    given(...room)
      .when(DESK, open('keys-0', 'r2'))
      .refused('round-unknown');
    given(...room)
      .when(DESK, open('strokes-0'))
      .refused('question-unknown');
    for (const type of ['CloseQuestion', 'ShowSpread', 'ShowAnswer', 'AnswerAgain'] as const) {
      given(...room)
        .when(DESK, onAsk(type, 'a9'))
        .refused('question-unknown');
    }
    const over = given(...room, asked('a1', 'keys-0'), closed('a1'), started(guitar('G C', 2)));
    over.when(DESK, open('direction-1', 'r1')).refused('round-unknown');
    for (const type of ['ShowSpread', 'ShowAnswer', 'AnswerAgain'] as const) {
      over.when(DESK, onAsk(type)).refused('round-unknown');
    }
    over.when(DESK, onAsk('CloseQuestion')).gives({ ok: true, events: [] });
    given(...room, { type: 'LessonEnded' })
      .when(DESK, open('keys-0'))
      .refused('no-round');
  });
});

describe('answers', () => {
  const asking = [...room, asked('a1', 'direction-1')];

  test('R24 written, changed and taken back until the close', () => {
    given(...asking)
      .when(student('s1'), write('up'))
      .gives({ ok: true, events: [wrote('up')], value: { counter: 1, answer: 'up' } });
    const change = given(...asking, wrote('up'));
    change
      .when(student('s1'), write('down', { counter: 2 }))
      .gives({ ok: true, events: [wrote('down', 2)], value: { counter: 2, answer: 'down' } });
    change
      .when(student('s1'), write(null, { counter: 5 }))
      .gives({ ok: true, events: [wrote(null, 5)], value: { counter: 5, answer: null } });
  });

  test('R25 the highest counter wins; repeats and older ones are told what counts', () => {
    const written = given(...asking, wrote('down', 4));
    for (const counter of [1, 3, 4]) {
      written
        .when(student('s1'), write('up', { counter }))
        .gives({ ok: true, events: [], value: { counter: 4, answer: 'down' } });
    }
    const over = given(...asking, wrote('down', 4), closed('a1'), shown('a1'), { type: 'RoomClosed' });
    over
      .when(student('s1'), write('down', { counter: 4 }))
      .gives({ ok: true, events: [], value: { counter: 4, answer: 'down' } });
  });

  test('R26 after the close an answer counts if it was written before it, by the monotonic clock', () => {
    // Opened 300 ms and closed 400 ms after the start, a second for the way, now is 5,000 ms.
    const late = given(...asking, closed('a1'));
    late.when(student('s1'), write('up', { heldMs: 3_599 })).refused('too-late');
    late
      .when(student('s1'), write('up', { heldMs: 3_600 }))
      .gives({ ok: true, events: [wrote('up')], value: { counter: 1, answer: 'up' } });
    late.when(student('s1'), write('up')).refused('too-late');
    // Nobody wrote before there was a question.
    expect(late.when(student('s1'), write('up', { heldMs: 4_700 })).decision.ok).toBe(true);
    for (const heldMs of [4_701, 1e9]) late.when(student('s1'), write('up', { heldMs })).refused('too-late');
    // A wall clock that was put forward by an hour changes nothing within one run.
    const ahead = { now: { ...moment(5_000), at: moment(5_000).at + 3_600_000 } };
    late.when(student('s1'), write('up', { heldMs: 4_600 }), ahead).gives({
      ok: true,
      events: [wrote('up')],
      value: { counter: 1, answer: 'up' },
    });
  });

  test('R26 after a restart the wall clock judges', () => {
    const late = given(...asking, closed('a1'));
    const now = { at: moment(5_000).at, mono: 3, boot: 'boot-2' };
    for (const heldMs of [3_599, 4_701]) late.when(student('s1'), write('up', { heldMs }), { now }).refused('too-late');
    for (const heldMs of [3_600, 4_700]) {
      expect(late.when(student('s1'), write('up', { heldMs }), { now }).decision.ok).toBe(true);
    }
  });

  test('R26 what was in the air at the close counts', () => {
    const late = given(...asking, closed('a1'));
    expect(late.when(student('s1'), write('up'), { now: moment(1_400) }).decision.ok).toBe(true);
    late.when(student('s1'), write('up'), { now: moment(1_401) }).refused('too-late');
    given(...asking, closed('a1'), shown('a1'))
      .when(student('s1'), write('up'), { now: moment(600) })
      .refused('question-shown');
  });

  test('R27 the spread ends the grace, for its sheet and those before it', () => {
    const spread = (ask: string): NewEvent => ({ type: 'SpreadShown', ask });
    const second = asked('a2', 'direction-1', 'r1', 2);
    const late = (ask: string, ...events: readonly NewEvent[]) =>
      given(...asking, closed('a1'), ...events).when(student('s1'), write('up', { ask }), { now: moment(900) });
    late('a1', spread('a1')).refused('too-late');
    late('a1', second, closed('a2'), spread('a2')).refused('too-late');
    expect(late('a2', spread('a1'), second).decision.ok).toBe(true);
    expect(late('a2', spread('a1'), second, closed('a2')).decision.ok).toBe(true);
    late('a2', second, closed('a2'), spread('a2')).refused('too-late');
  });

  test('R27 showing ends the grace, for every sheet', () => {
    const after = [...asking, closed('a1'), asked('a2', 'direction-1', 'r1', 2), closed('a2')];
    expect(given(...after).when(student('s1'), write('up', { heldMs: 4_650 })).decision.ok).toBe(true);
    const revealed = given(...after, shown('a2'));
    revealed.when(student('s1'), write('up', { heldMs: 4_650 })).refused('question-shown');
    revealed.when(student('s1'), write('up', { ask: 'a2', heldMs: 4_450 })).refused('question-shown');
  });

  test('R28 who came in after the close cannot answer that sheet', () => {
    const after = given(...asking, closed('a1'), joined('s2', 2));
    after.when(student('s2'), write('up', { heldMs: 100_000 })).refused('too-late');
    const during = given(...asking, joined('s2', 2));
    expect(during.when(student('s2'), write('up')).decision.ok).toBe(true);
  });

  test.each([['sideways'], [0], [{}], [[]], [true]])('R29 %j is no answer to a direction', (answer) => {
    given(...asking)
      .when(student('s1'), write(answer))
      .refused('answer-not-readable');
  });

  test('R29 not sure is an answer; a question that there is not is named', () => {
    given(...asking)
      .when(student('s1'), write('not-sure'))
      .gives({ ok: true, events: [wrote('not-sure')], value: { counter: 1, answer: 'not-sure' } });
    given(...asking)
      .when(student('s1'), write('up', { ask: 'a9' }))
      .refused('question-unknown');
  });

  test('R30 cannot hear: once a sheet, while it is open', () => {
    const hear = (ask: string): Command => ({ type: 'CannotHear', id: 'c', ask });
    const signalled: NewEvent = { type: 'HearingSignalled', student: 's1', ask: 'a1' };
    given(...asking)
      .when(student('s1'), hear('a1'))
      .gives({ ok: true, events: [signalled] });
    given(...asking, signalled)
      .when(student('s1'), hear('a1'))
      .gives({ ok: true, events: [] });
    given(...asking, closed('a1'))
      .when(student('s1'), hear('a1'))
      .refused('question-not-open');
    given(...asking)
      .when(student('s1'), hear('a7'))
      .refused('question-unknown');
  });

  test('R37 in a closed room nothing happens any more, but students can be renamed and erased', () => {
    const over = given(...asking, closed('a1'), { type: 'RoomClosed' });
    over.when(student('s1'), write('up', { heldMs: 4_900 })).refused('room-ended');
    over.when(DESK, open('keys-0')).refused('room-ended');
    over.when(student('s1'), { type: 'CannotHear', id: 'c', ask: 'a1' }).refused('room-ended');
    expect(over.when(DESK, { type: 'EraseStudent', id: 'c', student: 's1' }).decision.ok).toBe(true);
    expect(over.when(DESK, { type: 'RenameStudent', id: 'c', student: 's1', name: 'Bo' }).decision.ok).toBe(true);
  });
});
