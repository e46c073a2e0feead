import { afterAll, beforeAll, expect, test } from 'vitest';
import { parseChord, QUALITIES } from '../../../shared-theory/chords.ts';
import { breakdownOf } from '../../../shared-theory/diagnosis/breakdown.ts';
import { beatStanding } from '../../../shared-theory/beat-mastery.ts';
import { beatEvidence } from '../../../shared-theory/diagnosis/beat-evidence.ts';
import { commonErrors } from '../../../shared-theory/diagnosis/common-errors.ts';
import type { AskedRound } from '../../../shared-theory/diagnosis/asked.ts';
import { markerOf } from '../../../shared-theory/diagnosis/marker.ts';
import { studentReports } from '../../../shared-theory/diagnosis/reports.ts';
import { levelOf } from '../../../shared-theory/levels.ts';
import { perform } from '../../../shared-theory/perform.ts';
import { itemAt } from '../../../shared-theory/items.ts';
import { besideAll, besideShown } from '../../../shared-theory/questions/beside.ts';
import { askableQuestions, judgeOf } from '../../../shared-theory/questions/judges.ts';
import type { Answer, Kind, NotSure, QuestionSettings } from '../../../shared-theory/questions/question.ts';
import { ORDERS } from '../../../shared-theory/questions/order/ask.ts';
import { COLLECTED_KINDS, NOT_SURE, RHYTHM_KINDS } from '../../../shared-theory/questions/question.ts';
import type { RoundQuestion } from '../../../shared-theory/questions/round-questions.ts';
import { seededRandom } from '../../../shared-theory/random.ts';
import { guitarTruth, truthOf } from '../../../shared-theory/truth.ts';
import type { Truth } from '../../../shared-theory/truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import type { Meter, VoicedVamp } from '../../../shared-theory/vamps.ts';
import type { Reply } from '../../../server/protocol/messages.ts';
import type { DeskView, WireMark, WireVamp } from '../../../server/protocol/views.ts';
import { RHYTHM_ANSWERS } from '../../support/rhythm-answers.ts';
import { connectWatcher, joinedStudent, until } from '../../support/socket-client.ts';
import type { Client, StudentClient, WatcherClient } from '../../support/socket-client.ts';
import { startTestApp, type TestApp } from '../../support/test-app.ts';

const STUDENTS = 30;
const NO_KEYS: ReadonlySet<string> = new Set();

let app: TestApp;
let desk: WatcherClient<DeskView>;
let students: StudentClient[];
const opened: Client[] = [];

beforeAll(async () => {
  app = await startTestApp();
  const room = await app.room();
  desk = await connectWatcher(app.url, room, 'desk', { cookie: app.cookie });
  opened.push(desk);
  students = [];
  for (let seat = 1; seat <= STUDENTS; seat += 1) {
    const student = await joinedStudent(app.url, room, `student ${seat}`, { transports: ['websocket'] });
    students.push(student);
    opened.push(student);
  }
  await until(() => desk.view().students.length === STUDENTS, 'thirty students on the desk');
});
afterAll(async () => {
  for (const client of opened) client.close();
  expect(app.faults).toEqual([]);
  await app.close();
});

/** One answer to each question about the groove but its strokes. */
const OF_THE_GROOVE = Object.fromEntries(
  Object.entries(RHYTHM_ANSWERS).map(([kind, answer]) => [kind, () => answer]),
) as unknown as Readonly<Record<keyof typeof RHYTHM_ANSWERS, () => Answer>>;

/** What a class of thirty may write: mostly right, else anything that the pad takes; now and then not sure, or nothing. */
function answerOf(
  kind: Kind,
  right: Answer,
  random: () => number,
  settings: QuestionSettings,
): Answer | NotSure | null {
  const luck = random();
  if (luck < 0.05) return null;
  if (luck < 0.1) return NOT_SURE;
  if (luck < 0.5) return right;
  const from = <T>(items: readonly T[]): T => itemAt(items, Math.floor(random() * items.length));
  const keys = () => Array.from({ length: 12 }, (_, tonic) => `${tonic}M`).filter(() => random() < 0.2);
  const pads: Readonly<Record<Kind, () => Answer>> = {
    ...OF_THE_GROOVE,
    strokes: () => from(['all-downs', 'down-up'] as const),
    count: () => from([1, 2, 3, 4, 5]),
    direction: () => from(['up', 'down', 'same'] as const),
    quality: () => from(settings.qualities),
    root: () => ({ string: from([5, 6] as const), fret: Math.floor(random() * 13) }),
    distance: () => (typeof right === 'number' && random() < 0.5 ? -right : Math.floor(random() * 25) - 12),
    numeral: () => Array.from({ length: 2 }, () => from(['I', 'ii', 'iii', 'IV', 'V', 'vi', 'bVII', 'i', 'III'])),
    'one-or-several': () => from(['one', 'several'] as const),
    keys,
    settler: keys,
    order: () => from(ORDERS),
    bass: () => ({ string: from([5, 6] as const), fret: Math.floor(random() * 13) }),
    seventh: () => from(['none', 'seventh', 'major-seventh'] as const),
    home: () => from([0, 1]),
  };
  return pads[kind]();
}

/**
 * On the teacher's own guitar: triads on their roots have neither a seventh nor another bass to ask for, and of a groove without a tempo
 * it is asked first how its bar is counted.
 */
function ownQuestions(truth: Truth, settings: QuestionSettings): readonly RoundQuestion[] {
  const left = (kind: Kind) => ['bass', 'seventh'].includes(kind) || (RHYTHM_KINDS.has(kind) && kind !== 'bar-count');
  return askableQuestions(truth, settings).filter(({ kind }) => !left(kind));
}

type Given = Map<string, Answer | NotSure>;
/** A round as the test itself knows it: what is right, and what each student wrote to each question. */
type Known = {
  readonly number: number;
  readonly truth: Truth;
  readonly settings: QuestionSettings;
  readonly questions: readonly RoundQuestion[];
  readonly given: Map<string, Given>;
};

/** The mark that the pure functions give, for the teacher or for the student, to whom only `shown` was told. */
function purely(
  known: Known,
  question: RoundQuestion,
  student: string,
  shown: readonly RoundQuestion[] | null,
): WireMark | undefined {
  const answer = known.given.get(question.id)?.get(student);
  if (answer === undefined) return undefined;
  const { truth, settings, questions } = known;
  const marker = markerOf({
    question,
    questions,
    truth,
    settings,
    beside: shown === null ? besideAll(truth) : besideShown(truth, shown),
    letStand: NO_KEYS,
    mayLeanOn: (id) => shown === null || shown.some((each) => each.id === id),
  });
  const { credit, exact, errors, note } = marker(answer, (id) => known.given.get(id)?.get(student) ?? null);
  const [error] = errors;
  return { credit, exact, ...(error === undefined ? {} : { error }), ...(note === undefined ? {} : { note }) };
}

const value = (reply: Reply): Record<string, unknown> => {
  if (!reply.ok) throw new Error(reply.reason);
  return reply.value as Record<string, unknown>;
};

/** Asks one question of all phones, closes and shows it, and holds every mark against the pure functions. */
async function lead(known: Known, round: string, question: RoundQuestion, asked: RoundQuestion[]): Promise<void> {
  const { ask } = value(await desk.send({ type: 'OpenQuestion', round, question: question.id, how: 'phones' }));
  await until(() => students.every((each) => each.common()?.ask === ask), `question ${question.id} on every phone`);
  const random = seededRandom(known.number, question.id);
  const right = judgeOf<Kind>(question.kind).truth({ ...known, target: question.target });
  if (right === null) throw new Error(`${question.id} has no right answer`);
  const given: Given = new Map();
  known.given.set(question.id, given);
  await Promise.all(
    students.map(async (student, index) => {
      const answer = answerOf(question.kind, right, random, known.settings);
      if (answer === null) return;
      given.set(itemAt(desk.view().students, index).student, answer);
      const counter = (student.own()?.counter ?? 0) + 1;
      const reply = await student.send({ type: 'WriteAnswer', ask: String(ask), counter, answer, heldMs: 0 });
      expect([question.id, answer, reply]).toMatchObject([question.id, answer, { ok: true }]);
    }),
  );
  value(await desk.send({ type: 'CloseQuestion', ask: String(ask) }));
  value(await desk.send({ type: 'ShowAnswer', ask: String(ask) }));
  asked.push(question);
  await until(() => students.every((each) => each.common()?.phase === 'shown'), 'the answer on every phone');
  await until(
    () => desk.view().current?.ask === ask && desk.view().current?.status === 'shown',
    `the answer to ${question.id} on the desk`,
  );
  await holdMarks(known, question, asked);
}

/** Every phone's and the desk's marks of the question that all look at. */
async function holdMarks(known: Known, question: RoundQuestion, shown: readonly RoundQuestion[]): Promise<void> {
  const ids = desk.view().students.map(({ student }) => student);
  const expected = ids.map((id) => purely(known, question, id, shown));
  await until(
    () => students.every((each, index) => JSON.stringify(each.own()?.mark) === JSON.stringify(expected[index])),
    `marks of ${question.id}`,
    4_000,
  ).catch(() => {});
  expect(students.map((each) => each.own()?.mark)).toEqual(expected);
  expect(desk.view().students.map(({ mark }) => mark)).toEqual(ids.map((id) => purely(known, question, id, null)));
}

/** The rounds as the diagnosis takes them, from what the test knows alone. */
function asDiagnosed(rounds: readonly Known[], ids: readonly string[]): readonly AskedRound[] {
  return rounds.map(({ number, truth, settings, questions, given }) => ({
    number,
    truth,
    settings,
    questions: questions.map((question) => {
      const answers = given.get(question.id);
      const sheet = new Map([...(answers ?? [])].map(([student, answer]) => [student, { answer }]));
      return { ...question, sheets: answers === undefined ? [] : [{ answers: sheet, seats: ids }] };
    }),
  }));
}

/** What the desk shows of the lesson against the same, worked out from what was written. */
async function holdLesson(rounds: readonly Known[]): Promise<void> {
  const ids = desk.view().students.map(({ student }) => student);
  const pure = asDiagnosed(rounds, ids);
  const reports = studentReports(pure);
  const shown = beatEvidence(pure);
  const expected = ids.map((student) => {
    const { right, of, needs, played } = beatStanding(1, shown.get(student) ?? [], false);
    return { student, ...reports.get(student), beat: { right, of, needs, played } };
  });
  const lines = breakdownOf(pure).map(({ again: _again, of: _of, ...line }) => line);
  await until(() => desk.view().breakdown?.length === lines.length, 'the lesson on the desk');
  expect(desk.view().reports).toEqual(expected);
  expect(desk.view().breakdown?.map(({ asking: _asking, memory: _memory, ...line }) => line)).toEqual(lines);
  expect(desk.view().common.map(({ error, times, chances }) => [error, times, chances])).toEqual(
    commonErrors(pure).map(({ error, times, chances }) => [error, times, chances]),
  );
}

function vampOf(wire: WireVamp): VoicedVamp {
  const { meter, grooveText, tempo, seed, slots } = wire;
  const voiced = slots.map(({ chord, beats, frets }) => ({ chord: parseChord(chord), beats, frets }));
  return { meter: meter as Meter, grooveText, tempo: tempo ?? 90, seed, slots: voiced };
}

test('R74 R79 a lesson through thirty phones is marked as the pure functions mark it; corrected twice it is as entered rightly', async () => {
  // A planned round that Hearsay plays, with the count.
  const level = levelOf(6);
  const kinds = [...new Set(['count', ...level.questions])];
  value(await desk.send({ type: 'ChangeSettings', settings: { qualities: ['major', 'minor', 'power'] } }));
  expect(await desk.send({ type: 'PlanLesson', items: [{ item: 'i1', level: 6, kinds }] })).toMatchObject({ ok: true });
  const { round } = value(
    await desk.send({ type: 'StartRound', after: 0, level: 6, item: 'i1', groove: null, contrast: null }),
  );
  const wire = await until(() => desk.view().vamp, 'the vamp on the desk');
  const vamp = vampOf(wire);
  const truth = truthOf(vamp, perform(vamp));
  const settings: QuestionSettings = {
    policy: 'majors',
    qualities: ['major', 'minor', 'power', ...level.qualities].flatMap((name, index, all) =>
      all.indexOf(name) === index ? (QUALITIES.find((each) => each === name) ?? []) : [],
    ),
  };
  const questions = askableQuestions(truth, settings).filter(({ kind }) => kinds.includes(kind));
  const first: Known = { number: 1, truth, settings, questions, given: new Map() };
  // And what can be opened wherever a groove sounds.
  const anywhere = ['tempo-0', 'drop-out-0', 'together-0'];
  expect(desk.view().steps.map(({ question }) => question)).toEqual([...anywhere, ...questions.map(({ id }) => id)]);
  const asked: RoundQuestion[] = [];
  for (const question of questions) await lead(first, String(round), question, asked);
  await holdLesson([first]);
  expect(desk.view().plan.played).toEqual(['i1']);

  // A round of nine questions and more on the teacher's own guitar, entered wrongly and corrected twice.
  const entered = { groove: 'relaxed-alternate', tempo: null, directions: null };
  const guitar = value(await desk.send({ type: 'StartGuitarRound', after: 1, chords: 'E D', ...entered }));
  const own = { policy: settings.policy, qualities: ['major', 'minor', 'power'] } as const;
  const played = (chords: string, given: Known['given']): Known => {
    const known = guitarTruth(parseVamp(chords, 4), entered);
    return { number: 2, truth: known, settings: own, questions: ownQuestions(known, own), given };
  };
  const second = played('Em D', new Map());
  expect(second.questions.length).toBeGreaterThanOrEqual(9);
  const shown: RoundQuestion[] = [];
  const correct = (chords: string, after: number) =>
    desk.send({ type: 'CorrectRound', round: String(guitar['round']), after, chords, ...entered, pointsMayFall: true });
  // An opinion is not marked.
  const marked = second.questions.filter(({ kind }) => !COLLECTED_KINDS.has(kind));
  for (const [index, question] of marked.entries()) {
    if (index === 2) value(await correct('A D', 0));
    if (index === 3) {
      value(await correct('Em D', 1));
      await until(() => desk.view().entered?.corrections === 2, 'the correction on the desk');
    }
    await lead(
      index < 2 ? played('E D', second.given) : index < 3 ? played('A D', second.given) : second,
      String(guitar['round']),
      question,
      shown,
    );
  }
  // The answers of the first three were held against what was entered then; now all are against what was played.
  await holdLesson([first, second]);
}, 120_000);
