import { namesOf } from '../../shared-theory/namings/names-of.ts';
import { printChord, printDistance, printKey, printNote, printNumeral } from '../../shared-theory/printer.ts';
import type { Naming, Printed } from '../../shared-theory/printer.ts';

/** Names as a sheet prints them, from ASCII. */
export type SheetNames = {
  readonly note: (name: string) => string;
  readonly chord: (symbol: string) => string;
  /** In parts, to be set large and small. */
  readonly chordParts: (symbol: string) => Printed;
  readonly key: (name: string) => string;
  readonly numeral: (numeral: string) => string;
  readonly distance: (number: string) => string;
};

/** Names in one of the namings. */
export function sheetNames(naming: Naming = 'english'): SheetNames {
  const names = namesOf(naming);
  return {
    note: (name) => printNote(name, names).text,
    chord: (symbol) => printChord(symbol, names).text,
    chordParts: (symbol) => printChord(symbol, names),
    key: (name) => printKey(name, names).text,
    numeral: (numeral) => printNumeral(numeral).text,
    distance: (number) => printDistance(number).text,
  };
}
