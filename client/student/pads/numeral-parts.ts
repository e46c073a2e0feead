/** How a numeral is written on the pad: a degree, what kind of chord stands on it, and whether it is lowered or raised. */
export type NumeralParts = { readonly sign: NumeralSign; readonly degree: number; readonly form: NumeralForm };
export type NumeralSign = '' | 'b' | '#';
export type NumeralForm = 'major' | 'minor' | 'diminished' | 'augmented';

/** Degrees in capitals, first to seventh. */
export const DEGREES = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'] as const;

const SUFFIXES: Readonly<Record<NumeralForm, string>> = { major: '', minor: '', diminished: 'o', augmented: '+' };

/** The pad's signs before a degree, in order. */
export const SIGNS = [
  { sign: 'b', print: '♭', name: 'flat' },
  { sign: '#', print: '♯', name: 'sharp' },
] as const;

/** The pad's forms of a degree, in order. */
export const FORMS: readonly NumeralForm[] = ['major', 'minor', 'diminished', 'augmented'];

/** A numeral from its parts, in ASCII: `bVII`, `#ivo`, `III+`. `degree` 0 to 6. */
export function numeralOf({ sign, degree, form }: NumeralParts): string {
  const capitals = DEGREES[degree] ?? '';
  const small = form === 'minor' || form === 'diminished';
  return `${sign}${small ? capitals.toLowerCase() : capitals}${SUFFIXES[form]}`;
}

/** The parts of a numeral; null of an empty bar, or of one that this pad does not write. */
export function partsOf(numeral: string): NumeralParts | null {
  const found = /^([b#]?)([iv]+|[IV]+)([o+]?)$/.exec(numeral);
  const [, sign, roman = '', suffix] = found ?? [];
  const degree = DEGREES.findIndex((capitals) => capitals === roman.toUpperCase());
  if (degree < 0) return null;
  const small = roman !== roman.toUpperCase();
  const form = suffix === 'o' ? 'diminished' : suffix === '+' ? 'augmented' : small ? 'minor' : 'major';
  return { sign: sign as NumeralSign, degree, form };
}

/** Bars with one changed; empty bars at the end are dropped, those before a filled one kept as `''`. null where all are empty. */
export function withBar(bars: readonly string[], at: number, numeral: string): readonly string[] | null {
  const next = Array.from({ length: Math.max(bars.length, at + 1) }, (_, bar) =>
    bar === at ? numeral : (bars[bar] ?? ''),
  );
  while (next[next.length - 1] === '') next.pop();
  return next.length > 0 ? next : null;
}

/** The next empty bar of so many after one, or before it where there is none after; null where all are written in. */
export function nextEmpty(bars: readonly string[], after: number, count: number): number | null {
  const order = Array.from({ length: count - 1 }, (_, step) => (after + 1 + step) % count);
  return order.find((bar) => !bars[bar]) ?? null;
}
