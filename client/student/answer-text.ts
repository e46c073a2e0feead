import { rightWords } from '../../server/protocol/words/right-words.ts';
import { capital, numberWord } from '../../server/protocol/words/counting.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import { revealWords } from '../../server/protocol/words/reveal.ts';
import type { WireAsking, WireTruth } from '../../server/protocol/views.ts';
import { printChord, printNote } from '../shared/names.ts';
import { qualitySuffix, type Quality } from '../../shared-theory/chords.ts';
import type { AskedSeventh } from '../../shared-theory/questions/question.ts';
import { rightSentence } from '../shared/right-sentence.ts';
import { seventhSymbols } from '../shared/seventh-symbol.ts';

/** The right answer as a sentence. */
export function truthSentence(asking: WireAsking, truth: WireTruth): string {
  const { kind, letter, options = [], grid } = asking;
  switch (kind) {
    case 'quality':
      if (letter) return chordSentence(letter + qualitySuffix(truth.answer as Quality));
      break;
    case 'seventh': {
      const symbols = seventhSymbols(letter);
      if (symbols) return chordSentence(symbols[truth.answer as AskedSeventh]);
      break;
    }
    case 'root':
    case 'bass':
      if (truth.name) return fill(rightWords[kind], { note: printNote(truth.name).text });
      return kind === 'root' ? revealWords.rootShown : revealWords.bassShown;
    case 'keys':
      return keysSentence(options[0] === 'modes', truth.answer as readonly string[]);
  }
  const sentence = rightSentence(kind, truth, undefined, grid);
  // A long one leaves no room for the grid, which shows it all.
  return grid === undefined ? sentence : shortOf(sentence) || revealWords.gridShown;
}

/** Letters in three lines of a small phone. */
const LONG = 60;

/** A text that leaves room for the pad; empty where it is too long. */
export const shortOf = (text: string): string => (text.length > LONG ? '' : text);

const chordSentence = (symbol: string): string => fill(rightWords.chord, { chord: printChord(symbol).text });

function keysSentence(scales: boolean, answer: readonly string[]): string {
  const { noKeyOwns, oneKeyOwns, keysOwn, noScaleOwns, oneScaleOwns, scalesOwn } = revealWords;
  const [none, one, some] = scales ? [noScaleOwns, oneScaleOwns, scalesOwn] : [noKeyOwns, oneKeyOwns, keysOwn];
  // A home beside the scales is no scale.
  const count = answer.filter((id) => !id.startsWith('h')).length;
  return count === 0 ? none : count === 1 ? one : fill(some, { Number: capital(numberWord(count)) });
}
