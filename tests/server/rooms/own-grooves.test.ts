import { describe, expect, test } from 'vitest';
import { GROOVES, grooveById, grooveLine, parseGroove } from '../../../shared-theory/grooves.ts';
import { LEVELS } from '../../../shared-theory/levels.ts';
import { MOST_GROOVES, type Command } from '../../../server/protocol/messages.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { refusals } from '../../../server/protocol/words/refusals.ts';
import type { HeardRound, NewEvent } from '../../../server/rooms/events.ts';
import { vampOf } from '../../../server/rooms/heard-round.ts';
import { deskView, hostView } from '../../../server/rooms/view.ts';
import {
  DESK,
  fold,
  given,
  guitar,
  HOST,
  LIVE,
  opened,
  peopleIn,
  SETTINGS,
  started,
  student,
} from '../../support/given.ts';

/** A groove as a teacher may write it, on several lines. */
const TYPED = `our-strum, Our strum | E8 | 4/4 | 70-110 | r=1
strk D - D U - U D U
zone A . A H . H A H
tch  o . o o . o o o
acc  3 0 2 1 0 1 2 1`;
const LINE = grooveLine(parseGroove(TYPED));
const other = (id: string) => LINE.replace('our-strum', id);
const saved = (text = LINE): NewEvent => ({ type: 'GrooveSaved', text });
const save = (text: string): Command => ({ type: 'SaveGroove', id: 'c', text });
const erase = (groove: string): Command => ({ type: 'EraseGroove', id: 'c', groove });
const start = (groove: string | null, level = 7): Command => {
  return { type: 'StartRound', id: 'c', after: 0, level, item: null, groove, contrast: null };
};
const strum = (groove: string | null): Command => {
  return { type: 'StartGuitarRound', id: 'c', after: 0, chords: 'Em D', groove, tempo: 92, directions: null };
};
function roundOf(command: Command, ...events: NewEvent[]): HeardRound {
  const { decision } = given(opened, ...events).when(DESK, command);
  const event = decision.ok ? decision.events.find(({ type }) => type === 'RoundStarted') : undefined;
  if (event?.type !== 'RoundStarted') throw new Error(JSON.stringify(decision));
  return event.round;
}

describe('R90 grooves of the class’s own', () => {
  test('are kept in one line, however they were written; once', () => {
    const value = { groove: 'our-strum' };
    for (const text of [TYPED, LINE, TYPED.replaceAll('\n', '\r\n')]) {
      given(opened)
        .when(DESK, save(text))
        .gives({ ok: true, events: [saved()], value });
      given(opened, saved()).when(HOST, save(text)).gives({ ok: true, events: [], value });
    }
    expect(LINE).not.toContain('\n');
    expect(fold([opened, saved()]).settings.grooves).toEqual([LINE]);
    given(opened).when(student('s1'), save(TYPED)).refused('not-teacher');
  });

  test('take the place of one of the same id, and leave by their id', () => {
    const faster = LINE.replace('70-110', '70-120');
    const room = [opened, saved(), saved(other('second')), saved(faster)];
    expect(fold(room).settings.grooves).toEqual([faster, other('second')]);
    given(...room)
      .when(DESK, erase('our-strum'))
      .gives({ ok: true, events: [{ type: 'GrooveErased', groove: 'our-strum' }] });
    const rest = [...room, { type: 'GrooveErased', groove: 'our-strum' } as const];
    expect(fold(rest).settings.grooves).toEqual([other('second')]);
    given(...rest)
      .when(DESK, erase('our-strum'))
      .refused('groove-unknown', { found: 'our-strum', known: 'second' });
    // What belongs to the catalogue stays.
    given(...rest)
      .when(DESK, erase('waltz'))
      .refused('groove-unknown', { found: 'waltz', known: 'second' });
  });

  test.each<[string, string, object]>([
    ['a token that is none', TYPED.replace('strk D', 'strk X'), { line: 2, lane: 'strk', slot: 1 }],
    ['a lane too short', TYPED.replace('acc  3 ', 'acc  '), { line: 5, lane: 'acc', slot: 8 }],
    ['a silent slot that sounds, in one line', LINE.replace('30210121', '31210121'), { lane: 'acc', slot: 2 }],
    ['a tempo out of range', TYPED.replace('70-110', '7-110'), { line: 1 }],
  ])('%s is refused with its place', (_, text, place) => {
    const { decision } = given(opened).when(DESK, save(text));
    expect(decision).toMatchObject({ ok: false, reason: 'groove-not-readable', detail: place });
    if (decision.ok) throw new Error('it was kept');
    const sentence = fill(refusals[decision.reason], decision.detail ?? {});
    expect(sentence).toMatch(/^This is no groove yet[.] Groove, .*[.]$/);
    if ('slot' in place) expect(sentence).toContain(`slot ${String(place.slot)}`);
    expect(sentence).not.toContain('{');
  });

  test('signs that cannot be seen, and an id that no command could name, are refused', () => {
    for (const name of ['Our\u202estrum', 'Our\u0000strum', 'Our\u200bstrum']) {
      expect(given(opened).when(DESK, save(TYPED.replace('Our strum', name))).decision).toMatchObject({
        reason: 'groove-not-readable',
      });
    }
    expect(given(opened).when(DESK, save(other('a'.repeat(41)))).decision).toMatchObject({
      reason: 'groove-not-readable',
    });
    expect(given(opened).when(DESK, save(other('a'.repeat(40)))).decision.ok).toBe(true);
  });

  test('a name longer than a list or a score can hold is refused, and told how long it may be', () => {
    const named = (letters: number) => TYPED.replace('Our strum', 'x'.repeat(letters));
    given(opened)
      .when(DESK, save(named(61)))
      .refused('groove-not-readable', { what: 'Groove, header: the name has 61 letters; 60 at most.' });
    expect(given(opened).when(DESK, save(named(60))).decision.ok).toBe(true);
  });

  test('an id of the catalogue is taken', () => {
    for (const { id } of GROOVES)
      given(opened)
        .when(DESK, save(other(id)))
        .refused('groove-taken', { found: id });
  });

  test('a class keeps forty', () => {
    const letters = Array.from(
      { length: MOST_GROOVES },
      (_, index) => `g-${String.fromCharCode(97 + (index % 26))}${index}`,
    );
    const full = [opened, ...letters.map((id) => saved(other(id)))];
    given(...full)
      .when(DESK, save(LINE))
      .refused('too-many-grooves', { most: MOST_GROOVES });
    const again = other(letters[3] ?? '').replace('70-110', '70-100');
    expect(given(...full).when(DESK, save(again)).decision).toMatchObject({ events: [saved(again)] });
  });

  test('stand on the desk behind the catalogue, and their text on the host page', () => {
    const state = fold([opened, saved()]);
    const { grooves } = deskView(state, peopleIn([]), LIVE);
    expect(grooves.slice(0, -1).map(({ id }) => id)).toEqual(GROOVES.map(({ id }) => id));
    expect(grooves.at(-1)).toEqual({ id: 'our-strum', name: 'Our strum', meter: '4/4', tempo: [70, 110] });
    expect(hostView(state, peopleIn([]), LIVE, 'page-1').settings.grooves).toEqual([LINE]);
  });

  test('a line of another version, which this one cannot read, harms nobody', () => {
    const strange: NewEvent = {
      type: 'RoomOpened',
      room: 'WAKUR',
      class: 'class-1',
      settings: { ...SETTINGS, grooves: ['strange, X', LINE] },
    };
    expect(deskView(fold([strange]), peopleIn([]), LIVE).grooves.map(({ id }) => id)).toEqual([
      ...GROOVES.map(({ id }) => id),
      'our-strum',
    ]);
    expect(given(strange).when(DESK, erase('strange')).decision.ok).toBe(true);
    expect(given(strange).when(DESK, start('our-strum')).decision.ok).toBe(true);
  });
});

describe('R91 a round in a groove', () => {
  test('of the catalogue or of the class, whose text it stores; or one that the level draws', () => {
    const own = roundOf(start('our-strum'), saved());
    expect(own.grooveText).toMatch(/^our-strum, Our strum [|] E8 [|] 4[/]4/);
    expect(parseGroove(own.grooveText).slots).toEqual(parseGroove(LINE).slots);
    expect(own.tempo).toBeGreaterThanOrEqual(70);
    expect(own.tempo).toBeLessThanOrEqual(110);
    // It can be played after the groove is gone.
    expect(vampOf(own).grooveText).toBe(own.grooveText);
    expect(roundOf(start('waltz'))).toMatchObject({ meter: '3/4', level: 7 });
    expect(roundOf(start('waltz')).grooveText).toMatch(/^waltz,/);
    expect(roundOf(start(null))).toEqual(roundOf(start(null), saved()));
  });

  test('one that there is not is refused with those that there are', () => {
    const known = GROOVES.map(({ id }) => id);
    for (const command of [start('polka'), strum('polka')]) {
      given(opened, saved())
        .when(DESK, command)
        .refused('groove-unknown', { found: 'polka', known: [...known, 'our-strum'].join(', ') });
    }
    given(opened)
      .when(DESK, start('our-strum'))
      .refused('groove-unknown', { found: 'our-strum', known: known.join(', ') });
  });

  test('every level plays in any own groove: where its chords could not be heard, they are opened by a full stroke', () => {
    const lanes = [
      'strk D-DU-UDU / zone H.HH.HHH / tch o.oo.ooo / acc 30210121',
      'strk DUDUDUDU / zone AAAAAAAA / tch xxxxxxxx / acc 33333333',
      'strk D------- / zone B....... / tch p....... / acc 30000000',
    ];
    for (const [index, each] of lanes.entries()) {
      const odd = saved(grooveLine(parseGroove(`odd, Odd | E8 | 4/4 | 100-140 | r=1 / ${each}`)));
      // A third of the levels each, all of them together.
      for (const { level } of LEVELS.filter((found) => found.level % lanes.length === index)) {
        const { opening } = parseGroove(roundOf(start('odd', level), odd).grooveText);
        expect(opening?.[0]).toEqual({ stroke: 'down', zone: 'all', touch: 'open', accent: 3 });
      }
    }
  });

  test('every groove of the catalogue and an own one serve the teacher’s guitar', () => {
    for (const groove of [...GROOVES.map(({ id }) => id), 'our-strum']) {
      const chords = { ...strum(groove), tempo: null } as Command;
      const made = roundOf(chords, saved());
      expect(made).toMatchObject({ entered: { groove } });
      expect(made.meter).toBe(groove === 'our-strum' ? '4/4' : grooveById(groove).meter);
    }
    expect(roundOf(strum('our-strum'), saved()).truth.strokes).toBe('down-up');
  });

  test('R78 a correction keeps the groove as it was played, whatever has become of it', () => {
    const settings = { ...SETTINGS, grooves: [LINE] };
    const before = [opened, saved(), started(guitar('Em D', 1, 'our-strum', settings))];
    const correct: Command = {
      type: 'CorrectRound',
      id: 'c',
      round: 'r1',
      after: 0,
      chords: 'G D',
      groove: 'our-strum',
      tempo: null,
      directions: null,
      pointsMayFall: false,
    };
    for (const since of [
      [],
      [{ type: 'GrooveErased', groove: 'our-strum' }],
      [saved(LINE.replace('D-DU-UDU', 'D-DD-DDD'))],
    ] as const) {
      expect(given(...before, ...since).when(DESK, correct).decision).toMatchObject({
        events: [{ round: { grooveText: LINE, truth: { strokes: 'down-up' } } }],
      });
    }
    given(...before)
      .when(DESK, { ...correct, groove: 'polka' })
      .refused('groove-unknown', { found: 'polka', known: [...GROOVES.map(({ id }) => id), 'our-strum'].join(', ') });
  });
});
