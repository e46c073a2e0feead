import { describe, expect, test } from 'vitest';
import type { Command } from '../../../server/protocol/messages.ts';
import { MOST_STUDENTS } from '../../../server/rooms/decisions/students.ts';
import type { NewEvent } from '../../../server/rooms/events.ts';
import { DESK, given, HANDS, HOST, joined, opened, peopleIn, person, student } from '../../support/given.ts';

const join = (name: string, hands = HANDS as { leftHanded: boolean; pair: boolean; leftThumb: boolean }): Command => ({
  type: 'Join',
  id: 'c1',
  name,
  ...hands,
});

describe('opening and settings', () => {
  test('R1 nothing can be done before a room is opened', () => {
    given().when(student(null), join('Ana')).refused('room-not-found', { room: '' });
    given().when(DESK, { type: 'CloseRoom', id: 'c1' }).refused('room-not-found', { room: '' });
  });

  test.each([
    [{ policy: 'minors' as 'majors' }, 'policy "minors"'],
    [{ qualities: ['major', 'jazzy'] }, 'quality "jazzy"'],
    [{ qualities: ['major', 'major'] }, 'a quality twice on the pad'],
    [{ qualities: ['major'] }, 'fewer than two qualities on the pad'],
  ])('R2 %j is refused', (settings, what) => {
    given(opened).when(DESK, { type: 'ChangeSettings', id: 'c1', settings }).refused('message-not-readable', { what });
  });

  test('R2 only what changes is written; no change, no event', () => {
    given(opened)
      .when(DESK, { type: 'ChangeSettings', id: 'c1', settings: { policy: 'relatives', namesShown: true } })
      .gives({ ok: true, events: [{ type: 'SettingsChanged', settings: { policy: 'relatives' } }] });
    given(opened)
      .when(DESK, { type: 'ChangeSettings', id: 'c1', settings: { qualities: ['major', 'minor'] } })
      .gives({ ok: true, events: [] });
  });
});

describe('who may what', () => {
  const teachers: Command[] = [
    { type: 'StartRound', id: 'c', after: 0, level: 7, item: null, groove: null, contrast: null },
    { type: 'StartGuitarRound', id: 'c', after: 0, chords: 'Em D', groove: null, tempo: null, directions: null },
    { type: 'OpenQuestion', id: 'c', round: 'r1', question: 'keys-0', how: 'phones' },
    { type: 'CloseQuestion', id: 'c', ask: 'a1' },
    { type: 'ShowSpread', id: 'c', ask: 'a1' },
    { type: 'ShowAnswer', id: 'c', ask: 'a1' },
    { type: 'AnswerAgain', id: 'c', ask: 'a1' },
    { type: 'RequestPlay', id: 'c', round: 'r1' },
    { type: 'RequestChange', id: 'c', round: 'r1', change: { kind: 'full' } },
    { type: 'RequestStop', id: 'c' },
    { type: 'ChangeSettings', id: 'c', settings: {} },
    { type: 'RenameStudent', id: 'c', student: 's1', name: 'Bo' },
    { type: 'EraseStudent', id: 'c', student: 's1' },
    { type: 'EndLesson', id: 'c' },
    { type: 'CloseRoom', id: 'c' },
    { type: 'HoldSound', id: 'c', takeOver: true },
    { type: 'VampStarted', id: 'c', round: 'r1', tempo: 100 },
    { type: 'ChangeTook', id: 'c', round: 'r1', change: { kind: 'full' }, bar: 1 },
    { type: 'VampStopped', id: 'c', round: 'r1' },
  ];
  test.each(teachers)('R4 a student may not send $type', (command) => {
    given(opened, joined('s1', 1)).when(student('s1'), command).refused('not-teacher');
  });

  test('R5 the teacher neither joins nor answers; only a host page speaks for the sound', () => {
    given(opened).when(DESK, join('Teacher')).refused('not-joined');
    given(opened)
      .when(HOST, { type: 'WriteAnswer', id: 'c', ask: 'a1', counter: 1, answer: 'up', heldMs: 0 })
      .refused('not-joined');
    given(opened).when(DESK, { type: 'VampStopped', id: 'c', round: 'r1' }).refused('not-joined');
    given(opened).when(DESK, { type: 'HoldSound', id: 'c', takeOver: true }).refused('not-joined');
  });

  test('R5 a student who has not joined cannot answer', () => {
    given(opened)
      .when(student(null), { type: 'WriteAnswer', id: 'c', ask: 'a1', counter: 1, answer: 'up', heldMs: 0 })
      .refused('not-joined');
    given(opened).when(student('gone'), { type: 'CannotHear', id: 'c', ask: 'a1' }).refused('not-joined');
  });
});

describe('seats', () => {
  test('R6 takes the seat behind the last; the name is beside the log', () => {
    given(opened, joined('s1', 1), joined('s3', 3))
      .when(student(null), join(' Ana '))
      .gives({
        ok: true,
        events: [{ type: 'StudentJoined', student: 'fresh-student', seat: 4 }],
        people: [{ student: 'fresh-student', name: 'Ana', tokenHash: 'fresh-hash', hands: HANDS }],
        value: { student: 'fresh-student', token: 'fresh-token' },
      });
  });

  test('R7 the same again adds nothing; another name or hand is written beside the log', () => {
    const room = given(opened, joined('s1', 1));
    room.when(student('s1'), join('s1')).gives({ ok: true, events: [], value: { student: 's1' } });
    const changed: Command[] = [
      join('Anna'),
      join('s1', { ...HANDS, leftHanded: true }),
      join('s1', { ...HANDS, pair: true }),
      join('s1', { ...HANDS, leftThumb: true }),
    ];
    for (const command of changed) {
      const { name, leftHanded, pair, leftThumb } = command as Extract<Command, { type: 'Join' }>;
      room.when(student('s1'), command).gives({
        ok: true,
        events: [{ type: 'PersonChanged', student: 's1' }],
        people: [{ ...person('s1'), name, hands: { leftHanded, pair, leftThumb } }],
        value: { student: 's1' },
      });
    }
  });

  test('R8 a token of the phone is not told again', () => {
    given(opened)
      .when(student(null), join('Ana'), { fresh: { student: 's9', tokenHash: 'brought', token: null } })
      .gives({
        ok: true,
        events: [{ type: 'StudentJoined', student: 's9', seat: 1 }],
        people: [{ student: 's9', name: 'Ana', tokenHash: 'brought', hands: HANDS }],
        value: { student: 's9' },
      });
  });

  test('R9 a name that cannot be one takes no seat', () => {
    given(opened).when(student(null), join('')).refused('name-empty');
    given(opened).when(student(null), join('\u200b')).refused('name-not-readable');
    given(opened)
      .when(student(null), join('a'.repeat(500)))
      .refused('name-too-long', { most: 24 });
  });

  test('R10 late joiners come in while a question is open, not into a closed or full room', () => {
    expect(given(opened).when(student(null), join('Ana')).decision.ok).toBe(true);
    given(opened, { type: 'RoomClosed' }).when(student(null), join('Ana')).refused('room-ended');
    const seats: NewEvent[] = Array.from({ length: MOST_STUDENTS }, (_, index) => joined(`s${index}`, index + 1));
    given(opened, ...seats)
      .when(student(null), join('Ana'))
      .refused('room-full');
  });

  test('R11 two of one name are told apart by their seats', () => {
    const events = [opened, joined('s1', 1), joined('s2', 2), joined('s3', 3)];
    const people = peopleIn(events, { s1: 'Ana', s2: 'ana', s3: 'Ana' });
    expect([...people.shown.values()]).toEqual(['Ana', 'ana (2)', 'Ana (3)']);
  });

  test('R12 renaming follows the rules for names', () => {
    const room = given(opened, joined('s1', 1));
    const rename = (name: string, id = 's1'): Command => ({ type: 'RenameStudent', id: 'c', student: id, name });
    room.when(DESK, rename('Bo')).gives({
      ok: true,
      events: [{ type: 'PersonChanged', student: 's1' }],
      people: [person('s1', 'Bo')],
      value: { student: 's1' },
    });
    room.when(DESK, rename('s1')).gives({ ok: true, events: [], value: { student: 's1' } });
    room.when(DESK, rename('')).refused('name-empty');
    room.when(DESK, rename('Bo', 's2')).refused('student-unknown');
  });

  test('R13 erasing asks the keeper, and needs a student', () => {
    given(opened, joined('s1', 1))
      .when(DESK, { type: 'EraseStudent', id: 'c', student: 's1' })
      .gives({ ok: true, events: [], effects: [{ kind: 'erase', student: 's1' }] });
    given(opened).when(DESK, { type: 'EraseStudent', id: 'c', student: 's1' }).refused('student-unknown');
  });
});
