import { describe, expect, test } from 'vitest';
import { CONTRASTS } from '../../../shared-theory/contrast.ts';
import { LEVELS, levelOf } from '../../../shared-theory/levels.ts';
import { KINDS, RHYTHM_KINDS } from '../../../shared-theory/questions/question.ts';
import { parseQuestionId } from '../../../shared-theory/questions/round-questions.ts';
import type { Command } from '../../../server/protocol/messages.ts';
import type { HeardRound, NewEvent } from '../../../server/rooms/events.ts';
import { asked, closed, DESK, given, guitar, HOST, opened, played, SETTINGS, started } from '../../support/given.ts';

const start = (after: number, level = 7): Command => ({
  type: 'StartRound',
  id: 'c',
  after,
  level,
  item: null,
  groove: null,
  contrast: null,
});
type Guitar = Extract<Command, { type: 'StartGuitarRound' }>;
const strum = (changed: Partial<Guitar> = {}): Command => ({
  type: 'StartGuitarRound',
  id: 'c',
  after: 0,
  chords: 'Em D',
  groove: null,
  tempo: null,
  directions: null,
  ...changed,
});

describe('rounds', () => {
  test('R14 a second press is answered with the round of the first', () => {
    const room = given(opened, started(guitar('Em D')), started(guitar('G C', 2)));
    for (const command of [start(0), strum({ chords: 'nonsense' })]) {
      room.when(DESK, command).gives({ ok: true, events: [], value: { round: 'r1', number: 1 } });
    }
    room.when(HOST, start(1)).gives({ ok: true, events: [], value: { round: 'r2', number: 2 } });
    room.when(DESK, start(3)).refused('round-unknown');
  });

  test('R15 a round of the guitar keeps all that its marks need', () => {
    given(opened)
      .when(DESK, strum())
      .gives({
        ok: true,
        events: [{ type: 'RoundStarted', round: { ...guitar('Em D'), seed: 11 } }],
        value: { round: 'r1', number: 1 },
      });
    expect(guitar('Em D')).toEqual({
      id: 'r1',
      number: 1,
      source: 'guitar',
      level: null,
      loops: 'any',
      seed: 7,
      meter: '4/4',
      tempo: null,
      grooveText: '',
      slots: [
        { chord: 'Em', beats: 4, frets: [0, 2, 2, 0, 0, 0] },
        { chord: 'D', beats: 4, frets: [null, null, 0, 2, 3, 2] },
      ],
      truth: expect.objectContaining({
        count: 2,
        directions: ['up'],
        qualities: ['minor', 'major'],
        roots: ['E', 'D'],
        bass: [40, 50],
        chords: ['Em', 'D'],
        sevenths: ['none', 'none'],
        keys: expect.objectContaining({
          majors: ['G major', 'D major'],
          relatives: ['G major', 'E minor', 'D major', 'B minor'],
        }),
        strokes: null,
      }),
      settlers: [
        { chord: 'A', beats: 4, frets: [null, 0, 2, 2, 2, 0] },
        { chord: 'C', beats: 4, frets: [null, 3, 2, 0, 1, 0] },
        // Common practice: C sharp settles it for D major, C for G major; a note that is sung has no shape.
        null,
        null,
      ],
      questions: [
        'count-0',
        'direction-1',
        'quality-0',
        'root-0',
        'distance-1',
        'quality-1',
        'numeral-0',
        'one-or-several-0',
        'keys-0',
        'settler-0',
        'settler-1',
        'settler-2',
        'settler-3',
        'home-0',
      ].map(parseQuestionId),
      kinds: KINDS.filter((kind) => !RHYTHM_KINDS.has(kind)),
      settings: { policy: 'majors', qualities: ['major', 'minor'], capo: 0, slashIsNew: false },
      entered: { chords: 'Em D', naming: 'english', groove: null, tempo: null, directions: null },
      item: null,
      beat: 1,
      contrast: null,
    });
  });

  test('R15 a round that Hearsay plays is made from level and seed, and the same for the same', () => {
    const once = given(opened).when(DESK, start(0)).decision;
    expect(once).toEqual(given(opened).when(DESK, start(0)).decision);
    const event = once.ok ? once.events[0] : undefined;
    if (event?.type !== 'RoundStarted') throw new Error('no round');
    const { round } = event;
    expect(round).toMatchObject({ id: 'r1', number: 1, source: 'host', level: 7, seed: 11 });
    expect(round.grooveText).not.toBe('');
    expect(round.tempo).toBe(round.truth.tempo);
    expect(round.questions.map(({ kind }) => kind)).toEqual(
      expect.arrayContaining(['tempo', 'steadiness', 'keys', 'direction']),
    );
    expect(round.kinds).toEqual([
      'tempo',
      'steadiness',
      ...levelOf(7).questions.filter((kind) => !RHYTHM_KINDS.has(kind)),
    ]);
    expect(round).toMatchObject({ entered: null, item: null, beat: 1, contrast: null });
  });

  test('R15 a level asks its own kinds, and its qualities join the pad', () => {
    const { decision } = given(opened).when(DESK, start(0, 3));
    const event = decision.ok ? decision.events[0] : undefined;
    if (event?.type !== 'RoundStarted') throw new Error('no round');
    expect(event.round.kinds).toEqual(['tempo', 'steadiness', 'direction', 'quality']);
    const anywhere = ['tempo', 'drop-out', 'together'];
    expect(event.round.questions.every(({ kind }) => event.round.kinds.includes(kind) || anywhere.includes(kind))).toBe(
      true,
    );
    expect(event.round.settings.qualities).toEqual(['major', 'minor', 'power']);
  });

  test('R104 a groove on the guitar brings what the beat level of the class asks of it, else a lower one', () => {
    const ids = (beatLevel: number, groove: string | null = 'relaxed-alternate', tempo: number | null = null) =>
      guitar('G C', 1, groove, { ...SETTINGS, beatLevel }, tempo)
        .questions.filter(({ kind }) => RHYTHM_KINDS.has(kind))
        .map(({ id }) => id);
    expect(ids(1)).toEqual(['bar-count-0']);
    expect(ids(1, 'relaxed-alternate', 100)).toEqual(['tempo-0', 'steadiness-0', 'together-0']);
    expect(ids(5)).toEqual(expect.arrayContaining(['drive-0', 'strokes-0', 'pendulum-0', 'stroke-grid-0']));
    // Nothing of the sixth level can be asked of it but whether it swings, which it may.
    expect(ids(4, 'quarter-downs')).toEqual(['accents-0']);
    expect(ids(5, null)).toEqual([]);
    expect(guitar('G C', 1, 'quarter-downs').truth.strokes).toBe('all-downs');
    expect(guitar('G Em C', 1, 'waltz').slots.map(({ beats }) => beats)).toEqual([3, 3, 3]);
  });

  test('R15 a quality that no button of the pad says is not asked', () => {
    expect(guitar('E5 A').questions.map(({ id }) => id)).not.toContain('quality-0');
  });

  test('R103 a contrast pair: the same chords at the same tempo, in either of two grooves, and asked for what differs', () => {
    const of = (contrast: string | null, after: number, level = 7, groove: string | null = null): Command => ({
      type: 'StartRound',
      id: 'c',
      after,
      level,
      item: null,
      groove,
      contrast,
    });
    const made = (command: Command, seed: number, ...events: NewEvent[]): HeardRound => {
      const { decision } = given(opened, ...events).when(DESK, command, { seed });
      const event = decision.ok ? decision.events[0] : undefined;
      if (event?.type !== 'RoundStarted') throw new Error(JSON.stringify(decision));
      return event.round;
    };
    for (const { id, kind } of CONTRASTS) {
      const first = made(of(id, 0), 3);
      expect(first.contrast).toBe(id);
      expect(first.kinds).toContain(kind);
      expect(first.questions.map((question) => question.kind)).toContain(kind);
      // Beside what can be asked of every groove nothing but what tells its sides apart.
      const others = ['tempo', 'drop-out', 'together', kind];
      for (const each of [...first.kinds, ...first.questions.map((question) => question.kind)]) {
        if (RHYTHM_KINDS.has(each)) expect(others).toContain(each);
      }
      const next = Array.from({ length: 12 }, (_, seed) => made(of(id, 1), seed, started(first)));
      const loop = (round: HeardRound) => JSON.stringify(round.slots.map(({ chord, frets }) => [chord, frets]));
      expect(new Set([first, ...next].map(loop)).size).toBe(1);
      expect(new Set([first, ...next].map(({ grooveText }) => grooveText)).size).toBe(2);
    }
    const straight = made(of('straight-or-swung', 0), 3);
    const nexts = Array.from({ length: 4 }, (_, seed) => made(of('straight-or-swung', 1), seed, started(straight)));
    expect(new Set([straight, ...nexts].map(({ tempo }) => tempo)).size).toBe(1);
    // Beside the pair, or of another level, the chords are others.
    const other = made(of('straight-or-swung', 1, 5), 3, started(straight));
    expect(other.slots.map(({ chord }) => chord)).not.toEqual(straight.slots.map(({ chord }) => chord));
    given(opened)
      .when(DESK, of('loud-or-soft', 0))
      .refused('contrast-unknown', { found: 'loud-or-soft', known: CONTRASTS.map(({ id }) => id).join(', ') });
    given(opened)
      .when(DESK, of('straight-or-swung', 0, 7, 'waltz'))
      .refused('message-not-readable', { what: 'a groove beside a contrast pair, which brings its own' });
  });

  test.each([[0], [99], [2.5]])('R16 there is no level %d', (level) => {
    given(opened).when(DESK, start(0, level)).refused('level-unknown', { found: level, low: 1, high: LEVELS.length });
  });

  test('R16 the vamp just heard does not come again, whatever the seed', () => {
    const first = given(opened).when(DESK, start(0)).decision;
    const round = first.ok && first.events[0]?.type === 'RoundStarted' ? first.events[0].round : guitar('G');
    const again = given(opened, started(round));
    const loop = (slots: readonly { chord: string }[]) => slots.map(({ chord }) => chord).join(' ');
    for (let seed = 0; seed < 60; seed += 1) {
      const { decision } = again.when(DESK, start(1), { seed });
      const next = decision.ok && decision.events[0]?.type === 'RoundStarted' ? decision.events[0].round : null;
      expect(loop(next?.slots ?? [])).not.toBe(loop(round.slots));
    }
  });

  test('R17 faults of typed chords are named with their place', () => {
    given(opened)
      .when(DESK, strum({ chords: 'Em Gxq' }))
      .refused('chords-not-readable', {
        place: 4,
        found: expect.stringContaining('Gxq') as unknown as string,
        suggestion: expect.stringMatching(/./) as unknown as string,
      });
    expect(given(opened).when(DESK, strum({ chords: '' })).decision).toMatchObject({ reason: 'chords-not-readable' });
  });

  test('R17 groove, tempo and directions', () => {
    const room = given(opened);
    room.when(DESK, strum({ groove: 'polka' })).refused('groove-unknown', {
      found: 'polka',
      known: expect.stringMatching(/quarter-downs.*waltz/) as unknown as string,
    });
    room.when(DESK, strum({ tempo: 5 })).refused('tempo-out-of-range', { found: 5, low: 30, high: 300 });
    room
      .when(DESK, strum({ tempo: Number.NaN }))
      .refused('tempo-out-of-range', { found: Number.NaN, low: 30, high: 300 });
    expect(room.when(DESK, strum({ directions: ['up', 'down'] })).decision).toMatchObject({
      reason: 'message-not-readable',
    });
    expect(room.when(DESK, strum({ directions: ['same'] })).decision).toMatchObject({ reason: 'message-not-readable' });
    const { decision } = room.when(DESK, strum({ directions: ['down'], tempo: 92, groove: 'quarter-downs' }));
    const event = decision.ok ? decision.events[0] : undefined;
    expect(event?.type === 'RoundStarted' && event.round.truth).toMatchObject({ directions: ['down'], tempo: 92 });
  });

  test('R18 not while a question is open; after the end of the lesson it goes on', () => {
    const open = [opened, started(guitar('Em D')), asked('a1', 'keys-0')];
    given(...open)
      .when(DESK, start(1))
      .refused('question-still-open');
    const { decision } = given(...open, closed('a1'), { type: 'LessonEnded' }).when(DESK, strum({ after: 1 }));
    expect(decision).toMatchObject({ ok: true, value: { round: 'r2', number: 2 } });
  });

  test('R35 what still plays is stopped by the next round, the end of the lesson and of the room', () => {
    const sounding = given(opened, started(played('Em D')), { type: 'VampStarted', round: 'r1', tempo: 100 });
    const silent = given(opened, started(played('Em D')));
    const effects = [{ kind: 'order', order: { order: 'stop' } }];
    const commands: Command[] = [strum({ after: 1 }), { type: 'EndLesson', id: 'c' }, { type: 'CloseRoom', id: 'c' }];
    for (const command of commands) {
      // The page may have begun to play and not have said so yet.
      for (const room of [sounding, silent]) {
        expect(room.when(DESK, command, { soundHolder: 'page-1' }).decision).toMatchObject({ events: [{}], effects });
      }
      const { decision } = sounding.when(DESK, command);
      expect(decision).toMatchObject({ events: [{ type: 'VampStopped', round: 'r1' }, {}] });
      expect(decision).not.toHaveProperty('effects');
      expect(silent.when(DESK, command).decision).toMatchObject({ events: [{}] });
    }
  });

  test('R36 the lesson ends after a round, with no question open', () => {
    const end: Command = { type: 'EndLesson', id: 'c' };
    const round = started(guitar('Em D'));
    given(opened).when(DESK, end).refused('no-round');
    given(opened, round, asked('a1', 'keys-0')).when(DESK, end).refused('question-still-open');
    given(opened, round)
      .when(DESK, end)
      .gives({ ok: true, events: [{ type: 'LessonEnded' }] });
    given(opened, round, { type: 'LessonEnded' }).when(DESK, end).gives({ ok: true, events: [] });
  });

  test('R36 closing the room closes an open question with it', () => {
    const close: Command = { type: 'CloseRoom', id: 'c' };
    given(opened)
      .when(DESK, close)
      .gives({ ok: true, events: [{ type: 'RoomClosed' }] });
    given(opened, started(guitar('Em D')), asked('a1', 'keys-0'))
      .when(DESK, close)
      .gives({ ok: true, events: [closed('a1'), { type: 'RoomClosed' }] });
    given(opened, { type: 'RoomClosed' }).when(DESK, close).gives({ ok: true, events: [] });
  });
});
