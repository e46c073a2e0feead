import { chartRows, cribOf } from '../../shared-theory/crib.ts';
import { parseKeyName } from '../../shared-theory/keys.ts';
import { LEVELS } from '../../shared-theory/levels.ts';
import { answerKey, asks } from '../../shared-theory/questions/asks.ts';
import { judgeOf } from '../../shared-theory/questions/judges.ts';
import type { Answer, Kind, Loop, NotSure, Told } from '../../shared-theory/questions/question.ts';
import { questionId } from '../../shared-theory/questions/round-questions.ts';
import type { RoundQuestion } from '../../shared-theory/questions/round-questions.ts';
import type * as Wire from '../protocol/views.ts';
import type { HeardRound } from './events.ts';
import { breakdownFor, chordsOf, markerOf, questionOn, rightAnswer, spreadOn } from './marking.ts';
import type { ToldTo } from './marking.ts';
import type { RoomState, RoundRecord, Sheet } from './state.ts';
import { currentRound, questionOf } from './state.ts';

/** Pieces of what `view.ts` sends, each built field by field. Who may see which piece is decided there alone. */

export function hasEnded({ status }: RoomState): boolean {
  return status === 'lesson-ended' || status === 'room-ended';
}

export function isShown(state: RoomState, sheet: Sheet): boolean {
  return questionOf(state, sheet)?.shown === true;
}

export function wasShown(state: RoomState, number: number, question: string): boolean {
  return state.rounds[number - 1]?.questions.get(question)?.shown === true;
}

/** The pad. Its letter is the chord's root: it stands only once that root has been shown. */
export function askingOn(state: RoomState, sheet: Sheet): Wire.WireAsking {
  const { number, truth } = sheet.round;
  const { kind, target } = questionOn(sheet);
  const root = truth.roots[target];
  const letterShown = kind === 'quality' && root !== undefined && wasShown(state, number, questionId('root', target));
  const loop = loopKnown(state, sheet);
  return askingTold(sheet, { ...(letterShown ? { letter: root } : {}), ...(loop === null ? {} : { loop }) });
}

/** The pad as the teacher alone sees it: it may say that the loop is one chord. */
export function askingOnDesk(state: RoomState, sheet: Sheet): Wire.WireAsking {
  const asking = askingOn(state, sheet);
  return asking.kind === 'keys' && chordsOf(sheet.round).length === 1 ? { ...asking, loop: 'one' } : asking;
}

/**
 * How many chords the loop has, as far as everyone knows: the level says so, or a later chord has been asked about. It may not
 * depend on the chords themselves.
 */
function loopKnown(state: RoomState, { round }: Sheet): Loop | null {
  const asked = [...(state.rounds[round.number - 1]?.questions ?? [])].filter(([, { sheets }]) => sheets.length > 0);
  const laterAsked = round.questions.some(({ id, target }) => target > 0 && asked.some(([known]) => known === id));
  const level = LEVELS.find((each) => each.level === round.level);
  if (level === undefined) return laterAsked ? 'more' : null;
  // No level has more than two chords; some have now and then one alone.
  return laterAsked || level.balance.alone === 0 ? 'two' : null;
}

function askingTold({ round, question }: Sheet, told: Told): Wire.WireAsking {
  const { kind, target } = questionOn({ round, question });
  const asking = asks[kind].ask(target, round.settings, told);
  return {
    kind: asking.kind,
    target: asking.target,
    ...(asking.options === undefined ? {} : { options: asking.options }),
    ...(asking.letter === undefined ? {} : { letter: asking.letter }),
    ...(asking.loop === undefined ? {} : { loop: asking.loop }),
  };
}

export function truthOn(sheet: Sheet): Wire.WireTruth {
  const { kind, target } = questionOn(sheet);
  const judge = judgeOf<Kind>(kind);
  const { truth, settings } = sheet.round;
  const answer = rightAnswer(sheet.round, questionOn(sheet));
  const also = judge.also({ truth, settings, target }).map((other) => answerKey<Kind>(kind, other));
  const name = kind === 'root' ? truth.roots[target] : undefined;
  return {
    answer,
    key: answerKey<Kind>(kind, answer),
    ...(also.length === 0 ? {} : { also }),
    ...(name === undefined ? {} : { name }),
  };
}

/** Right answers of a round by question id. */
export function truthsOf(round: HeardRound): Readonly<Record<string, Answer>> {
  return Object.fromEntries(round.questions.map((question) => [question.id, rightAnswer(round, question)]));
}

export function wireMark(
  state: RoomState,
  sheet: Sheet,
  answer: Answer | NotSure,
  told: ToldTo,
): NonNullable<Wire.StudentOwn['mark']> {
  const { credit, exact, errors } = markerOf(state, sheet, told)(answer);
  const [error] = errors;
  return error === undefined ? { credit, exact } : { credit, exact, error };
}

export function stepOf(round: RoundRecord, { id, kind, target }: RoundQuestion, on?: Sheet): Wire.WireStep {
  const record = round.questions.get(id);
  const sheet = on ?? record?.sheets.at(-1);
  const status =
    sheet === undefined ? 'ready' : record?.shown === true ? 'shown' : sheet.closed === null ? 'open' : 'closed';
  return { question: id, kind, target, status, sheet: sheet?.sheet ?? 1, ask: sheet?.ask ?? null };
}

/**
 * The row on the wall: each question that has been opened, and one step for each kind that may still be. What stands there
 * before a question is opened is the same for every truth: it does not tell how many chords there are.
 */
export function hostSteps(state: RoomState): readonly Wire.WireStep[] {
  const round = currentRound(state);
  if (round === null) return [];
  const steps = round.heard.questions.map((question) => stepOf(round, question)).filter(({ ask }) => ask !== null);
  const ready = round.heard.kinds
    .filter((kind) => !steps.some((step) => step.kind === kind))
    .map((kind) => {
      const target = kind === 'direction' ? 1 : 0;
      return { question: questionId(kind, target), kind, target, status: 'ready', sheet: 1, ask: null } as const;
    });
  const place = ({ kind }: { readonly kind: string }) => round.heard.kinds.findIndex((each) => each === kind);
  return [...steps, ...ready].toSorted((one, other) => place(one) - place(other));
}

export function wireSpread(state: RoomState, sheet: Sheet): Wire.WireSpread {
  const { kind, target } = questionOn(sheet);
  const { counts, notSure, silent, of } = spreadOn(state, sheet);
  return {
    ask: sheet.ask,
    kind,
    target,
    asking: askingOn(state, sheet),
    counts: counts.map(({ key, answer, count }) => ({ key, answer, count })),
    notSure,
    silent,
    of,
  };
}

export function wireVamp(round: HeardRound): Wire.WireVamp {
  return {
    round: round.id,
    number: round.number,
    source: round.source,
    level: round.level,
    meter: round.meter,
    grooveText: round.grooveText,
    tempo: round.tempo,
    seed: round.seed,
    slots: round.slots.map(({ chord, beats, frets }) => ({ chord, beats, frets })),
  };
}

/** The charts of every key that owns the chords; only once the keys are shown. */
export function keysReveal(state: RoomState, sheet: Sheet): Wire.WireKeysReveal | null {
  if (questionOn(sheet).kind !== 'keys' || !isShown(state, sheet)) return null;
  const { truth, settings } = sheet.round;
  const chords = chordsOf(sheet.round);
  const crib = cribOf(chords, settings.policy);
  return {
    chords: crib.chords,
    rows: truth.keys[settings.policy].map((name) => {
      const { key, id, row, notes } = chartRows(chords, parseKeyName(name));
      return {
        key,
        id,
        row: row.map(({ symbol, numeral, inVamp, holdsDecider }) => ({ symbol, numeral, inVamp, holdsDecider })),
        notes,
      };
    }),
    deciders: crib.deciders.map(({ note, leaves }) => ({ note, leaves })),
  };
}

export function wireCrib(round: HeardRound): Wire.WireCrib {
  const { chords, keys, deciders, settlers } = cribOf(chordsOf(round), round.settings.policy);
  return {
    chords,
    keys: keys.map(({ key, numerals }) => ({ key, numerals })),
    deciders: deciders.map(({ note, leaves }) => ({ note, leaves })),
    settlers: settlers.map(({ chord, leaves }) => ({ chord, leaves })),
    bass: round.truth.roots,
    directions: round.truth.directions,
  };
}

export function breakdown(
  state: RoomState,
  listed: (line: { readonly round: number; readonly question: string }) => boolean,
): readonly Wire.WireBreakdownLine[] | null {
  if (!hasEnded(state)) return null;
  return breakdownFor(state)
    .filter(listed)
    .map((line) => ({ line, sheet: firstSheet(state, line.round, line.question) }))
    .map(({ line, sheet }) => ({
      asking: sheet === null ? { kind: line.kind, target: line.target } : askingOn(state, sheet),
      question: line.question,
      round: line.round,
      kind: line.kind,
      target: line.target,
      right: line.right,
      part: line.part,
      wrong: line.wrong,
      notSure: line.notSure,
      silent: line.silent,
      missed: line.missed.map(({ key, answer, count, error }) => ({ key, answer, count, error })),
      truth: line.truth,
    }));
}

function firstSheet(state: RoomState, round: number, question: string): Sheet | null {
  return state.rounds[round - 1]?.questions.get(question)?.sheets[0] ?? null;
}
