import { describe, expect, test } from 'vitest';
import type { Upgrades } from '../../../server/rooms/events.ts';
import { EVENT_VERSIONS, readEvent, studentOf, UnreadableEventError, versioned } from '../../../server/rooms/events.ts';
import { evolve } from '../../../server/rooms/evolve.ts';
import { unopenedRoom } from '../../../server/rooms/state.ts';
import { deskView } from '../../../server/rooms/view.ts';
import { asked, closed, guitar, joined, LIVE, moment, opened, peopleIn, shown, started } from '../../support/given.ts';

describe('R47 events carry a version', () => {
  test('what was written is read back', () => {
    for (const event of [opened, joined('s1', 1), asked('a1', 'keys-0'), shown('a1')]) {
      const written = versioned(event);
      expect(readEvent(JSON.stringify(written))).toEqual({ ...event, version: EVENT_VERSIONS[event.type] });
    }
  });

  test('rooms, rounds and questions of the first version are brought up to date', () => {
    const read = (event: object) => readEvent(JSON.stringify({ ...event, version: 1 }));
    const settings = { policy: 'majors', qualities: ['major', 'minor'], namesShown: true };
    expect(read({ type: 'RoomOpened', room: 'WAKUR', class: 'class-1', settings })).toEqual(versioned(opened));
    expect(read({ type: 'QuestionOpened', ask: 'a1', round: 'r1', question: 'keys-0', sheet: 1 })).toEqual(
      versioned(asked('a1', 'keys-0')),
    );
    const questions = guitar('Em D').questions.filter(({ kind }) => kind !== 'settler');
    const {
      settlers: _settlers,
      entered: _entered,
      item: _item,
      loops: _loops,
      truth,
      ...rest
    } = { ...guitar('Em D'), questions };
    const { settlers: _truths, ...before } = truth;
    const round = read({ type: 'RoundStarted', round: { ...rest, truth: before } });
    expect(round).toEqual(
      versioned(
        started({
          ...guitar('Em D'),
          questions,
          truth: { ...truth, settlers: [] },
          settlers: [],
          entered: null,
          item: null,
          beat: null,
          contrast: null,
        }),
      ),
    );
    // What a phone may be told of an old round is what its level was then: two had single chords among their loops.
    const loopsOf = (level: number | null) => {
      const old = read({ type: 'RoundStarted', round: { ...rest, level, truth: before } });
      return old.type === 'RoundStarted' ? old.round.loops : null;
    };
    expect([null, 2, 3, 4, 5, 6, 7].map(loopsOf)).toEqual([
      'any',
      'two',
      'one-or-two',
      'one-or-two',
      'two',
      'two',
      'two',
    ]);
    // What was asked then can still be marked, and corrected.
    const state = unopenedRoom();
    for (const event of [versioned(opened), round, versioned(asked('a1', 'keys-0')), versioned(closed('a1'))]) {
      evolve(state, event, moment(0));
    }
    expect(deskView(state, peopleIn([]), LIVE)).toMatchObject({ truth: { key: '2M 7M' }, entered: null, reports: [] });
  });

  test('an old event is brought up to date step by step', () => {
    const upgrades: Upgrades = {
      VampStopped: [
        (event) => ({ ...event, round: `r${String(event['number'])}` }),
        (event) => ({ ...event, why: 'pressed' }),
      ],
    };
    const versions = { ...EVENT_VERSIONS, VampStopped: 3 };
    const read = (event: object) => readEvent(JSON.stringify(event), upgrades, versions);
    expect(read({ type: 'VampStopped', version: 1, number: 2 })).toEqual({
      type: 'VampStopped',
      version: 3,
      number: 2,
      round: 'r2',
      why: 'pressed',
    });
    expect(read({ type: 'VampStopped', version: 2, round: 'r9' })).toMatchObject({ version: 3, round: 'r9' });
    expect(read({ type: 'VampStopped', version: 3, round: 'r9' })).not.toHaveProperty('why');
  });

  test.each([
    ['{"type":"RoomPainted","version":1}', /RoomPainted.*does not know/],
    ['{"type":"toString","version":1}', /toString/],
    ['{"version":1}', /does not know/],
    ['{"type":"RoomClosed","version":2}', /RoomClosed of version 2; this version reads 1 to 1/],
    ['{"type":"RoomClosed","version":0}', /version 0/],
    ['{"type":"RoomClosed","version":1.5}', /version 1.5/],
    ['{"type":"RoomClosed"}', /version undefined/],
    ['null', /not an object/],
    ['7', /not an object/],
    ['{', /not JSON/],
  ])('%s is an error that says so', (body, message) => {
    expect(() => readEvent(body)).toThrow(UnreadableEventError);
    expect(() => readEvent(body)).toThrow(message);
  });

  test('an event knows whose it is', () => {
    expect(studentOf(versioned(joined('s1', 1)))).toBe('s1');
    expect(studentOf(versioned({ type: 'PersonChanged', student: 's2' }))).toBe('s2');
    expect(studentOf(versioned(shown('a1')))).toBeNull();
  });
});
