import { fill } from '../../server/protocol/words/fill.ts';
import { capital, countingWords, listed, numberWord } from '../../server/protocol/words/counting.ts';
import { rightWords } from '../../server/protocol/words/right-words.ts';
import type { WireTruth } from '../../server/protocol/views.ts';
import { lineNumber } from '../../shared-theory/distance-line.ts';
import { printDistance } from '../../shared-theory/printer.ts';
import { printKey } from './names.ts';
import { wayOf } from './answer-names.ts';
import { gridText } from './answer-grid.ts';
import { keyName } from './drawings/circle-layout.ts';
import { orderText } from './order-text.ts';
import { numeralsText, rightReadings } from './right-readings.ts';

/**
 * The right answer as a sentence, on phones and on the wall alike: `It lies at distance 4, up.` Of a quality or a root without
 * its letter; empty for kinds whose answer no sentence of its own tells. `said` prints numerals, with what more their chords have
 * where the chords are known.
 */
export function rightSentence(
  kind: string,
  { answer, also = [], key }: Omit<WireTruth, 'name'>,
  said: (numerals: readonly string[]) => string = numeralsText,
  grid?: string,
): string {
  const right = rightWords;
  switch (kind) {
    case 'tempo':
    case 'drop-out':
      // The key of taps is their tempo.
      return fill(right[kind], { tempos: listed([key, ...also], countingWords.or) });
    case 'steadiness':
      return right.steadiness;
    case 'bar-count':
      return fill(right['bar-count'], {
        numbers: listed(
          [key, ...also].map((count) => numberWord(Number(count))),
          countingWords.or,
        ),
      });
    case 'accents':
    case 'roles':
      return `${capital(gridText(kind, answer as readonly unknown[], grid))}.`;
    case 'stroke-grid':
      return fill(right.hand, { strokes: gridText(kind, answer as readonly unknown[], grid) });
    case 'opened':
      return fill(right.opened, { places: gridText(kind, answer as readonly unknown[], grid) });
    case 'count':
      return answer === 1 ? right.countOne : fill(right.count, { Number: capital(numberWord(Number(answer))) });
    case 'order':
      return fill(right.order, { letters: orderText(answer as readonly number[]) });
    case 'seventh':
      return right[key === 'none' ? 'seventhNone' : (key as 'seventh' | 'major-seventh')];
    case 'distance':
      return distanceSentence(Number(answer));
    case 'numeral': {
      const readings = rightReadings({ key, also }).map(said);
      const sentence = key.includes(' ') ? right.numeral : right.numeralOne;
      return fill(sentence, { readings: listed(readings, countingWords.or) });
    }
    case 'settler': {
      const keys = (answer as readonly string[]).map((id) => printKey(keyName(id)).text);
      return keys.length === 0 ? right.settlerNone : fill(right.settler, { keys: listed(keys) });
    }
    default:
      return (right as Readonly<Record<string, string>>)[key] ?? '';
  }
}

function distanceSentence(semitones: number): string {
  if (semitones === 0) return rightWords.home;
  const sentence = Math.abs(semitones) === 12 ? rightWords.octave : rightWords.distance;
  return fill(sentence, { number: printDistance(lineNumber(semitones)).text, way: wayOf(semitones) });
}
