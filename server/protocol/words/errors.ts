/** What a class mishears, by error kind: the finding, a sentence to say, a thing to play. */
export const errorKinds: Readonly<Record<string, { finding: string; say: string; play: string }>> = {
  'follows-the-top-note': {
    finding: 'The top note is followed, not the bass.',
    say: 'Hum the lowest note you hear, not the loveliest.',
    play: 'The bass alone, then all the strings again.',
  },
  'says-stays': {
    finding: 'A bass that moves is heard as staying.',
    say: 'Lay a hand on the guitar and feel the floor move.',
    play: 'The bass alone, slower. If most say it stayed, check the speaker before the ears.',
  },
  'says-moves': {
    finding: 'A bass that stays is heard as moving.',
    say: 'The roof moved. Did the floor?',
    play: 'The bass alone across the change, then all the strings.',
  },
  'slow-or-low-is-minor': {
    finding: 'Slow or low is taken for minor.',
    say: 'Slow is not sad. Sing the third.',
    play: 'Hold this chord and go faster, then come back.',
  },
  'fast-or-bright-is-major': {
    finding: 'Fast or bright is taken for major.',
    say: 'Quick feet can carry a dark chord. Sing the third.',
    play: 'Hold this chord and go slower, then come back.',
  },
  'gives-a-mood-to-a-power-chord': {
    finding: 'A power chord is given a mood.',
    say: 'Where no third sounds, there is no mood to hear.',
    play: 'One root three ways: power chord, major, minor.',
  },
  'gives-a-mood-to-a-suspended-chord': {
    finding: 'A suspended chord is given a mood.',
    say: 'It still hangs in the air. Where does it want to land?',
    play: 'The suspended chord, then let it fall to major; again, to minor.',
  },
  'hears-diminished-as-minor': {
    finding: 'Diminished is taken for minor.',
    say: 'The third is minor, but check the fifth: it has sunk.',
    play: 'Minor, then the same chord with its fifth one fret lower.',
  },
  'lumps-diminished-and-augmented': {
    finding: 'Diminished and augmented change places.',
    say: 'Squeezed or stretched? Sing up to the fifth.',
    play: 'Both on one root, slowly, note by note.',
  },
  'carries-the-first-quality': {
    finding: 'The first chord’s quality is carried over.',
    say: 'A new chord gets a new answer.',
    play: 'Hold the first chord, hold this one, and sing the third of each.',
  },
  'hears-the-fifth': {
    finding: 'The fifth is taken for the root.',
    say: 'Which of the two could you stop on?',
    play: 'Hold the chord; root and fifth by turns, ending on the root.',
  },
  'hears-the-fourth-above': {
    finding: 'The fourth above is taken for the root.',
    say: 'That note is the next house. Come back to this floor.',
    play: 'Hold the chord; root, fourth above, root.',
  },
  'hears-the-third': {
    finding: 'The third is taken for the root.',
    say: 'That note gives the colour. Go lower.',
    play: 'Hold the chord and pick it string by string from the bass.',
  },
  'one-fret-off': {
    finding: 'The mark is one fret beside the root.',
    say: 'Play your note with the chord. Do they rub?',
    play: 'Hold the chord while everyone compares on the sixth string.',
  },
  'names-the-top-note': {
    finding: 'The top note is taken for the root.',
    say: 'You found the roof. Now find the floor.',
    play: 'The bass alone, then all the strings again.',
  },
  'relative-minors-for-majors': {
    finding: 'Relative minors stand where majors were asked.',
    say: 'The same notes. Now give each its major name.',
    play: 'Nothing to play: say each minor with its relative major.',
  },
  'names-one-of-the-pair': {
    finding: 'Half of a relative pair is left out.',
    say: 'That key has a twin with the same notes. Name both.',
    play: 'The loop, stopping on the major home, then on the minor one.',
  },
  'finds-no-owner': {
    finding: 'Keys that own these chords are passed over.',
    say: 'Write the keys of each chord in a row. Which stand in every row?',
    play: 'The chords of one owner from its home up, then the loop.',
  },
  'stops-at-one-key': {
    finding: 'The search stops at one key.',
    say: 'That one owns them. Does a neighbour own them too?',
    play: 'The loop with a chord that settles it one way, then the other.',
  },
  'leaves-an-owner-out': {
    finding: 'Not every owner is named.',
    say: 'Owners stand side by side. Look one step further.',
    play: 'The loop with a chord that settles it for the missing key.',
  },
  'one-step-round-the-circle': {
    finding: 'The answer sits one step off on the circle.',
    say: 'One note is different there. Which one?',
    play: 'The loop with that note on top, then one fret beside it.',
  },
  'roots-fit-qualities-do-not': {
    finding: 'The roots fit the key, the qualities do not.',
    say: 'That note lives in the key, but with another third.',
    play: 'The chords of that key from its home up, then the loop.',
  },
  'either-chord-not-both': {
    finding: 'The key owns some of the chords, not all.',
    say: 'It must own every chord, not just one.',
    play: 'Nothing to play: read out the keys of each chord, then those they share.',
  },
  'hears-down-up-where-all-are-down': {
    finding: 'All downs are heard as down and up.',
    say: 'Every stroke bites the same: all downs.',
    play: 'Driving eighths, then the relaxed alternate, on one chord.',
  },
  'hears-all-downs-where-they-alternate': {
    finding: 'Down and up is heard as all downs.',
    say: 'Every second stroke is thinner. That is the up.',
    play: 'The relaxed alternate, slower, then driving eighths, on one chord.',
  },
};
