import type { Quality } from '../../chords.ts';
import type { Distance } from '../../distance-line.ts';
import { itemAt } from '../../items.ts';

/** A numeral taken apart: `bVII`, `viio`, `III+`. */
export type Numeral = {
  readonly sign: '' | 'b' | '#';
  /** In capitals. */
  readonly degree: string;
  readonly small: boolean;
  readonly suffix: '' | 'o' | '+';
};

const PARTS = /^([b#]?)(VII|VI|V|IV|III|II|I|vii|vi|v|iv|iii|ii|i)([o+]?)$/;
const DEGREES = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'] as const;

/** Takes a numeral apart. RangeError where it is none. */
export function readNumeral(text: string): Numeral {
  const [, sign = '', degree = '', suffix = ''] = PARTS.exec(text) ?? [];
  if (degree === '')
    throw new RangeError(`Not a numeral: ${JSON.stringify(text)}. Write such as IV, vi, bVII or viio.`);
  return {
    sign: sign as Numeral['sign'],
    degree: degree.toUpperCase(),
    small: degree !== degree.toUpperCase(),
    suffix: suffix as Numeral['suffix'],
  };
}

/** Takes the numeral of a chord apart whatever more the chord has: `V7`, `viim7b5`, `Isus4`. */
export function readChordNumeral(text: string): Numeral {
  return readNumeral(text.replace(/(?:m7b5|maj7|7|add[69]|sus[24]|5)$/, ''));
}

/** Writes a numeral. */
export function writeNumeral({ sign, degree, small, suffix }: Numeral): string {
  return sign + (small ? degree.toLowerCase() : degree) + suffix;
}

/** How the case and the sign after it say a quality; two ways where no third sounds. */
const SAID: Readonly<Record<Quality, readonly Pick<Numeral, 'small' | 'suffix'>[]>> = {
  major: [{ small: false, suffix: '' }],
  minor: [{ small: true, suffix: '' }],
  diminished: [{ small: true, suffix: 'o' }],
  augmented: [{ small: false, suffix: '+' }],
  power: [
    { small: false, suffix: '' },
    { small: true, suffix: '' },
  ],
  'suspended-fourth': [
    { small: false, suffix: '' },
    { small: true, suffix: '' },
  ],
  'suspended-second': [
    { small: false, suffix: '' },
    { small: true, suffix: '' },
  ],
};

/** Whether a numeral says a quality: capital for major, small for minor, with its sign after it; either where no third sounds. */
export function says({ small, suffix }: Numeral, quality: Quality): boolean {
  return SAID[quality].some((way) => way.small === small && way.suffix === suffix);
}

/** Every way to write a quality on a degree, the one in the case of `small` first. */
export function waysToSay(place: Pick<Numeral, 'sign' | 'degree' | 'small'>, quality: Quality): readonly Numeral[] {
  const { sign, degree } = place;
  const ways = SAID[quality].map((way): Numeral => ({ sign, degree, ...way }));
  return ways.toSorted((one, other) => Number(one.small !== place.small) - Number(other.small !== place.small));
}

/** Sign and degree, in capitals, of a distance number: `bVII` for b7. */
export function degreeOfDistance(distance: Distance): Pick<Numeral, 'sign' | 'degree'> {
  const sign = distance.startsWith('b') ? 'b' : distance.startsWith('#') ? '#' : '';
  return { sign, degree: itemAt(DEGREES, Number(distance.at(-1)) - 1) };
}
