/** Said once the right answer is shown. Apart from the questions: phones need it only then. */
export const rightWords = {
  up: 'The bass went up.',
  down: 'The bass went down.',
  same: 'The bass stayed.',
  major: 'It was major.',
  minor: 'It was minor.',
  power: 'It was a power chord: no third.',
  'suspended-fourth': 'It was suspended: a fourth, no third.',
  'suspended-second': 'It was suspended: a second, no third.',
  diminished: 'It was diminished.',
  augmented: 'It was augmented.',
  /** Once the letter may stand: `It was E minor.` */
  chord: 'It was {chord}.',
  root: 'The root is {note}.',
  keysNoneMajors: 'No major key owns {chords}.',
  keysNoneRelatives: 'No key on the circle owns {chords}.',
  keysOne: 'One key owns {chords}.',
  keysSome: '{Number} keys own {chords}.',
  'all-downs': 'All downs.',
  'down-up': 'Down and up by turns.',
} as const;
