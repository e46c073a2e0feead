import { describe, expect, test } from 'vitest';
import type { AskHow, Command, SoundChange } from '../../../server/protocol/messages.ts';
import type { Sender } from '../../../server/rooms/commands.ts';
import type { NewEvent } from '../../../server/rooms/events.ts';
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
  shown,
  started,
  student,
} from '../../support/given.ts';

const base: NewEvent[] = [opened, joined('s1', 1), started(played('Em D'))];
const begun: NewEvent = { type: 'VampStarted', round: 'r1', tempo: 100 };
const sounding: NewEvent[] = [...base, begun];
const held = { soundHolder: 'page-1' };
const open = (question: string, how: AskHow = 'phones'): Command => ({
  type: 'OpenQuestion',
  id: 'c',
  round: 'r1',
  question,
  how,
});
const onAsk = (type: 'CloseQuestion' | 'ShowSpread' | 'ShowAnswer' | 'AnswerAgain', ask = 'a1'): Command => ({
  type,
  id: 'c',
  ask,
});
const took = (change: SoundChange): NewEvent => ({ type: 'ChangeTook', round: 'r1', change, bar: 4 });
const wanted = (change: SoundChange): Command => ({ type: 'RequestChange', id: 'c', round: 'r1', change });
const ordered = (change: SoundChange) => [{ kind: 'order', order: { order: 'change', round: 'r1', change } }];
const silence: SoundChange = { kind: 'silence' };
const awaited: NewEvent = { type: 'MemoryAwaited', round: 'r1', question: 'quality-1' };
const dropped: NewEvent = { type: 'MemoryDropped', round: 'r1' };

describe('what sounds while a question is asked', () => {
  test.each<[string, SoundChange]>([
    ['quality-0', { kind: 'hold', slot: 0 }],
    ['quality-1', { kind: 'hold', slot: 1 }],
    ['root-0', { kind: 'hold', slot: 0 }],
    ['distance-1', { kind: 'pair', slot: 1 }],
    ['numeral-0', { kind: 'soft' }],
    ['keys-0', { kind: 'soft' }],
    ['settler-1', { kind: 'settler', index: 1 }],
  ])('R66 opening %s orders %j, once', (question, change) => {
    expect(given(...sounding).when(DESK, open(question), held).decision).toMatchObject({ effects: ordered(change) });
    const there = given(...sounding, took(change)).when(DESK, open(question), held).decision;
    expect(there).not.toHaveProperty('effects');
    expect(given(...base).when(DESK, open(question), held).decision).not.toHaveProperty('effects');
    const still: NewEvent = { type: 'SettingsChanged', settings: { soundFollows: false } };
    expect(given(...sounding, still).when(DESK, open(question), held).decision).not.toHaveProperty('effects');
  });

  test('R66 aloud as well; answering again brings it back; closing changes nothing', () => {
    const hold = ordered({ kind: 'hold', slot: 0 });
    expect(given(...sounding).when(DESK, open('quality-0', 'aloud'), held).decision).toMatchObject({ effects: hold });
    const after = given(...sounding, asked('a1', 'quality-0'), closed('a1'));
    expect(after.when(DESK, onAsk('AnswerAgain'), held).decision).toMatchObject({ effects: hold });
    const { decision } = given(...sounding, asked('a1', 'quality-0')).when(DESK, onAsk('CloseQuestion'), held);
    expect(decision).not.toHaveProperty('effects');
  });

  test('R59 what would hide the answer is refused, and brought back where it sounds', () => {
    const still: NewEvent = { type: 'SettingsChanged', settings: { soundFollows: false } };
    for (const [question, change, reason] of [
      ['strokes-0', { kind: 'bass-alone' }, 'groove-asked'],
      ['strokes-0', { kind: 'root-alone', slot: 0 }, 'groove-asked'],
      ['quality-0', { kind: 'muted' }, 'chord-asked'],
      ['keys-0', { kind: 'muted' }, 'chord-asked'],
    ] as const) {
      given(...sounding, asked('a1', question))
        .when(DESK, wanted(change), held)
        .refused(reason);
      const quiet = given(...sounding, still, took(change)).when(DESK, open(question), held).decision;
      expect(quiet).toMatchObject({ effects: ordered({ kind: 'full' }) });
      const late: Command = { type: 'ChangeTook', id: 'c', round: 'r1', change, bar: 4 };
      const brought = given(...sounding, still, asked('a1', question)).when(HOST, late, held).decision;
      expect(brought).toMatchObject({ effects: ordered({ kind: 'full' }) });
    }
    const muted = given(...sounding, asked('a1', 'strokes-0')).when(DESK, wanted({ kind: 'muted' }), held);
    expect(muted.decision.ok).toBe(true);
  });

  test('R67 slots and settlers of the round; both readings are not asked for by themselves', () => {
    const room = given(...sounding);
    room.when(DESK, wanted({ kind: 'pair', slot: 0 }), held).refused('message-not-readable', { what: 'slot 0 of 2' });
    room.when(DESK, wanted({ kind: 'root-alone', slot: 2 }), held).refused('message-not-readable', {
      what: 'slot 2 of 2',
    });
    room.when(DESK, wanted({ kind: 'settler', index: 9 }), held).refused('settler-unknown', { found: 10 });
    const both: SoundChange = { kind: 'both', ask: 'a1', wrong: [], right: [] };
    expect(room.when(DESK, wanted(both), held).decision).toMatchObject({ reason: 'message-not-readable' });
    for (const change of [
      { kind: 'pair', slot: 1 },
      { kind: 'root-alone', slot: 0 },
      { kind: 'settler', index: 1 },
      { kind: 'again' },
      { kind: 'soft' },
      { kind: 'muted' },
      silence,
    ] as const) {
      expect(room.when(DESK, wanted(change), held).decision).toMatchObject({ effects: ordered(change) });
    }
  });

  test('R33 beginning again is a fact each time, and the whole sounds', () => {
    const again: Command = { type: 'ChangeTook', id: 'c', round: 'r1', change: { kind: 'again' }, bar: 4 };
    const room = [...sounding, took({ kind: 'muted' }), took({ kind: 'again' })];
    expect(fold(room).sound.change).toEqual({ kind: 'full' });
    given(...room)
      .when(HOST, again, held)
      .gives({ ok: true, events: [] });
    expect(given(...room).when(HOST, { ...again, bar: 8 }, held).decision).toMatchObject({ events: [{ bar: 8 }] });
  });
});

describe('R69 from memory', () => {
  test('waits for two silent bars, then opens', () => {
    given(...sounding)
      .when(DESK, open('quality-1', 'memory'), held)
      .gives({ ok: true, events: [awaited], effects: ordered(silence) } as never);
    const waiting = given(...sounding, awaited);
    // Pressed again, the order goes out again.
    waiting
      .when(DESK, open('quality-1', 'memory'), held)
      .gives({ ok: true, events: [], effects: ordered(silence) } as never);
    const opens = asked('a1', 'quality-1', 'r1', 1, 'memory');
    const silent: Command = { type: 'ChangeTook', id: 'c', round: 'r1', change: silence, bar: 4 };
    waiting.when(HOST, silent, held).gives({ ok: true, events: [took(silence)] });
    const bars = { type: 'SilenceKept', round: 'r1' } as const;
    const quiet = given(...sounding, awaited, took(silence));
    quiet.when(HOST, { ...bars, id: 'c' }, held).gives({ ok: true, events: [bars, opens] });
    // Told once more, or where nothing is silent, it opens nothing.
    const kept = given(...sounding, awaited, took(silence), bars, opens);
    kept.when(HOST, { ...bars, id: 'c' }, held).gives({ ok: true, events: [] });
    waiting.when(HOST, { ...bars, id: 'c' }, held).refused('nothing-plays');
    const elsewhere: Sender = { role: 'host', page: 'page-2' };
    quiet.when(elsewhere, { ...bars, id: 'c' }, held).refused('sound-held-elsewhere');
    const stopped: NewEvent = { type: 'VampStopped', round: 'r1' };
    waiting.when(HOST, { id: 'c', ...stopped }, held).gives({ ok: true, events: [stopped, opens] });
    waiting.when(DESK, { type: 'RequestStop', id: 'c' }).gives({ ok: true, events: [stopped, opens] });
    // Where the last news is of the round before, the question of this one opens all the same.
    const next = { ...awaited, round: 'r2' } as NewEvent;
    given(...sounding, started(played('G C', 2)), next)
      .when(HOST, { id: 'c', ...stopped }, held)
      .gives({ ok: true, events: [stopped, { ...opens, round: 'r2' } as NewEvent] });
    expect(deskView(fold([...sounding, awaited]), peopleIn(base), LIVE).awaited).toBe('quality-1');
    const state = fold([...sounding, awaited, took(silence), opens]);
    expect(state.awaited).toBeNull();
    expect(studentCommon(state)).toMatchObject({ phase: 'open', memory: true });
  });

  test('opens at once where nothing of ours is heard', () => {
    const at = (events: readonly NewEvent[], round = 'r1') =>
      given(...events).when(DESK, { ...open('quality-1', 'memory'), round } as Command, held).decision;
    const opens = (round = 'r1') => ({
      ok: true,
      events: [asked('a1', 'quality-1', round, 1, 'memory')],
      value: { ask: 'a1' },
    });
    // Whatever was ordered and has not been told of yet is taken back.
    const stop = [{ kind: 'order', order: { order: 'stop' } }];
    expect(at(base)).toEqual({ ...opens(), effects: stop });
    expect(at([opened, started(guitar('Em D'))])).toEqual({ ...opens(), effects: stop });
    const bars: NewEvent = { type: 'SilenceKept', round: 'r1' };
    expect(at([...sounding, took(silence), bars])).toEqual({ ...opens(), effects: ordered(silence) });
    // Silent for less than two bars, it waits; so it does once something has sounded again.
    for (const events of [[took(silence)], [took(silence), bars, took({ kind: 'full' }), took(silence)]]) {
      expect(at([...sounding, ...events])).toMatchObject({ events: [awaited], effects: ordered(silence) });
    }
    expect(given(...base).when(DESK, open('quality-1', 'memory')).decision).toEqual(opens());
    // What still sounds of the round before is on its way to an end.
    expect(at([...sounding, started(played('G C', 2))], 'r2')).toEqual({ ...opens('r2'), effects: stop });
  });

  test('no settler: it sounds as it is asked, and never before', () => {
    for (const events of [base, sounding]) {
      given(...events)
        .when(DESK, open('settler-0', 'memory'), held)
        .refused('settler-from-memory');
      for (const how of ['phones', 'aloud'] as const) {
        expect(given(...events).when(DESK, open('settler-0', how), held).decision).toMatchObject({ ok: true });
      }
    }
  });

  test('another sound, another question or another round ends the wait', () => {
    const waiting = given(...sounding, awaited);
    expect(waiting.when(DESK, wanted({ kind: 'full' }), held).decision).toMatchObject({
      events: [dropped],
      effects: ordered({ kind: 'full' }),
    });
    expect(waiting.when(DESK, { type: 'RequestPlay', id: 'c', round: 'r1' }, held).decision).toMatchObject({
      events: [dropped],
    });
    for (const change of [silence, { kind: 'tempo', tempo: 90 }] as const) {
      expect(waiting.when(DESK, wanted(change), held).decision).toMatchObject({ events: [] });
    }
    // The silence that is on its way is called off by what the question wants, even where that sounds already.
    expect(waiting.when(DESK, open('direction-1'), held).decision).toMatchObject({
      events: [asked('a1', 'direction-1')],
      effects: ordered({ kind: 'full' }),
    });
    expect(fold([...sounding, awaited, dropped]).awaited).toBeNull();
    expect(fold([...sounding, awaited, asked('a1', 'direction-1')]).awaited).toBeNull();
    expect(fold([...sounding, awaited, started(played('G C', 2))]).awaited).toBeNull();
    // A vamp that begins anew is brought to silence as well.
    const anew: Command = { type: 'VampStarted', id: 'c', round: 'r1', tempo: 90 };
    expect(waiting.when(HOST, anew, held).decision).toMatchObject({ effects: ordered(silence) });
  });
});

describe('R70 aloud', () => {
  const aloud = asked('a1', 'direction-1', 'r1', 1, 'aloud');
  const hands = [...base, aloud];

  test('no phone answers, and the answer can be shown at once', () => {
    given(...base)
      .when(DESK, open('direction-1', 'aloud'))
      .gives({ ok: true, events: [aloud], value: { ask: 'a1' } });
    const room = given(...hands);
    const write: Command = { type: 'WriteAnswer', id: 'c', ask: 'a1', counter: 1, answer: 'up', heldMs: 0 };
    room.when(student('s1'), write).refused('question-not-open');
    room.when(student('s1'), { type: 'CannotHear', id: 'c', ask: 'a1' }).refused('question-not-open');
    room.when(DESK, onAsk('ShowSpread')).refused('asked-aloud');
    room.when(DESK, onAsk('ShowAnswer')).gives({ ok: true, events: [shown('a1')] });
    room.when(DESK, open('direction-1', 'aloud')).gives({ ok: true, events: [], value: { ask: 'a1' } });
    expect(room.when(DESK, open('keys-0')).decision).toMatchObject({ events: [asked('a2', 'keys-0')] });
  });

  test('all see the question, nobody is silent, nothing is evidence', () => {
    const state = fold(hands);
    const people = peopleIn(base);
    expect(studentCommon(state)).toMatchObject({ phase: 'aloud', ask: 'a1', asking: { kind: 'direction' } });
    expect(studentOwn(state, people, 's1')).toMatchObject({ ask: 'a1', answer: null });
    const desk = deskView(state, people, LIVE);
    expect(desk).toMatchObject({ handsOf: 0, spread: null, topWrong: null, reports: [], breakdown: [] });
    expect(desk.current).toMatchObject({ status: 'closed', aloud: true, memory: false });
    const end = fold([...hands, shown('a1'), { type: 'LessonEnded' }]);
    expect(studentOwn(end, people, 's1')?.lesson).toEqual({ right: 0, part: 0, of: 0 });
    expect(hostView(end, people, LIVE, 'page-1').breakdown).toEqual([]);
    expect(studentCommon(fold([...hands, shown('a1')]))).toMatchObject({ phase: 'shown', truth: { key: 'up' } });
  });

  test('it may still be asked on the phones, as a first sheet', () => {
    const first = asked('a2', 'direction-1');
    for (const command of [open('direction-1'), onAsk('AnswerAgain')]) {
      given(...hands)
        .when(DESK, command)
        .gives({ ok: true, events: [first], value: { ask: 'a2' } });
      given(...hands, first)
        .when(DESK, command)
        .gives({ ok: true, events: [], value: { ask: 'a2' } });
    }
    const second = given(...hands, first, closed('a2')).when(DESK, onAsk('AnswerAgain', 'a2')).decision;
    expect(second).toMatchObject({ events: [{ sheet: 2, how: 'phones' }] });
    given(...hands, shown('a1'))
      .when(DESK, open('direction-1'))
      .gives({ ok: true, events: [], value: { ask: 'a1' } });
  });
});

test('R22 no second answer once the class has seen how the first ones fell', () => {
  const seen: NewEvent[] = [...base, asked('a1', 'keys-0'), closed('a1'), { type: 'SpreadShown', ask: 'a1' }];
  given(...seen)
    .when(DESK, onAsk('AnswerAgain'))
    .refused('spread-seen');
  given(...seen, shown('a1'))
    .when(DESK, onAsk('AnswerAgain'))
    .refused('question-shown');
  const twice: NewEvent[] = [
    ...base,
    asked('a1', 'keys-0'),
    closed('a1'),
    asked('a2', 'keys-0', 'r1', 2),
    closed('a2'),
  ];
  given(...twice, { type: 'SpreadShown', ask: 'a1' })
    .when(DESK, onAsk('AnswerAgain', 'a2'))
    .refused('spread-seen');
});
