import type { NamedAnswer } from '../../shared-theory/crib/answer-names.ts';
import type { CribQuestion, CribWrong } from '../../shared-theory/crib/sheet.ts';
import { TAPPED_KINDS, type Kind } from '../../shared-theory/questions/question.ts';
import { parseQuestionId } from '../../shared-theory/questions/round-questions.ts';
import { listed, numberWord } from '../protocol/words/counting.ts';
import { cribWords } from '../protocol/words/crib-words.ts';
import { questionWords } from '../protocol/words/en.ts';
import { fill } from '../protocol/words/fill.ts';
import { gridText } from '../../shared-theory/grid-text.ts';
import { gridWords } from '../protocol/words/grid-words.ts';
import { grooveAnswers } from '../protocol/words/groove-answers.ts';
import type { SheetNames } from './names.ts';

/** An answer in a few words, as it stands on the sheet: `up`, `minor`, `G`, `D major and G major`, `distance 4, up`, `vi–V`. */
export function answerText(kind: Kind, answer: NamedAnswer, names: SheetNames, withWay = true): string {
  if (typeof answer === 'object' && 'number' in answer) return distanceText(answer, names, withWay);
  if (typeof answer === 'object' && 'drawn' in answer)
    return gridText(answer.kind, answer.drawn, gridWords, answer.grid);
  if (TAPPED_KINDS.has(kind)) return fill(grooveAnswers.tempo, { tempo: String(answer) });
  if (typeof answer === 'number') return numberWord(answer);
  if (typeof answer === 'string') return wordText(kind, answer, names);
  if (kind === 'numeral') return answer.map((numeral) => names.numeral(String(numeral))).join('–');
  if (kind === 'order') return orderText(answer.map(Number));
  if (answer.length === 0) return questionWords.options[kind === 'settler' ? 'none-left' : 'no-key'];
  return listed(answer.map((name) => keyOrHome(String(name), names)));
}

/** What a question asks about, as it is named: the settler's note or chord, a chord of the loop; empty for the whole loop. */
export function askedText({ of, sung }: Pick<CribQuestion, 'of' | 'sung'>, names: SheetNames): string {
  if (of === null) return '';
  return sung ? fill(cribWords.sungNote, { note: names.note(of) }) : names.chord(of);
}

/** A wrong answer, with the other answer that makes it one: `G as major`. */
export function wrongText(kind: Kind, { answer, with: others = {} }: CribWrong, names: SheetNames, withWay: boolean) {
  const said = answerText(kind, answer, names, withWay);
  const [other] = Object.entries(others);
  if (other === undefined) return said;
  const [question, named] = other;
  const quality = answerText(parseQuestionId(question)?.kind ?? kind, named, names);
  return fill(cribWords.as, { answer: said, quality });
}

function distanceText(
  { number, way }: { readonly number: string; readonly way: 'up' | 'down' | 'same' },
  names: SheetNames,
  withWay: boolean,
): string {
  const { options } = questionWords;
  if (way === 'same') return options.home;
  const printed = names.distance(number);
  return withWay
    ? fill(options.distance, { number: printed, way: options[way] })
    : fill(cribWords.distanceAlone, { number: printed });
}

function wordText(kind: Kind, answer: string, names: SheetNames): string {
  if (kind === 'root' || kind === 'bass') return names.note(answer);
  if (kind === 'seventh') return (cribWords.sevenths as Readonly<Record<string, string>>)[answer] ?? answer;
  return (questionWords.options as Readonly<Record<string, string>>)[answer] ?? answer;
}

function orderText(order: readonly number[]): string {
  const { letters } = questionWords.order;
  return fill(cribWords.orderLetters, { letters: order.map((chord) => letters[chord] ?? '').join(' ') });
}

/** A key by its name; a home among the keys by its chord. */
function keyOrHome(name: string, names: SheetNames): string {
  return name.includes(' ') ? names.key(name) : fill(cribWords.homeOn, { chord: names.chord(name) });
}
