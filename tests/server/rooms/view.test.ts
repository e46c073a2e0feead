import { describe, expect, test } from 'vitest';
import { LEVELS } from '../../../shared-theory/levels.ts';
import { KINDS, RHYTHM_KINDS } from '../../../shared-theory/questions/question.ts';
import { peopleOf } from '../../../server/rooms/people.ts';
import type { NewEvent } from '../../../server/rooms/events.ts';
import { versioned } from '../../../server/rooms/events.ts';
import { evolve } from '../../../server/rooms/evolve.ts';
import { deskView, hostView, studentCommon, studentOwn } from '../../../server/rooms/view.ts';
import {
  asked,
  closed,
  fold,
  guitar,
  joined,
  LIVE,
  opened,
  peopleIn,
  played,
  SETTINGS,
  shown,
  started,
} from '../../support/given.ts';

const NAMES = { s1: 'Ana', s2: 'Ana', s3: 'Bo' };
const base: NewEvent[] = [opened, joined('s1', 1), joined('s2', 2), joined('s3', 3), started(played('Em D'))];
const wrote = (student: string, ask: string, answer: unknown, counter = 1): NewEvent =>
  ({ type: 'AnswerWritten', student, ask, counter, answer }) as NewEvent;
const spread: NewEvent = { type: 'SpreadShown', ask: 'a1' };
const direction = [...base, asked('a1', 'direction-1'), wrote('s1', 'a1', 'same'), wrote('s2', 'a1', 'not-sure')];

const host = (events: readonly NewEvent[], page = 'page-1') =>
  hostView(fold(events), peopleIn(events, NAMES), LIVE, page);
const desk = (events: readonly NewEvent[]) => deskView(fold(events), peopleIn(events, NAMES), LIVE);
const own = (events: readonly NewEvent[], student: string, token?: string) =>
  studentOwn(fold(events), peopleIn(events, NAMES), student, token);

describe('students', () => {
  test('R38 phases, and nothing in them but the pad', () => {
    expect(studentCommon(fold([opened]))).toEqual({ v: 0, phase: 'waiting' });
    expect(studentCommon(fold(base))).toEqual({ v: 1, phase: 'waiting' });
    const pad = { ask: 'a1', sheet: 1, asking: { kind: 'direction', target: 1, loop: 'two' } };
    expect(studentCommon(fold(direction))).toEqual({ v: 2, phase: 'open', ...pad });
    expect(studentCommon(fold([...direction, closed('a1')]))).toEqual({ v: 3, phase: 'closed', ...pad });
    expect(studentCommon(fold([...direction, closed('a1'), spread]))).toEqual({ v: 3, phase: 'closed', ...pad });
    expect(studentCommon(fold([...direction, closed('a1'), shown('a1')]))).toEqual({
      v: 4,
      phase: 'shown',
      ...pad,
      truth: { answer: 'up', key: 'up' },
    });
    expect(studentCommon(fold([...direction, closed('a1'), { type: 'LessonEnded' }]))).toEqual({
      v: 4,
      phase: 'lesson-ended',
    });
    expect(studentCommon(fold([...direction, { type: 'RoomClosed' }]))).toEqual({ v: 3, phase: 'room-ended' });
  });

  test('R39 the own answer at any time, its mark after the reveal', () => {
    const plain = { leftHanded: false, pair: false, leftThumb: false };
    expect(own(base, 's2')).toEqual({ v: 1, name: 'Ana (2)', ...plain, counter: 0 });
    expect(own(base, 's2', 'token')).toEqual({ v: 1, name: 'Ana (2)', ...plain, token: 'token', counter: 0 });
    expect(own(direction, 's1')).toEqual({ v: 3, name: 'Ana', ...plain, counter: 1, ask: 'a1', answer: 'same' });
    const revealed = [...direction, closed('a1'), shown('a1')];
    expect(own(revealed, 's1')?.mark).toEqual({ credit: 0, exact: false, error: 'says-stays' });
    expect(own(revealed, 's2')?.mark).toEqual({ credit: 0, exact: false });
    expect(own(revealed, 's3')).not.toHaveProperty('mark');
    expect(own(revealed, 'nobody')).toBeNull();
    expect(studentOwn(fold(base), peopleOf([]), 's1')).toBeNull();
  });

  test('R39 at the end: how many of the shown questions came out right', () => {
    const root = (string: number, fret: number) => ({ string, fret });
    const end = [
      ...direction,
      wrote('s3', 'a1', 'up'),
      closed('a1'),
      shown('a1'),
      asked('a2', 'root-0'),
      wrote('s1', 'a2', root(6, 0), 2),
      wrote('s3', 'a2', root(5, 2), 2),
      closed('a2'),
      shown('a2'),
      asked('a3', 'keys-0'),
      closed('a3'),
      joined('s4', 4),
      { type: 'LessonEnded' } as const,
    ];
    expect(own(end, 's1')?.lesson).toEqual({ right: 1, part: 0, of: 2 });
    expect(own(end, 's2')?.lesson).toEqual({ right: 0, part: 0, of: 2 });
    expect(own(end, 's3')?.lesson).toEqual({ right: 1, part: 0, of: 2 });
    expect(own(end, 's4')?.lesson).toEqual({ right: 0, part: 0, of: 0 });
  });

  test('R40 the letter stands only once the root was shown', () => {
    const quality = [...base, asked('a1', 'quality-0')];
    const pad = { kind: 'quality', target: 0, options: ['major', 'minor'] };
    expect(studentCommon(fold(quality)).asking).toEqual(pad);
    const root = [...base, asked('a1', 'root-0'), closed('a1')];
    expect(studentCommon(fold([...root, asked('a2', 'quality-0')])).asking).toEqual(pad);
    expect(studentCommon(fold([...root, shown('a1'), asked('a2', 'quality-0')])).asking).toEqual({
      ...pad,
      letter: 'E',
    });
    expect(studentCommon(fold([...root, shown('a1'), asked('a2', 'quality-1')])).asking).toEqual({ ...pad, target: 1 });
  });

  test('how many chords there are stands only where everyone knows it', () => {
    const loop = (...events: NewEvent[]) => studentCommon(fold([opened, ...events])).asking?.loop;
    // A level that always has two chords.
    expect(loop(started(played('Em D')), asked('a1', 'keys-0'))).toBe('two');
    // One that has one now and then: until the next one was asked about, nobody is told.
    const third = started({ ...played('Em D'), loops: 'one-or-two' });
    expect(loop(third, asked('a1', 'keys-0'))).toBeUndefined();
    expect(loop(third, asked('a1', 'direction-1'))).toBe('two');
    for (const chords of ['A', 'Em D', 'G D Em']) {
      expect(loop(started(guitar(chords)), asked('a1', 'keys-0'))).toBeUndefined();
    }
    expect(loop(started(guitar('Em D')), asked('a1', 'direction-1'))).toBe('more');
    const later = [started(guitar('Em D')), asked('a1', 'direction-1'), closed('a1'), asked('a2', 'keys-0')];
    expect(loop(...later)).toBe('more');
    expect(desk([opened, started(guitar('A')), asked('a1', 'keys-0')]).current?.asking.loop).toBe('one');
    expect(host([opened, started(guitar('A')), asked('a1', 'keys-0')]).current?.asking).not.toHaveProperty('loop');
  });

  test('a student’s mark shows no more than what was shown; the desk’s shows all', () => {
    const root = [...base, asked('a1', 'root-0'), wrote('s1', 'a1', { string: 6, fret: 3 }), closed('a1'), shown('a1')];
    expect(own(root, 's1')?.mark).toEqual({ credit: 0, exact: false });
    expect(desk(root).students[0]?.mark).toEqual({ credit: 0.25, exact: false, error: 'hears-the-third' });
    const quality = [...root, asked('a2', 'quality-0'), closed('a2'), shown('a2'), { type: 'SpreadShown', ask: 'a1' }];
    expect(own(quality as NewEvent[], 's1')?.mark).toEqual({ credit: 0.25, exact: false, error: 'hears-the-third' });
  });

  test('once the tempo was changed no answer is blamed on it', () => {
    const { truth, ...rest } = played('D G');
    const slow = { ...rest, tempo: 70, truth: { ...truth, tempo: 70 } };
    const wrong = [asked('a1', 'quality-0'), wrote('s1', 'a1', 'minor'), closed('a1')];
    const events = (...sound: NewEvent[]) => [opened, joined('s1', 1), started(slow), ...sound, ...wrong];
    const error = (...sound: NewEvent[]) => desk(events(...sound)).topWrong?.error;
    const begun: NewEvent = { type: 'VampStarted', round: 'r1', tempo: 70 };
    const faster: NewEvent = { type: 'ChangeTook', round: 'r1', bar: 3, change: { kind: 'tempo', tempo: 90 } };
    expect([error(), error(begun), error(begun, faster)]).toEqual([
      'slow-or-low-is-minor',
      'slow-or-low-is-minor',
      null,
    ]);
    const after = fold(events(begun));
    expect(deskView(after, peopleOf([]), LIVE).topWrong?.error).toBe('slow-or-low-is-minor');
    evolve(after, versioned(faster), { at: 0, mono: 0, boot: 'boot-1' });
    expect(deskView(after, peopleOf([]), LIVE).topWrong?.error).toBeNull();
    expect(error({ ...begun, tempo: 90 })).toBeNull();
  });

  test('a root is right wherever the neck has it', () => {
    const root = [...base, asked('a1', 'root-0'), closed('a1'), shown('a1')];
    expect(studentCommon(fold(root)).truth).toEqual({
      answer: { string: 6, fret: 0 },
      key: '6.0',
      name: 'E',
      also: ['5.7', '6.12'],
    });
  });
});

describe('how many chords a loop has', () => {
  const counted = (chords: string, slashIsNew: boolean, number: 1 | 2 = 1) => {
    const settings = { ...SETTINGS, slashIsNew };
    const round = played(chords, number, 'relaxed-alternate', { settings, counted: true });
    const events = [opened, joined('s1', 1), started(round), asked('a1', 'count-0'), closed('a1'), shown('a1')];
    const state = fold([...events, asked('a2', 'direction-1')]);
    const { truth } = studentCommon(fold(events));
    return { shown: truth?.answer, loop: studentCommon(state).asking?.loop };
  };

  test('is on the pads as it was shown: with another bass another chord where the class counts so', () => {
    expect(counted('C C/E', true)).toEqual({ shown: 2, loop: 'two' });
    expect(counted('C F', true)).toEqual(counted('C C/E', true));
    expect(counted('C C/E F', true)).toEqual({ shown: 3, loop: 'more' });
    expect(counted('C C/E F', false)).toEqual({ shown: 2, loop: 'two' });
  });
});

test('how many chords may be home is told once the count has been shown', () => {
  const round = guitar('C F G');
  const known = [asked('a1', 'count-0'), closed('a1'), shown('a1'), asked('a2', 'home-0')];
  const begun = [opened, joined('s1', 1), started(round)];
  expect(studentCommon(fold([...begun, ...known])).asking).toMatchObject({ kind: 'home', loop: 'more', chords: 3 });
  expect(studentCommon(fold([...begun, asked('a2', 'home-0')])).asking).not.toHaveProperty('chords');
});

test('where no key owns a loop, the crib and the reveal of the keys name those that do but for visitors', () => {
  const known = [asked('a1', 'keys-0'), closed('a1'), shown('a1')];
  const begun = [opened, joined('s1', 1), started(guitar('Em A Dm A'))];
  const d = {
    key: 'D minor',
    numerals: ['ii', 'V', 'i'],
    visitors: [
      { chord: 'Em', numeral: 'ii', visit: 'dorian' },
      { chord: 'A', numeral: 'V', visit: 'raised-seventh' },
    ],
  };
  expect(desk(begun).crib?.visited.map(({ key }) => key)).toEqual(['D minor', 'A major']);
  expect(host([...begun, ...known.slice(0, 2)]).keysReveal).toBeNull();
  expect(host([...begun, ...known]).keysReveal?.visited).toEqual(d);
  const owned = [opened, joined('s1', 1), started(guitar('Em D')), ...known];
  expect(host(owned).keysReveal).not.toHaveProperty('visited');
});

describe('the host', () => {
  test('register: seats in order, names only where the class shows them', () => {
    const view = host(base.slice(0, 4));
    expect(view).toMatchObject({ status: 'register', vamp: null, steps: [], current: null, handsIn: 0, handsOf: 3 });
    expect(view.seats).toEqual([
      { seat: 1, name: 'Ana', here: true },
      { seat: 2, name: 'Ana (2)', here: false },
      { seat: 3, name: 'Bo', here: false },
    ]);
    const hidden = host([...base, { type: 'SettingsChanged', settings: { namesShown: false } }]);
    expect(hidden.seats.map(({ name }) => name)).toEqual([null, null, null]);
    expect(hostView(fold([]), peopleOf([]), LIVE, 'page-1').status).toBe('register');
  });

  test('R43 no ids, and no names that are not shown', () => {
    const text = JSON.stringify(host([...direction, { type: 'SettingsChanged', settings: { namesShown: false } }]));
    expect(text).not.toMatch(/"s1"|"s2"|Ana|Bo/);
  });

  test('the sound is held here or elsewhere', () => {
    expect(host(base)).toMatchObject({ holdsSound: true, soundHeld: true });
    expect(host(base, 'page-2')).toMatchObject({ holdsSound: false, soundHeld: true });
    expect(desk(base)).toMatchObject({ holdsSound: false, soundHeld: true });
  });

  test('R41 the spread after it was asked for, the answer after it was shown', () => {
    expect(host(direction)).toMatchObject({ spread: null, truth: null, handsIn: 2, handsOf: 3 });
    expect(host([...direction, closed('a1')])).toMatchObject({ spread: null, truth: null });
    const fallen = host([...direction, closed('a1'), spread]);
    expect(fallen.truth).toBeNull();
    expect(fallen.spread).toEqual({
      ask: 'a1',
      kind: 'direction',
      target: 1,
      asking: { kind: 'direction', target: 1, loop: 'two' },
      counts: [{ key: 'same', answer: 'same', count: 1 }],
      notSure: 1,
      silent: 1,
      of: 3,
    });
    expect(host([...direction, closed('a1'), spread, shown('a1')]).truth).toEqual({ answer: 'up', key: 'up' });
    expect(host([...direction, closed('a1'), shown('a1')]).spread).toBeNull();
  });

  test('R41 the charts of the keys only when the keys are shown', () => {
    const keys = [...base, asked('a1', 'keys-0'), closed('a1')];
    expect(host(keys).keysReveal).toBeNull();
    expect(host([...direction, closed('a1'), shown('a1')]).keysReveal).toBeNull();
    const reveal = host([...keys, shown('a1')]).keysReveal;
    expect(reveal?.chords).toEqual(['Em', 'D']);
    expect(reveal?.rows.map(({ key, row }) => [key, row[0]?.symbol, row[0]?.numeral])).toEqual([
      ['G major', 'Em', 'vi'],
      ['D major', 'Em', 'ii'],
    ]);
    // Common practice: C belongs to G major, C sharp to D major.
    expect(reveal?.deciders).toEqual([
      { note: 'C', leaves: ['G major'] },
      { note: 'C#', leaves: ['D major'] },
    ]);
  });

  test('R42 the row of steps is the same for two chords and for one', () => {
    const row = (chords: string, ...more: NewEvent[]) =>
      host([opened, started(played(chords)), ...more]).steps.map(({ question, kind, status }) => [
        question,
        kind,
        status,
      ]);
    const before = [
      ['strokes-0', 'strokes', 'ready'],
      ['direction-1', 'direction', 'ready'],
      ['quality-0', 'quality', 'ready'],
      ['root-0', 'root', 'ready'],
      ['distance-1', 'distance', 'ready'],
      ['numeral-0', 'numeral', 'ready'],
      ['one-or-several-0', 'one-or-several', 'ready'],
      ['keys-0', 'keys', 'ready'],
      ['settler-0', 'settler', 'ready'],
    ];
    for (const chords of ['Em', 'Em D', 'G D Em C', 'G5 D5']) expect(row(chords)).toEqual(before);
    expect(row('Em D', asked('a1', 'quality-1'))[2]).toEqual(['quality-1', 'quality', 'open']);
    expect(row('Em D', asked('a1', 'quality-1'), closed('a1'), shown('a1'), asked('a2', 'quality-0'))).toEqual([
      ...before.slice(0, 2),
      ['quality-0', 'quality', 'open'],
      ['quality-1', 'quality', 'shown'],
      ...before.slice(3),
    ]);
    const guitarRow = host([opened, started(guitar('Em D'))]).steps.map(({ kind }) => kind);
    expect(guitarRow).toEqual(KINDS.filter((kind) => !RHYTHM_KINDS.has(kind)));
  });

  test('R42 the end lists what was shown, and no one by name', () => {
    const end = [
      ...direction,
      closed('a1'),
      shown('a1'),
      asked('a2', 'keys-0'),
      closed('a2'),
      { type: 'LessonEnded' } as const,
    ];
    const view = host(end);
    expect(view.status).toBe('lesson-ended');
    expect(view.breakdown).toEqual([
      {
        asking: { kind: 'direction', target: 1, loop: 'two' },
        question: 'direction-1',
        round: 1,
        kind: 'direction',
        target: 1,
        right: 0,
        part: 0,
        wrong: 1,
        notSure: 1,
        silent: 1,
        missed: [{ key: 'same', answer: 'same', count: 1, error: 'says-stays' }],
        truth: 'up',
        memory: false,
      },
    ]);
    expect(desk(end).breakdown?.map(({ question }) => question)).toEqual(['direction-1', 'keys-0']);
    expect(host(direction).breakdown).toBeNull();
    expect(host([...end, { type: 'RoomClosed' }])).toMatchObject({ status: 'room-ended', breakdown: [{ round: 1 }] });
  });

  test('the vamp as the page plays it, and what sounds', () => {
    const view = host([...base, { type: 'VampStarted', round: 'r1', tempo: 96 }]);
    const { slots, settlers, grooveText } = played('Em D');
    expect(view.vamp).toEqual({
      round: 'r1',
      number: 1,
      source: 'host',
      level: 7,
      meter: '4/4',
      grooveText,
      tempo: 100,
      seed: 7,
      slots,
      // A note that is sung lies above the strings of the first chord.
      settlers: [...settlers.slice(0, 2), { note: 'C#', midi: 73 }, { note: 'C', midi: 72 }],
    });
    expect(view.sound).toEqual({
      playing: true,
      round: 'r1',
      change: { kind: 'full' },
      tempo: 96,
      climb: null,
      feel: 'written',
      band: { kit: false, bass: false },
    });
    expect(view.settings).toEqual(SETTINGS);
  });

  test('R45 who came in after the close could not answer', () => {
    const late = [...direction, joined('s4', 4), closed('a1'), joined('s5', 5), spread];
    expect(host(late)).toMatchObject({ handsOf: 4, spread: { of: 4, silent: 2 } });
  });
});

describe('the desk', () => {
  test('before a round: the catalogue of grooves and levels', () => {
    const view = desk([opened]);
    expect(view).toMatchObject({ steps: [], truths: {}, crib: null, topWrong: null, truth: null, visitors: 2 });
    expect(view.levels.map(({ level }) => level)).toEqual(LEVELS.map(({ level }) => level));
    expect(view.grooves.find(({ id }) => id === 'waltz')).toMatchObject({ meter: '3/4' });
  });

  test('R44 right answers at any time, spread and answers after the close', () => {
    const open = desk(direction);
    expect(open.truth).toEqual({ answer: 'up', key: 'up' });
    const onTheBeat = Array.from({ length: 9 }, (_, beat) => beat * 600);
    expect(open.truths).toEqual({
      'tempo-0': onTheBeat,
      'drop-out-0': { taps: onTheBeat, silentFrom: null },
      'strokes-0': 'down-up',
      'direction-1': 'up',
      'quality-0': 'minor',
      'root-0': { string: 6, fret: 0 },
      'distance-1': 10,
      'quality-1': 'major',
      'numeral-0': ['vi', 'V'],
      'one-or-several-0': 'several',
      'keys-0': ['2M', '7M'],
      'settler-0': ['2M'],
      'settler-1': ['7M'],
      'settler-2': ['2M'],
      'settler-3': ['7M'],
    });
    expect(open).toMatchObject({ spread: null, topWrong: null, spreadShown: false });
    expect(open.students[0]).toEqual({
      student: 's1',
      seat: 1,
      name: 'Ana',
      here: true,
      pair: false,
      leftHanded: false,
      depth: 'keys',
      wrote: true,
      cannotHear: false,
      hands: [],
    });
    const after = desk([...direction, { type: 'HearingSignalled', student: 's3', ask: 'a1' }, closed('a1'), spread]);
    expect(after.spread).toMatchObject({ counts: [{ key: 'same', count: 1 }], notSure: 1, silent: 1, of: 3 });
    expect(after.spreadShown).toBe(true);
    expect(after.topWrong).toEqual({
      key: 'same',
      answer: 'same',
      count: 1,
      error: 'says-stays',
      manyTheSame: false,
      suspectSpeaker: true,
      playable: false,
    });
    expect(after.students.map(({ answer, mark, cannotHear }) => ({ answer, mark, cannotHear }))).toEqual([
      { answer: 'same', mark: { credit: 0, exact: false, error: 'says-stays' }, cannotHear: false },
      { answer: 'not-sure', mark: { credit: 0, exact: false }, cannotHear: false },
      { answer: null, mark: undefined, cannotHear: true },
    ]);
  });

  test('the crib of the round', () => {
    expect(desk(base).crib).toMatchObject({
      chords: ['Em', 'D'],
      keys: [
        { key: 'G major', numerals: ['vi', 'V'] },
        { key: 'D major', numerals: ['ii', 'I'] },
      ],
      bass: ['E', 'D'],
      directions: ['up'],
    });
    expect(desk([opened, started(guitar('G Em G C'))]).crib?.chords).toEqual(['G', 'Em', 'C']);
    expect(desk([opened, started(guitar('C/E F Am7/G'))]).crib?.bass).toEqual(['E', 'F', 'G']);
  });

  test('what depends on the round alone is worked out once', () => {
    const keysShown = [...base, asked('a1', 'keys-0'), closed('a1'), shown('a1')];
    const state = fold(keysShown);
    const view = () => deskView(state, peopleIn(keysShown), LIVE);
    const first = view();
    expect(view().crib).toBe(first.crib);
    expect(view().policyChanges).toBe(first.policyChanges);
    expect(first.keysReveal).not.toBeNull();
    expect(view().keysReveal).toBe(first.keysReveal);
    evolve(state, versioned(started(guitar('C5 G5', 2))), { at: 1, mono: 1, boot: 'b' });
    expect(view().crib?.chords).toEqual(['C5', 'G5']);
  });

  test('a question that waits is asked under what its round keeps, whatever the class chooses now', () => {
    const change: NewEvent = { type: 'SettingsChanged', settings: { policy: 'modes', qualities: ['power'] } };
    expect(desk([opened]).askedUnder).toBeNull();
    expect(desk([...base, change])).toMatchObject({
      settings: { policy: 'modes', qualities: ['power'] },
      askedUnder: { policy: 'majors', qualities: ['major', 'minor'] },
    });
  });

  test('every question of the round, with its sheet', () => {
    const second = [...direction, closed('a1'), asked('a2', 'direction-1', 'r1', 2)];
    expect(desk(second).steps.map(({ question, status, sheet, ask }) => [question, status, sheet, ask])).toEqual([
      // Wherever a groove with a tempo sounds.
      ['tempo-0', 'ready', 1, null],
      ['drop-out-0', 'ready', 1, null],
      ['together-0', 'ready', 1, null],
      ['strokes-0', 'ready', 1, null],
      ['direction-1', 'open', 2, 'a2'],
      ['quality-0', 'ready', 1, null],
      ['root-0', 'ready', 1, null],
      ['distance-1', 'ready', 1, null],
      ['quality-1', 'ready', 1, null],
      ['numeral-0', 'ready', 1, null],
      ['one-or-several-0', 'ready', 1, null],
      ['keys-0', 'ready', 1, null],
      ['settler-0', 'ready', 1, null],
      ['settler-1', 'ready', 1, null],
      ['settler-2', 'ready', 1, null],
      ['settler-3', 'ready', 1, null],
    ]);
    expect(desk(second).current).toMatchObject({ ask: 'a2', sheet: 2, status: 'open', asking: { kind: 'direction' } });
  });

  test('R3 the pad of the running round stays, the next one follows the settings', () => {
    const change: NewEvent = { type: 'SettingsChanged', settings: { qualities: ['major', 'minor', 'power'] } };
    const asking = (events: NewEvent[]) => studentCommon(fold(events)).asking?.options;
    expect(asking([...base, change, asked('a1', 'quality-0')])).toEqual(['major', 'minor']);
    const settings = { ...SETTINGS, qualities: ['major', 'minor', 'power'] };
    const next = [...base, change, started(guitar('G C', 2, null, settings)), asked('a1', 'quality-0', 'r2')];
    expect(asking(next)).toEqual(['major', 'minor', 'power']);
  });

  test('a student whose row is gone leaves an empty name', () => {
    expect(deskView(fold(base), peopleOf([]), LIVE).students[0]).toMatchObject({ name: '', pair: false });
    expect(hostView(fold(base), peopleOf([]), LIVE, 'page-1').seats[0]?.name).toBeNull();
  });
});
