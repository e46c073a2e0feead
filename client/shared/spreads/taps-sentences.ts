import { fill } from '../../../server/protocol/words/fill.ts';
import { spreadWords } from '../../../server/protocol/words/spread-words.ts';
import type { WireTaps } from '../../../server/protocol/views.ts';

type DriftWords = { readonly [way in 'faster' | 'slower' | 'holds' | 'unknown']: string };

/** How a room's tempo went, in words. A drift within twice its standard error of none is none, and so is one that would be told as nought. */
export function driftSentence(drift: WireTaps['drift'], words: DriftWords = spreadWords.together): string {
  if (!drift) return words.unknown;
  const n = Math.round(Math.abs(drift.percent) * 10) / 10;
  if (n === 0 || Math.abs(drift.percent) < 2 * drift.error) return words.holds;
  return fill(drift.percent > 0 ? words.faster : words.slower, { n });
}

/** What a drawing of taps shows, for those who cannot see it: the room as a whole, no hand by itself. */
export function tapsAloud(kind: string, taps: WireTaps): readonly string[] {
  const words = spreadWords.aloud;
  const { read, of, tempo, between, unevenness, spread, drift, curve } = taps;
  if (read === 0 || tempo === null || between === null) return [spreadWords.unread];
  switch (kind) {
    case 'steadiness': {
      const uneven = Math.round(unevenness[unevenness.length >> 1] ?? 0);
      return [fill(words.steadiness, { read, of, uneven })];
    }
    case 'drop-out': {
      const last = curve?.at(-1)?.middle;
      const percent = Math.round(Math.abs(last ?? 0));
      const said = (last ?? 0) < 0 ? words.dropOutBehind : words.dropOut;
      return [driftSentence(drift, spreadWords.through), ...(last === undefined ? [] : [fill(said, { n: percent })])];
    }
    case 'together': {
      const around = spread === null ? [] : [fill(spreadWords.together.around, { n: Math.round(spread) })];
      return [...around, driftSentence(drift)];
    }
    default: {
      const [low, high] = between.map(Math.round);
      return [fill(words.tempo, { read, of, tempo: Math.round(tempo), low: low ?? 0, high: high ?? 0 })];
    }
  }
}
