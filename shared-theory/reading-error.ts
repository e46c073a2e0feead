/**
 * What can be wrong with typed chords, with what would be right; `{right}` stands for the thing to write.
 * Kept by name, so that another language can word the same faults.
 */
const SUGGESTIONS = {
  nothing: 'write chords such as {right}.',
  'lower-case-root': 'chord roots are capitals. Write {right}.',
  'german-h': 'H is called B here, and B flat is Bb. Write {right}.',
  'german-ending': 'sharps and flats are signs here, # and b. Write {right}.',
  'bare-b': 'B alone is B flat to some and H to others. Write {right}.',
  'syllable-name': 'chords are named by letters here. Write {right}.',
  'letter-name': 'chords are named Do, Re, Mi here. Write {right}.',
  'no-letter': 'a chord starts with one of the letters A to G, such as {right}.',
  'no-syllable': 'a chord starts with one of Do, Re, Mi, Fa, Sol, La and Si, such as {right}.',
  'no-chord': 'a loop has a chord in every bar. Leave that bar out, or hold the chord before with a dot.',
  'same-again': 'a chord that comes again is written again: {right}.',
  'beat-slash': 'a beat that holds the chord is written as a dot, between bar lines.',
  'too-many-accidentals': 'no root is written with such signs. Write {right}.',
  'not-ours': 'that chord is none that a class can be asked about here. The nearest is {right}.',
  'slash-bass': 'after a slash stands one note, the bass, as in {right}.',
  'unknown-suffix': 'what follows the root cannot be read. The nearest is {right}.',
  'bar-empty': 'a bar needs a chord, or a dot that holds the last one.',
  'bar-beats': 'a bar has one chord, or a chord or dot on each beat. Write {right}',
  'nothing-to-hold': 'a dot holds the chord before it, and there is none. Write a chord first.',
  'dot-outside-bar': 'dots stand between bar lines. Write such as {right}',
  'repeat-sign': 'the loop repeats by itself. Write the chords once, between plain bar lines.',
  'too-long': 'a loop has at most {right} chords.',
} as const satisfies Readonly<Record<string, string>>;

/** Names of the faults of typed chords. */
export type ReadingFault = keyof typeof SUGGESTIONS;

/**
 * Typed chords that cannot be read: where (index of the first character that cannot, from 0; the length where something is
 * missing), the word that holds it, and what would be right.
 */
export class ReadingError extends Error {
  override readonly name = 'ReadingError';
  readonly fault: ReadingFault;
  readonly place: number;
  readonly found: string;
  /** A sentence that goes on after the thing found. */
  readonly suggestion: string;
  /** The thing to write instead, where there is one. */
  readonly right: string;

  constructor(fault: ReadingFault, place: number, found: string, right = '') {
    const suggestion = SUGGESTIONS[fault].replace('{right}', right);
    super(found === '' ? suggestion : `“${found}”: ${suggestion}`);
    this.fault = fault;
    this.place = place;
    this.found = found;
    this.suggestion = suggestion;
    this.right = right;
  }

  /** The same fault, counted from the start of a longer text. */
  movedBy(places: number): ReadingError {
    return new ReadingError(this.fault, this.place + places, this.found, this.right);
  }
}
