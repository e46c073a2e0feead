import type { Addition, Chord, Quality } from '../chords.ts';
import { diatonicChart } from '../degrees.ts';
import { itemAt } from '../items.ts';
import { scaleNotes, type Key } from '../keys.ts';
import type { Loop } from './loops.ts';

const DEGREE = /^([1-7])(?:\/([1-7]))?$/;

/** The triad of a major key on a degree, over the bass on another where one is named: `5/7` is V over the seventh note. */
export function chordOnDegree(key: Key, text: string): Chord {
  const [, degree = '', bass] = DEGREE.exec(text) ?? [];
  if (degree === '') throw new RangeError(`Not a degree: ${JSON.stringify(text)}. Write 1 to 7, or such as 5/7.`);
  const { chord } = itemAt(diatonicChart(key), Number(degree) - 1);
  return bass === undefined || bass === degree ? chord : { ...chord, bass: itemAt(scaleNotes(key), Number(bass) - 1) };
}

/** A loop of a major key by degrees, such as `1 5/7 6 5`. */
export function loopOnDegrees(key: Key, text: string): Loop {
  return text.split(' ').map((degree) => chordOnDegree(key, degree));
}

/** What a chord of a loop is in place of a bare triad. */
export type Dress = { readonly quality?: Quality; readonly addition?: Addition };

/** A chord in that dress. */
export function dressed({ root, quality }: Chord, dress: Dress): Chord {
  return { root, quality, ...dress };
}

/** Every way to take one of some choices for each place. */
export function everyChoice<T>(choices: readonly (readonly T[])[]): readonly (readonly T[])[] {
  return choices.reduce<readonly (readonly T[])[]>(
    (some, own) => some.flatMap((chosen) => own.map((one) => [...chosen, one])),
    [[]],
  );
}
