import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { decide } from '../../../server/rooms/decide.ts';
import { readEvent, UnreadableEventError, versioned } from '../../../server/rooms/events.ts';
import { RHYTHM_KINDS } from '../../../shared-theory/questions/question.ts';
import type { Kind } from '../../../shared-theory/questions/question.ts';
import { guitarRound } from '../../../server/rooms/guitar-round.ts';
import { evolve } from '../../../server/rooms/evolve.ts';
import { unopenedRoom } from '../../../server/rooms/state.ts';
import { deskView } from '../../../server/rooms/view.ts';
import { lessonTable } from '../../../server/export/lesson-table.ts';
import { DESK, LIVE, moment, peopleIn, SETTINGS } from '../../support/given.ts';

/** A log as it was written when chords were triads, keys counted in two ways, and nobody had a capo. */
const LOG = linesOf('log-of-triads.jsonl');
/** A log as it was written when one guitar played alone, at one pitch, in the grooves of the catalogue. */
const ONE_GUITAR = linesOf('log-of-one-guitar.jsonl');

/** A log as it was written when a groove was asked for its strokes alone, and nobody tapped. */
const STROKES_ALONE = linesOf('log-of-decorated-grooves.jsonl');

function linesOf(file: string): readonly string[] {
  return readFileSync(join(import.meta.dirname, 'stored', file), 'utf8')
    .trim()
    .split('\n');
}

function folded(lines: readonly string[]) {
  const state = unopenedRoom();
  for (const [index, line] of lines.entries()) evolve(state, readEvent(line), moment(index * 100));
  return state;
}

describe('R47 a log of the time of triads', () => {
  test('is read whole, its rounds as rounds of today', () => {
    const state = folded(LOG);
    expect(state.settings).toEqual({ ...SETTINGS, policy: 'relatives', namesShown: false });
    const [played, own] = state.rounds.map(({ heard }) => heard);
    const today = guitarRound(
      { id: 'r2', settings: { ...SETTINGS, policy: 'relatives' }, beat: null, grooves: [] },
      { chords: 'Em D', naming: 'english', groove: null, tempo: null, directions: null },
      7,
    );
    if ('reason' in today) throw new Error(today.reason);
    const { rhythm: _rhythm, ...sameTruth } = today.truth;
    // What is asked, and what settles, stays what it was then.
    expect({ ...own, questions: [], settlers: [], kinds: [] }).toEqual({
      ...today,
      questions: [],
      settlers: [],
      kinds: [],
      truth: { ...sameTruth, settlers: today.truth.settlers.filter(({ note }) => note === null) },
    });
    expect(played?.truth.chords).toEqual(played?.slots.map(({ chord }) => chord));
    expect(played?.truth.sevenths).toEqual(['none', 'none']);
    // Common practice: Em, D and A are ii, I and V of D, and iv, III and VII of its relative B minor, without its raised A#; Em, D
    // and C are vi, V and IV of G, and i, VII and VI of E minor.
    expect(own?.truth.settlers).toEqual([
      {
        chord: 'A',
        note: null,
        keys: {
          majors: ['D major'],
          relatives: ['D major', 'B minor'],
          'raised-seventh': ['D major', 'B minor'],
          modes: ['E dorian', 'D ionian'],
        },
      },
      {
        chord: 'C',
        note: null,
        keys: {
          majors: ['G major'],
          relatives: ['G major', 'E minor'],
          'raised-seventh': ['G major', 'E minor'],
          modes: ['E aeolian', 'D mixolydian'],
        },
      },
    ]);
  });

  test('what was stored then is right still: keys and settlers are not worked out anew', () => {
    const stored = JSON.parse(LOG[2] ?? '') as { round: { truth: { keys: object; settlers: { keys: object }[] } } };
    stored.round.truth.keys = { majors: ['F# major'], relatives: ['F# major', 'D# minor'] };
    const event = readEvent(JSON.stringify(stored));
    expect(event.type === 'RoundStarted' && event.round.truth.keys).toMatchObject({
      majors: ['F# major'],
      relatives: ['F# major', 'D# minor'],
      modes: expect.any(Array) as unknown,
    });
  });

  test('its questions are marked, shown and written into the table', () => {
    const state = folded(LOG);
    const people = peopleIn([{ type: 'StudentJoined', student: 's1', seat: 1 }]);
    const desk = deskView(state, people, LIVE);
    expect(desk.breakdown?.map(({ question }) => question)).toEqual(['direction-1', 'keys-0']);
    expect(desk.entered).toMatchObject({ chords: 'Em D', corrections: 1 });
    expect(lessonTable(state, people)).toHaveLength(3);
  });

  test('a round whose chords cannot be told is an error that says so', () => {
    const stored = JSON.parse(LOG[2] ?? '') as { round: { truth: { qualities: unknown } } };
    stored.round.truth.qualities = ['minor', 'of some sort'];
    expect(() => readEvent(JSON.stringify(stored))).toThrow(UnreadableEventError);
  });
});

describe('R47 a log of the time of one guitar', () => {
  test('is read whole: its room has what rooms begin with, and its sound goes on as it was', () => {
    const state = folded(ONE_GUITAR);
    expect(state.settings).toEqual({
      ...SETTINGS,
      policy: 'relatives',
      naming: 'german',
      capo: 3,
      slashIsNew: true,
      qualities: ['major', 'minor', 'power'],
      soundFollows: false,
    });
    expect(state.sound).toMatchObject({
      playing: true,
      round: 'r1',
      change: { kind: 'hold', slot: 1 },
      tempo: 168,
      climb: null,
      feel: 'written',
      band: { kit: false, bass: false },
    });
    expect(state.rounds[0]?.tempoChanged).toBe(true);
  });

  test('its questions are marked and shown as before, and it goes on', () => {
    const state = folded(ONE_GUITAR);
    const people = peopleIn([{ type: 'StudentJoined', student: 's1', seat: 1 }]);
    const desk = deskView(state, people, LIVE);
    expect(desk.breakdown?.map(({ question }) => question)).toEqual(['direction-1']);
    expect(desk.vamp?.grooveText).toMatch(/^driving-eighths,/);
    expect(lessonTable(state, people)).toHaveLength(2);
    const change = { kind: 'climb', to: 180 } as const;
    const command = { type: 'RequestChange', id: 'c', round: 'r1', change } as const;
    const fresh = { student: '', tokenHash: '', token: null };
    const context = { sender: DESK, now: moment(9_000), people, fresh, seed: 0, soundHolder: 'page-1' };
    expect(decide(state, command, context)).toMatchObject({ ok: true, effects: [{ order: { change } }] });
  });
});

describe('R47 a log of the time when a groove was asked for its strokes alone', () => {
  test('is read whole: no round is one of a pair, nothing was tapped, and the class begins with the first beat level', () => {
    const state = folded(STROKES_ALONE);
    expect(state.settings).toMatchObject({ beatLevel: 1, voice: 'nylon', pitch: 442 });
    expect(state.settings.grooves).toHaveLength(1);
    expect(state.rounds.map(({ heard }) => [heard.beat, heard.contrast, heard.truth.rhythm])).toEqual([
      [null, null, undefined],
      [null, null, undefined],
    ]);
    expect([...state.sheets.values()].map(({ tempo, grid }) => [tempo, grid])).toEqual([
      [null, null],
      [null, null],
    ]);
    expect([...state.students.values()].map(({ hands }) => hands)).toEqual([[]]);
    const people = peopleIn([{ type: 'StudentJoined', student: 's1', seat: 1 }]);
    const desk = deskView(state, people, LIVE);
    expect(desk.classTaps).toBeNull();
    expect(desk.steps.map(({ question }) => question)).toContain('strokes-0');
  });

  test('its strokes are marked as they were, and a correction keeps what was asked', () => {
    const people = peopleIn([{ type: 'StudentJoined', student: 's1', seat: 1 }]);
    const before = folded(STROKES_ALONE.slice(0, -1));
    expect(deskView(before, people, LIVE).students[0]?.mark).toMatchObject({ exact: false });
    const correct = {
      type: 'CorrectRound',
      id: 'c',
      round: 'r2',
      after: 0,
      chords: 'Em D',
      groove: 'quarter-downs',
      tempo: 96,
      directions: null,
      pointsMayFall: false,
    } as const;
    const decision = decide(before, correct, {
      sender: DESK,
      now: moment(9_000),
      people,
      fresh: { student: '', tokenHash: '', token: null },
      seed: 0,
      soundHolder: null,
    });
    if (!decision.ok) throw new Error(decision.reason);
    for (const event of decision.events) evolve(before, versioned(event), moment(9_000));
    const desk = deskView(before, people, LIVE);
    expect(desk.steps.filter(({ kind }) => RHYTHM_KINDS.has(kind as Kind)).map(({ question }) => question)).toEqual([
      'strokes-0',
    ]);
    expect(desk.students[0]?.mark).toMatchObject({ exact: true });
  });
});
