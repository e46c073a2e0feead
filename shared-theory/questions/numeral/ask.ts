import type { Ask } from '../question.ts';

/** No pad has more bars: of a longer loop the first four different chords are asked. */
export const MOST_NUMERALS = 4;

/** A degree in capitals or small, with a flat or sharp before it and a sign after it: `bVII`, `viio`, `III+`. */
const NUMERAL = /^[b#]?(?:I|II|III|IV|V|VI|VII|i|ii|iii|iv|v|vi|vii)[o+]?$/;

/** Numerals of the different chords in order of their first sounding. */
export const numeralAsk: Ask<'numeral'> = {
  kind: 'numeral',
  targets: (slots) => (slots > 0 ? [0] : []),
  ask: (_target, _settings, { loop }) => ({ kind: 'numeral', target: 0, ...(loop === undefined ? {} : { loop }) }),
  read: (value) => {
    if (!Array.isArray(value) || value.length === 0 || value.length > MOST_NUMERALS) return null;
    const numerals = value.filter((each): each is string => typeof each === 'string' && NUMERAL.test(each));
    return numerals.length === value.length ? numerals : null;
  },
  key: (answer) => answer.join(' '),
};
