/** Answers about the groove in a few words, as they stand inside a sentence. */
export const grooveAnswers = {
  /** Of taps: they say a tempo and no more. */
  tempo: 'about {tempo} a minute',
  /** What is right where no tempo is. */
  evenTaps: 'even taps, at any tempo',
  /** On the beat grid: what stands where, what stands everywhere, and between two of them. */
  on: '{choice} on {places}',
  all: '{choice} all the way',
  join: '; ',
  strokes: { down: 'D', up: 'U', silent: '·' },
  numbers: 'the numbers',
  ands: 'the ands',
  /** Between two numbers: `2-and`, `3-e`. */
  within: '{beat}-{part}',
  ofBar: '{places} of bar {bar}',
  ofEachBar: '{places} of each bar',
  /** A list of places ends in "and" already: another would run the two bars into one. */
  nextBar: ', then ',
} as const;
