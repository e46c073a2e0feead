import { hostWords } from '../../server/protocol/words/en.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import { spreadWords } from '../../server/protocol/words/spread-words.ts';
import type { WireSpread, WireTruth } from '../../server/protocol/views.ts';
import { EVEN } from '../../shared-theory/taps/even.ts';
import { CLOSE, isWithin, tempoError } from '../../shared-theory/taps/level.ts';
import { slotsMostHave } from '../shared/spreads/grid-hands.ts';
import { driftSentence } from '../shared/spreads/taps-sentences.ts';

/** How many heard it, of those whose hands were in, or how far the room as a whole did; null where no spread has been shown. */
export function heardSentence(spread: WireSpread | null, truth: WireTruth): string | null {
  if (!spread) return null;
  const words = hostWords.reveal;
  const of = spread.of - spread.silent;
  const right = [truth.key, ...(truth.also ?? [])];
  const { kind, taps } = spread;
  if (kind === 'tempo' && taps) {
    const at = (tempo: number): boolean => right.some((each) => isWithin(tempoError(tempo, Number(each)), CLOSE));
    return fill(words.heard, { n: taps.tempi.filter(at).length, of });
  }
  if (kind === 'steadiness' && taps)
    return fill(words.even, { n: taps.unevenness.filter((percent) => percent <= 100 * EVEN).length, of });
  if (kind === 'drop-out' && taps) return driftSentence(taps.drift, spreadWords.through);
  if (kind === 'accents' || kind === 'stroke-grid' || kind === 'roles') {
    // Hardly anybody has every slot: how far the room has come says more.
    return spread.counts.length === 0
      ? null
      : fill(words.slots, { n: slotsMostHave(spread, truth), of: truth.key.length });
  }
  const heard = spread.counts.filter(({ key }) => right.includes(key)).reduce((sum, { count }) => sum + count, 0);
  return fill(words.heard, { n: heard, of });
}
