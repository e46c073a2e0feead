import { describe, expect, test } from 'vitest';
import { generate } from '../../../shared-theory/generate.ts';
import { LEVELS } from '../../../shared-theory/levels.ts';
import type { Command, Depth } from '../../../server/protocol/messages.ts';
import type { NewEvent } from '../../../server/rooms/events.ts';
import { hostRound } from '../../../server/rooms/host-round.ts';
import { knownQuestions } from '../../../server/rooms/known-questions.ts';
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
  opened,
  peopleIn,
  played,
  SETTINGS,
  shown,
  started,
  student,
} from '../../support/given.ts';

const depth = (id: string, to: Depth): NewEvent => ({ type: 'DepthSet', student: id, depth: to });
const instead = (id: string, ask: string, question: string | null): NewEvent => ({
  type: 'AskedInstead',
  student: id,
  ask,
  question,
});
const wrote = (id: string, ask: string, answer: unknown, counter = 1): NewEvent =>
  ({ type: 'AnswerWritten', student: id, ask, counter, answer }) as NewEvent;
const open = (question: string): Command => ({ type: 'OpenQuestion', id: 'c', round: 'r1', question, how: 'phones' });
const write = (ask: string, answer: unknown, counter = 1): Command => {
  return { type: 'WriteAnswer', id: 'c', ask, counter, answer, heldMs: 0 };
};

/** s1 is asked to the floor, s2 to the chords, s3 all. */
const base: NewEvent[] = [
  opened,
  joined('s1', 1),
  joined('s2', 2),
  joined('s3', 3),
  started(played('Em D')),
  depth('s1', 'floor'),
  depth('s2', 'chords'),
];
const keys = [...base, asked('a1', 'keys-0'), instead('s1', 'a1', 'quality-1'), instead('s2', 'a1', 'distance-1')];
const written = [
  ...keys,
  wrote('s1', 'a1.quality-1', 'major'),
  wrote('s2', 'a1.distance-1', 5),
  wrote('s3', 'a1', ['2M', '7M']),
];
const people = peopleIn(base);

describe('R83 how far a student is asked', () => {
  test('is set by the teacher, once, from the next question on', () => {
    const set: Command = { type: 'SetDepth', id: 'c', student: 's3', depth: 'floor' };
    given(...base)
      .when(DESK, set)
      .gives({ ok: true, events: [depth('s3', 'floor')] });
    given(...base, depth('s3', 'floor'))
      .when(DESK, set)
      .gives({ ok: true, events: [] });
    given(...base)
      .when(DESK, { ...set, student: 's9' })
      .refused('student-unknown');
    given(...base)
      .when(student('s1'), set)
      .refused('not-teacher');
    const state = fold([...written, depth('s3', 'floor')]);
    expect(studentCommon(state, 's3').ask).toBe('a1');
  });

  test('what lies beyond a student is not asked: the deepest question within reach that was not asked is', () => {
    given(...base)
      .when(DESK, open('keys-0'))
      .gives({
        ok: true,
        events: [asked('a1', 'keys-0'), instead('s1', 'a1', 'quality-1'), instead('s2', 'a1', 'distance-1')],
        value: { ask: 'a1' },
      });
    // Within reach of all, nobody is asked anything else.
    expect(given(...base).when(DESK, open('quality-0')).decision).toMatchObject({ events: [asked('a1', 'quality-0')] });
    // The next time something else is, until nothing is left.
    const next = given(...written, closed('a1'), shown('a1')).when(DESK, open('numeral-0')).decision;
    expect(next).toMatchObject({
      events: [{}, instead('s1', 'a2', 'quality-0'), instead('s2', 'a2', 'root-0')],
    });
  });

  test('only what can be heard while the others are asked', () => {
    const sounding: NewEvent[] = [...base, { type: 'VampStarted', round: 'r1', tempo: 100 }];
    // The first chord is held: no other can be asked about.
    const root = given(...sounding).when(DESK, open('root-0'), { soundHolder: 'page-1' }).decision;
    expect(root).toMatchObject({ events: [asked('a1', 'root-0'), instead('s1', 'a1', 'quality-0')] });
    const all = [asked('a1', 'quality-0'), closed('a1'), asked('a2', 'strokes-0'), closed('a2')];
    const none = given(...sounding, ...all).when(DESK, open('root-0'), { soundHolder: 'page-1' }).decision;
    expect(none).toMatchObject({ events: [asked('a3', 'root-0'), instead('s1', 'a3', null)] });
  });

  test('what hides a chord’s root or its bass stands for no question of it', () => {
    const alone = (kind: 'bass-alone' | 'root-alone', question: string) => {
      const change = kind === 'root-alone' ? { kind, slot: 0 } : { kind };
      const before = given(
        opened,
        joined('s2', 2),
        { type: 'SettingsChanged', settings: { soundFollows: false } },
        started({ ...guitar('C/E F'), source: 'host', level: 12, tempo: 100 }),
        depth('s2', 'chords'),
        // All else within reach has been asked.
        ...['quality-0', 'count-0', 'direction-1', 'distance-1'].flatMap((id, index) => [
          asked(`a${index + 1}`, id),
          closed(`a${index + 1}`),
        ]),
        ...(question === 'root-0' ? [asked('a5', 'bass-0'), closed('a5')] : [asked('a5', 'root-0'), closed('a5')]),
        { type: 'VampStarted', round: 'r1', tempo: 100 },
        { type: 'ChangeTook', round: 'r1', change, bar: 1 },
      );
      const { decision } = before.when(DESK, open('keys-0'), { soundHolder: 'page-1' });
      return decision.ok ? decision.events[1] : decision;
    };
    // Over the bass E nobody hears that C is the root.
    expect(alone('bass-alone', 'root-0')).toEqual(instead('s2', 'a6', null));
    expect(alone('bass-alone', 'bass-0')).toEqual(instead('s2', 'a6', 'bass-0'));
    expect(alone('root-alone', 'bass-0')).toEqual(instead('s2', 'a6', null));
    expect(alone('root-alone', 'root-0')).toEqual(instead('s2', 'a6', 'root-0'));
  });

  test('not what the wall has shown the hands of: who came late would vote with the many', () => {
    const spread: NewEvent = { type: 'SpreadShown', ask: 'a1' };
    const asking = (more: readonly NewEvent[]) => {
      const late = [joined('s4', 4), depth('s4', 'floor')];
      const decision = given(...base, asked('a1', 'quality-1'), closed('a1'), ...more, ...late).when(
        DESK,
        open('keys-0'),
      ).decision;
      return decision.ok ? decision.events.at(-1) : decision;
    };
    expect(asking([])).toEqual(instead('s4', 'a2', 'quality-1'));
    expect(asking([spread])).toEqual(instead('s4', 'a2', 'quality-0'));
  });

  test('each phone has its own question, and who listens is told so', () => {
    const state = fold([...base, asked('a1', 'keys-0'), instead('s1', 'a1', null), instead('s2', 'a1', 'distance-1')]);
    expect(studentCommon(state, 's1')).toEqual({ v: state.turn, phase: 'waiting' });
    expect(studentOwn(state, people, 's1')).not.toHaveProperty('ask');
    expect(studentCommon(state, 's2')).toMatchObject({
      phase: 'open',
      ask: 'a1.distance-1',
      asking: { kind: 'distance' },
    });
    expect(studentOwn(state, people, 's2')).toMatchObject({ ask: 'a1.distance-1', answer: null });
    expect(studentCommon(state, 's3')).toEqual(studentCommon(state));
  });

  test('answers go to the sheet of what was asked, and to no other', () => {
    const room = given(...keys);
    room.when(student('s1'), write('a1.quality-1', 'minor')).gives({
      ok: true,
      events: [wrote('s1', 'a1.quality-1', 'minor')],
      value: { counter: 1, answer: 'minor' },
    });
    room.when(student('s1'), write('a1', ['2M'])).refused('too-late');
    room.when(student('s2'), write('a1.quality-1', 'minor')).refused('too-late');
    room.when(student('s3'), write('a1.quality-1', 'minor')).refused('too-late');
    room.when(student('s1'), write('a1.quality-1', ['2M'])).refused('answer-not-readable');
    room.when(student('s1'), { type: 'CannotHear', id: 'c', ask: 'a1.quality-1' }).gives({
      ok: true,
      events: [{ type: 'HearingSignalled', student: 's1', ask: 'a1.quality-1' }],
    });
    for (const type of ['CloseQuestion', 'ShowAnswer', 'ShowSpread', 'AnswerAgain'] as const) {
      room.when(DESK, { type, id: 'c', ask: 'a1.quality-1' }).refused('question-unknown');
    }
    // Closed with the question of the class.
    given(...keys, closed('a1'))
      .when(student('s1'), write('a1.quality-1', 'minor'))
      .refused('too-late');
  });

  test('the wall counts only those who are asked; the desk sees what each is asked', () => {
    const wall = hostView(fold(written), people, LIVE, 'page-1');
    expect(wall).toMatchObject({ handsIn: 1, handsOf: 1 });
    const desk = deskView(fold([...written, closed('a1')]), people, LIVE);
    expect(desk.spread).toMatchObject({ counts: [{ key: '2M 7M', count: 1 }], silent: 0, of: 1 });
    expect(desk.students).toMatchObject([
      { depth: 'floor', instead: { kind: 'quality', target: 1 }, answer: 'major', mark: { exact: true } },
      { depth: 'chords', instead: { kind: 'distance', target: 1 }, answer: 5, mark: { exact: false } },
      { depth: 'keys', answer: ['2M', '7M'], mark: { exact: true } },
    ]);
    expect(desk.students[2]).not.toHaveProperty('instead');
  });

  test('each answer is evidence of its own question, together with what the class answers later', () => {
    const later = [
      ...written,
      closed('a1'),
      asked('a2', 'quality-1'),
      wrote('s1', 'a2', 'minor', 2),
      wrote('s2', 'a2', 'minor', 2),
      closed('a2'),
      shown('a2'),
    ];
    const desk = deskView(fold(later), people, LIVE);
    // The first answer that was given counts: s1 had heard it alone.
    expect(desk.breakdown).toMatchObject([
      { question: 'distance-1', right: 0, silent: 0 },
      { question: 'quality-1', right: 1, wrong: 1, silent: 1 },
      { question: 'keys-0', right: 1, silent: 0 },
    ]);
    expect(desk.reports.find(({ student: id }) => id === 's1')).toMatchObject({ right: 1, wrong: 0, of: 1 });
    const ended = fold([...later, { type: 'LessonEnded' }]);
    expect(studentOwn(ended, people, 's1')?.lesson).toEqual({ right: 1, part: 0, of: 1 });
    expect(studentOwn(ended, people, 's3')?.lesson).toEqual({ right: 0, part: 0, of: 1 });
  });

  test('what a correction takes away is asked of nobody: who was asked it listens', () => {
    const before = [
      opened,
      joined('s1', 1),
      started(guitar('Am7 D G C')),
      asked('a1', 'seventh-0'),
      closed('a1'),
      joined('s2', 2),
      depth('s2', 'chords'),
      asked('a2', 'root-0'),
      closed('a2'),
    ];
    const opening = given(...before).when(DESK, open('keys-0')).decision;
    expect(opening).toMatchObject({ events: [asked('a3', 'keys-0'), instead('s2', 'a3', 'seventh-0')] });
    const asking = [...before, asked('a3', 'keys-0'), instead('s2', 'a3', 'seventh-0')];
    const correct: Command = {
      type: 'CorrectRound',
      id: 'c',
      round: 'r1',
      after: 0,
      chords: 'Am D G C',
      groove: null,
      tempo: null,
      directions: null,
      pointsMayFall: false,
    };
    for (const end of [[], [closed('a3')], [closed('a3'), shown('a3')]] as const) {
      const decision = given(...asking, wrote('s2', 'a3.seventh-0', 'seventh'), ...end).when(DESK, correct).decision;
      if (!decision.ok) throw new Error(decision.reason);
      const after = [...asking, wrote('s2', 'a3.seventh-0', 'seventh'), ...end, ...decision.events];
      const state = fold(after);
      const live = { ...LIVE, here: new Set<string>() };
      expect(studentCommon(state, 's2')).toEqual({ v: state.turn, phase: 'waiting' });
      expect(studentOwn(state, peopleIn(after), 's2')).not.toHaveProperty('ask');
      expect(deskView(state, peopleIn(after), live).students[1]).toMatchObject({ instead: null, wrote: false });
      expect(hostView(state, peopleIn(after), live, 'page-1').handsOf).toBe(1);
      // The class goes on with its own.
      expect(studentCommon(state, 's1').ask).toBe('a3');
      given(...after)
        .when(student('s2'), write('a3.seventh-0', 'none', 2))
        .refused('too-late');
    }
  });

  test('who is erased leaves the others where they are', () => {
    const gone = written.filter((event) => !('student' in event && event.student === 's1'));
    const next = fold(gone);
    expect(next.sheets.has('a1.quality-1')).toBe(false);
    expect(next.asks).toBe(1);
    expect(studentCommon(next, 's2').ask).toBe('a1.distance-1');
  });
});

describe('what is known to be asked', () => {
  test.each(LEVELS.map(({ level }) => [level]))('is the same for all vamps of level %d', (level) => {
    const known = Array.from({ length: 12 }, (_, seed) => {
      const round = hostRound(
        { ...unopenedRoom(), settings: SETTINGS },
        1,
        { level, item: null, groove: null, contrast: null },
        seed,
      );
      if ('reason' in round) throw new Error(round.reason);
      const request = { level, seed, beat: SETTINGS.beatLevel, counting: round.kinds.includes('count') };
      expect(round.truth).toEqual(generate(request).truth);
      const state = fold([opened, started(round)]);
      const record = state.rounds[0];
      return record === undefined ? [] : knownQuestions(state, record).map(({ id }) => id);
    });
    expect(new Set(known.map((ids) => ids.join())).size).toBe(1);
  });
});
