import type { Ask } from '../question.ts';

/** No pad has more bars: of a longer loop the first four different chords are asked. */
export const MOST_NUMERALS = 4;

/**
 * A degree in capitals or small, with a flat or sharp before it and a sign after it: `bVII`, `viio`, `III+`. What more the chord
 * has may stand behind: `V7`, `viio7`, `Imaj7`.
 */
const NUMERAL = /^([b#]?(?:I|II|III|IV|V|VI|VII|i|ii|iii|iv|v|vi|vii)[o+]?)(?:7|maj7|add6|add9|sus2|sus4|5)?$/;
/** The small degree of a diminished triad with a minor seventh, which no sign tells. */
const HALF_DIMINISHED = /^([b#]?(?:i|ii|iii|iv|v|vi|vii))m7b5$/;

/** A numeral as it is marked, without what more its chord has; null where it is none. */
function withoutAdditions(value: unknown): string | null {
  if (typeof value !== 'string') return null;
  const half = HALF_DIMINISHED.exec(value)?.[1];
  return half === undefined ? (NUMERAL.exec(value)?.[1] ?? null) : `${half}o`;
}

/** Numerals of the different chords in order of their first sounding; sevenths and the like behind them are not marked. */
export const numeralAsk: Ask<'numeral'> = {
  kind: 'numeral',
  targets: (slots) => (slots > 0 ? [0] : []),
  ask: (_target, _settings, { loop }) => ({ kind: 'numeral', target: 0, ...(loop === undefined ? {} : { loop }) }),
  read: (value) => {
    if (!Array.isArray(value) || value.length === 0 || value.length > MOST_NUMERALS) return null;
    const numerals = value.map(withoutAdditions).filter((numeral) => numeral !== null);
    return numerals.length === value.length ? numerals : null;
  },
  key: (answer) => answer.join(' '),
};
