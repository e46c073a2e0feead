import { bassNote, chordSymbol, readSymbol, triadOf } from '../../shared-theory/chords.ts';
import { candidateKeys } from '../../shared-theory/candidates.ts';
import { chartRows, cribOf } from '../../shared-theory/crib.ts';
import { soloNotes } from '../../shared-theory/crib/solo-notes.ts';
import { parseKeyName } from '../../shared-theory/keys.ts';
import { answerKey, asks } from '../../shared-theory/questions/asks.ts';
import { partsOf } from '../../shared-theory/questions/keys/ask.ts';
import { TAPPED_KINDS } from '../../shared-theory/questions/question.ts';
import type { Answer, AnswerOf, Kind, NotSure, Told } from '../../shared-theory/questions/question.ts';
import { questionId } from '../../shared-theory/questions/round-questions.ts';
import type { RoundQuestion } from '../../shared-theory/questions/round-questions.ts';
import { policyChanges } from '../../shared-theory/policy-change.ts';
import type { PolicyChange } from '../../shared-theory/policy-change.ts';
import { sungNote } from '../../shared-theory/settle.ts';
import { MOST_TOLD, visitedKeys } from '../../shared-theory/visited-keys.ts';
import type { VisitedKey } from '../../shared-theory/visited-keys.ts';
import type * as Wire from '../protocol/views.ts';
import { meanGrid } from './drawn-grids.ts';
import type { HeardRound } from './events.ts';
import { letStandOn } from './let-stand.ts';
import { countShown, loopKnown } from './loop-known.ts';
import { alsoRight, chordsOf, heardOn, isCollected, markerOn, questionOn, rightAnswer, spreadOn } from './marking.ts';
import type { ToldTo } from './marking.ts';
import type { RoomState, RoundRecord, Sheet } from './state.ts';
import { currentRound, questionOf } from './state.ts';
import { wireTaps } from './view-taps.ts';

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

/** What stands on a pad of a chord as far as it has been shown: the root beside its qualities, the triad beside its sevenths. */
function letterShown(state: RoomState, { number, truth }: HeardRound, { kind, target }: RoundQuestion): string | null {
  const symbol = truth.chords[target];
  const isShownOf = (of: Kind) => wasShown(state, number, questionId(of, target));
  if (symbol === undefined || !isShownOf('root')) return null;
  const chord = readSymbol(symbol);
  if (kind === 'quality') return chord.root;
  return kind === 'seventh' && isShownOf('quality') ? chordSymbol(triadOf(chord)) : null;
}

/** The pad. It names no more of a chord than has been shown. */
export function askingOn(state: RoomState, sheet: Sheet): Wire.WireAsking {
  const question = questionOn(sheet);
  const { kind } = question;
  const letter = letterShown(state, sheet.round, question);
  const loop = loopKnown(state, sheet.round);
  const owners = kind === 'settler' ? ownersShown(state, sheet.round) : null;
  const chords = kind === 'home' || kind === 'keys' ? countShown(state, sheet.round) : null;
  return {
    ...askingTold(sheet, {
      ...(letter === null ? {} : { letter }),
      ...(loop === null ? {} : { loop }),
      ...(owners === null ? {} : { owners }),
      ...(sheet.grid === null ? {} : { grid: sheet.grid }),
    }),
    ...(chords === null ? {} : { chords }),
  };
}

/** The pad as the teacher alone sees it: it may say that the loop is one chord. */
export function askingOnDesk(state: RoomState, sheet: Sheet): Wire.WireAsking {
  const asking = askingOn(state, sheet);
  return asking.kind === 'keys' && chordsOf(sheet.round).length === 1 ? { ...asking, loop: 'one' } : asking;
}

/** The keys that own the loop, once they have been shown. */
function ownersShown(state: RoomState, round: HeardRound): readonly string[] | null {
  const keys = round.questions.find(({ kind }) => kind === 'keys');
  if (keys === undefined || !wasShown(state, round.number, keys.id)) return null;
  const owners = rightAnswer(round, keys) as AnswerOf<'keys'> | null;
  // A home is no key.
  return owners === null ? null : [...partsOf(owners).keys];
}

function askingTold({ round, question }: Sheet, told: Told): Wire.WireAsking {
  const { kind, target } = questionOn({ round, question });
  const asking = asks[kind].ask(target, round.settings, told);
  return {
    kind: asking.kind,
    target: asking.target,
    ...(asking.options === undefined ? {} : { options: asking.options }),
    ...(asking.letter === undefined ? {} : { letter: asking.letter }),
    ...(asking.capo === undefined ? {} : { capo: asking.capo }),
    ...(asking.loop === undefined ? {} : { loop: asking.loop }),
    ...(asking.grid === undefined ? {} : { grid: asking.grid }),
    ...(kind === 'settler' && (round.truth.settlers[target]?.note ?? null) !== null ? { sung: true as const } : {}),
  };
}

/** What is right on a sheet; null where the answers are opinions. */
export function truthOn(state: RoomState, sheet: Sheet): Wire.WireTruth | null {
  const question = questionOn(sheet);
  const { kind } = question;
  const round = heardOn(sheet);
  const answer = rightAnswer(round, question);
  if (answer === null) return null;
  const also = [...alsoRight(round, question), ...letStandOn(state, round, question)];
  const name = noteAsked(round, question);
  return {
    answer,
    key: answerKey<Kind>(kind, answer),
    ...(also.length === 0 ? {} : { also }),
    ...(name === null ? {} : { name }),
  };
}

/** The note that is asked for as the chord spells it: its root, or its bass. */
function noteAsked({ truth }: HeardRound, { kind, target }: RoundQuestion): string | null {
  if (kind === 'root') return truth.roots[target] ?? null;
  const chord = truth.chords[target];
  return kind === 'bass' && chord !== undefined ? bassNote(readSymbol(chord)) : null;
}

/** Right answers of a round by question id; an opinion has none. */
export function truthsOf(round: HeardRound): Readonly<Record<string, Answer>> {
  return Object.fromEntries(
    round.questions.flatMap((question) => {
      const answer = rightAnswer(round, question);
      return answer === null ? [] : [[question.id, answer] as const];
    }),
  );
}

/** The mark of an answer; null where the answers are opinions. */
export function wireMark(
  state: RoomState,
  sheet: Sheet,
  student: string,
  answer: Answer | NotSure,
  told: ToldTo,
): Wire.WireMark | null {
  if (isCollected(sheet)) return null;
  const { credit, exact, errors, note } = markerOn(state, sheet, told)(answer, student);
  const [error] = errors;
  return {
    credit,
    exact,
    ...(error === undefined ? {} : { error }),
    ...(note === undefined ? {} : { note }),
  };
}

export function stepOf(round: RoundRecord, { id, kind, target }: RoundQuestion, on?: Sheet): Wire.WireStep {
  const record = round.questions.get(id);
  const sheet = on ?? record?.sheets.at(-1);
  const status =
    sheet === undefined ? 'ready' : record?.shown === true ? 'shown' : sheet.closed === null ? 'open' : 'closed';
  return {
    question: id,
    kind,
    target,
    status,
    sheet: sheet?.sheet ?? 1,
    ask: sheet?.ask ?? null,
    aloud: sheet?.how === 'aloud',
    memory: sheet?.how === 'memory',
    struck: record?.struck === true,
  };
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
    .map((kind): Wire.WireStep => {
      const target = asks[kind].targets(2, { groove: true, settlers: 1 })[0] ?? 0;
      return {
        question: questionId(kind, target),
        kind,
        target,
        status: 'ready',
        sheet: 1,
        ask: null,
        aloud: false,
        memory: false,
        struck: false,
      };
    });
  const { kinds } = round.heard;
  // Taps that the level does not ask stand after those that it does, as they do on the desk.
  const besides = kinds.findLastIndex((kind) => TAPPED_KINDS.has(kind)) + 0.5;
  const place = ({ kind }: { readonly kind: string }) => {
    const listed = kinds.findIndex((each) => each === kind);
    return listed < 0 ? besides : listed;
  };
  return [...steps, ...ready].toSorted((one, other) => place(one) - place(other));
}

/** How the answers fell; none where none could be given. */
export function wireSpread(state: RoomState, sheet: Sheet): Wire.WireSpread | null {
  if (sheet.how === 'aloud') return null;
  const { kind, target } = questionOn(sheet);
  const { counts, notSure, silent, of } = spreadOn(state, sheet);
  const tapped = TAPPED_KINDS.has(kind);
  return {
    ask: sheet.ask,
    kind,
    target,
    asking: askingOn(state, sheet),
    // No two hands tap alike: of taps it is drawn what the room did as a whole.
    counts: tapped ? [] : counts.map(({ key, answer, count }) => ({ key, answer, count })),
    notSure,
    silent,
    of,
    ...(tapped ? { taps: wireTaps(sheet) } : {}),
    ...(kind === 'accents' ? { meanGrid: meanGrid(sheet) } : {}),
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
    ...((round.settings.capo ?? 0) === 0 ? {} : { capo: round.settings.capo }),
    slots: round.slots.map(({ chord, beats, frets }) => ({ chord, beats, frets })),
    settlers: round.truth.settlers.flatMap(({ note }, index): Wire.WireSettler[] => {
      const slot = round.settlers[index] ?? null;
      if (slot !== null) return [{ chord: slot.chord, beats: slot.beats, frets: slot.frets }];
      return note === null ? [] : [{ note, midi: sungNote(note, round.slots) }];
    }),
  };
}

/** The charts of every key that owns the chords; only once the keys are shown. Worked out once. */
export function keysReveal(state: RoomState, sheet: Sheet): Wire.WireKeysReveal | null {
  if (questionOn(sheet).kind !== 'keys' || !isShown(state, sheet)) return null;
  const known = revealsKnown.get(sheet.round) ?? chartsOf(sheet.round);
  revealsKnown.set(sheet.round, known);
  return known;
}

const revealsKnown = new WeakMap<HeardRound, Wire.WireKeysReveal>();

function chartsOf(round: HeardRound): Wire.WireKeysReveal {
  const { truth, settings } = round;
  const chords = chordsOf(round);
  const crib = cribOf(chords, settings.policy);
  const [likeliest] = crib.keys.length === 0 ? visitedKeys(chords) : [];
  return {
    chords: crib.chords,
    rows: truth.keys[settings.policy].map((name) => {
      const { key, id, row, notes } = chartRows(chords, parseKeyName(name), settings.policy);
      return {
        key,
        id,
        row: row.map(({ symbol, numeral, inVamp, holdsDecider }) => ({ symbol, numeral, inVamp, holdsDecider })),
        notes,
      };
    }),
    deciders: crib.deciders.map(({ note, leaves }) => ({ note, leaves })),
    ...(likeliest === undefined ? {} : { visited: wireVisited(likeliest) }),
  };
}

function wireVisited({ key, numerals, visitors }: VisitedKey): Wire.WireVisitedKey {
  return {
    key,
    numerals,
    visitors: visitors.map(({ chord, numeral, visit, of }) => ({
      chord,
      numeral,
      visit,
      ...(of === undefined ? {} : { of }),
    })),
  };
}

/** What a round keeps of the settings that its questions are asked under. */
export function wireAskedUnder({ settings: { policy, qualities } }: HeardRound): Wire.DeskView['askedUnder'] {
  return { policy, qualities };
}

const cribsKnown = new WeakMap<HeardRound, Wire.WireCrib>();

/** What the teacher reads of a round; worked out once. */
export function wireCrib(round: HeardRound): Wire.WireCrib {
  const known = cribsKnown.get(round) ?? cribNow(round);
  cribsKnown.set(round, known);
  return known;
}

function cribNow(round: HeardRound): Wire.WireCrib {
  const { policy } = round.settings;
  const sounding = chordsOf(round);
  const { chords, keys, deciders, settlers } = cribOf(sounding, policy);
  const safe = soloNotes(sounding, candidateKeys(sounding, policy));
  return {
    chords,
    keys: keys.map(({ key, numerals }) => ({ key, numerals })),
    deciders: deciders.map(({ note, leaves }) => ({ note, leaves })),
    settlers: settlers.map(({ chord, leaves }) => ({ chord, leaves })),
    visited: keys.length === 0 ? visitedKeys(sounding).slice(0, MOST_TOLD).map(wireVisited) : [],
    bass: round.slots.map(({ chord }) => bassNote(readSymbol(chord))),
    safe: safe.notes,
    safeOf: safe.of,
    directions: round.truth.directions,
  };
}

const changesKnown = new WeakMap<HeardRound, readonly Wire.WirePolicyChange[]>();

/** What the choice of the key policy changes about a round; worked out once. */
export function wirePolicyChanges(round: HeardRound): readonly Wire.WirePolicyChange[] {
  const known = changesKnown.get(round) ?? policyChanges(chordsOf(round)).map(wireChange);
  changesKnown.set(round, known);
  return known;
}

function wireChange(change: PolicyChange): Wire.WirePolicyChange {
  switch (change.change) {
    case 'minor-by-raised-seventh':
    case 'minors-join-by-raised-seventh':
      return {
        change: change.change,
        keys: change.keys.map(({ key, numerals, seventh }) => ({ key, numerals, seventh })),
      };
    case 'home-key-with-visitor': {
      const { key, numerals, visitors } = change;
      return {
        change: 'home-key-with-visitor',
        key,
        numerals,
        visitors: visitors.map(({ chord, visit, of }) => ({ chord, visit, ...(of === undefined ? {} : { of }) })),
      };
    }
    case 'home-in-a-mode':
      return { change: 'home-in-a-mode', key: change.key, parent: change.parent, numerals: change.numerals };
    case 'blues':
      return { change: 'blues', tonic: change.tonic, numerals: change.numerals };
  }
}
