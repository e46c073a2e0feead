import { describe, expect, test } from 'vitest';
import type { Command, SoundChange } from '../../../server/protocol/messages.ts';
import type { WireTaps } from '../../../server/protocol/views.ts';
import { versioned, type HeardRound, type NewEvent } from '../../../server/rooms/events.ts';
import { evolve } from '../../../server/rooms/evolve.ts';
import { deskView, hostView, studentCommon } from '../../../server/rooms/view.ts';
import { MOST_TIMES } from '../../../server/rooms/decisions/students.ts';
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
  moment,
  opened,
  peopleIn,
  played,
  shown,
  started,
  student,
} from '../../support/given.ts';
import { RHYTHM_ANSWERS, TAPS, tapsAt } from '../../support/rhythm-answers.ts';

const base: NewEvent[] = [opened, joined('s1', 1), joined('s2', 2), started(played('Em D'))];
const begun: NewEvent = { type: 'VampStarted', round: 'r1', tempo: 104 };
const sounding: NewEvent[] = [...base, begun];
const held = { soundHolder: 'page-1' };
const open = (question: string, how: 'phones' | 'aloud' | 'memory' = 'phones'): Command => ({
  type: 'OpenQuestion',
  id: 'c',
  round: 'r1',
  question,
  how,
});
const took = (change: SoundChange): NewEvent => ({ type: 'ChangeTook', round: 'r1', change, bar: 4 });
const tookNow = (change: SoundChange): Command => ({ type: 'ChangeTook', id: 'c', round: 'r1', change, bar: 9 });
const wanted = (change: SoundChange): Command => ({ type: 'RequestChange', id: 'c', round: 'r1', change });
const ordered = (...changes: SoundChange[]) =>
  changes.map((change) => ({ kind: 'order', order: { order: 'change', round: 'r1', change } }));
const tapped = (question: string, tempo = 104) => asked('a1', question, 'r1', 1, 'phones', tempo);
const wrote = (id: string, answer: unknown, counter = 1, ask = 'a1'): NewEvent =>
  ({ type: 'AnswerWritten', student: id, ask, counter, answer }) as NewEvent;
const deskOf = (...events: NewEvent[]) => deskView(fold(events), peopleIn(events), LIVE);

describe('R95 a question that is tapped', () => {
  test('keeps the tempo that sounds as it opens, and needs one', () => {
    const gives = given(...sounding).when(DESK, open('tempo-0'), held).decision;
    expect(gives).toMatchObject({ ok: true, events: [{ type: 'QuestionOpened', question: 'tempo-0', tempo: 104 }] });
    const faster = given(...sounding, took({ kind: 'tempo', tempo: 112 })).when(DESK, open('tempo-0'), held).decision;
    expect(faster).toMatchObject({ events: [{ tempo: 112 }] });
    for (const kind of ['tempo', 'drop-out', 'together']) {
      given(...base)
        .when(DESK, open(`${kind}-0`), held)
        .refused('nothing-plays');
    }
    // Of every other question nothing is kept.
    expect(given(...sounding).when(DESK, open('root-0'), held).decision).toMatchObject({ events: [{ tempo: null }] });
  });

  test('of the teacher’s guitar it is the tempo that he named; without one it is none of its questions', () => {
    const own: HeardRound = strummed(96);
    expect(given(opened, joined('s1', 1), started(own)).when(DESK, open('tempo-0'), held).decision).toMatchObject({
      events: [{ tempo: 96 }],
    });
    given(opened, joined('s1', 1), started(guitar('Em D', 1, 'relaxed-alternate')))
      .when(DESK, open('tempo-0'), held)
      .refused('question-unknown');
  });

  test('stands on the wall after those that the level asks, as on the desk', () => {
    const row = (kinds: HeardRound['kinds'], ...kindsAsked: string[]) => {
      const sheets = kindsAsked.flatMap((kind, at) => {
        const ask = `a${at + 1}`;
        return [asked(ask, `${kind}-0`, 'r1', 1, 'phones', 104), closed(ask), shown(ask)];
      });
      const events = [opened, joined('s1', 1), started({ ...played('Em D'), kinds }), begun, ...sheets];
      return hostView(fold(events), peopleIn(events), LIVE, 'page-1').steps.map(({ kind }) => kind);
    };
    const taps = ['together', 'drop-out'];
    expect(row(['tempo', 'steadiness', 'root'], ...taps)).toEqual([
      'tempo',
      'steadiness',
      'drop-out',
      'together',
      'root',
    ]);
    expect(row(['accents', 'root'], ...taps, 'tempo')).toEqual(['tempo', 'drop-out', 'together', 'accents', 'root']);
  });

  test('locks the tempo: neither another nor a climb, and a feel only where it bears the tempo', () => {
    for (const kind of ['tempo', 'drop-out', 'together']) {
      const room = given(...sounding, tapped(`${kind}-0`));
      room.when(DESK, wanted({ kind: 'tempo', tempo: 110 }), held).refused('groove-asked');
      room.when(DESK, wanted({ kind: 'climb', to: 120 }), held).refused('groove-asked');
      room.when(DESK, wanted({ kind: 'silence' }), held).refused('groove-asked');
      room.when(DESK, wanted({ kind: 'chord-alone', slot: 0 }), held).refused('groove-asked');
      for (const change of [
        { kind: 'feel', feel: 'driving' },
        { kind: 'kit-only' },
        { kind: 'muted' },
        { kind: 'bass-alone' },
        { kind: 'band', kit: true, bass: true },
      ] as const) {
        expect(room.when(DESK, wanted(change), held).decision, JSON.stringify(change)).toMatchObject({ ok: true });
      }
      const after = given(...sounding, tapped(`${kind}-0`), closed('a1'));
      expect(after.when(DESK, wanted({ kind: 'tempo', tempo: 110 }), held).decision.ok).toBe(true);
    }
    // The relaxed feel goes no faster than 126: at 150 it would bring its own tempo.
    const fast = [...base, { ...begun, tempo: 150 } as NewEvent, took({ kind: 'feel', feel: 'driving' })];
    given(...fast, tapped('tempo-0', 150))
      .when(DESK, wanted({ kind: 'feel', feel: 'relaxed' }), held)
      .refused('groove-asked');
  });

  test('a tempo that takes only now is brought back, and no further', () => {
    const room = [...sounding, tapped('tempo-0')];
    const late = given(...room).when(HOST, tookNow({ kind: 'tempo', tempo: 110 }), held).decision;
    expect(late).toMatchObject({ ok: true, effects: ordered({ kind: 'tempo', tempo: 104 }) });
    const back = given(...room, took({ kind: 'tempo', tempo: 110 }));
    expect(back.when(HOST, tookNow({ kind: 'tempo', tempo: 104 }), held).decision).not.toHaveProperty('effects');
  });

  test('ends a climb as it opens', () => {
    const climbing = given(...sounding, took({ kind: 'climb', to: 120 }));
    expect(climbing.when(DESK, open('tempo-0'), held).decision).toMatchObject({
      effects: ordered({ kind: 'climb', to: 104 }),
    });
    expect(given(...sounding).when(DESK, open('tempo-0'), held).decision).not.toHaveProperty('effects');
  });

  test('from memory it is the tempo that sounded, unless another takes before it opens', () => {
    const awaited: NewEvent = { type: 'MemoryAwaited', round: 'r1', question: 'tempo-0' };
    const waits = given(...sounding).when(DESK, open('tempo-0', 'memory'), held).decision;
    expect(waits).toMatchObject({ events: [awaited], effects: ordered({ kind: 'silence' }) });
    const silent = given(...sounding, awaited, took({ kind: 'silence' }));
    const kept: Command = { type: 'SilenceKept', id: 'c', round: 'r1' };
    expect(silent.when(HOST, kept, held).decision).toMatchObject({ events: [{}, { tempo: 104, how: 'memory' }] });
    silent.when(DESK, wanted({ kind: 'tempo', tempo: 110 }), held).refused('groove-asked');
    expect(silent.when(HOST, tookNow({ kind: 'tempo', tempo: 110 }), held).decision).toMatchObject({
      events: [{ type: 'ChangeTook' }, { type: 'MemoryDropped' }],
    });
    for (const kind of ['drop-out', 'together']) {
      given(...sounding)
        .when(DESK, open(`${kind}-0`, 'memory'), held)
        .refused('nothing-plays');
    }
  });
});

describe('R96 marks of taps', () => {
  test('are made by the tempo that sounded, whatever it was before and after', () => {
    const room = (tempo: number, answer: unknown): NewEvent[] => [
      ...sounding,
      tapped('tempo-0', tempo),
      wrote('s1', answer),
      closed('a1'),
    ];
    const mark = (tempo: number, tapping: number) =>
      deskOf(...room(tempo, tapsAt(tapping)), took({ kind: 'tempo', tempo: 60 })).students[0]?.mark;
    expect(mark(112, 112)).toMatchObject({ exact: true, credit: 1 });
    expect(mark(104, 112)).toMatchObject({ exact: false });
    expect(mark(104, 104)).toMatchObject({ exact: true });
    // The same in the reports, and for the student.
    const events = [...room(112, tapsAt(112)), shown('a1')];
    expect(deskOf(...events).reports[0]).toMatchObject({ right: 1, of: 1 });
    expect(deskOf(...events).breakdown?.[0]).toMatchObject({ kind: 'tempo', right: 1, silent: 1 });
  });

  test('of a guitar’s round they go by what the teacher says that he played', () => {
    const own: NewEvent[] = [
      opened,
      joined('s1', 1),
      started(strummed(96)),
      asked('a1', 'tempo-0', 'r1', 1, 'phones', 96),
      wrote('s1', tapsAt(120)),
      closed('a1'),
    ];
    expect(deskOf(...own).students[0]?.mark).toMatchObject({ exact: false });
    const corrected: NewEvent = { type: 'TruthCorrected', round: strummed(120), pointsMayFall: false };
    expect(deskOf(...own, corrected).students[0]?.mark).toMatchObject({ exact: true });
  });

  test('taps of one tempo are marked each by itself', () => {
    const even = tapsAt(104, 16);
    const uneven = even.map((time, index) => (index % 2 === 0 ? time : time + 90));
    const events: NewEvent[] = [
      ...base.slice(0, -1),
      started({ ...played('Em D'), questions: [{ id: 'steadiness-0', kind: 'steadiness', target: 0 }] }),
      begun,
      tapped('steadiness-0'),
      wrote('s1', even),
      wrote('s2', uneven),
      closed('a1'),
    ];
    const [first, second] = deskOf(...events).students;
    expect(first?.mark?.credit).toBeGreaterThan(second?.mark?.credit ?? 1);
    expect(first?.taps?.unevenness).toBeLessThan(second?.taps?.unevenness ?? 0);
  });
});

describe('R97 the drop-out', () => {
  const asking = [...sounding, tapped('drop-out-0')];
  const out = took({ kind: 'drop-out' });

  test('is ordered with the question, after two bars and after what fits', () => {
    expect(given(...sounding).when(DESK, open('drop-out-0'), held).decision).toMatchObject({
      effects: ordered({ kind: 'drop-out', after: 2 }),
    });
    const held0 = given(...sounding, took({ kind: 'hold', slot: 0 })).when(DESK, open('drop-out-0'), held);
    expect(held0.decision).toMatchObject({ effects: ordered({ kind: 'full' }, { kind: 'drop-out', after: 2 }) });
    const again: Command = { type: 'AnswerAgain', id: 'c', ask: 'a1' };
    expect(given(...asking, closed('a1')).when(DESK, again, held).decision).toMatchObject({
      events: [{ sheet: 2, tempo: 104 }],
      effects: ordered({ kind: 'drop-out', after: 2 }),
    });
  });

  test('phones are told while it lasts, and as it is over', () => {
    const told = (...more: NewEvent[]) => studentCommon(fold([...asking, ...more]));
    expect(told()).not.toHaveProperty('droppedOut');
    expect(told(out).droppedOut).toBe(true);
    expect(told(out).v).toBeGreaterThan(told().v);
    expect(told(out, took({ kind: 'full' }))).not.toHaveProperty('droppedOut');
    expect(told(out, took({ kind: 'full' })).v).toBeGreaterThan(told(out).v);
    expect(told(out, { type: 'VampStopped', round: 'r1' })).not.toHaveProperty('droppedOut');
    expect(told(out, closed('a1'))).not.toHaveProperty('droppedOut');
    // Of another question nobody is told.
    expect(studentCommon(fold([...sounding, asked('a1', 'root-0'), out]))).not.toHaveProperty('droppedOut');
  });
});

describe('R98 what a room tapped', () => {
  const clapping: NewEvent[] = [...sounding, tapped('together-0'), wrote('s1', tapsAt(104)), wrote('s2', tapsAt(106))];

  test('is on the desk while it is tapped, on the wall once it is asked for; no name, and no answer', () => {
    const live = deskOf(...clapping).classTaps;
    expect(live).toMatchObject({ read: 2, of: 2, tempi: [104, 106] });
    const host = (...events: NewEvent[]) => hostView(fold(events), peopleIn(events), LIVE, 'page-1');
    expect(host(...clapping)).not.toHaveProperty('classTaps');
    expect(host(...clapping, closed('a1')).spread).toBeNull();
    const spread = host(...clapping, closed('a1'), { type: 'SpreadShown', ask: 'a1' }).spread;
    expect(spread).toMatchObject({ counts: [], silent: 0, of: 2, taps: { read: 2, of: 2 } });
    expect(deskOf(...clapping, closed('a1')).classTaps).toBeNull();
    expect(deskOf(...sounding, asked('a1', 'root-0')).classTaps).toBeNull();
  });

  test('is that of the last taps, and of the groove as it was corrected', () => {
    // Of a guitar no drop-out is asked, but what was tapped is held against the groove in the same way.
    const dropOut = { id: 'drop-out-0', kind: 'drop-out', target: 0 } as const;
    const playing = (tempo: number): HeardRound => ({ ...strummed(tempo), questions: [dropOut] });
    const state = fold([opened, joined('s1', 1), started(playing(96)), tapped('drop-out-0', 96)]);
    const now = (): WireTaps | null => deskView(state, peopleIn([joined('s1', 1)]), LIVE).classTaps;
    const write = (taps: readonly number[], counter: number): void =>
      evolve(state, versioned(wrote('s1', { taps, silentFrom: 8 }, counter)), moment(1_000 * counter));
    write(tapsAt(96, 20), 1);
    expect(now()).toMatchObject({ tempo: 96, drift: { percent: 0 } });
    write(tapsAt(98, 20), 2);
    expect(now()).toMatchObject({ tempo: 98, drift: { percent: expect.closeTo(2.1, 1) as number } });
    evolve(state, versioned({ type: 'TruthCorrected', round: playing(98), pointsMayFall: false }), moment(5_000));
    expect(now()).toMatchObject({ tempo: 98, drift: { percent: 0 } });
  });

  test('each hand’s own is on the desk alone, after the close, without its taps', () => {
    expect(deskOf(...clapping).students[0]).not.toHaveProperty('taps');
    const [row] = deskOf(...clapping, closed('a1')).students;
    expect(row?.taps).toMatchObject({ tempo: 104, unevenness: expect.closeTo(0, 0) as number });
    expect(row).not.toHaveProperty('answer');
    // What is only collected is marked nowhere and counted nowhere.
    expect(row).not.toHaveProperty('mark');
    const over = deskOf(...clapping, closed('a1'), shown('a1'), { type: 'LessonEnded' });
    expect([over.breakdown, over.opinions, over.reports]).toEqual([[], [], []]);
  });

  test('not sure is no taps', () => {
    const [row] = deskOf(...sounding, tapped('tempo-0'), wrote('s1', 'not-sure'), closed('a1')).students;
    expect(row).toMatchObject({ answer: 'not-sure' });
    expect(row).not.toHaveProperty('taps');
  });

  test('a thousand hands are no more than a few kilobytes', () => {
    const seats = Array.from({ length: 1000 }, (_, index) => joined(`p${index}`, index + 1));
    const taps = seats.map((_, index) => wrote(`p${index}`, tapsAt(80 + index / 20, 16)));
    const events = [opened, ...seats, started(played('Em D')), begun, tapped('together-0'), ...taps];
    const live = deskOf(...events).classTaps as WireTaps;
    expect(live).toMatchObject({ read: 1000, of: 1000 });
    expect(live.tempi.length).toBeLessThanOrEqual(200);
    expect([live.tempi[0], live.tempi.at(-1)]).toEqual([80, expect.closeTo(130, 0)]);
    expect(JSON.stringify(live).length).toBeLessThan(4_000);
  });
});

describe('R99 what is clapped is written again and again', () => {
  const room: NewEvent[] = [...sounding, tapped('together-0')];
  const write = (counter: number): Command => ({
    type: 'WriteAnswer',
    id: 'c',
    ask: 'a1',
    counter,
    answer: TAPS,
    heldMs: 0,
  });

  test('the last one stands; after so many writings it stays', () => {
    const often = Array.from({ length: MOST_TIMES }, (_, index) => wrote('s1', tapsAt(100 + (index % 7)), index + 1));
    const before = given(...room, ...often.slice(1));
    expect(before.when(student('s1'), write(MOST_TIMES + 1)).decision).toMatchObject({
      events: [{ counter: MOST_TIMES + 1 }],
    });
    given(...room, ...often)
      .when(student('s1'), write(MOST_TIMES + 1))
      .gives({ ok: true, events: [], value: { counter: MOST_TIMES, answer: tapsAt(100 + ((MOST_TIMES - 1) % 7)) } });
    expect(given(...room, ...often).when(student('s2'), write(1)).decision).toMatchObject({ events: [{}] });
  });
});

function strummed(tempo: number): HeardRound {
  return guitar('Em D', 1, 'relaxed-alternate', undefined, tempo);
}

test('R29 an answer that is no taps is refused', () => {
  const room = given(...sounding, tapped('tempo-0'));
  for (const answer of [
    [0, 500],
    [0, 500, 400],
    tapsAt(100, 65),
    [5, ...TAPS.slice(1)],
    'up',
    RHYTHM_ANSWERS.accents,
  ]) {
    room
      .when(student('s1'), { type: 'WriteAnswer', id: 'c', ask: 'a1', counter: 1, answer, heldMs: 0 })
      .refused('answer-not-readable');
  }
});
