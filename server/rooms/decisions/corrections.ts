import { readSymbol, soundsAs } from '../../../shared-theory/chords.ts';
import { pitchClass } from '../../../shared-theory/pitch.ts';
import { answerKey, readAnswer } from '../../../shared-theory/questions/asks.ts';
import type { Kind } from '../../../shared-theory/questions/question.ts';
import { GRID_KINDS, NOT_SURE, TAPPED_KINDS } from '../../../shared-theory/questions/question.ts';
import type { CommandOf, Decision } from '../commands.ts';
import { already, happens, refuse } from '../commands.ts';
import type { HeardRound, NewEvent } from '../events.ts';
import { gridMisfit } from '../grid-misfit.ts';
import { guitarRound } from '../guitar-round.ts';
import { letStandOn } from '../let-stand.ts';
import { alsoRight, rightAnswer } from '../marking.ts';
import { grooveHeard, ownGrooves } from '../own-grooves.ts';
import type { RoomState, RoundRecord, Settling, Sheet } from '../state.ts';
import { roundOf } from '../state.ts';
import { asksQuestion } from './running-round.ts';

/**
 * The teacher says what he really played. A second press names the same number of corrections before it and is answered with
 * what is. A question that is open and is no more is closed first.
 */
export function correctRound(state: RoomState, command: CommandOf<'CorrectRound'>): Decision {
  const { round, after, chords, groove, tempo, directions, pointsMayFall } = command;
  const record = roundOf(state, round);
  if (record === undefined) return refuse('round-unknown');
  const { heard, corrections } = record;
  if (heard.source === 'host') return refuse('not-your-guitar');
  if (after > corrections) {
    return refuse('message-not-readable', { what: `correction ${after + 1} after ${corrections}` });
  }
  if (after < corrections) return already({ corrections });
  // What was entered stands in the form in the naming of now.
  const { naming } = state.settings;
  const grooves = [...grooveHeard(heard), ...ownGrooves(state.settings)];
  const made = guitarRound({ ...heard, grooves }, { chords, naming, groove, tempo, directions }, heard.seed);
  if ('reason' in made) return made;
  const corrected = {
    ...made,
    questions: made.questions.filter(({ id, target }) =>
      sounded(record, id, made.truth.settlers[target], gridOf(made)),
    ),
  };
  if (!pointsMayFall && soundsAlike(corrected, heard)) return already({ corrections });
  const { open } = state;
  const closing: NewEvent[] =
    open !== null && open.round.id === round && !asksQuestion(corrected, open.question)
      ? [{ type: 'QuestionClosed', ask: open.ask }]
      : [];
  return happens([...closing, { type: 'TruthCorrected', round: corrected, pointsMayFall }], {
    corrections: corrections + 1,
  });
}

/** Whether two rounds are the same but for the words in which they were entered. */
function soundsAlike(one: HeardRound, other: HeardRound): boolean {
  return JSON.stringify({ ...one, entered: null }) === JSON.stringify({ ...other, entered: null });
}

/**
 * Whether a settler that has been asked about is the one that was played then, and a grid that was drawn on the one that there is; true
 * of what was not asked, and of other kinds.
 */
function sounded(
  { questions }: RoundRecord,
  question: string,
  settler: Settling | undefined,
  grid: Sheet['grid'],
): boolean {
  const sheets = [...(questions.get(question)?.sheets ?? []), ...(questions.get(question)?.firsts ?? [])];
  return sheets.every(
    ({ settler: played, grid: drawn }) =>
      (played === null || (settler !== undefined && sameSettler(played, settler))) &&
      (drawn === null || drawn === grid),
  );
}

function gridOf({ truth }: HeardRound): Sheet['grid'] {
  return truth.rhythm?.grid ?? null;
}

/** A note is the same by any name; so is a chord. */
function sameSettler(one: Settling, other: Settling): boolean {
  if (one.chord !== null && other.chord !== null) return soundsAs(readSymbol(one.chord), readSymbol(other.chord));
  return one.note !== null && other.note !== null && pitchClass(one.note) === pitchClass(other.note);
}

/** The teacher lets another answer stand as right, or no more: a valid reading is never wrong. */
export function letStand(state: RoomState, command: CommandOf<'LetStand'>): Decision {
  const { round, question, stands } = command;
  const record = roundOf(state, round);
  if (record === undefined) return refuse('round-unknown');
  const { heard } = record;
  const asked = heard.questions.find(({ id }) => id === question);
  if (asked === undefined) return refuse('question-unknown');
  const answer = readAnswer(asked.kind, command.answer, heard.settings);
  if (answer === null || answer === NOT_SURE) return refuse('answer-not-readable');
  const grid = GRID_KINDS.has(asked.kind) ? gridOf(heard) : null;
  const misfit = grid === null ? null : gridMisfit(asked.kind, grid, answer);
  if (misfit !== null) return refuse('answer-not-readable', misfit);
  const key = answerKey<Kind>(asked.kind, answer);
  const right = rightAnswer(heard, asked);
  if (right === null) return refuse('never-marked');
  // No two hands tap alike: what is right of taps are the counts of the groove, and its tempo can be corrected.
  if (TAPPED_KINDS.has(asked.kind)) return refuse('message-not-readable', { what: 'taps that are to stand as right' });
  const allRight = [answerKey<Kind>(asked.kind, right), ...alsoRight(heard, asked)];
  if (allRight.includes(key) || letStandOn(state, heard, asked).has(key) === stands) return already();
  return happens([{ type: 'AnswerLetStand', round, question, answer, stands }]);
}

/** The teacher strikes a spoiled question, or takes that back. It must have been asked. */
export function strikeQuestion(state: RoomState, command: CommandOf<'StrikeQuestion'>): Decision {
  const { round, question, struck } = command;
  const record = roundOf(state, round);
  if (record === undefined) return refuse('round-unknown');
  const asked = record.questions.get(question);
  if (asked === undefined || !asksQuestion(record.heard, question)) return refuse('question-unknown');
  if (asked.struck === struck) return already();
  if (asked.sheets.length + asked.firsts.length === 0) return refuse('question-not-open');
  return happens([{ type: 'QuestionStruck', round, question, struck }]);
}
