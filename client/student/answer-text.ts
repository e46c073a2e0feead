import { questionWords } from '../../server/protocol/words/question-words.ts';
import { rightWords } from '../../server/protocol/words/right-words.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import { numberWord } from '../../server/protocol/words/questions.ts';
import { studentWords } from '../../server/protocol/words/student.ts';
import type { WireAsking, WireTruth } from '../../server/protocol/views.ts';
import { printChord, printKey, printNote } from '../../shared-theory/printer.ts';
import { qualitySuffix, type Quality } from '../../shared-theory/chords.ts';
import { NOT_SURE, type NeckPlace } from '../../shared-theory/questions/question.ts';
import { keyName } from '../shared/drawings/circle-layout.ts';

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
      return keysText(answer as readonly string[]);
    default:
      return (options as Readonly<Record<string, string>>)[String(answer)] ?? String(answer);
  }
}

/** The right answer as a sentence. */
export function truthSentence(asking: WireAsking, truth: WireTruth): string {
  const right = rightWords;
  switch (asking.kind) {
    case 'quality':
      if (!asking.letter) return right[truth.answer as Quality];
      return fill(right.chord, { chord: printChord(asking.letter + qualitySuffix(truth.answer as Quality)).text });
    case 'root':
      return truth.name ? fill(right.root, { note: printNote(truth.name).text }) : studentWords.rootShown;
    case 'keys': {
      const { length } = truth.answer as readonly string[];
      if (length === 0) return studentWords.noKeyOwns;
      if (length === 1) return studentWords.oneKeyOwns;
      const word = numberWord(length);
      return fill(studentWords.keysOwn, { Number: word.charAt(0).toUpperCase() + word.slice(1) });
    }
    default:
      return (right as Readonly<Record<string, string>>)[String(truth.answer)] ?? '';
  }
}

/** Names of keys in a row: `G major, E minor`. */
function keysText(ids: readonly string[]): string {
  return ids.length === 0 ? questionWords.options.none : ids.map((id) => printKey(keyName(id)).text).join(', ');
}
