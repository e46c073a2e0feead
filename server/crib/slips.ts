import { readSymbol } from '../../shared-theory/chords.ts';
import { differentSlots } from '../../shared-theory/different-chords.ts';
import { itemAt } from '../../shared-theory/items.ts';
import type { NamedAnswer } from '../../shared-theory/crib/answer-names.ts';
import type { CribQuestion, CribSheet } from '../../shared-theory/crib/sheet.ts';
import type { GuitarCrib } from '../../shared-theory/crib/typed.ts';
import type { ErrorKind } from '../../shared-theory/questions/error-kinds.ts';
import { MOST_NUMERALS } from '../../shared-theory/questions/numeral/ask.ts';
import type { Kind } from '../../shared-theory/questions/question.ts';
import { countingWords, listed } from '../protocol/words/counting.ts';
import { cribWords } from '../protocol/words/crib-words.ts';
import { errorKinds } from '../protocol/words/errors.ts';
import { fill } from '../protocol/words/fill.ts';
import { answerText, askedText, wrongText } from './answers.ts';
import type { SheetNames } from './names.ts';

/** One error kind that a question's answers are likely to show: the wrong answers, what to say and what to play. */
export type Slip = {
  /** Null where the answer is simply the other one. */
  readonly error: ErrorKind | null;
  /** As printed, each after the chord it is of: `Em: B`. */
  readonly answers: string;
  readonly finding: string;
  readonly say: string | null;
  readonly play: string | null;
};

/** The questions of one kind with their right answers, as printed, and what will be heard instead. */
export type SlipGroup = { readonly kind: Kind; readonly right: string; readonly slips: readonly Slip[] };

/** Most slips of a kind that are worth their room. */
export const MOST_OF_A_KIND = 3;

/** The questions by kind, in their order, each with its likely slips, so many of a kind at most. */
export function slipGroups(sheet: GuitarCrib, names: SheetNames, most: number): readonly SlipGroup[] {
  const questions = sheet.questions.filter((question) => !saysItself(question, sheet));
  const kinds = [...new Set(questions.map(({ kind }) => kind))];
  return kinds.map((kind) => {
    const { right, slips } = groupOf(
      kind,
      questions.filter((question) => question.kind === kind),
      names,
      isWayTold(sheet),
    );
    return {
      kind,
      right: kind === 'numeral' && sheet.keys.length > 0 ? numeralsText(sheet, names) : right,
      slips: slips.slice(0, most),
    };
  });
}

/** The numerals in every candidate key, each once: all of them are right. A chord that comes back over another bass is not asked again. */
function numeralsText({ chords, keys }: CribSheet, names: SheetNames): string {
  const asked = differentSlots(chords.map(readSymbol)).slice(0, MOST_NUMERALS);
  const texts = keys.map(({ numerals }) => asked.map((slot) => names.numeral(itemAt(numerals, slot))).join('–'));
  return listed(texts, countingWords.or);
}

/** Whether distances say up or down: with a bass off the root both are heard, the way of the bass and that of the roots. */
function isWayTold({ directionsKnown, chords }: GuitarCrib): boolean {
  return directionsKnown && chords.every((chord) => !chord.includes('/'));
}

/** Tapped, with the tempo for an answer as well: it is said once. */
const AT_THE_TEMPO: ReadonlySet<Kind> = new Set(['steadiness', 'drop-out', 'together']);

/** The bass of a chord over its root is its root, and a vamp without sevenths has none: neither is said twice. Nor is the tempo. */
function saysItself({ kind }: CribQuestion, { chords, questions }: CribSheet): boolean {
  if (AT_THE_TEMPO.has(kind)) return true;
  if (kind === 'bass') return chords.every((chord) => !chord.includes('/'));
  return kind === 'seventh' && questions.every((other) => other.kind !== 'seventh' || other.answer === 'none');
}

function groupOf(
  kind: Kind,
  questions: readonly CribQuestion[],
  names: SheetNames,
  withWay: boolean,
): { readonly right: string; readonly slips: readonly Slip[] } {
  const right = questions.map((question) => {
    const { answer } = question;
    return { question, text: answer === null ? cribWords.opinion : rightText(question, answer, names, withWay) };
  });
  const errors = [...new Set(questions.flatMap(({ wrong }) => wrong.map(({ error }) => error)))];
  const slips = errors.flatMap((error): readonly Slip[] => {
    const answers = questions.flatMap((question) =>
      question.wrong
        .filter((wrong) => wrong.error === error)
        .map((wrong) => ({ question, text: wrongText(kind, wrong, names, withWay) }))
        // Where no way is told, the wrong way reads as what is right.
        .filter(({ text }) => !right.some((each) => each.question === question && each.text === text)),
    );
    if (answers.length === 0) return [];
    const words = error === null ? undefined : errorKinds[error];
    const slip = {
      error,
      answers: answersText(answers, questions.length, names),
      finding: words?.finding ?? cribWords.otherAnswer,
      say: words?.say ?? null,
      play: words?.play ?? null,
    };
    return [slip];
  });
  // What shows nothing by itself is left out where something else does.
  const telling = slips.filter(({ error }) => error !== null);
  return { right: answersText(right, questions.length, names), slips: telling.length > 0 ? telling : slips };
}

/** The right answer, and what else may be counted. */
function rightText(
  { kind, also = [] }: CribQuestion,
  answer: NamedAnswer,
  names: SheetNames,
  withWay: boolean,
): string {
  const [usual = '', ...others] = [answer, ...also].map((each) => answerText(kind, each, names, withWay));
  return others.length === 0 ? usual : fill(cribWords.alsoCounted, { usual, others: listed(others, countingWords.or) });
}

/** Answers, each after what it is asked of; one that all the questions share stands once. */
function answersText(
  answers: readonly { readonly question: CribQuestion; readonly text: string }[],
  of: number,
  names: SheetNames,
): string {
  const texts = new Set(answers.map(({ text }) => text));
  const [first] = answers;
  if (first && of > 1 && answers.length === of && texts.size === 1) return first.text;
  return answers
    .map(({ question, text }) =>
      question.of === null ? text : fill(cribWords.ofChord, { chord: askedText(question, names), answer: text }),
    )
    .join(' · ');
}
