import { readSymbol } from '../../shared-theory/chords.ts';
import { shapeUnderCapo } from '../../shared-theory/neck/capo.ts';

/** What the hand plays under a capo for a sounding chord, both in ASCII: F on capo 3 is D. RangeError for a capo off 0 to 9. */
export function shapeName(sounding: string, capo: number): string {
  return shapeUnderCapo(readSymbol(sounding), capo).shape;
}
