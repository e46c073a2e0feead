import { RHYTHM_KINDS, TAPPED_KINDS } from '../../../shared-theory/questions/question.ts';
import type { Kind } from '../../../shared-theory/questions/question.ts';
import { parseQuestionId } from '../../../shared-theory/questions/round-questions.ts';
import type { RoundQuestion } from '../../../shared-theory/questions/round-questions.ts';
import type { AskHow, Depth } from '../../protocol/messages.ts';
import { DEPTHS } from '../../protocol/messages.ts';
import { isTold } from '../bar-told.ts';
import type { NewEvent } from '../events.ts';
import { knownQuestions } from '../known-questions.ts';
import type { RoomState, RoundRecord, SoundState, Student } from '../state.ts';
import { couldAnswer } from '../state.ts';
import { hides, isOfTheFeel } from './asking.ts';

/** The depth from which on a kind is asked. */
const DEPTH_OF: Readonly<Record<Kind, Depth>> = {
  tempo: 'floor',
  steadiness: 'floor',
  'drop-out': 'floor',
  together: 'floor',
  'bar-count': 'floor',
  threes: 'floor',
  'half-time': 'floor',
  swing: 'floor',
  drive: 'floor',
  strokes: 'floor',
  pendulum: 'floor',
  'change-place': 'floor',
  accents: 'floor',
  'stroke-grid': 'floor',
  roles: 'floor',
  opened: 'floor',
  count: 'floor',
  order: 'floor',
  direction: 'floor',
  quality: 'floor',
  bass: 'chords',
  root: 'chords',
  seventh: 'chords',
  distance: 'chords',
  numeral: 'keys',
  'one-or-several': 'keys',
  keys: 'keys',
  settler: 'keys',
  home: 'keys',
};

/** What sounds while it is asked. */
type Sounds = Pick<SoundState, 'change' | 'feel'>;
type Opening = { readonly ask: string; readonly question: string; readonly how: AskHow };

/**
 * With a question that opens, what is asked instead of those beyond whom it lies: the deepest question of the round within their
 * depth that they have not been asked, can be answered from what sounds meanwhile, and is known to be among the round's.
 */
export function askedInstead(
  state: RoomState,
  record: RoundRecord,
  { ask, question, how }: Opening,
  sounds: Sounds,
): readonly NewEvent[] {
  const opens = parseQuestionId(question);
  if (opens === null || how === 'aloud') return [];
  const beyond = [...state.students.values()].filter(({ depth }) => !reaches(depth, opens.kind));
  if (beyond.length === 0) return [];
  const candidates = knownQuestions(state, record)
    .filter(({ id }) => id !== question && !isOver(record, id))
    // Taps are answers to what the whole room hears; and how a bar is counted is told once its grid has been drawn.
    .filter(({ kind }) => !TAPPED_KINDS.has(kind) && !isTold(record, kind))
    // From memory is asked what sounded before it fell silent: of the modes nobody knows, but the feel is the same.
    .filter((each) => (how === 'memory' ? !isSwapped(each, sounds) : isHeard(each, sounds)))
    .toReversed()
    .toSorted((one, other) => rankOf(DEPTH_OF[other.kind]) - rankOf(DEPTH_OF[one.kind]));
  return beyond.map((student) => {
    const found = candidates.find(({ id, kind }) => reaches(student.depth, kind) && !wasAsked(record, id, student));
    return { type: 'AskedInstead', student: student.student, ask, question: found?.id ?? null };
  });
}

function reaches(depth: Depth, kind: Kind): boolean {
  return rankOf(DEPTH_OF[kind]) <= rankOf(depth);
}

function rankOf(depth: Depth): number {
  return DEPTHS.indexOf(depth);
}

/** Of what has been shown, or is spoiled, there is nothing more to ask; nor of what the wall has shown the hands of. */
function isOver({ questions }: RoundRecord, question: string): boolean {
  const asked = questions.get(question);
  return asked === undefined || asked.shown || asked.struck || asked.sheets.some(({ spreadShown }) => spreadShown);
}

function wasAsked({ questions }: RoundRecord, question: string, student: Student): boolean {
  const asked = questions.get(question);
  return [...(asked?.sheets ?? []), ...(asked?.firsts ?? [])].some((sheet) => couldAnswer(sheet, student));
}

/** Whether it is asked about the groove while another feel than was written gives another. */
function isSwapped({ kind }: RoundQuestion, { feel }: Sounds): boolean {
  return isOfTheFeel(kind) && feel !== 'written';
}

/** Whether what is asked can be heard in a sound. */
function isHeard(question: RoundQuestion, sounds: Sounds): boolean {
  if (isSwapped(question, sounds)) return false;
  const { kind, target } = question;
  const { change } = sounds;
  // The groove goes on with whatever hides nothing of it.
  if (RHYTHM_KINDS.has(kind))
    return change.kind !== 'silence' && change.kind !== 'both' && hides(change, kind) === null;
  switch (change.kind) {
    case 'hold':
    case 'chord-alone':
    case 'root-then-chord':
      return ofOneChord(kind) && target === change.slot;
    case 'pair':
      return (ofOneChord(kind) && [0, change.slot].includes(target)) || ofTwo(kind, target, change);
    case 'bass-alone':
      // Over another bass than its root a chord's root does not sound here; which chord has one may not tell.
      return kind === 'direction' || kind === 'bass';
    case 'root-alone':
      return kind === 'root' && target === change.slot;
    case 'settler':
      // One more chord sounds than is to be counted.
      return kind !== 'count' && kind !== 'order';
    case 'muted':
    case 'both':
    case 'echo':
    case 'kit-only':
    case 'silence':
      return false;
    case 'full':
    case 'again':
    case 'soft':
    case 'bass-forward':
    // For two bars only it is not heard.
    case 'drop-out':
      return true;
  }
}

function ofOneChord(kind: Kind): boolean {
  return kind === 'quality' || kind === 'seventh' || kind === 'bass' || kind === 'root';
}

function ofTwo(kind: Kind, target: number, { slot }: Extract<Sounds['change'], { readonly kind: 'pair' }>): boolean {
  return (kind === 'direction' || kind === 'distance') && target === slot;
}
