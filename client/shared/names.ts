import { lateNames } from '../../shared-theory/namings/late-names.ts';
import {
  english,
  printChord as chordBy,
  printKey as keyBy,
  printNote as noteBy,
  type Names,
  type Naming,
  type Printed,
} from '../../shared-theory/printer.ts';

/** A page shows one room, and names notes, chords and keys as that room's class does: in English until it knows. */
let names: Names = english;

/** The page names so from now on; what is drawn already must be drawn anew. */
export function nameBy(given: Names): void {
  names = given;
}

/** The same where the names have to be fetched first. */
export async function nameLate(naming: Naming = 'english'): Promise<void> {
  nameBy(await lateNames(naming));
}

/** The printer's functions, in the naming of the page. */
export const printNote = (name: string): Printed => noteBy(name, names);
export const printChord = (symbol: string): Printed => chordBy(symbol, names);
export const printKey = (name: string): Printed => keyBy(name, names);
