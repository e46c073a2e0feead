import { bassPitchClass, readSymbol } from '../chords.ts';
import { chordIndices } from '../different-chords.ts';
import type { Chord } from '../chords.ts';
import { itemAt } from '../items.ts';
import { bassJudge } from './bass/judge.ts';
import { countJudge } from './count/judge.ts';
import { directionJudge } from './direction/judge.ts';
import { distanceJudge } from './distance/judge.ts';
import { MOST_HOMES } from './home/ask.ts';
import { homeJudge } from './home/judge.ts';
import { keysJudge } from './keys/judge.ts';
import { numeralJudge } from './numeral/judge.ts';
import { oneOrSeveralJudge } from './one-or-several/judge.ts';
import { orderJudge } from './order/judge.ts';
import { qualityJudge } from './quality/judge.ts';
import type { AnswerOf, Judge, Kind, Mark, MarkingContext, NotSure, QuestionSettings } from './question.ts';
import { COLLECTED_KINDS, NOT_SURE } from './question.ts';
import { rootJudge } from './root/judge.ts';
import type { RoundQuestion, RoundShape } from './round-questions.ts';
import { questionsOf } from './round-questions.ts';
import { settlerJudge } from './settler/judge.ts';
import { seventhJudge } from './seventh/judge.ts';
import { strokesJudge } from './strokes/judge.ts';
import { tempoJudge } from './tempo/judge.ts';
import { steadinessJudge } from './steadiness/judge.ts';
import { dropOutJudge } from './drop-out/judge.ts';
import { togetherJudge } from './together/judge.ts';
import { barCountJudge } from './bar-count/judge.ts';
import { threesJudge } from './threes/judge.ts';
import { halfTimeJudge } from './half-time/judge.ts';
import { swingJudge } from './swing/judge.ts';
import { driveJudge } from './drive/judge.ts';
import { pendulumJudge } from './pendulum/judge.ts';
import { changePlaceJudge } from './change-place/judge.ts';
import { accentsJudge } from './accents/judge.ts';
import { strokeGridJudge } from './stroke-grid/judge.ts';
import { rolesJudge } from './roles/judge.ts';
import { openedJudge } from './opened/judge.ts';
import { pitchClass } from '../pitch.ts';
import type { Truth } from '../truth.ts';

/** The marking side of every question. For the server and the commands; never in what a phone loads. */
export const judges: { readonly [K in Kind]: Judge<K> } = {
  tempo: tempoJudge,
  steadiness: steadinessJudge,
  'drop-out': dropOutJudge,
  together: togetherJudge,
  'bar-count': barCountJudge,
  threes: threesJudge,
  'half-time': halfTimeJudge,
  swing: swingJudge,
  drive: driveJudge,
  strokes: strokesJudge,
  pendulum: pendulumJudge,
  'change-place': changePlaceJudge,
  accents: accentsJudge,
  'stroke-grid': strokeGridJudge,
  roles: rolesJudge,
  opened: openedJudge,
  count: countJudge,
  order: orderJudge,
  direction: directionJudge,
  bass: bassJudge,
  quality: qualityJudge,
  root: rootJudge,
  seventh: seventhJudge,
  distance: distanceJudge,
  numeral: numeralJudge,
  'one-or-several': oneOrSeveralJudge,
  keys: keysJudge,
  settler: settlerJudge,
  home: homeJudge,
};

/** The judge of a kind. */
export function judgeOf<K extends Kind>(kind: K): Judge<K> {
  return judges[kind];
}

/** The strict ledger: not sure abstains and is never wrong. */
export type Evidence = 'right' | 'wrong' | 'abstain';

/**
 * The mark of an answer that may be `not-sure`, with what it counts as evidence; an answer that is only collected earns nothing
 * and is evidence of nothing. Throws RangeError where the truth of a kind that is marked is null.
 */
export function markAnswer<K extends Kind>(
  kind: K,
  answer: AnswerOf<K> | NotSure,
  context: MarkingContext,
): Mark & { readonly evidence: Evidence } {
  if (answer === NOT_SURE || COLLECTED_KINDS.has(kind))
    return { credit: 0, exact: false, errors: [], evidence: 'abstain' };
  const mark = judges[kind].mark(answer, context);
  return { ...mark, evidence: mark.exact ? 'right' : 'wrong' };
}

/**
 * The questions of a round in the usual order, without those that have no right answer under the settings, without the numeral of
 * one chord alone, which is right in three keys, and without the way of a bass where a teacher plays one chord alone. Of a vamp
 * made for a level it is asked there too: the bass stays. Where the loop would stop is asked of two to four different chords; clapping
 * together is there wherever a groove has a tempo.
 */
export function askableQuestions(truth: Truth, settings: QuestionSettings): readonly RoundQuestion[] {
  // What rings on top is known of made vamps alone.
  const held = truth.top.length === 0 && truth.count === 1 && new Set(truth.bass).size === 1;
  const isAsked = ({ kind, target }: RoundQuestion): boolean => {
    if (kind === 'home') return truth.count >= 2 && truth.count <= MOST_HOMES;
    if (kind === 'together') return truth.tempo !== null && Boolean(truth.rhythm);
    if ((kind === 'direction' && held) || (kind === 'numeral' && truth.count === 1)) return false;
    return judges[kind].truth({ truth, target, settings }) !== null;
  };
  return questionsOf(shapeOf(truth)).filter(isAsked);
}

/** What decides which questions a round has. */
function shapeOf({ chords, strokes, rhythm = null, settlers }: Truth): RoundShape {
  const written = chords.map(readSymbol);
  const indices = chordIndices(written);
  const overBass = chordIndices(written, { slashIsNew: true });
  // What sounds again is asked about once, whatever it is called there: C6, and Am7/C.
  const soundingFirst = (slot: number) => itemAt(written, overBass.indexOf(itemAt(overBass, slot)));
  const bassAt = (chord: Chord) => {
    const bass = bassPitchClass(chord);
    return bass === pitchClass(chord.root) ? null : String(bass);
  };
  return {
    chords: indices.map(String),
    basses: written.map((_, slot) => bassAt(soundingFirst(slot))),
    grooveKnown: strokes !== null || rhythm !== null,
    settlers: settlers.length,
  };
}
