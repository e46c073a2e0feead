import { describe, expect, test } from 'vitest';
import type { NewEvent } from '../../../server/rooms/events.ts';
import { versioned } from '../../../server/rooms/events.ts';
import { evolve } from '../../../server/rooms/evolve.ts';
import { unopenedRoom } from '../../../server/rooms/state.ts';
import { asked, closed, fold, guitar, joined, moment, opened, shown, started } from '../../support/given.ts';

const lesson: NewEvent[] = [
  opened,
  joined('s1', 1),
  joined('s2', 2),
  started(guitar('Em D')),
  asked('a1', 'direction-1'),
  { type: 'AnswerWritten', student: 's1', ask: 'a1', counter: 3, answer: 'up' },
  { type: 'AnswerWritten', student: 's2', ask: 'a1', counter: 1, answer: 'down' },
  { type: 'HearingSignalled', student: 's2', ask: 'a1' },
  closed('a1'),
  { type: 'SpreadShown', ask: 'a1' },
  asked('a2', 'direction-1', 'r1', 2),
  { type: 'AnswerWritten', student: 's1', ask: 'a2', counter: 4, answer: 'not-sure' },
  closed('a2'),
  shown('a2'),
  { type: 'PersonChanged', student: 's2' },
];

describe('R46 the fold', () => {
  test('keeps who sits where, and what each wrote', () => {
    const state = fold(lesson);
    expect([...state.students.values()]).toEqual([
      { student: 's1', seat: 1, joinedTurn: 0, counter: 4, revision: 2, depth: 'keys', hands: [] },
      { student: 's2', seat: 2, joinedTurn: 0, counter: 1, revision: 3, depth: 'keys', hands: [] },
    ]);
    expect(state.sheets.get('a1')).toMatchObject({
      sheet: 1,
      spreadShown: true,
      closed: { turn: 3, stamp: moment(800) },
    });
    expect(state.sheets.get('a1')?.answers).toEqual(
      new Map([
        ['s1', { counter: 3, answer: 'up', times: 1 }],
        ['s2', { counter: 1, answer: 'down', times: 1 }],
      ]),
    );
    expect(state.rounds[0]?.questions.get('direction-1')).toMatchObject({ shown: true });
    expect(state).toMatchObject({ status: 'round', room: 'WAKUR', class: 'class-1', open: null, turn: 6 });
    expect(state.current?.ask).toBe('a2');
  });

  test('a new round lays the sheets of the last one aside', () => {
    const state = fold([...lesson, started(guitar('G C', 2))]);
    expect(state).toMatchObject({ current: null, open: null, status: 'round' });
    expect(state.sheets.size).toBe(2);
  });

  test('showing the spread of another closed sheet turns all to it', () => {
    const two = [...lesson, asked('a3', 'keys-0'), closed('a3')];
    const state = fold([...two, { type: 'SpreadShown', ask: 'a2' }]);
    expect(state.current?.ask).toBe('a2');
    expect(state.turn).toBe(fold(two).turn + 1);
    expect(fold([...two, { type: 'SpreadShown', ask: 'a3' }]).turn).toBe(fold(two).turn);
  });

  test('what sounds', () => {
    const sounding: NewEvent[] = [...lesson, { type: 'VampStarted', round: 'r1', tempo: 100 }];
    expect(fold(sounding).sound).toMatchObject({ playing: true, round: 'r1', change: { kind: 'full' }, tempo: 100 });
    const changed: NewEvent[] = [
      ...sounding,
      { type: 'ChangeTook', round: 'r1', change: { kind: 'hold', slot: 1 }, bar: 2 },
      { type: 'ChangeTook', round: 'r1', change: { kind: 'tempo', tempo: 80 }, bar: 4 },
    ];
    expect(fold(changed).sound).toMatchObject({ playing: true, change: { kind: 'hold', slot: 1 }, tempo: 80 });
    expect(fold([...changed, { type: 'VampStopped', round: 'r1' }]).sound.playing).toBe(false);
  });

  test('settings, and the end', () => {
    const state = fold([
      ...lesson,
      { type: 'SettingsChanged', settings: { policy: 'relatives' } },
      { type: 'LessonEnded' },
    ]);
    expect(state).toMatchObject({ settings: { policy: 'relatives', namesShown: true }, status: 'lesson-ended' });
    expect(fold([...lesson, { type: 'RoomClosed' }]).status).toBe('room-ended');
  });

  test('R46 folding never throws, whatever is left of a log', () => {
    const leftovers: NewEvent[] = [
      asked('a1', 'keys-0', 'r9'),
      asked('a1', 'nothing-0'),
      closed('a7'),
      shown('a7'),
      { type: 'SpreadShown', ask: 'a7' },
      { type: 'AnswerWritten', student: 'x', ask: 'a7', counter: 1, answer: null },
      { type: 'HearingSignalled', student: 'x', ask: 'a7' },
      { type: 'PersonChanged', student: 'x' },
      { type: 'VampStopped', round: 'r7' },
      { type: 'Erased' },
    ];
    for (const event of [...lesson, ...leftovers])
      expect(() => evolve(unopenedRoom(), versioned(event), moment(0))).not.toThrow();
    expect(() => fold([...leftovers, ...lesson])).not.toThrow();
  });
});

describe('R48 erasing', () => {
  test('with erased events the fold is the fold without that student', () => {
    const of = (event: NewEvent) => ('student' in event ? event.student : null);
    for (const gone of ['s1', 's2']) {
      // Times stay with their events, so that only the student is missing.
      const erased = unopenedRoom();
      const without = unopenedRoom();
      for (const [index, event] of lesson.entries()) {
        const mine = of(event) === gone;
        evolve(erased, versioned(mine ? { type: 'Erased' } : event), moment(index));
        if (!mine) evolve(without, versioned(event), moment(index));
      }
      expect(erased).toEqual(without);
      expect(
        JSON.stringify([...erased.students, ...[...erased.sheets.values()].map(({ answers }) => [...answers])]),
      ).not.toContain(gone);
    }
  });
});
