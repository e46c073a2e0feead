import { fill } from '../../server/protocol/words/fill.ts';
import { directionAnswers } from '../../server/protocol/words/asked/direction.ts';
import { distanceAnswers } from '../../server/protocol/words/asked/distance.ts';
import { lineNumber } from '../../shared-theory/distance-line.ts';
import { printDistance } from '../../shared-theory/printer.ts';

/** A place of the distance line, semitones from home, as it stands in a sentence: `distance ♭7, down`. */
export const distanceText = (semitones: number): string => distanceIn(semitones, 'text');

/** The same for a screen reader: `distance flat seven, down`. */
export const distanceAloud = (semitones: number): string => distanceIn(semitones, 'spoken');

function distanceIn(semitones: number, form: 'text' | 'spoken'): string {
  if (semitones === 0) return distanceAnswers.home;
  const number = printDistance(lineNumber(semitones))[form];
  return fill(distanceAnswers.distance, { number, way: wayOf(semitones) });
}

/** Which way a place lies from home, as a word. */
export const wayOf = (semitones: number): string => directionAnswers[semitones > 0 ? 'up' : 'down'];
