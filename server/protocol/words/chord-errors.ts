import type { ErrorWords } from './error-words.ts';

/** What a class mishears of chords and keys, by error kind. */
export const chordErrors: Readonly<Record<string, ErrorWords>> = {
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
    finding: 'The mark is one fret beside the right note.',
    say: 'Play your note with the chord. Do they rub?',
    play: 'Hold the chord while everyone compares on the sixth string.',
  },
  'names-the-top-note': {
    finding: 'The top note is named, not the one below.',
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
  'counts-the-changes': {
    finding: 'Every change is counted as a new chord.',
    say: 'Did we stand here before? Then it counts once.',
    play: 'The loop with a breath before each return of the home chord.',
  },
  'merges-close-chords': {
    finding: 'Two close chords are heard as one.',
    say: 'They are cousins. The floor tells them apart.',
    play: 'The two by turns, then the bass alone.',
  },
  'splits-one-chord': {
    finding: 'One chord in two dresses is counted twice.',
    say: 'Another coat, the same person inside.',
    play: 'Hold that chord, then the bass alone, then hold it again.',
  },
  'hears-no-change': {
    finding: 'No change is heard at all.',
    say: 'Lift a hand when the ground moves under you.',
    play: 'The loop slower, the bass alone, then all of it.',
  },
  'right-note-other-octave': {
    finding: 'The right note, on the wrong side of home.',
    say: 'You found the room. Did you take the stairs up or down?',
    play: 'Both by turns: up to that note, and down to it.',
  },
  'answers-the-way-back': {
    finding: 'The way back is answered, not the way out.',
    say: 'Start at home. Which way did we leave it?',
    play: 'The first chord held, then one step to the next, and stop.',
  },
  'constant-shift': {
    finding: 'All roots are moved by the same step.',
    say: 'Every step between them is right. Only the starting point is off.',
    play: 'The first root alone, sung and found, then the loop.',
  },
  'swaps-relatives': {
    finding: 'The relative chord is named in its place.',
    say: 'They share two notes. The bass says which is which.',
    play: 'Both by turns, then the bass alone.',
  },
  'measures-between-the-basses': {
    finding: 'The distance is counted from bass to bass.',
    say: 'That is how far the floor moved. How far is it from owner to owner?',
    play: 'Both chords on their roots, then over their basses again.',
  },
  'measures-from-the-key': {
    finding: 'The distance is measured from the key, not from home.',
    say: 'Count from the first chord. Keys come later.',
    play: 'Hold the first chord, then the two by turns.',
  },
  'swaps-four-and-five': {
    finding: 'Four and five change places.',
    say: 'One leans on home, the other pulls away from it.',
    play: 'Home and four, home and five, by turns.',
  },
  'lays-the-minor-scale': {
    finding: 'A minor home is counted on the minor scale.',
    say: 'We count on the major scale, and then say how far flat.',
    play: 'The major scale up from the minor home, then the two chords.',
  },
  'measures-the-other-way': {
    finding: 'The distance is measured the other way round.',
    say: 'The same note by the other door. Which way did the bass go?',
    play: 'Both by turns: up to it, then down to it.',
  },
  'starts-at-zero': {
    finding: 'The counting starts at nought.',
    say: 'Home is one. Count it aloud.',
    play: 'The two roots alone, with the scale counted between them.',
  },
  'counts-frets-as-steps': {
    finding: 'Frets are counted as scale steps.',
    say: 'The scale leaves some frets out. Walk it with your voice.',
    play: 'The major scale up from home, then the two chords.',
  },
  'forgets-the-half-steps': {
    finding: 'The short steps of the scale are forgotten.',
    say: 'Two steps of the scale are short. Which ones?',
    play: 'Three to four and seven to eight, sung from home.',
  },
  'takes-home-for-one': {
    finding: 'The first chord is taken for the one.',
    say: 'Home chord today, but is it the owner? Look for the key.',
    play: 'The loop with the key’s own one behind it.',
  },
  'numeral-case-wrong': {
    finding: 'The right degree, capital and small exchanged.',
    say: 'Capital for major, small for minor. Which was it?',
    play: 'Hold that chord and sing its third.',
  },
  'flat-sign-missing': {
    finding: 'The flat before the numeral is missing.',
    say: 'It lies one fret under the scale’s own step.',
    play: 'The seventh of the scale, then one fret lower, then the chord.',
  },
  'ignores-the-settler': {
    finding: 'What settles it changed nothing.',
    say: 'Who owns what just came? Cross out the others.',
    play: 'The loop with the settler behind it, bass alone.',
  },
  'settles-too-early': {
    finding: 'One key is named where several are still open.',
    say: 'It could be another as well. Who else owns them?',
    play: 'The loop with each settler in turn.',
  },
  'starts-the-loop-elsewhere': {
    finding: 'The right order, begun on another chord.',
    say: 'The round is right. Which chord opened it?',
    play: 'The loop from its first chord, counted in, then the same again.',
  },
  'hears-a-return-as-new': {
    finding: 'A chord that comes back is heard as a new one.',
    say: 'Hum the first floor. Have we stood on it since?',
    play: 'The two bars by turns, the bass alone, then all of it.',
  },
  'hears-a-new-chord-as-a-return': {
    finding: 'A new chord is heard as one that comes back.',
    say: 'Somebody new walked in. In which bar?',
    play: 'The two bars by turns, slower, then the bass alone.',
  },
  'names-the-root-over-a-slash': {
    finding: 'The root is marked where another note is in the bass.',
    say: 'That is the owner of the house. Who stands on the floor?',
    play: 'The bass alone, then the chord above it.',
  },
  'fifth-over-the-bass': {
    finding: 'The fifth above the bass is taken for the bass.',
    say: 'There is one note under yours. Hum down to it.',
    play: 'The bass and its fifth by turns, ending on the bass.',
  },
  'third-over-the-bass': {
    finding: 'The third above the bass is taken for the bass.',
    say: 'You are one floor too high. Go down.',
    play: 'The chord string by string from its lowest note.',
  },
  'hears-the-inversion-as-minor': {
    finding: 'A major chord on its third is heard as minor.',
    say: 'Find the root first, and then the mood.',
    play: 'The chord on its root, then on its third.',
  },
  'hears-the-major-on-top': {
    finding: 'A minor seventh chord is heard as the major on top.',
    say: 'Let the bass say whose chord it is.',
    play: 'The minor chord, then its seventh put in.',
  },
  'seventh-swallowed': {
    finding: 'The seventh is not heard.',
    say: 'One note sticks out of this chord. Can you sing it?',
    play: 'The chord without its seventh, then with it.',
  },
  'hears-a-seventh-too-many': {
    finding: 'A seventh is heard where none sounds.',
    say: 'Everything in it belongs together. Does any note pull?',
    play: 'The chord as it is, then with a seventh.',
  },
  'sevenths-swapped': {
    finding: 'The soft and the leaning seventh change places.',
    say: 'Does it glow, or does it want to go on?',
    play: 'Both sevenths over one root, then in the chord.',
  },
  'gives-the-bass': {
    finding: 'The bass note is given for the root.',
    say: 'That is the floor. Who lives above it?',
    play: 'The chord on its root, over this bass, and on its root again.',
  },
  'names-the-shape': {
    finding: 'The shape is named, not what sounds over the capo.',
    say: 'The hand says one name, the air another. We ask for the air.',
    play: 'The same shape without the capo, then with it.',
  },
};
