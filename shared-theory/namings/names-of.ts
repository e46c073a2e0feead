import { english } from '../printer.ts';
import type { Names, Naming } from '../printer.ts';
import { dutch } from './dutch.ts';
import { fixedDo } from './fixed-do.ts';
import { german, mixed } from './german.ts';

const NAMES: Readonly<Record<Naming, Names>> = { english, german, mixed, dutch, 'fixed-do': fixedDo };

/** The names of a naming, at once. Brings all namings along: a page that has to load fast takes `lateNames`. */
export function namesOf(naming: Naming): Names {
  return NAMES[naming];
}
