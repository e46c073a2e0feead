import { english } from '../printer.ts';
import type { Names, Naming } from '../printer.ts';

/** The names of a naming, loaded when one other than English is asked for. */
export async function lateNames(naming: Naming): Promise<Names> {
  return naming === 'english' ? english : (await import('./names-of.ts')).namesOf(naming);
}
