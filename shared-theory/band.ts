import type { Performance } from './perform.ts';
import type { VoicedVamp } from './vamps.ts';
import { bassLine } from './band/bass-line.ts';
import { kitPart } from './band/kit-part.ts';

/** Who plays along with the guitar. */
export type Band = { readonly kit: boolean; readonly bass: boolean };

/**
 * A vamp's performance with the parts of the band that are wanted, made from its groove: what the guitar imitates on the kit, roots under
 * the chords on the bass. Parts follow every loop of the performance, with the small differences of its hand. The guitar stays as it is.
 */
export function withBand(vamp: VoicedVamp, performance: Performance, { kit, bass }: Band): Performance {
  return {
    ...performance,
    ...(kit ? { kit: kitPart(vamp, performance) } : {}),
    ...(bass ? { bass: bassLine(vamp, performance) } : {}),
  };
}
