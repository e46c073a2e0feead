import { questionWords } from '../../server/protocol/words/question-words.ts';
import { rightWords } from '../../server/protocol/words/right-words.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import { capital, numberWord } from '../../server/protocol/words/questions.ts';
import { revealWords } from '../../server/protocol/words/reveal.ts';
import type { WireAsking, WireTruth } from '../../server/protocol/views.ts';
import { printChord, printKey, printNote } from '../../shared-theory/printer.ts';
import { qualitySuffix, type Quality } from '../../shared-theory/chords.ts';
import { NOT_SURE, type NeckPlace } from '../../shared-theory/questions/question.ts';
import { distanceText, numeralsText } from '../shared/answer-names.ts';
import { keyName } from '../shared/drawings/circle-layout.ts';
import { rightSentence } from '../shared/right-sentence.ts';

/** An answer in words, as in "You wrote: up." */
export function answerText(asking: WireAsking, answer: unknown): string {
  const { options } = questionWords;
  if (answer === NOT_SURE) return options['not-sure'];
  switch (asking.kind) {
    case 'quality':
      if (asking.letter) return printChord(asking.letter + qualitySuffix(answer as Quality)).text;
      return options[answer as Quality];
    case 'root': {
      const place = answer as NeckPlace;
      return fill(place.fret === 0 ? options.neckOpen : options.neckFret, place);
    }
    case 'keys':
    case 'settler':
      return keysText(asking.kind, answer as readonly string[]);
    case 'count':
      return numberWord(answer as number);
    case 'distance':
      return distanceText(answer as number);
    case 'numeral':
      return numeralsText(answer as readonly string[]);
    default:
      return (options as Readonly<Record<string, string>>)[String(answer)] ?? String(answer);
  }
}

/** The right answer as a sentence. */
export function truthSentence(asking: WireAsking, truth: WireTruth): string {
  const right = rightWords;
  switch (asking.kind) {
    case 'quality':
      if (!asking.letter) break;
      return fill(right.chord, { chord: printChord(asking.letter + qualitySuffix(truth.answer as Quality)).text });
    case 'root':
      return truth.name ? fill(right.root, { note: printNote(truth.name).text }) : revealWords.rootShown;
    case 'keys': {
      const { length } = truth.answer as readonly string[];
      if (length === 0) return revealWords.noKeyOwns;
      if (length === 1) return revealWords.oneKeyOwns;
      const word = numberWord(length);
      return fill(revealWords.keysOwn, { Number: capital(word) });
    }
  }
  return rightSentence(asking.kind, truth);
}

/** Names of keys in a row: `G major, E minor`. */
function keysText(kind: string, ids: readonly string[]): string {
  if (ids.length === 0) return questionWords.options[kind === 'settler' ? 'none-left' : 'none'];
  return ids.map((id) => printKey(keyName(id)).text).join(', ');
}
