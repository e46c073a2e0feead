import type { Reason } from '../messages.ts';

/** Every English sentence a person reads. Named exports, so that a page carries only its own. */

/** Prompts and names of questions and answers; all pages. `{which}` is an ordinal, the rest is filled by the printer's names. */
export const questionWords = {
  /** By slot of the loop; the slot after the first is the next one, whatever comes later. */
  ordinals: [
    'first',
    'next',
    'third',
    'fourth',
    'fifth',
    'sixth',
    'seventh',
    'eighth',
    'ninth',
    'tenth',
    'eleventh',
    'twelfth',
    'thirteenth',
    'fourteenth',
    'fifteenth',
    'sixteenth',
  ],
  /** By last figure, for places beyond the words. */
  ordinalEndings: ['th', 'st', 'nd', 'rd'],
  numbers: ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'],
  and: 'and',
  /** Names in the row of steps. */
  steps: { strokes: 'strokes', direction: 'bass', quality: 'quality', root: 'root', keys: 'keys' },
  prompts: {
    directionNext: 'From home, where did the bass go?',
    directionLater: 'From home to the {which} chord, where did the bass go?',
    qualityTwo: '{Which} chord: major or minor?',
    qualityMore: '{Which} chord: major, minor, something else?',
    root: '{Which} chord: where is its root?',
    keysMajors: 'Which major keys own all of these chords?',
    keysRelatives: 'Which keys own all of these chords, major or minor?',
    strokes: 'All downs, or down and up?',
  },
  /** The line under the prompt. */
  instructions: {
    strokes: 'Listen to the hand, not to the chords.',
    direction: 'Hum the lowest note.',
    quality: 'Listen for its third.',
    root: 'Hum it, then find it on the low strings.',
    keys: 'Mark every one. If none owns them all, say so.',
  },
  options: {
    up: 'up',
    down: 'down',
    same: 'stays',
    major: 'major',
    minor: 'minor',
    power: 'power chord',
    'suspended-fourth': 'suspended fourth',
    'suspended-second': 'suspended second',
    diminished: 'diminished',
    augmented: 'augmented',
    'all-downs': 'all downs',
    'down-up': 'down and up',
    none: 'no key owns all',
    'not-sure': 'not sure',
    neckOpen: 'string {string}, open',
    neckFret: 'string {string}, fret {fret}',
  },
  /** Said once the right answer is shown. */
  right: {
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
  },
} as const;

/** The phone of a student. */
export const studentWords = {} as const;

/** The host screen. */
export const hostWords = {
  numbers:
    'no one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty',
  position: '{n} of {of}',
  page: 'Hearsay, host screen',

  register: {
    heading: 'Take a seat.',
    how: 'Open this address on your phone and write your first name.',
    room: 'room',
    scan: 'or scan',
    scanLabel: 'Square code for the address {address}',
    none: 'No seat taken yet.',
    one: 'One seat taken.',
    many: '{n} seats taken.',
    seat: 'seat {n}',
    away: 'seat {n}, away',
    moreSeats: 'and {n} more',
    waiting: 'The lesson begins when the teacher starts a round.',
  },
  unreached: {
    heading: 'No phone has come in yet.',
    hints: [
      'Same network? A guest network often keeps devices apart: use another one, or the hotspot of a phone.',
      'A firewall on this laptop may hold visitors back: let Node.js accept connections on port {port}.',
      'A phone that leaves a network without internet: switch its mobile data off for the lesson.',
    ],
    others: 'This laptop is also at {addresses}.',
  },

  sound: {
    press: 'Press for sound',
    starting: 'One moment…',
    on: 'Sound is on.',
    off: 'Sound is off.',
    here: 'This page will play through the speakers.',
    testNote: 'test note',
    again: 'Hear it again',
    meter: 'Level of the sound that leaves this page',
    quiet: 'quiet',
    loud: 'loud',
    silent: 'Nothing leaves this page: press again.',
    elsewhere: 'Another host screen holds the sound.',
    takeOver: 'Take over',
    goesOn: 'The vamp was playing: press, and it goes on.',
    lost: 'The sound has stopped.',
    device: 'The speakers changed. Check the sound.',
    checked: 'It sounds',
    failed: 'The sound could not start: {why}',
    phoneHint: 'On a tablet or phone: ring switch on, volume up.',
  },
  caution: {
    heading: 'Ears first',
    lines: [
      'Turn the speakers down now and come up slowly.',
      'Aim for talking level: 65 to 72 dB(A) in the middle of the room. Every 3 dB more halve the time.',
      'You stand nearest and teach all week: mind your own ears too.',
      'If the rules of your school or country ask for less, they come first.',
    ],
    go: 'Start quietly',
  },

  round: {
    listen: 'Hands off. Only listen.',
    feel: 'Feel the numbers.',
    between: 'Listen on.',
    guitarListen: 'Ears on the teacher.',
    guitar: 'the teacher’s guitar',
    home: 'home',
    next: 'next',
    slots: ['home', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'],
    root: 'root {note}',
    handsIn: 'hands in',
    handsOf: '{n} of {of}',
    closed: 'closed',
    again: 'second answer, after talk with the neighbour',
    countIn: 'count-in',
    counts: ['one', 'two', 'three', 'four', 'five', 'six'],
    stave: 'The vamp: {bars} bars in repeat signs',
    staveOne: 'The vamp: one bar in repeat signs',
    held: 'one chord held',
    bassAlone: 'bass alone',
    reconnecting: 'The connection is lost. Trying again…',
  },

  spread: {
    legend: 'one bead, one hand: {marked} marked it, {notSure} not sure',
    legendTally: 'one stroke, one hand: {marked} marked it, {notSure} not sure',
    legendKeys: 'one bead, one hand: {marked} marked keys, {none} said no key, {notSure} not sure',
    noHands: 'No hand is in.',
    noKey: 'no key owns all',
    hands: '{answer}: {n}',
  },

  reveal: {
    direction: { up: 'The bass went up.', down: 'The bass went down.', same: 'The bass stayed.' },
    quality: '{which} chord is {quality}.',
    qualityChord: '{which} chord is {chord}.',
    which: [
      'The first',
      'The second',
      'The third',
      'The fourth',
      'The fifth',
      'The sixth',
      'The seventh',
      'The eighth',
    ],
    root: 'The root is {note}.',
    strokes: { 'all-downs': 'All of them are downs.', 'down-up': 'Down and up, by turns.' },
    rightOf: '{n} of {of} heard it.',
    chords: { and: '{list} and {last}', comma: '{list}, {next}' },
    keysNone: 'No key owns {chords}.',
    keysNoneMajor: 'No major key owns {chords}.',
    keysOne: 'Only {key} owns {chords}.',
    keysMany: '{n} keys own {chords}.',
    family: '{major} and its relative {minor} own {chords}.',
    settled: 'These chords have settled it.',
    decides: 'One note decides: {says}.',
    decide: 'The notes that decide: {says}.',
    says: '{note} says {key}',
    keyOf: 'key of {key}',
    neighbours: 'owners are neighbours',
    oneOwner: 'one owner',
    noOwner: 'no owner',
    livesIn: '{chord} lives in {keys}.',
    noneShared: 'No key stands in every row.',
    oneDot: 'one dot, one hand',
    notch: 'a notch: this chord holds the deciding note',
  },

  end: {
    label: 'end of the lesson',
    heading: 'How the answers fell',
    round: 'round {n}',
    right: 'right',
    part: 'partly',
    wrong: 'not',
    notSure: 'not sure',
    missed: 'most often taken for it',
    missedOne: '{answer}, {n}',
    empty: 'No question was shown today.',
    closing: 'Counted in hands, never by name.',
    roomEnded: 'This room has closed.',
    thanks: 'Thank you for listening.',
  },
} as const;

/** The teacher's desk and the pairing page. */
export const deskWords = {} as const;

/** What the server and the commands print on a console. */
export const consoleWords = {} as const;

/** One sentence per refusal; blanks are filled from the reply's detail. */
export const refusals: Readonly<Record<Reason, string>> = {
  'room-not-found': 'There is no room {room}. Check the five letters on the host screen.',
  'room-ended': 'This room has closed.',
  'name-empty': 'Write a name first: any name your teacher will know.',
  'name-too-long': 'That name is too long. Up to {most} characters fit.',
  'name-not-readable': 'That name has no letters that can be shown. Write it with ordinary letters.',
  'not-joined': 'Take a seat first: write your name.',
  'not-teacher': 'Only the teacher can do that. Open the teacher link that the server printed.',
  'question-not-open': 'This question is not open.',
  'question-not-closed': 'Close the question first.',
  'question-unknown': 'This round has no such question.',
  'question-shown': 'The answer has been shown already.',
  'question-still-open': 'Another question is still open. Close it first.',
  'round-unknown': 'There is no such round.',
  'no-round': 'Start a round first.',
  'too-late': 'After the double bar. This one does not count; the next question is yours.',
  'answer-not-readable': 'That is not an answer to this question.',
  'message-not-readable': 'The message could not be read: {what}.',
  'message-too-large': 'The message is too large: at most {most} bytes.',
  'too-many-messages': 'Too many messages at once. Wait a moment.',
  'chords-not-readable': 'Could not read the chords at “{found}”: {suggestion}',
  'chord-unknown': 'The chord {found} cannot be used here: {suggestion}',
  'groove-unknown': 'There is no groove {found}.',
  'level-unknown': 'There is no level {found}. Levels go from {low} to {high}.',
  'tempo-out-of-range': 'The tempo {found} is out of range: {low} to {high} beats a minute.',
  'no-host-sound': 'No host screen has its sound on. Open the host screen and press for sound.',
  'sound-held-elsewhere': 'Another host screen holds the sound. Take it over there or here.',
  'nothing-plays': 'Nothing is playing.',
  'not-saved': 'This could not be saved, so it did not happen. Try again.',
  'page-too-old': 'This page is of an older version. Reload it.',
  'pairing-code-wrong': 'That code is wrong or more than a minute old. Ask the desk for a new one.',
  'room-full': 'The room is full.',
};

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
    finding: 'One owner is left out.',
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
