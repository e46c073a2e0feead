import { describe, expect, test } from 'vitest';
import type { Marked } from '../../../shared-theory/diagnosis/marker.ts';
import type { Answered } from '../../../shared-theory/diagnosis/spread.ts';
import { handsOf, markedTallies, spreadOf, topWrong } from '../../../shared-theory/diagnosis/spread.ts';
import type { MarkedTally } from '../../../shared-theory/diagnosis/spread.ts';
import { answerKey } from '../../../shared-theory/questions/asks.ts';
import { judgeOf, markAnswer } from '../../../shared-theory/questions/judges.ts';
import type { Answer, Kind, MarkingContext, NotSure } from '../../../shared-theory/questions/question.ts';
import { context } from '../questions/given.ts';

/** Answers in turn from students s1, s2 …; undefined for one who wrote nothing. */
type Given = (Answer | NotSure | null | undefined)[];

function sheet(...given: Given): { answers: Answered; seats: string[] } {
  const rows = given.map((answer, index) => [`s${index + 1}`, answer] as const);
  const written = rows.flatMap(([student, answer]) => (answer === undefined ? [] : [[student, { answer }] as const]));
  return { answers: new Map(written), seats: rows.map(([student]) => student) };
}

const times = <T>(count: number, answer: T): T[] => Array.from({ length: count }, () => answer);

describe('how answers fell', () => {
  test('by answer, most first, then by key; not sure and silence apart', () => {
    const { answers, seats } = sheet('up', 'down', 'same', 'down', 'not-sure', undefined, null, 'up');
    expect(spreadOf('direction', answers, seats)).toEqual({
      kind: 'direction',
      counts: [
        { key: 'down', answer: 'down', count: 2 },
        { key: 'up', answer: 'up', count: 2 },
        { key: 'same', answer: 'same', count: 1 },
      ],
      notSure: 1,
      silent: 2,
      of: 8,
    });
  });

  test('sets of keys are one answer in whatever order they were marked', () => {
    const { answers, seats } = sheet(['7M', '2M'], ['2M', '7M'], [], ['7M']);
    const { counts } = spreadOf('keys', answers, seats);
    expect(counts.map(({ key, count }) => [key, count])).toEqual([
      ['2M 7M', 2],
      ['7M', 1],
      ['none', 1],
    ]);
  });

  test('who was not there counts nowhere; who came late and answered has a seat', () => {
    const { answers } = sheet('up', 'up', 'down');
    expect(spreadOf('direction', answers, ['s1', 's2', 's9'])).toMatchObject({ silent: 1, of: 4 });
    expect(spreadOf('direction', new Map(), [])).toEqual({
      kind: 'direction',
      counts: [],
      notSure: 0,
      silent: 0,
      of: 0,
    });
  });
});

/** The top wrong answer of a sheet, each answer marked by itself. */
function topOf(kind: Kind, answers: Answered, asked: MarkingContext) {
  const marks = new Map<string, Marked>();
  const mark = (answer: Answer | NotSure) => {
    const key = answerKey<Kind>(kind, answer);
    const made = marks.get(key) ?? markAnswer<Kind>(kind, answer, asked);
    marks.set(key, made);
    return made;
  };
  const marked = markedTallies(kind, handsOf(answers, mark));
  const hands = [...answers.values()].filter(({ answer }) => answer !== null).length;
  return topWrong<Kind>(marked, judgeOf<Kind>(kind), hands);
}

test('of wrong answers given equally often, one that shows something comes first', () => {
  const wrong = { credit: 0, exact: false };
  const marked: readonly [MarkedTally, MarkedTally] = [
    { key: 'a', answer: 'major', count: 1, mark: { ...wrong, errors: [] } },
    { key: 'b', answer: 'power', count: 1, mark: { ...wrong, errors: ['slow-or-low-is-minor'] } },
  ];
  const judge = { heard: String };
  expect(topWrong(marked, judge, 2)?.key).toBe('b');
  const more = [{ ...marked[0], count: 2 }, marked[1]];
  expect(topWrong(more, judge, 3)?.key).toBe('a');
});

describe('the wrong answer most often given', () => {
  const of = (kind: 'quality' | 'direction', ...given: Given) => {
    const { answers } = sheet(...given);
    return kind === 'quality'
      ? topOf(kind, answers, context(0, { tempo: 140 }))
      : topOf(kind, answers, context(1, { top: [64, 66] }));
  };

  test('right answers, not sure and silence are not wrong', () => {
    expect(of('quality', 'minor', 'minor', 'not-sure', undefined)).toBeNull();
  });

  test('names what it shows', () => {
    expect(of('quality', 'minor', 'major', 'power', 'major')).toEqual({
      key: 'major',
      answer: 'major',
      count: 2,
      error: 'fast-or-bright-is-major',
      manyTheSame: false,
      suspectSpeaker: false,
    });
  });

  // Common practice: the same by five and by three in five of all that are wrong.
  test.each([
    [5, 3, true],
    [6, 4, true],
    [5, 4, false],
    [4, 0, false],
    [5, 0, true],
    [59, 41, false],
    [60, 40, true],
  ])('%i of one kind beside %i others: many the same is %s', (same, others, many) => {
    const scattered = Array.from(
      { length: others },
      (_, index) => (['power', 'diminished', 'augmented'] as const)[index % 3],
    );
    expect(of('quality', ...times(same, 'major' as const), ...scattered)?.manyTheSame).toBe(many);
  });

  test('one note heard on two strings is one answer, under the place most often marked', () => {
    // E minor: B is the fifth, at fret 7 of string 6 and fret 2 of string 5.
    const { answers } = sheet(
      { string: 5, fret: 2 },
      { string: 5, fret: 2 },
      { string: 6, fret: 7 },
      { string: 6, fret: 3 },
      { string: 6, fret: 3 },
      { string: 5, fret: 7 },
    );
    expect(topOf('root', answers, context(0))).toMatchObject({
      key: '5.2',
      count: 3,
      error: 'hears-the-fifth',
    });
  });

  test('the speaker is suspected when more than four hands in ten say that a moving bass stayed', () => {
    const room = (stayed: number, went: number) =>
      of('direction', ...times(stayed, 'same' as const), ...times(went, 'up' as const));
    expect(room(5, 5)).toMatchObject({ error: 'says-stays', suspectSpeaker: true });
    expect(room(4, 6)?.suspectSpeaker).toBe(false);
    expect(of('direction', ...times(41, 'same' as const), ...times(59, 'down' as const))?.suspectSpeaker).toBe(true);
  });

  test('a bass that did stay is no fault of the speaker', () => {
    const { answers } = sheet(...times(9, 'same' as const), 'up');
    const held = context(1, { directions: ['same'], bass: [40, 40], top: [64, 64] });
    expect(topOf('direction', answers, held)).toMatchObject({
      key: 'up',
      error: 'says-moves',
      suspectSpeaker: false,
    });
  });

  test('who is right from an own earlier answer on is not counted among the wrong', () => {
    const follows = {
      credit: 1,
      exact: false,
      errors: [],
      note: 'follows-own-answer' as const,
      evidence: 'wrong' as const,
    };
    const alone = { credit: 0.5, exact: false, errors: ['numeral-case-wrong' as const], evidence: 'wrong' as const };
    const { answers } = sheet(['VI', 'V'], ['VI', 'V'], ['VI', 'V']);
    const marked = markedTallies(
      'numeral',
      handsOf(answers, (_answer, student) => (student === 's1' ? follows : alone)),
    );
    expect(marked.map(({ count, mark }) => [count, mark])).toEqual([
      [2, alone],
      [1, follows],
    ]);
    expect(topWrong<Kind>(marked, judgeOf<Kind>('numeral'), 3)).toMatchObject({
      count: 2,
      error: 'numeral-case-wrong',
    });
  });
});
