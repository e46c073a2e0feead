import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Command, RoomSettings } from '../../../server/protocol/messages.ts';
import type { EnteredRound, HeardRound, NewEvent } from '../../../server/rooms/events.ts';
import { guitarRound } from '../../../server/rooms/guitar-round.ts';
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
} from '../../support/given.ts';

const STUDENTS = ['s1', 's2', 's3'];
const seats: NewEvent[] = [opened, ...STUDENTS.map((id, index) => joined(id, index + 1))];
const wrote = (student: string, ask: string, answer: unknown, counter = 1): NewEvent =>
  ({ type: 'AnswerWritten', student, ask, counter, answer }) as NewEvent;

function heard(chords: string, entered: Partial<EnteredRound> = {}): HeardRound {
  const round = guitarRound(
    { id: 'r1', settings: SETTINGS, beat: 1, grooves: [] },
    { chords, naming: 'english', groove: null, tempo: null, directions: null, ...entered },
    7,
  );
  if ('reason' in round) throw new Error(`no such round: ${round.reason}`);
  return round;
}
const corrected = (chords: string, pointsMayFall = false): NewEvent => ({
  type: 'TruthCorrected',
  round: heard(chords),
  pointsMayFall,
});
const correct = (chords: string, after = 0, changed: object = {}): Command => ({
  type: 'CorrectRound',
  id: 'c',
  round: 'r1',
  after,
  chords,
  groove: null,
  tempo: null,
  directions: null,
  pointsMayFall: false,
  ...changed,
});
/** A question asked, answered by all and shown. */
const through = (ask: string, question: string, answers: readonly unknown[], end: readonly NewEvent[]): NewEvent[] => [
  asked(ask, question),
  ...answers.flatMap((answer, index) => (answer === null ? [] : [wrote(`s${index + 1}`, ask, answer)])),
  closed(ask),
  ...end,
];
const desk = (events: readonly NewEvent[]) => deskView(fold(events), peopleIn(seats), LIVE);
const points = (events: readonly NewEvent[]) =>
  Object.fromEntries(desk(events).reports.map(({ student, points }) => [student, points]));

describe('R78 correcting', () => {
  const base = [...seats, started(guitar('Em D'))];

  test('acts once, at any time until the room closes', () => {
    given(...base)
      .when(DESK, correct('G D'))
      .gives({ ok: true, events: [corrected('G D')], value: { corrections: 1 } });
    const after = given(...base, corrected('G D'));
    for (const chords of ['G D', 'Am D']) {
      after.when(DESK, correct(chords)).gives({ ok: true, events: [], value: { corrections: 1 } });
    }
    after.when(DESK, correct('Am D', 1)).gives({ ok: true, events: [corrected('Am D')], value: { corrections: 2 } });
    after.when(DESK, correct('G D', 1)).gives({ ok: true, events: [], value: { corrections: 1 } });
    expect(after.when(DESK, correct('G D', 3)).decision).toMatchObject({ reason: 'message-not-readable' });
    const later = given(...base, started(guitar('C F', 2)), { type: 'LessonEnded' });
    expect(later.when(DESK, correct('G D')).decision).toMatchObject({ events: [{ type: 'TruthCorrected' }] });
    given(...base, { type: 'RoomClosed' })
      .when(DESK, correct('G D'))
      .refused('room-ended');
  });

  test('what was entered stands in the naming of now, and is read in it', () => {
    const naming = (to: RoomSettings['naming']): NewEvent => ({ type: 'SettingsChanged', settings: { naming: to } });
    const entered = [...seats, started(heard('| Bb | B7 . F . |'))];
    expect(desk(entered).entered?.chords).toBe('| Bb | B7 . F . |');
    const german = [...entered, naming('german')];
    expect(desk(german).entered?.chords).toBe('| B | H7 . F . |');
    expect(desk([...german, naming('fixed-do')]).entered?.chords).toBe('| Si♭ | Si7 . Fa . |');
    // Sent back as it stands there, nothing was corrected.
    given(...german)
      .when(DESK, correct('| B | H7 . F . |'))
      .gives({ ok: true, events: [], value: { corrections: 0 } });
    const { decision } = given(...german).when(DESK, correct('B F'));
    const [event] = decision.ok ? decision.events : [];
    if (event?.type !== 'TruthCorrected') throw new Error('nothing was corrected');
    expect(event.round.truth.chords).toEqual(['Bb', 'F']);
    expect(event.round.entered).toMatchObject({ chords: 'B F', naming: 'german' });
    expect(desk([...german, event, naming('english')]).entered?.chords).toBe('B♭ F');
  });

  test('of one’s own guitar only, and only what can be read', () => {
    given(...seats, started(played('Em D')))
      .when(DESK, correct('G D'))
      .refused('not-your-guitar');
    const room = given(...base);
    room.when(DESK, correct('G D', 0, { round: 'r9' })).refused('round-unknown');
    expect(room.when(DESK, correct('H7')).decision).toMatchObject({ reason: 'chords-not-readable' });
    room.when(DESK, correct('G D', 0, { groove: 'polka' })).refused('groove-unknown', {
      found: 'polka',
      known: expect.stringMatching(/quarter-downs.*waltz/) as unknown as string,
    });
  });

  test('keeps the settings that the round was asked under', () => {
    const change: NewEvent = { type: 'SettingsChanged', settings: { policy: 'relatives' } };
    const { decision } = given(...base, change).when(DESK, correct('G D'));
    expect(decision).toMatchObject({ events: [{ round: { settings: { policy: 'majors' } } }] });
  });

  test('the desk has what was entered, and how much was shown', () => {
    const events = [...base, ...through('a1', 'quality-0', ['minor'], [shown('a1')]), corrected('E D')];
    expect(desk(events).entered).toEqual({
      chords: 'E D',
      groove: null,
      tempo: null,
      directions: null,
      corrections: 1,
      shown: 1,
    });
    expect(desk([...seats, started(played('Em D'))]).entered).toBeNull();
  });
});

describe('R79 evidence as if entered rightly at first', () => {
  const quality = through('a1', 'quality-0', ['major', 'minor', 'not-sure'], [shown('a1')]);

  test('marks, reveal and counts follow at once', () => {
    const before = [...seats, started(guitar('Em D')), ...quality];
    const after = [...before, corrected('E D')];
    expect(studentCommon(fold(before)).truth?.key).toBe('minor');
    expect(studentCommon(fold(after)).truth?.key).toBe('major');
    expect(studentCommon(fold(after)).v).toBe(studentCommon(fold(before)).v + 1);
    const mark = (events: readonly NewEvent[], student: string) =>
      studentOwn(fold(events), peopleIn(seats), student)?.mark?.exact;
    expect([mark(before, 's1'), mark(after, 's1')]).toEqual([false, true]);
    expect([mark(before, 's2'), mark(after, 's2')]).toEqual([true, false]);
    expect(desk(after).breakdown).toMatchObject([{ question: 'quality-0', right: 1, wrong: 1, notSure: 1 }]);
    expect(hostView(fold(after), peopleIn(seats), LIVE, 'page-1').truth?.key).toBe('major');
  });

  const CHORDS = fc.constantFrom('Em D', 'E D', 'G', 'G D', 'Am F C', 'D A', 'D A D G', 'A A', 'Bdim C');
  const ANSWERS = fc.constantFrom<unknown>(
    'up',
    'down',
    'same',
    'major',
    'minor',
    'not-sure',
    1,
    2,
    3,
    5,
    -2,
    { string: 6, fret: 0 },
    { string: 5, fret: 5 },
    ['vi', 'V'],
    ['I'],
    'one',
    'several',
    ['7M', '2M'],
    ['7M'],
    null,
  );
  const READS: Readonly<Record<string, (answer: unknown) => boolean>> = {
    count: (answer) => typeof answer === 'number' && answer > 0,
    direction: (answer) => answer === 'up' || answer === 'down' || answer === 'same',
    quality: (answer) => answer === 'major' || answer === 'minor',
    root: (answer) => typeof answer === 'object' && !Array.isArray(answer),
    distance: (answer) => typeof answer === 'number',
    numeral: (answer) => Array.isArray(answer) && !answer.some((each) => /M/.test(String(each))),
    'one-or-several': (answer) => answer === 'one' || answer === 'several',
    keys: (answer) => Array.isArray(answer) && answer.every((each) => /M/.test(String(each))),
    settler: (answer) => Array.isArray(answer) && answer.every((each) => /M/.test(String(each))),
  };
  const fits = (question: string, answer: unknown) =>
    answer === 'not-sure' || READS[question.replace(/-\d+$/, '')]?.(answer) === true;

  /** Questions that all of the given rounds have, asked in any order; shown or not, with a second sheet or not. */
  const lesson = (rounds: readonly HeardRound[]) => {
    const [first, ...others] = rounds.map(({ questions }) => questions.map(({ id }) => id));
    const common = (first ?? []).filter((id) => others.every((ids) => ids.includes(id)));
    return fc
      .shuffledSubarray(common, { minLength: Math.min(2, common.length) })
      .chain((ids) =>
        fc.tuple(
          ...ids.map((id) =>
            fc.record({
              id: fc.constant(id),
              answers: fc.array(ANSWERS, { minLength: 3, maxLength: 3 }),
              again: fc.option(fc.array(ANSWERS, { minLength: 3, maxLength: 3 })),
              shown: fc.boolean(),
              struck: fc.integer({ max: 6, min: 0 }),
              stands: ANSWERS,
            }),
          ),
        ),
      )
      .map((questions) => {
        let ask = 0;
        return questions.map(({ id, answers, again, shown: reveal, struck, stands }): NewEvent[] => {
          const sheet = (given: readonly unknown[], number: number): NewEvent[] => {
            const name = `a${(ask += 1)}`;
            const kept = given.map((answer) => (answer !== null && fits(id, answer) ? answer : null));
            const [open, ...rest] = through(name, id, kept, []);
            return open?.type === 'QuestionOpened' ? [{ ...open, sheet: number }, ...rest] : rest;
          };
          const events = [...sheet(answers, 1), ...(again === null ? [] : sheet(again, 2))];
          if (reveal) events.push(shown(`a${ask}`));
          if (struck === 0) events.push({ type: 'QuestionStruck', round: 'r1', question: id, struck: true });
          if (stands !== null && stands !== 'not-sure' && fits(id, stands)) {
            events.push({
              type: 'AnswerLetStand',
              round: 'r1',
              question: id,
              answer: stands as 'up',
              stands: true,
            });
          }
          return events;
        });
      });
  };

  /** Everything that is evidence, and everything that is shown; points, which go by what was shown, apart. */
  const evidence = (events: readonly NewEvent[]) => {
    const state = fold(events);
    const people = peopleIn(seats);
    const { reports, entered: _entered, v: _v, ...seen } = deskView(state, people, LIVE);
    const { v: _turn, ...common } = studentCommon(state);
    return {
      reports: reports.map(({ points: _points, ...report }) => report),
      seen,
      common,
      own: STUDENTS.map((id) => ({ ...studentOwn(state, people, id), v: 0 })),
      host: { ...hostView(state, people, LIVE, 'page-1'), v: 0 },
    };
  };

  test('a round that was corrected twice gives the evidence of one entered rightly', () => {
    fc.assert(
      fc.property(
        fc.tuple(CHORDS, CHORDS, CHORDS).chain((chords) =>
          fc.record({
            chords: fc.constant(chords),
            steps: lesson(chords.map((each) => heard(each))),
            places: fc.tuple(fc.nat({ max: 12 }), fc.nat({ max: 12 })),
            mayFall: fc.boolean(),
          }),
        ),
        ({ chords: [wrong, other, right], steps, places, mayFall }) => {
          const [one, two] = places.map((place) => Math.min(place, steps.length)).toSorted((a, b) => a - b);
          const between = (from: number | undefined, to?: number) => steps.slice(from, to).flat();
          const end: NewEvent = { type: 'LessonEnded' };
          const twice = [
            ...seats,
            started(heard(wrong)),
            ...between(0, one),
            corrected(other, mayFall),
            ...between(one, two),
            corrected(right),
            ...between(two),
          ];
          const rightly = [...seats, started(heard(right)), ...steps.flat()];
          expect(evidence(twice)).toEqual(evidence(rightly));
          expect(evidence([...twice, end])).toEqual(evidence([...rightly, end]));
        },
      ),
      { numRuns: 120 },
    );
  });

  test('R80 points of what was shown never fall without the teacher’s word, and then are those of the present truth', () => {
    fc.assert(
      fc.property(
        fc
          .array(CHORDS, { minLength: 2, maxLength: 4 })
          .chain((chords) => fc.record({ chords: fc.constant(chords), steps: lesson([heard(chords[0] ?? 'G')]) })),
        ({ chords, steps }) => {
          const [first = 'G', ...later] = chords;
          const events = [...seats, started(heard(first)), ...steps.flat()];
          // Of what was not shown nobody has seen any points.
          const closedOnly = fold(events).rounds[0]?.questions ?? new Map();
          const allShown = [...closedOnly.values()].every(({ shown: reveal, sheets }) => reveal || sheets.length === 0);
          let before = points(events);
          for (const chords of later) {
            events.push(corrected(chords));
            const now = points(events);
            if (allShown)
              for (const id of STUDENTS) expect(now[id] ?? 0).toBeGreaterThanOrEqual((before[id] ?? 0) - 1e-9);
            before = now;
          }
          const last = chords.at(-1) ?? 'G';
          const fallen = points([...events, corrected(last, true)]);
          const ids = new Set(heard(last).questions.map(({ id }) => id));
          const kept = steps.filter(([open]) => open?.type === 'QuestionOpened' && ids.has(open.question)).flat();
          const rightly = points([...seats, started(heard(last)), ...kept]);
          for (const id of STUDENTS) expect(fallen[id] ?? 0).toBeCloseTo(rightly[id] ?? 0, 9);
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('R80 points', () => {
  const base = [
    ...seats,
    started(guitar('Em D')),
    ...through('a1', 'quality-0', ['minor', 'major', null], [shown('a1')]),
  ];

  test('the highest under each truth that was shown, unless they may fall', () => {
    expect(points(base)).toMatchObject({ s1: 10, s2: 0 });
    expect(points([...base, corrected('E D')])).toMatchObject({ s1: 10, s2: 10 });
    expect(points([...base, corrected('E D'), corrected('Em D')])).toMatchObject({ s1: 10, s2: 10 });
    expect(points([...base, corrected('E D', true)])).toMatchObject({ s1: 0, s2: 10 });
    expect(points([...base, corrected('E D', true), corrected('Em D')])).toMatchObject({ s1: 10, s2: 10 });
  });

  test('of a question that was not shown the present truth alone', () => {
    const hidden = [...seats, started(guitar('Em D')), ...through('a1', 'quality-0', ['minor', 'major', null], [])];
    expect(points([...hidden, corrected('E D')])).toMatchObject({ s1: 0, s2: 10 });
  });
});

describe('R81 a question that is no more', () => {
  const base = [...seats, started(guitar('Em D'))];

  test('open, it is closed first; in the script it stands no more', () => {
    const open = [...base, asked('a1', 'direction-1'), wrote('s1', 'a1', 'up')];
    given(...open)
      .when(DESK, correct('Em'))
      .gives({ ok: true, events: [closed('a1'), corrected('Em')], value: { corrections: 1 } });
    const after = [...open, closed('a1'), corrected('Em')];
    expect(desk(after)).toMatchObject({ current: null, truth: null, breakdown: [] });
    expect(desk(after).steps.map(({ question }) => question)).not.toContain('direction-1');
    expect(studentCommon(fold(after)).phase).toBe('waiting');
    for (const type of ['ShowAnswer', 'ShowSpread', 'AnswerAgain', 'PlayBoth'] as const) {
      given(...after)
        .when(DESK, { type, id: 'c', ask: 'a1' })
        .refused('question-unknown');
    }
    given(...after)
      .when(DESK, { type: 'OpenQuestion', id: 'c', round: 'r1', question: 'direction-1', how: 'phones' })
      .refused('question-unknown');
    // One that stays goes on.
    expect(given(...open).when(DESK, correct('G D')).decision).toMatchObject({ events: [{ type: 'TruthCorrected' }] });
    expect(fold([...open, corrected('G D')]).open?.ask).toBe('a1');
  });

  test('so is a settler that was asked about, where another chord would settle it now', () => {
    const settlersOf = (text: string) => guitar(text).truth.settlers.map(({ chord, note }) => chord ?? note);
    const asking = [...base, ...through('a1', 'settler-0', [['7M'], ['2M'], null], [shown('a1')])];
    expect(settlersOf('Em D')[0]).not.toBe(settlersOf('Em C')[0]);
    const decided = given(...asking).when(DESK, correct('Em C')).decision;
    const [event] = decided.ok ? decided.events : [];
    if (event?.type !== 'TruthCorrected') throw new Error('nothing was corrected');
    const asked = (round: HeardRound) => round.questions.map(({ id }) => id).filter((id) => id.startsWith('settler'));
    expect(asked(event.round)).toContain('settler-1');
    expect(asked(event.round)).not.toContain('settler-0');
    expect(desk([...asking, event]).breakdown).toEqual([]);
    // Corrected back, what sounded is what is asked.
    const back = given(...asking, event).when(DESK, { ...correct('Em D'), after: 1 } as Command).decision;
    const [again] = back.ok ? back.events : [];
    expect(again?.type === 'TruthCorrected' && asked(again.round)).toEqual(asked(guitar('Em D')));
  });

  test('struck and never shown it keeps its points, unless they may fall', () => {
    const struck: NewEvent = { type: 'QuestionStruck', round: 'r1', question: 'direction-1', struck: true };
    const events = [...base, ...through('a1', 'direction-1', ['up', 'down', null], []), struck];
    expect(points(events)).toMatchObject({ s1: 10, s2: 10, s3: 10 });
    expect(points([...events, corrected('Em')])).toMatchObject({ s1: 10, s2: 10, s3: 10 });
    const fallen = points([...events, corrected('Em', true)]);
    for (const id of STUDENTS) expect(fallen[id] ?? 0).toBe(0);
  });

  test('what was shown keeps its points; brought back, its answers count again', () => {
    const events = [...base, ...through('a1', 'direction-1', ['up', 'down', null], [shown('a1')]), corrected('Em')];
    expect(points(events)).toMatchObject({ s1: 10 });
    expect(desk(events).reports.find(({ student }) => student === 's1')).toMatchObject({ of: 0 });
    const back = [...events, corrected('Em D')];
    expect(desk(back).breakdown).toMatchObject([{ question: 'direction-1', right: 1, wrong: 1, silent: 1 }]);
    const more = [...base, corrected('Em D G')];
    expect(desk(more).steps.map(({ question, status }) => [question, status])).toContainEqual(['quality-2', 'ready']);
  });
});
