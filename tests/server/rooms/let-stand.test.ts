import { describe, expect, test } from 'vitest';
import type { Command } from '../../../server/protocol/messages.ts';
import type { HeardRound, NewEvent } from '../../../server/rooms/events.ts';
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
  shown,
  started,
} from '../../support/given.ts';

const seats: NewEvent[] = [opened, joined('s1', 1), joined('s2', 2)];
const wrote = (student: string, ask: string, answer: unknown): NewEvent =>
  ({ type: 'AnswerWritten', student, ask, counter: 1, answer }) as NewEvent;
const desk = (events: readonly NewEvent[]) => deskView(fold(events), peopleIn(seats), LIVE);
const own = (events: readonly NewEvent[], student: string) => studentOwn(fold(events), peopleIn(seats), student);
const common = (events: readonly NewEvent[]) => studentCommon(fold(events));

describe('R76 an answer that the teacher lets stand', () => {
  const stand = (answer: unknown, stands = true, question = 'quality-0', round = 'r1'): Command => ({
    type: 'LetStand',
    id: 'c',
    round,
    question,
    answer,
    stands,
  });
  const stood = (answer: 'major' | 'minor' | 'up', stands = true, question = 'quality-0'): NewEvent => ({
    type: 'AnswerLetStand',
    round: 'r1',
    question,
    answer,
    stands,
  });
  const asking = [
    ...seats,
    started(guitar('Em D')),
    asked('a1', 'quality-0'),
    wrote('s1', 'a1', 'major'),
    wrote('s2', 'a1', 'minor'),
    closed('a1'),
    shown('a1'),
  ];

  test('is said of an answer to a question of a round, once', () => {
    const room = given(...asking);
    room.when(DESK, stand('major')).gives({ ok: true, events: [stood('major')] });
    room.when(DESK, stand('minor')).gives({ ok: true, events: [] });
    room.when(DESK, stand('major', false)).gives({ ok: true, events: [] });
    for (const answer of ['power', 'not-sure', 7, null]) room.when(DESK, stand(answer)).refused('answer-not-readable');
    room.when(DESK, stand('major', true, 'quality-9')).refused('question-unknown');
    room.when(DESK, stand('major', true, 'quality-0', 'r9')).refused('round-unknown');
    const after = given(...asking, stood('major'));
    after.when(DESK, stand('major')).gives({ ok: true, events: [] });
    after.when(DESK, stand('major', false)).gives({ ok: true, events: [stood('major', false)] });
  });

  test('is right at once for all who gave it, and wrong again when it is taken back', () => {
    const after = [...asking, stood('major')];
    expect(own(asking, 's1')?.mark).toMatchObject({ exact: false });
    expect(own(after, 's1')?.mark).toEqual({ credit: 1, exact: true, note: 'also-right' });
    expect(own(after, 's2')?.mark).toEqual({ credit: 1, exact: true });
    expect(common(after)).toMatchObject({ v: common(asking).v + 1, truth: { key: 'minor', also: ['major'] } });
    expect(desk(after)).toMatchObject({ letStand: ['major'], topWrong: null, breakdown: [{ right: 2, wrong: 0 }] });
    expect(desk(after).reports).toMatchObject([
      { student: 's1', right: 1, points: 10 },
      { student: 's2', right: 1, points: 10 },
    ]);
    const back = [...after, stood('major', false)];
    expect(own(back, 's1')?.mark).toMatchObject({ exact: false });
    expect(desk(back)).toMatchObject({ letStand: [], breakdown: [{ right: 1, wrong: 1 }] });
  });

  test('holds in its round through corrections, and takes nothing from other rounds when its own is corrected', () => {
    const corrected = (text: string, pointsMayFall: boolean): NewEvent => ({
      type: 'TruthCorrected',
      round: guitar(text),
      pointsMayFall,
    });
    const two = [
      ...asking,
      stood('major'),
      started(guitar('Em D', 2)),
      asked('a2', 'quality-0', 'r2'),
      wrote('s1', 'a2', 'major'),
      closed('a2'),
      shown('a2'),
    ];
    const pointsOf = (events: readonly NewEvent[]) => desk(events).reports.map(({ points }) => points);
    expect(pointsOf(two)).toEqual([20, 10]);
    for (const mayFall of [false, true]) {
      const after = [...two, corrected('Em A', mayFall)];
      expect(pointsOf(after)).toEqual([20, 10]);
      expect(desk(after).breakdown).toMatchObject([
        { round: 1, right: 2, wrong: 0 },
        { round: 2, right: 1, wrong: 0 },
      ]);
    }
  });

  test('is remembered for the same chords where the same is right, and for no others', () => {
    const next = (chords: string, question = 'quality-0', letStand = stood('major')) =>
      desk([...asking, letStand, started(guitar(chords, 2)), asked('a2', question, 'r2'), closed('a2')]).letStand;
    expect(next('Em D')).toEqual(['major']);
    for (const chords of ['Em D G', 'D Em', 'Em A', 'E D', 'Em']) expect(next(chords)).toEqual([]);
    expect(next('Em D', 'quality-1')).toEqual([]);
    // Enharmonic names sound the same.
    const sharp = desk([
      ...seats,
      started(guitar('F# B')),
      stood('minor'),
      started(guitar('Gb B', 2)),
      asked('a1', 'quality-0', 'r2'),
    ]);
    expect(sharp.letStand).toEqual(['minor']);
    // The same chords with the bass the other way are another question about the bass.
    const down = { ...guitar('Em D', 2), truth: { ...guitar('Em D').truth, directions: ['down' as const] } };
    const bass = (round: HeardRound) =>
      desk([
        ...seats,
        started(guitar('Em D')),
        { ...stood('major'), question: 'direction-1', answer: 'same' } as NewEvent,
        started(round),
        asked('a1', 'direction-1', 'r2'),
      ]).letStand;
    expect(bass(guitar('Em D', 2))).toEqual(['same']);
    expect(bass(down)).toEqual([]);
  });

  test('before the reveal nobody learns of it', () => {
    const open = [...seats, started(guitar('Em D')), asked('a1', 'quality-0')];
    expect(common([...open, stood('major')])).toEqual(common(open));
  });
});

describe('R77 a struck question', () => {
  const strike = (struck = true, question = 'quality-0', round = 'r1'): Command => ({
    type: 'StrikeQuestion',
    id: 'c',
    round,
    question,
    struck,
  });
  const struck = (is = true): NewEvent => ({ type: 'QuestionStruck', round: 'r1', question: 'quality-0', struck: is });
  const asking = [...seats, started(played('Em D')), asked('a1', 'quality-0'), wrote('s1', 'a1', 'major')];
  const over = [...asking, closed('a1'), shown('a1')];

  test('was asked, and is struck and taken back once', () => {
    given(...over)
      .when(DESK, strike())
      .gives({ ok: true, events: [struck()] });
    given(...over)
      .when(DESK, strike(false))
      .gives({ ok: true, events: [] });
    given(...over, struck())
      .when(DESK, strike())
      .gives({ ok: true, events: [] });
    given(...over, struck())
      .when(DESK, strike(false))
      .gives({ ok: true, events: [struck(false)] });
    given(...asking)
      .when(DESK, strike())
      .gives({ ok: true, events: [struck()] });
    const room = given(...over);
    room.when(DESK, strike(true, 'keys-0')).refused('question-not-open');
    room.when(DESK, strike(true, 'keys-9')).refused('question-unknown');
    room.when(DESK, strike(true, 'quality-0', 'r9')).refused('round-unknown');
  });

  test('gives everybody its points and stands in no count', () => {
    const after = [...over, struck()];
    expect(common(after)).toMatchObject({ v: common(over).v + 1, struck: true });
    expect(common(over)).not.toHaveProperty('struck');
    expect(desk(after).current).toMatchObject({ struck: true });
    expect(hostView(fold(after), peopleIn(seats), LIVE, 'page-1').current).toMatchObject({ struck: true });
    expect(desk(after).breakdown).toEqual([]);
    expect(desk(after).reports).toMatchObject([
      { student: 's1', of: 0, points: 10, errors: [] },
      { student: 's2', of: 0, points: 10 },
    ]);
    const end: NewEvent = { type: 'LessonEnded' };
    expect(own([...after, end], 's1')?.lesson).toEqual({ right: 0, part: 0, of: 0 });
    const back = [...after, struck(false)];
    expect(common(back)).not.toHaveProperty('struck');
    expect(desk(back).reports).toMatchObject([
      { of: 1, wrong: 1, points: 0 },
      { of: 1, silent: 1 },
    ]);
  });

  test('who came in later has nothing of it', () => {
    const late = [...over, joined('s3', 3), struck()];
    expect(desk(late).reports.map(({ student }) => student)).toEqual(['s1', 's2']);
  });
});
