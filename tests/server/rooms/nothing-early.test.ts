import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { QUALITIES, chordSymbol } from '../../../shared-theory/chords.ts';
import { grooveById } from '../../../shared-theory/grooves.ts';
import { GRID_KINDS, KINDS } from '../../../shared-theory/questions/question.ts';
import type { Kind } from '../../../shared-theory/questions/question.ts';
import { parseQuestionId } from '../../../shared-theory/questions/round-questions.ts';
import type { RoundQuestion } from '../../../shared-theory/questions/round-questions.ts';
import { LEVELS } from '../../../shared-theory/levels.ts';
import { DEPTHS } from '../../../server/protocol/messages.ts';
import type {
  AskHow,
  Command,
  Depth,
  EchoOf,
  RoomSettings,
  SoundChange,
  Tone,
} from '../../../server/protocol/messages.ts';
import type { Sender } from '../../../server/rooms/commands.ts';
import { decide } from '../../../server/rooms/decide.ts';
import type { HeardRound, NewEvent } from '../../../server/rooms/events.ts';
import { versioned } from '../../../server/rooms/events.ts';
import { hostRound } from '../../../server/rooms/host-round.ts';
import { chordsOf } from '../../../server/rooms/marking.ts';
import { evolve } from '../../../server/rooms/evolve.ts';
import { sheetFor, unopenedRoom } from '../../../server/rooms/state.ts';
import type { RoomState } from '../../../server/rooms/state.ts';
import { studentCommon, studentOwn } from '../../../server/rooms/view.ts';
import {
  asked,
  closed,
  DESK,
  fold,
  guitar,
  joined,
  moment,
  opened,
  peopleIn,
  played,
  SETTINGS,
  shown,
  started,
  student,
} from '../../support/given.ts';
import { tapsAt } from '../../support/rhythm-answers.ts';

const STUDENTS = ['s1', 's2', 's3'];
const start: NewEvent[] = [opened, ...STUDENTS.map((id, index) => joined(id, index + 1))];

/** One thing a teacher or a student does; what it is does not look at the truth. */
type Act =
  | { readonly act: 'ask'; readonly question: string; readonly how?: AskHow }
  | { readonly act: 'stand'; readonly question: string; readonly answer: unknown }
  | { readonly act: 'strike'; readonly question: string; readonly struck: boolean }
  /** Told by the host page, or asked for at the desk. */
  | { readonly act: 'change' | 'wish'; readonly change: SoundChange }
  | { readonly act: 'tone'; readonly tone: Tone }
  | { readonly act: 'groove'; readonly text: string }
  | { readonly act: 'settings'; readonly settings: Partial<Omit<RoomSettings, 'grooves'>> }
  | { readonly act: 'both' }
  | { readonly act: 'echo'; readonly of: EchoOf }
  | { readonly act: 'tick'; readonly student: number; readonly beat: number }
  | { readonly act: 'write'; readonly student: number; readonly answer: unknown; readonly heldMs: number }
  | { readonly act: 'close' | 'spread' | 'again' | 'show' }
  | { readonly act: 'hear'; readonly student: number }
  | { readonly act: 'depth'; readonly student: number; readonly depth: Depth }
  | { readonly act: 'vamp' | 'silent' | 'end' }
  /** To the other chords that go with the round. */
  | { readonly act: 'correct' };

const ROOT = fc.record({ string: fc.constantFrom(5, 6), fret: fc.nat({ max: 12 }) });
const KEYS = fc.uniqueArray(fc.constantFrom('0M', '2M', '7M', '4m', '11m'), { maxLength: 3 });
const TAPPED = fc.integer({ min: 40, max: 200 }).map((tempo) => tapsAt(tempo));
const onGrid = (...choices: readonly (string | number)[]) =>
  fc.array(fc.constantFrom(...choices), { minLength: 8, maxLength: 8 });
/** Answers to what is asked about the groove. */
const GROOVE_ANSWERS = {
  tempo: TAPPED,
  steadiness: TAPPED,
  'drop-out': TAPPED.map((taps) => ({ taps, silentFrom: null })),
  together: TAPPED,
  'bar-count': fc.constantFrom(2, 3, 4, 6, 7),
  threes: fc.constantFrom('two-threes', 'three-twos'),
  'half-time': fc.constantFrom('full-time', 'half-time'),
  swing: fc.constantFrom('straight', 'swung'),
  drive: fc.constantFrom('driving', 'relaxed'),
  pendulum: fc.constantFrom('keeps', 'breaks'),
  'change-place': fc.constantFrom('on-one', 'pushed'),
  accents: onGrid(0, 1, 2),
  'stroke-grid': onGrid('down', 'up', 'silent'),
  roles: onGrid('kick', 'slap', 'closed', 'open', 'silent'),
  opened: fc.constantFrom([1], [1, 5], [7], [11]),
};
const ANSWER = fc.oneof(
  fc.constantFrom<unknown>(
    'up',
    'down',
    'same',
    'major',
    'minor',
    'power',
    'all-downs',
    'down-up',
    'not-sure',
    null,
    'x',
    7,
  ),
  ROOT,
  KEYS,
  ...Object.values(GROOVE_ANSWERS),
  fc.constantFrom<unknown>(1, 2, 3, 5, -5, 12, 'one', 'several', ['I'], ['vi', 'V'], ['I', 'bVII']),
);
const HOW = fc.constantFrom('phones' as const, 'phones' as const, 'aloud' as const, 'memory' as const);
const CHANGE = fc.constantFrom<SoundChange>(
  { kind: 'silence' },
  { kind: 'full' },
  { kind: 'hold', slot: 0 },
  { kind: 'muted' },
  { kind: 'settler', index: 0 },
  { kind: 'bass-forward' },
  { kind: 'kit-only' },
  { kind: 'chord-alone', slot: 0 },
  { kind: 'root-then-chord', slot: 0 },
  { kind: 'drop-out' },
  { kind: 'drop-out', after: 2 },
  { kind: 'echo', groove: 'x' },
  { kind: 'tempo', tempo: 96 },
  { kind: 'climb', to: 120 },
  { kind: 'feel', feel: 'driving' },
  { kind: 'band', kit: true, bass: true },
  { kind: 'both', ask: 'a1', wrong: [], right: [] },
);
/** What a desk does that is about no question. */
const BESIDE = fc.constantFrom<Act>(
  { act: 'tone', tone: { kind: 'string', string: 6 } },
  {
    act: 'groove',
    text: 'ours, Ours | E8 | 4/4 | 60-120 | r=1 / strk D-D-DUDU / zone A.A.AHAH / tch o.o.oooo / acc 30203121',
  },
  { act: 'settings', settings: { voice: 'nylon', pitch: 442, smallSpeaker: true, band: { kit: true, bass: true } } },
);
const ECHO = fc.constantFrom<EchoOf>({ grid: 'student', student: 's1' }, { grid: 'class' }, { grid: 'right' });
const DEPTH = fc.record({
  act: fc.constant('depth' as const),
  student: fc.nat({ max: 2 }),
  depth: fc.constantFrom(...DEPTHS),
});
const acts = (questions: readonly string[]): fc.Arbitrary<Act[]> =>
  fc.array(
    fc.oneof(
      {
        weight: 3,
        arbitrary: fc.record({ act: fc.constant('ask' as const), question: fc.constantFrom(...questions), how: HOW }),
      },
      {
        weight: 1,
        arbitrary: fc.record({
          act: fc.constant('stand' as const),
          question: fc.constantFrom(...questions),
          answer: ANSWER,
        }),
      },
      {
        weight: 1,
        arbitrary: fc.record({
          act: fc.constant('strike' as const),
          question: fc.constantFrom(...questions),
          struck: fc.boolean(),
        }),
      },
      {
        weight: 2,
        arbitrary: fc.record({ act: fc.constantFrom('change' as const, 'wish' as const), change: CHANGE }),
      },
      { weight: 1, arbitrary: BESIDE },
      { weight: 1, arbitrary: fc.constant({ act: 'both' as const }) },
      { weight: 1, arbitrary: fc.record({ act: fc.constant('echo' as const), of: ECHO }) },
      {
        weight: 1,
        arbitrary: fc.record({
          act: fc.constant('tick' as const),
          student: fc.nat({ max: 2 }),
          beat: fc.integer({ min: 1, max: 8 }),
        }),
      },
      {
        weight: 5,
        arbitrary: fc.record({
          act: fc.constant('write' as const),
          student: fc.nat({ max: 2 }),
          answer: ANSWER,
          heldMs: fc.nat({ max: 900 }),
        }),
      },
      {
        weight: 3,
        arbitrary: fc.record({
          act: fc.constantFrom('close' as const, 'spread' as const, 'again' as const, 'show' as const),
        }),
      },
      { weight: 1, arbitrary: fc.record({ act: fc.constant('hear' as const), student: fc.nat({ max: 2 }) }) },
      { weight: 1, arbitrary: fc.constant({ act: 'vamp' as const }) },
      { weight: 1, arbitrary: fc.constant({ act: 'silent' as const }) },
    ),
    { maxLength: 40 },
  );

/**
 * Everything that students receive while the acts are played: acknowledgements and both views after each. Only answers to the
 * `showable` questions are ever shown.
 */
function heardByStudents(
  round: HeardRound,
  script: readonly Act[],
  showable: readonly string[] = [],
  correction: string | null = null,
): string {
  const events = [...start, started(round)];
  const state = fold(events);
  const people = peopleIn(events);
  const sent: unknown[] = [];
  let counter = 0;
  for (const [index, each] of script.entries()) {
    const now = moment(5_000 + index * 100);
    if (each.act === 'show' && !showable.includes(state.current?.question ?? '')) continue;
    counter += 1;
    const [sender, command] =
      each.act === 'correct'
        ? [DESK, correcting(counter, state.rounds[0]?.corrections ?? 0, correction ?? '')]
        : commandOf(each, askOf(state, each), state.asks, counter);
    const decision = decide(state, command, {
      sender,
      now,
      people,
      fresh: { student: '', tokenHash: '', token: null },
      seed: 0,
      soundHolder: 'page-1',
    });
    if (decision.ok) for (const event of decision.events) evolve(state, versioned(event), now);
    if (sender.role === 'student') sent.push(decision.ok ? { ok: true, value: decision.value } : decision);
    sent.push(
      studentCommon(state),
      STUDENTS.map((id) => [studentCommon(state, id), studentOwn(state, people, id)]),
    );
  }
  return JSON.stringify(sent);
}

/** The sheet that an act is about: a student's is the one that this student is asked. */
function askOf(state: RoomState, act: Act): string {
  const { current } = state;
  const sheet = current !== null && 'student' in act ? sheetFor(state, current, STUDENTS[act.student] ?? '') : current;
  return sheet?.ask ?? 'a0';
}

function correcting(counter: number, after: number, chords: string): Command {
  const played = { chords, groove: null, tempo: null, directions: null };
  return { type: 'CorrectRound', id: `c${counter}`, round: 'r1', after, ...played, pointsMayFall: counter % 2 === 0 };
}

function commandOf(
  act: Exclude<Act, { readonly act: 'correct' }>,
  ask: string,
  sheets: number,
  counter: number,
): [Sender, Command] {
  const id = `c${counter}`;
  switch (act.act) {
    case 'ask':
      return [DESK, { type: 'OpenQuestion', id, round: 'r1', question: act.question, how: act.how ?? 'phones' }];
    case 'stand': {
      const { question, answer } = act;
      return [DESK, { type: 'LetStand', id, round: 'r1', question, answer, stands: true }];
    }
    case 'strike': {
      const { question, struck } = act;
      return [DESK, { type: 'StrikeQuestion', id, round: 'r1', question, struck }];
    }
    case 'both':
      return [DESK, { type: 'PlayBoth', id, ask }];
    case 'echo':
      return [DESK, { type: 'PlayEcho', id, ask, of: act.of }];
    case 'tick':
      return [DESK, { type: 'TickHand', id, student: `s${act.student + 1}`, beat: act.beat, played: true }];
    case 'change':
      return [
        { role: 'host', page: 'page-1' },
        { type: 'ChangeTook', id, round: 'r1', change: act.change, bar: counter },
      ];
    case 'wish':
      return [DESK, { type: 'RequestChange', id, round: 'r1', change: act.change }];
    case 'tone':
      return [DESK, { type: 'RequestTone', id, tone: act.tone }];
    case 'groove':
      return [DESK, { type: 'SaveGroove', id, text: act.text }];
    case 'settings':
      return [DESK, { type: 'ChangeSettings', id, settings: act.settings }];
    case 'write': {
      const { answer, heldMs } = act;
      // Now and then an answer to the sheet before.
      const on = counter % 5 === 0 && sheets > 1 ? `a${sheets - 1}` : ask;
      return [student(`s${act.student + 1}`), { type: 'WriteAnswer', id, ask: on, counter, answer, heldMs }];
    }
    case 'close':
      return [DESK, { type: 'CloseQuestion', id, ask }];
    case 'spread':
      return [DESK, { type: 'ShowSpread', id, ask }];
    case 'again':
      return [DESK, { type: 'AnswerAgain', id, ask }];
    case 'show':
      return [DESK, { type: 'ShowAnswer', id, ask }];
    case 'hear':
      return [student(`s${act.student + 1}`), { type: 'CannotHear', id, ask }];
    case 'depth':
      return [DESK, { type: 'SetDepth', id, student: STUDENTS[act.student] ?? '', depth: act.depth }];
    case 'silent':
      return [
        { role: 'host', page: 'page-1' },
        { type: 'SilenceKept', id, round: 'r1' },
      ];
    case 'end':
      return [DESK, { type: 'EndLesson', id }];
    case 'vamp':
      return [
        { role: 'host', page: 'page-1' },
        { type: 'VampStarted', id, round: 'r1', tempo: 100 },
      ];
  }
}

/** The questions that two rounds share: a teacher who asks any other has shown that there is a chord to ask about. */
function shared(one: HeardRound, other: HeardRound): string[] {
  const ids = new Set(other.questions.map(({ id }) => id));
  // Whether a chord joins in or a note is sung is heard.
  const sung = ({ truth }: HeardRound, { kind, target }: RoundQuestion) =>
    kind === 'settler' && truth.settlers[target]?.note !== null;
  // The grid is told as it is asked on.
  const told = one.truth.rhythm?.grid === other.truth.rhythm?.grid;
  return one.questions
    .filter((each) => ids.has(each.id) && sung(one, each) === sung(other, each) && (told || !GRID_KINDS.has(each.kind)))
    .map(({ id }) => id);
}

/**
 * The questions whose reveal is the same for two rounds: all that it says, with the keys all the chords that they own.
 */
function agreed(one: HeardRound, other: HeardRound): string[] {
  const reveal = (round: HeardRound, id: string) => {
    const state = fold([...start, started(round), asked('a1', id), closed('a1'), shown('a1')]);
    const keys = id.startsWith('keys') ? chordsOf(round) : null;
    return JSON.stringify([studentCommon(state).truth, keys]);
  };
  return shared(one, other).filter((id) => reveal(one, id) === reveal(other, id));
}

const CHORD = fc
  .record({
    root: fc.constantFrom('C', 'D', 'E', 'F', 'G', 'A', 'B', 'F#', 'Bb'),
    quality: fc.constantFrom(...QUALITIES),
  })
  .map(chordSymbol);
const VAMP = fc.array(CHORD, { minLength: 1, maxLength: 4 }).map((chords) => chords.join(' '));
const GROOVE = fc.constantFrom('relaxed-alternate', 'quarter-downs', 'boom-chick', 'mute-and-open', 'waltz');

describe('R38 students learn nothing early', () => {
  test('any two vamps of any length, key and groove: the same acts send the same bytes', () => {
    fc.assert(
      fc.property(
        fc.tuple(VAMP, GROOVE, VAMP, GROOVE).chain(([one, groove, other, otherGroove]) => {
          const rhythm = { rhythm: true };
          const rounds = [played(one, 1, groove, rhythm), played(other, 1, otherGroove, rhythm)] as const;
          const questions = shared(...rounds);
          return fc.tuple(fc.constant(rounds), questions.length === 0 ? fc.constant([]) : acts(questions));
        }),
        ([[one, other], script]) => {
          expect(heardByStudents(one, script)).toBe(heardByStudents(other, script));
        },
      ),
      { numRuns: 300 },
    );
  });

  test('two generated rounds of one level, whose students are asked each as deep as set', () => {
    const round = (level: number, seed: number, beatLevel: number): HeardRound => {
      const made = hostRound(
        { ...unopenedRoom(), settings: { ...SETTINGS, beatLevel } },
        1,
        { level, item: null, groove: null, contrast: null },
        seed,
      );
      if ('reason' in made) throw new Error(made.reason);
      return made;
    };
    let instead = 0;
    fc.assert(
      fc.property(
        fc
          .tuple(fc.constantFrom(...LEVELS), fc.nat(), fc.nat(), fc.integer({ min: 1, max: 8 }))
          .chain(([{ level }, seed, otherSeed, beat]) => {
            const rounds = [round(level, seed, beat), round(level, otherSeed, beat)] as const;
            const depths = fc.array(DEPTH, { minLength: 1, maxLength: 3 });
            return fc.tuple(fc.constant(rounds), depths, acts(shared(...rounds)));
          }),
        ([[one, other], depths, script]) => {
          const heard = heardByStudents(one, [...depths, ...script]);
          expect(heard).toBe(heardByStudents(other, [...depths, ...script]));
          if (/"ask":"a\d+[.]/.test(heard)) instead += 1;
        },
      ),
      { numRuns: 150 },
    );
    // How often is chance; never would mean that nothing was tried.
    expect(instead).toBeGreaterThan(0);
  });

  test('whether a groove has strokes to ask about tells nobody who is asked something else', () => {
    const heard = ['boom-chicka', 'bossa-like'].map((id) => {
      const groove = grooveById(id);
      const made = hostRound(
        { ...unopenedRoom(), settings: SETTINGS },
        1,
        { level: 6, item: null, groove, contrast: null },
        1,
      );
      if ('reason' in made) throw new Error(made.reason);
      expect(made.truth.strokes === null).toBe(id === 'bossa-like');
      // All else that is not too deep has been asked.
      const floor = made.questions.filter(({ kind }) => ['count', 'direction', 'quality'].includes(kind));
      const before = floor.flatMap(({ id }): Act[] => [{ act: 'ask', question: id }, { act: 'close' }]);
      return heardByStudents(made, [
        { act: 'depth', student: 0, depth: 'floor' },
        ...before,
        { act: 'ask', question: 'root-0' },
      ]);
    });
    expect(heard[0]).toBe(heard[1]);
  });

  test('two rounds of the teacher’s guitar, corrected while students are asked each as deep as set', () => {
    const corrected = fc.record({ act: fc.constant('correct' as const) });
    const own = fc.tuple(VAMP, VAMP).map(([typed, right]) => {
      // To and fro: each way the questions asked are among those that stay.
      return { round: guitar(typed), corrected: guitar(right), right };
    });
    let instead = 0;
    fc.assert(
      fc.property(
        fc.tuple(own, own).chain(([one, other]) => {
          // A settler that has sounded is no more asked where another one would settle: the teacher tells so himself.
          const questions = [one.corrected, other.round, other.corrected]
            .reduce(
              (ids, round) => shared(one.round, round).filter((id) => ids.includes(id)),
              shared(one.round, one.round),
            )
            .filter((id) => !id.startsWith('settler'));
          const depths = fc.array(DEPTH, { minLength: 1, maxLength: 3 });
          const script = fc
            .tuple(acts(questions), fc.array(fc.tuple(fc.nat({ max: 40 }), corrected), { minLength: 1, maxLength: 3 }))
            .map(([done, more]) => more.reduce<Act[]>((all, [at, act]) => all.toSpliced(at, 0, act), done));
          return fc.tuple(fc.constant([one, other] as const), depths, script);
        }),
        ([[one, other], depths, script]) => {
          const heard = heardByStudents(one.round, [...depths, ...script], [], one.right);
          expect(heard).toBe(heardByStudents(other.round, [...depths, ...script], [], other.right));
          if (/"ask":"a\d+[.]/.test(heard)) instead += 1;
        },
      ),
      { numRuns: 150 },
    );
    // How often is chance; never would mean that nothing was tried.
    expect(instead).toBeGreaterThan(0);
  });

  test('what was shown tells of nothing else: rooms whose shown answers agree hear the same', () => {
    // Few roots and qualities, close by: so that many answers agree and many do not.
    const near = fc
      .record({
        root: fc.constantFrom('E', 'F', 'A', 'C#'),
        quality: fc.constantFrom(
          'major' as const,
          'minor' as const,
          'suspended-fourth' as const,
          'diminished' as const,
        ),
      })
      .map(chordSymbol);
    const vamp = fc.array(near, { minLength: 1, maxLength: 3 }).map((chords) => chords.join(' '));
    const settings = { ...SETTINGS, qualities: [...QUALITIES] };
    const made = fc
      .tuple(vamp, fc.constantFrom('relaxed-alternate', 'quarter-downs'), fc.constantFrom(60, 100, 140))
      .map(([chords, groove, tempo]): HeardRound => {
        const round = guitar(chords, 1, groove, settings);
        // Played by Hearsay: the top note and the tempo are known.
        const top = round.truth.bass.map((bass) => bass + 24);
        return { ...round, source: 'host', level: 7, tempo, truth: { ...round.truth, top, tempo } };
      });
    /** Answers that the question takes, right and wrong ones. */
    const answersTo = (question: string): fc.Arbitrary<unknown> => {
      const kind = parseQuestionId(question)?.kind ?? 'keys';
      const answers: Readonly<Record<Kind, fc.Arbitrary<unknown>>> = {
        ...GROOVE_ANSWERS,
        strokes: fc.constantFrom('all-downs', 'down-up'),
        count: fc.integer({ min: 1, max: 5 }),
        direction: fc.constantFrom('up', 'down', 'same'),
        quality: fc.constantFrom(...QUALITIES),
        root: fc.record({ string: fc.constantFrom(6, 5), fret: fc.integer({ min: 0, max: 5 }) }),
        distance: fc.integer({ min: -12, max: 12 }),
        numeral: fc.array(fc.constantFrom('I', 'i', 'ii', 'iii', 'III', 'IV', 'V', 'vi', 'bVI', 'VII'), {
          minLength: 1,
          maxLength: 3,
        }),
        'one-or-several': fc.constantFrom('one', 'several'),
        keys: KEYS,
        settler: KEYS,
        order: fc.constantFrom([0, 1, 0, 1], [0, 1, 2, 1], [0, 1, 2, 3]),
        bass: fc.record({ string: fc.constantFrom(6, 5), fret: fc.integer({ min: 0, max: 5 }) }),
        seventh: fc.constantFrom('none', 'seventh', 'major-seventh'),
        home: fc.integer({ min: 0, max: 3 }),
      };
      return answers[kind];
    };
    fc.assert(
      fc.property(
        fc
          .tuple(made, made)
          .filter(([one, other]) => agreed(one, other).length > 0)
          .chain(([one, other]) => {
            const asked = fc.constantFrom(...agreed(one, other)).chain((question) =>
              fc.record({
                question: fc.constant(question),
                answers: fc.array(answersTo(question), { minLength: 3, maxLength: 3 }),
                stands: fc.option(answersTo(question)),
                struck: fc.nat({ max: 9 }).map((luck) => luck === 0),
              }),
            );
            return fc.tuple(fc.constant([one, other] as const), fc.array(asked, { minLength: 1, maxLength: 4 }));
          }),
        ([[one, other], questions]) => {
          const script = questions.flatMap(({ question, answers, stands, struck }): Act[] => [
            { act: 'ask', question },
            ...answers.map((answer, student): Act => ({ act: 'write', student, answer, heldMs: 0 })),
            { act: 'close' },
            { act: 'show' },
            ...(stands === null ? [] : [{ act: 'stand', question, answer: stands } as const]),
            ...(struck ? [{ act: 'strike', question, struck } as const] : []),
          ]);
          // With the count of right and partly right ones.
          script.push({ act: 'end' });
          const showable = agreed(one, other);
          expect(heardByStudents(one, script, showable)).toBe(heardByStudents(other, script, showable));
        },
      ),
      { numRuns: 400 },
    );
  });

  test('a root’s reveal does not give the quality away, a quality’s neither the first one nor the tempo', () => {
    const told = (round: HeardRound, question: string, answer: unknown) =>
      heardByStudents(
        round,
        [{ act: 'ask', question }, { act: 'write', student: 0, answer, heldMs: 0 }, { act: 'close' }, { act: 'show' }],
        [question],
      );
    const third = { string: 6, fret: 4 };
    expect(told(played('E A'), 'root-0', third)).toBe(told(played('Em A'), 'root-0', third));
    expect(told(played('E A'), 'root-0', third)).toContain('"mark"');
    expect(told(played('Em A'), 'quality-1', 'minor')).toBe(told(played('E A'), 'quality-1', 'minor'));
    const slow: HeardRound = { ...played('E A'), truth: { ...played('E A').truth, tempo: 60 } };
    expect(told(slow, 'quality-1', 'minor')).toBe(told(played('E A'), 'quality-1', 'minor'));
  });

  test('once something is shown the messages differ: the check can fail', () => {
    const script: Act[] = [{ act: 'ask', question: 'quality-0' }, { act: 'close' }];
    const revealed = (chords: string) => {
      const round = played(chords);
      const state = fold([...start, started(round), asked('a1', 'quality-0'), closed('a1'), shown('a1')]);
      return JSON.stringify(studentCommon(state));
    };
    expect(heardByStudents(played('Em D'), script)).toBe(heardByStudents(played('G D'), script));
    expect(revealed('Em D')).not.toBe(revealed('G D'));
  });

  test('no secret of the round stands in what students receive before the reveal', () => {
    const round = played('F#m Bb');
    const script: Act[] = KINDS.map((kind) => ({
      act: 'ask' as const,
      question: `${kind}-${kind === 'direction' ? 1 : 0}`,
    })).flatMap((ask) => [
      ask,
      { act: 'write' as const, student: 0, answer: 'not-sure', heldMs: 0 },
      { act: 'close' as const },
      { act: 'spread' as const },
    ]);
    const text = heardByStudents(round, script);
    for (const secret of ['F#', 'Bb', '♯', '♭', 'r1', round.grooveText, 'direction-1', 'truth', 'frets']) {
      expect(text).not.toContain(secret);
    }
  });
});
