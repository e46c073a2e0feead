/** A source of chance: numbers from 0 up to, never reaching, 1. Equal seeds give equal numbers. */
export type Random = () => number;

/** Words of state of xoshiro128**; not all zero. */
type State = readonly [number, number, number, number];

function rotate(word: number, bits: number): number {
  return (word << bits) | (word >>> (32 - bits));
}

/** xoshiro128** 1.1 of Blackman and Vigna, "Scrambled linear pseudorandom number generators" (2021): 32-bit words. */
export function xoshiro128(state: State): () => number {
  let [a, b, c, d] = state;
  return () => {
    const word = Math.imul(rotate(Math.imul(b, 5), 7), 9);
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotate(d, 11);
    return word >>> 0;
  };
}

/** The 32-bit finalizer of MurmurHash3 (Appleby): near seeds give states far apart. */
function mix(word: number): number {
  let mixed = word ^ (word >>> 16);
  mixed = Math.imul(mixed, 0x85ebca6b);
  mixed ^= mixed >>> 13;
  mixed = Math.imul(mixed, 0xc2b2ae35);
  return (mixed ^ (mixed >>> 16)) >>> 0;
}

/**
 * Chance from a seed (a whole number, taken modulo 2^53). `stream` names an independent series of the same seed, so that
 * one choice never hints at another. Throws `RangeError` for a seed that is not a whole number.
 */
export function seededRandom(seed: number, stream = ''): Random {
  if (!Number.isSafeInteger(seed)) throw new RangeError(`A seed is a whole number, not ${seed}.`);
  let word = mix((seed >>> 0) ^ 0x9e3779b9) ^ mix(Math.floor(seed / 2 ** 32) | 0);
  for (const letter of stream) word = mix(word ^ (letter.codePointAt(0) ?? 0)) + 0x9e3779b9;
  const next = () => mix((word = (word + 0x9e3779b9) | 0));
  const words = xoshiro128([next(), next(), next(), next() | 1]);
  return () => words() / 2 ** 32;
}

/** One of the items, all equally likely. Throws `RangeError` on an empty list. */
export function pickOne<T>(random: Random, items: readonly T[]): T {
  const item = items[Math.floor(random() * items.length)];
  if (item === undefined) throw new RangeError('Nothing to pick from.');
  return item;
}
