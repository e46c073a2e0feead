import { fill } from '../../server/protocol/words/fill.ts';
import { questionWords } from '../../server/protocol/words/question-words.ts';
import { lineNumber } from '../../shared-theory/distance-line.ts';
import { printDistance, printNumeral } from '../../shared-theory/printer.ts';

/** A place of the distance line, semitones from home, as it stands in a sentence: `distance ♭7, down`. */
export const distanceText = (semitones: number): string => distanceIn(semitones, 'text');

/** The same for a screen reader: `distance flat seven, down`. */
export const distanceSpoken = (semitones: number): string => distanceIn(semitones, 'spoken');

function distanceIn(semitones: number, form: 'text' | 'spoken'): string {
  const { options } = questionWords;
  if (semitones === 0) return options.home;
  const number = printDistance(lineNumber(semitones))[form];
  return fill(options.distance, { number, way: wayOf(semitones) });
}

/** Which way a place lies from home, as a word. */
export const wayOf = (semitones: number): string => questionWords.options[semitones > 0 ? 'up' : 'down'];

/** Numerals in a row, in ASCII, as printed: `vi – V`. */
export const numeralsText = (numerals: readonly string[]): string =>
  numerals.map((numeral) => printNumeral(numeral).text).join(' – ');
