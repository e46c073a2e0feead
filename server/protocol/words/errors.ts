import { chordErrors } from './chord-errors.ts';
import type { ErrorWords } from './error-words.ts';
import { rhythmErrors } from './rhythm-errors.ts';

/** What a class mishears, by error kind. */
export const errorKinds: Readonly<Record<string, ErrorWords>> = { ...chordErrors, ...rhythmErrors };

/** What a student did over several items, by habit kind. */
export const habitKinds: Readonly<Record<string, ErrorWords>> = {
  'swaps-up-and-down': {
    finding: 'Up and down change places, nearly every time.',
    say: 'Up is higher in sound, wherever the hand goes.',
    play: 'Slide one note up the neck, then the loop.',
  },
  'leans-to-one-quality': {
    finding: 'Nearly every chord gets the same quality.',
    say: 'One fret makes the difference. Major, minor, once more.',
    play: 'Major and minor by turns on one root.',
  },
  'carries-the-first-quality': {
    finding: 'The next chord is given the first one’s quality, again and again.',
    say: 'A new chord, a new question.',
    play: 'Loops that change from minor to major, and back.',
  },
  'always-the-home-key': {
    finding: 'The first chord’s own key is named every time.',
    say: 'Where would you stop? That chord names the key.',
    play: 'A loop of six and five that ends on its one.',
  },
  'starts-at-zero': {
    finding: 'The counting starts at nought, on more than one distance.',
    say: 'Home is one. Count it aloud.',
    play: 'The two roots alone, with the scale counted between them.',
  },
};

/** What is said beside a mark that is no error, by note kind. */
export const markNotes: Readonly<Record<string, string>> = {
  'other-minor-frame': 'Counted from the relative minor: right as well.',
  'counted-from-a-modal-home': 'Counted from another chord as home: right as well.',
  'right-in-another-key': 'Right in another key that owns these chords.',
  'follows-own-answer': 'It follows from your earlier answer: nothing is lost twice.',
  'names-the-raised-seventh-minor': 'Right with its seventh raised, which no key signature shows.',
  'other-lawful-count': 'Counted in other steps, which fit this groove as well: right.',
  'also-right': 'Your teacher lets this stand.',
};
