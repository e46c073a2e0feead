/** Said on a student's phone once the right answer is shown: fetched behind the pads. */
export const revealWords = {
  right: 'Right.',
  part: 'Partly right.',
  wrong: 'Not this one.',
  unsure: 'Not sure is an honest answer.',
  absent: 'No answer from this phone.',
  aloud: 'This one was asked aloud.',
  struck: 'This one is struck: everybody has it.',
  /** Where the answer rests on an earlier one of the same student. */
  follows: 'Right, from your own earlier answer on.',
  youWrote: 'You wrote: {answer}.',
  /** Where an answer is right and another than the one that is drawn. */
  eitherWeight: 'Between light and heavy both are right.',
  eitherBar: 'The bars differ: yours is one of them.',
  /** Numbers a minute. */
  youTapped: 'You tapped about {own}; it was {right}.',
  youTappedAlone: 'You tapped about {own}.',
  /** Of what was tapped while the groove was silent. */
  youTappedThrough: 'In the silence you tapped about {own}; it was {right}.',
  /** Taps of the whole room are shown together. */
  together: 'Your taps are in the room’s: nobody is marked.',
  /** Beside a bass note that was not right, where nothing more may be said of it. */
  bassSay: 'Hum down until no note lies under yours.',
  rootShown: 'Here is the root.',
  bassShown: 'Here is the bass note.',
  gridShown: 'Here is how it went.',
  noKeyOwns: 'No key owns them all.',
  oneKeyOwns: 'One key owns them all.',
  keysOwn: '{Number} keys own them all.',
  noScaleOwns: 'No scale owns them all.',
  oneScaleOwns: 'One scale owns them all.',
  scalesOwn: '{Number} scales own them all.',
  opinion: 'An opinion: yours is counted, not marked.',
} as const;
