import { besideAll } from '../questions/beside.ts';
import type { ErrorKind } from '../questions/error-kinds.ts';
import { judgeOf } from '../questions/judges.ts';
import type { Answer, AskedOf, Kind, OwnAnswers, QuestionSettings } from '../questions/question.ts';
import type { RoundQuestion } from '../questions/round-questions.ts';
import type { Truth } from '../truth.ts';
import { plausibleAnswers } from './plausible.ts';

/** A wrong answer that a class is likely to give, and what it shows. */
export type LikelyWrong = {
  readonly answer: Answer;
  /** Null where it is simply the other answer, and shows nothing by itself. */
  readonly error: ErrorKind | null;
  /** Own answers to other questions that go with it; empty where it shows the error by itself. */
  readonly own: OwnAnswers;
  /** Friendly credit, 0 to below 1. */
  readonly credit: number;
};

/** No more wrong answers to one question: a sheet that lists all of them tells nothing. */
export const MOST_WRONG = 3;

/** Error kinds by how soon a class shows them, by question kind (common practice); those not named come after. */
const USUAL_FIRST: Partial<Record<Kind, readonly ErrorKind[]>> = {
  tempo: ['taps-twice-as-fast', 'taps-half-as-fast', 'taps-three-against-two'],
  steadiness: ['rushes', 'taps-unevenly', 'drags'],
  'drop-out': ['rushes', 'drags', 'taps-unevenly'],
  'bar-count': ['swaps-threes-and-twos', 'counts-the-bar-twice', 'counts-half-the-bar'],
  accents: [
    'starts-the-bar-elsewhere',
    'one-and-three-for-two-and-four',
    'ands-heavier-than-numbers',
    'all-alike',
    'mute-heard-as-rest',
  ],
  'stroke-grid': [
    'hears-down-up-where-all-are-down',
    'hears-all-downs-where-they-alternate',
    'loses-the-pendulum',
    'mute-heard-as-rest',
  ],
  roles: ['open-hat-missed', 'foot-and-hat-swapped', 'mute-heard-as-rest'],
  count: ['counts-the-changes', 'merges-close-chords', 'hears-no-change', 'splits-one-chord'],
  order: ['starts-the-loop-elsewhere', 'hears-a-return-as-new', 'hears-a-new-chord-as-a-return'],
  direction: ['follows-the-top-note', 'answers-the-way-back', 'says-stays', 'says-moves'],
  root: ['hears-the-fifth', 'hears-the-third', 'swaps-relatives', 'hears-the-fourth-above', 'one-fret-off'],
  bass: ['names-the-root-over-a-slash', 'fifth-over-the-bass', 'third-over-the-bass'],
  distance: [
    'measures-between-the-basses',
    'swaps-four-and-five',
    'measures-the-other-way',
    'lays-the-minor-scale',
    'measures-from-the-key',
    'right-note-other-octave',
    'counts-frets-as-steps',
  ],
  keys: ['stops-at-one-key', 'one-step-round-the-circle', 'either-chord-not-both', 'leaves-an-owner-out'],
  settler: ['ignores-the-settler', 'one-step-round-the-circle'],
};

/**
 * The wrong answers that a class is likely to give to a question: one for each error kind that a plausible answer shows, the usual kinds
 * first, three at most; where none shows any, the nearest other answer. Each is marked by the question's own judge with all that sounded
 * beside it.
 */
export function likelyWrong(
  { kind, target }: Pick<RoundQuestion, 'kind' | 'target'>,
  truth: Truth,
  settings: QuestionSettings,
): readonly LikelyWrong[] {
  const judge = judgeOf<Kind>(kind);
  const asked: AskedOf = { truth, target, settings };
  const beside = besideAll(truth, { returned: true });
  const shown = new Map<ErrorKind, LikelyWrong>();
  const plain: LikelyWrong[] = [];
  for (const { answer, own } of plausibleAnswers(kind, asked)) {
    const { exact, credit, errors } = judge.mark(answer, { ...asked, beside, own });
    const [error = null] = errors;
    if (exact || credit === 1) continue;
    if (error === null) plain.push({ answer, error, own, credit });
    else if (!shown.has(error)) shown.set(error, { answer, error, own, credit });
  }
  if (shown.size === 0) return plain.slice(0, 1);
  const usual = USUAL_FIRST[kind] ?? [];
  const late = (error: ErrorKind) => (usual.includes(error) ? usual.indexOf(error) : usual.length);
  return [...shown]
    .toSorted(([one], [other]) => late(one) - late(other))
    .map(([, wrong]) => wrong)
    .slice(0, MOST_WRONG);
}
