import type { Names } from '../printer.ts';
import { isBFlat, withEnding } from './endings.ts';
import { withSign } from './signs.ts';

/** German, and with it Nordic and Central European: H is a semitone below C, B the flat of it. */
export const german: Names = (note) =>
  isBFlat(note) ? { letter: 'B', sign: '', spoken: 'B' } : withEnding(stemOf(note.letter), note.alteration);

/** As on charts of those countries that both habits must be able to read: B♭ and H, so that no bare B stands anywhere. */
export const mixed: Names = (note) => (isBFlat(note) ? withSign('B', 'B', -1) : german(note));

function stemOf(letter: string): string {
  return letter === 'B' ? 'H' : letter;
}
