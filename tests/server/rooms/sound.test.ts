import { describe, expect, test } from 'vitest';
import type { Command, SoundChange } from '../../../server/protocol/messages.ts';
import type { NewEvent } from '../../../server/rooms/events.ts';
import { asked, closed, DESK, fold, given, guitar, HOST, opened, played, started } from '../../support/given.ts';

const round = started(played('Em D'));
const sounding: NewEvent[] = [opened, round, { type: 'VampStarted', round: 'r1', tempo: 100 }];
const held = { soundHolder: 'page-1' };
const elsewhere = { soundHolder: 'page-2' };
const change = (change: SoundChange): Command => ({ type: 'RequestChange', id: 'c', round: 'r1', change });
const took = (change: SoundChange): Command => ({ type: 'ChangeTook', id: 'c', round: 'r1', change, bar: 4 });
const vamp = (type: 'VampStarted' | 'VampStopped', round = 'r1', tempo = 100): Command =>
  type === 'VampStarted' ? { type, id: 'c', round, tempo } : { type, id: 'c', round };
const orders = (order: object) => ({ ok: true as const, events: [], effects: [{ kind: 'order', order }] });

describe('sound', () => {
  test('R31 one page holds the sound; another must ask to take it over', () => {
    const hold = (takeOver: boolean): Command => ({ type: 'HoldSound', id: 'c', takeOver });
    const holds = { ok: true as const, events: [], effects: [{ kind: 'hold-sound' as const, page: 'page-1' }] };
    given(opened).when(HOST, hold(false)).gives(holds);
    given(opened).when(HOST, hold(false), held).gives(holds);
    given(opened).when(HOST, hold(false), elsewhere).refused('sound-held-elsewhere');
    given(opened).when(HOST, hold(true), elsewhere).gives(holds);
  });

  test('R32 playing is ordered of the page that holds the sound', () => {
    const play = (round = 'r1'): Command => ({ type: 'RequestPlay', id: 'c', round });
    expect(given(opened, round).when(DESK, play(), held).decision).toEqual(orders({ order: 'play', round: 'r1' }));
    given(opened, round).when(DESK, play()).refused('no-host-sound');
    given(opened, started(guitar('Em D')))
      .when(DESK, play(), held)
      .refused('nothing-plays');
    given(opened).when(DESK, play(), held).refused('no-round');
    given(opened, round).when(DESK, play('r2'), held).refused('round-unknown');
  });

  test('R32 stopping is ordered of the page that holds the sound; without one, what was taken for sounding has stopped', () => {
    const stop: Command = { type: 'RequestStop', id: 'c' };
    expect(given(...sounding).when(DESK, stop, held).decision).toEqual(orders({ order: 'stop' }));
    given(...sounding)
      .when(DESK, stop)
      .gives({ ok: true, events: [{ type: 'VampStopped', round: 'r1' }] });
    given(opened, round).when(DESK, stop).gives({ ok: true, events: [] });
  });

  test('R32 a change needs a sound', () => {
    const full = change({ kind: 'full' });
    expect(given(...sounding).when(DESK, full, held).decision).toEqual(
      orders({ order: 'change', round: 'r1', change: { kind: 'full' } }),
    );
    given(opened, round).when(DESK, full, held).refused('nothing-plays');
    given(...sounding)
      .when(DESK, full)
      .refused('no-host-sound');
    given(opened).when(DESK, full, held).refused('no-round');
  });

  test('R33 the vamp started', () => {
    const fact: NewEvent = { type: 'VampStarted', round: 'r1', tempo: 100 };
    given(opened, round)
      .when(HOST, vamp('VampStarted'), held)
      .gives({ ok: true, events: [fact] });
    given(...sounding)
      .when(HOST, vamp('VampStarted'), held)
      .gives({ ok: true, events: [] });
    given(...sounding)
      .when(HOST, vamp('VampStarted', 'r1', 90), held)
      .gives({ ok: true, events: [{ ...fact, tempo: 90 }] });
    given(opened, round).when(HOST, vamp('VampStarted'), elsewhere).refused('sound-held-elsewhere');
    given(opened, round).when(HOST, vamp('VampStarted', 'r2'), held).refused('round-unknown');
    given(opened, started(guitar('Em D')))
      .when(HOST, vamp('VampStarted'), held)
      .refused('nothing-plays');
  });

  test.each<SoundChange>([
    { kind: 'muted' },
    { kind: 'feel', feel: 'driving' },
    { kind: 'climb', to: 120 },
    { kind: 'band', kit: true, bass: false },
  ])('R93 a page that came anew plays as a round begins, not as it was changed: %j', (change) => {
    const fact: NewEvent = { type: 'VampStarted', round: 'r1', tempo: 100 };
    const changed: NewEvent[] = [...sounding, { type: 'ChangeTook', round: 'r1', change, bar: 3 }];
    given(...changed)
      .when(HOST, vamp('VampStarted'), held)
      .gives({ ok: true, events: [fact] });
    expect(fold([...changed, fact]).sound).toEqual(fold(sounding).sound);
  });

  test.each<[SoundChange, SoundChange]>([
    [{ kind: 'bass-alone' }, { kind: 'full' }],
    [
      { kind: 'hold', slot: 1 },
      { kind: 'hold', slot: 0 },
    ],
    [
      { kind: 'tempo', tempo: 80 },
      { kind: 'tempo', tempo: 81 },
    ],
  ])('R33 the change %j took; once', (one, other) => {
    const fact: NewEvent = { type: 'ChangeTook', round: 'r1', change: one, bar: 4 };
    given(...sounding)
      .when(HOST, took(one), held)
      .gives({ ok: true, events: [fact] });
    given(...sounding, fact)
      .when(HOST, took(one), held)
      .gives({ ok: true, events: [] });
    expect(given(...sounding, fact).when(HOST, took(other), held).decision).toMatchObject({
      events: [{ change: other }],
    });
    given(...sounding)
      .when(HOST, took(one), elsewhere)
      .refused('sound-held-elsewhere');
    given(opened, round).when(HOST, took(one), held).refused('nothing-plays');
  });

  test('R33 it stopped', () => {
    given(...sounding)
      .when(HOST, vamp('VampStopped'), held)
      .gives({ ok: true, events: [{ type: 'VampStopped', round: 'r1' }] });
    given(opened, round).when(HOST, vamp('VampStopped'), held).gives({ ok: true, events: [] });
    given(...sounding)
      .when(HOST, vamp('VampStopped', 'r0'), held)
      .gives({ ok: true, events: [] });
    given(...sounding)
      .when(HOST, vamp('VampStopped'), elsewhere)
      .refused('sound-held-elsewhere');
    // After a restart nobody holds the sound yet: what the page says is a fact all the same.
    expect(given(...sounding).when(HOST, vamp('VampStopped')).decision).toMatchObject({ events: [{ round: 'r1' }] });
  });

  test('R59 the bass alone is refused while the strokes are asked, and nothing else is', () => {
    const asking = given(...sounding, asked('a1', 'strokes-0'));
    asking.when(DESK, change({ kind: 'bass-alone' }), held).refused('groove-asked');
    for (const other of [{ kind: 'full' }, { kind: 'hold', slot: 1 }, { kind: 'tempo', tempo: 90 }] as const) {
      expect(asking.when(DESK, change(other), held).decision).toMatchObject({
        effects: [{ order: { change: other } }],
      });
    }
    for (const other of [[asked('a1', 'direction-1')], [asked('a1', 'strokes-0'), closed('a1')]]) {
      const { decision } = given(...sounding, ...other).when(DESK, change({ kind: 'bass-alone' }), held);
      expect(decision.ok).toBe(true);
    }
  });

  test('R59 the whole sound returns where the strokes are asked while the bass sounds alone', () => {
    const alone: NewEvent = { type: 'ChangeTook', round: 'r1', change: { kind: 'bass-alone' }, bar: 4 };
    const full = [{ kind: 'order', order: { order: 'change', round: 'r1', change: { kind: 'full' } } }];
    const open = (question: string): Command => ({
      type: 'OpenQuestion',
      id: 'c',
      round: 'r1',
      question,
      how: 'phones',
    });
    const effects = (events: readonly NewEvent[], command: Command) => {
      const { decision } = given(...events).when(command.type === 'ChangeTook' ? HOST : DESK, command, held);
      expect(decision).toMatchObject({ ok: true, events: [{}] });
      return decision.ok ? decision.effects : null;
    };
    expect(effects([...sounding, alone], open('strokes-0'))).toEqual(full);
    expect(effects(sounding, open('strokes-0'))).toBeUndefined();
    const again: NewEvent[] = [...sounding, asked('a1', 'strokes-0'), closed('a1'), alone];
    expect(effects(again, { type: 'AnswerAgain', id: 'c', ask: 'a1' })).toEqual(full);
    // It was asked for before the question opened and took only now.
    expect(effects([...sounding, asked('a1', 'strokes-0')], took({ kind: 'bass-alone' }))).toEqual(full);
    expect(effects(sounding, took({ kind: 'bass-alone' }))).toBeUndefined();
  });

  test('R34 a tempo that the groove bears, a chord of the loop', () => {
    const at = (tempo: number) => given(...sounding).when(DESK, change({ kind: 'tempo', tempo }), held);
    const { decision } = at(1_000);
    expect(decision).toMatchObject({ reason: 'tempo-out-of-range', detail: { found: 1_000, low: 30 } });
    const high = Number(decision.ok ? 0 : decision.detail?.['high']);
    expect(high).toBeGreaterThan(100);
    at(29).refused('tempo-out-of-range', { found: 29, low: 30, high });
    expect(at(high).decision.ok && at(30).decision.ok).toBe(true);
    given(...sounding)
      .when(DESK, change({ kind: 'hold', slot: 2 }), held)
      .refused('message-not-readable', { what: 'slot 2 of 2' });
    expect(given(...sounding).when(DESK, change({ kind: 'hold', slot: 1 }), held).decision.ok).toBe(true);
  });
});
