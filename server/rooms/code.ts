/** No C, L, Q, V, X, Y, I, O: each looks like another letter or a figure, or is said in several ways. */
const CONSONANTS = 'BDFGHJKMNPRSTWZ';
const VOWELS = 'AEU';

/** Parts of words that no class should read from its wall, in the languages likely to stand in the room. */
const RUDE = [
  'BUT', 'DEB', 'FAG', 'FAK', 'FEK', 'FUK', 'FUG', 'FUT', 'GAS', 'GAZ', 'HUR', 'HUT', 'JEB', 'KAK', 'KAZ', 'KUM', 'KUR', 'KUS', 'KUT',
  'MAMAD', 'NAZ', 'NEG', 'NUT', 'PED', 'PEN', 'PUS', 'PUT', 'RAP', 'SAT', 'SEK', 'SUK', 'TET', 'TURD', 'WANK',
]; // prettier-ignore

/** Rejected words are drawn again; so many in a row mean that codes of this length run out. */
const TRIES = 64;

/**
 * A room code that can be said: consonants and vowels by turns, five letters, longer where five are taken.
 * `below(n)` gives a random integer from 0 to n - 1; `taken` says whether a room of that code exists.
 */
export function roomCode(below: (n: number) => number, taken: (code: string) => boolean): string {
  for (let length = 5; ; length += 2) {
    for (let tries = 0; tries < TRIES; tries += 1) {
      const code = Array.from({ length }, (_, index) => draw(index % 2 === 0 ? CONSONANTS : VOWELS, below)).join('');
      if (!RUDE.some((part) => code.includes(part)) && !taken(code)) return code;
    }
  }
}

function draw(letters: string, below: (n: number) => number): string {
  return letters.charAt(below(letters.length));
}
