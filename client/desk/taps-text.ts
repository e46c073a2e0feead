import { fill } from '../../server/protocol/words/fill.ts';
import { rhythmDeskWords } from '../../server/protocol/words/rhythm-desk-words.ts';
import { spreadWords } from '../../server/protocol/words/spread-words.ts';
import type { WireStudent, WireTaps } from '../../server/protocol/views.ts';
import { driftSentence } from '../shared/spreads/taps-sentences.ts';

const words = rhythmDeskWords.taps;

/** What a room tapped, line by line under its tempo: how many could be read, how far apart they lie, how even, whether it drifts. */
export function tapsLines({ read, of, between, unevenness, spread, drift }: WireTaps): readonly string[] {
  const uneven = middle(unevenness);
  return [
    of > 0 ? fill(words.read, { read, of }) : '',
    between === null || read < 2 ? '' : fill(words.between, { low: whole(between[0]), high: whole(between[1]) }),
    uneven === null ? '' : fill(words.uneven, { percent: whole(uneven) }),
    spread === null ? '' : fill(spreadWords.together.around, { n: whole(spread) }),
    drift === null ? '' : driftSentence(drift),
  ].filter(Boolean);
}

/** One hand's taps in the cells of the private table: tempo, unevenness, drift. */
export function tapCells({ tempo, unevenness, drift }: NonNullable<WireStudent['taps']>): readonly string[] {
  return [
    whole(tempo),
    fill(words.percent, { percent: whole(unevenness) }),
    drift === null ? words.unknown : fill(words.signed, { sign: signOf(drift), percent: whole(Math.abs(drift)) }),
  ];
}

/** Of what would be written as nought none. */
function signOf(value: number): string {
  return Math.round(value) === 0 ? '' : value > 0 ? '+' : '−';
}

const whole = (value: number): string => String(Math.round(value));

/** The middle one of sorted numbers; null of none. */
function middle(sorted: readonly number[]): number | null {
  return sorted[sorted.length >> 1] ?? null;
}
