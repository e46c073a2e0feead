/**
 * Every English sentence a person reads. Named exports, so that a page carries only its own; what phones carry stands
 * in files of its own (all of `student.ts`), since a bundler cannot take a module apart that several pages share.
 */
export { questionWords } from './question-words.ts';
export { rightWords } from './right-words.ts';
export { refusals } from './refusals.ts';
export { errorKinds, habitKinds, markNotes } from './errors.ts';
export { hostWords } from './host.ts';

/** The teacher's desk and the pairing page. */
export const deskWords = {
  name: 'desk',
  leaves: { round: 'round', roll: 'roll', crib: 'crib', room: 'room' },
  leavesLabel: 'Parts of the desk',
  page: 'Hearsay, desk of room {room}',
  unconfirmed: 'Not confirmed. Look whether it happened, then press again.',
  connecting: 'Looking for the server.',
  lost: 'No connection. The desk comes back by itself.',
  privateNote: 'Only you see this page.',

  lobby: {
    heading: 'Open a room.',
    lead: 'One room is one live class. Students come in with its five letters.',
    open: 'open a room',
    opening: 'one moment',
    standing: 'Rooms that are still open',
    return: 'go on in {room}',
    since: 'since {time}',
    failed: 'The server did not answer. Is it still running?',
  },

  room: {
    heading: 'Before the first sound',
    hostTitle: 'Host screen',
    host: 'Open it, move the window to the projector, press for sound.',
    hostOpen: 'open the host screen',
    soundOn: 'A host screen has its sound on.',
    soundOff: 'No host screen has its sound on yet.',
    phonesTitle: 'Phones of the class',
    address: 'They open this address, or scan it from the host screen.',
    seats: { one: 'One seat taken.', many: '{n} seats taken.', none: 'No seat taken yet.' },
    otherAddresses: 'Other addresses of this laptop',
    unreached:
      'No phone has reached this laptop. Guest network, firewall, or another address? The hotspot of a phone often helps.',
    pairTitle: 'Desk on your own phone',
    pair: 'pair a phone',
    pairHow: 'Open {address}/pair on it and type this code. It is good for one minute.',
    policyTitle: 'Keys that count',
    policy: { majors: 'majors only', relatives: 'with relative minors' },
    policyNote: 'The circle, the marks and the spoken question follow it from the next round on.',
    qualitiesTitle: 'Pad for the quality',
    qualities: { two: 'major or minor', six: 'also power, suspended, diminished, augmented' },
    qualitiesNote: 'From the next round on. A level that asks for more shows more.',
    namesTitle: 'Names on the host screen',
    names: 'show first names at the seats',
    namesNote: 'Only while the room fills. Answers never carry a name there.',
    endTitle: 'End',
    endLesson: 'end the lesson',
    endSure: 'press again: the host screen shows how it went',
    endNote: 'The host screen shows how all questions went, without names.',
    closeRoom: 'close the room',
    closeNote: 'Nobody can come in or answer after that. What was written stays.',
    sure: 'press again to close it',
    ended: 'This room has closed.',
    newRoom: 'open another room',
  },

  start: {
    heading: 'Next vamp',
    level: 'Hearsay plays: level',
    play: 'play level {level}',
    guitarTitle: 'My own guitar',
    chords: 'chords',
    chordsHint: 'Em D, or with a dot for each beat: | G . D . |',
    groove: 'groove',
    noGroove: 'chords only',
    tempo: 'tempo',
    bass: 'my bass, chord by chord',
    bassNote: 'Press where it moved otherwise than in the usual open shapes.',
    usual: 'as usual',
    up: 'up',
    down: 'down',
    same: 'stays',
    guitar: 'ask about my guitar',
    back: 'back to the round',
  },

  round: {
    number: 'vamp {number}',
    level: 'level {level}',
    guitar: 'your guitar',
    none: 'No vamp yet.',
    right: 'right: {answer}',
    handsIn: 'hands in',
    of: '{n} of {of}',
    cannotHear: { one: 'one can’t hear', many: '{n} can’t hear' },
    silent: { one: 'one silent', many: '{n} silent' },
    openRoll: 'open the roll',
    nextBar: 'on the next bar line',
    hold: 'hold {chord}',
    bassAlone: 'bass alone',
    slower: 'slower',
    faster: 'faster',
    full: 'full',
    tempo: '{tempo} a minute',
    noSound: 'No host screen has its sound on.',
    steps: 'Questions of this round',
    stepState: { ready: 'not asked yet', open: 'open', closed: 'closed', shown: 'shown', skipped: 'skipped' },
    secondSheet: 'answered again after talk',
  },

  actions: {
    play: 'play',
    stop: 'stop',
    open: 'open',
    skip: 'skip',
    close: 'close',
    spread: 'spread',
    spreadOn: 'spread is up',
    neighbour: 'neighbour',
    show: 'show',
    next: 'next',
    vamp: 'new vamp',
    label: 'Session script',
  },

  closed: {
    heard: '{n} of {of} heard it.',
    nobody: 'Nobody of {of} heard it.',
    none: 'No hand was in.',
    notSure: { one: 'one not sure', many: '{n} not sure' },
    heardWrong: '{n} heard {answer}.',
    say: 'say',
    playNext: 'play',
    speaker: 'So many heard nothing move: check the speaker before the ears.',
    manyTheSame: 'Many the same: teach it.',
    scattered: 'Scattered: play it again.',
    talk: 'Between a third and two thirds: let them talk, then ask again.',
    fewHeard: 'Few heard it: play it again before you show it.',
    fewHeardBass: 'Few heard it: play it again, slower or the bass alone.',
    mostHeard: 'Most heard it: show it and go on.',
    spreadIsUp: 'The host screen shows the spread.',
  },

  roll: {
    heading: 'Roll',
    none: 'Nobody has come in yet.',
    here: 'here',
    asleep: 'asleep',
    wrote: 'in',
    cannotHear: 'can’t hear: nearer the speaker',
    pair: 'two of them',
    leftHanded: 'left-handed',
    change: 'rename or erase',
    rename: 'rename',
    save: 'save',
    erase: 'erase',
    eraseSure: 'press again: name and answers go for good',
    right: 'right',
    part: 'partly',
    wrong: 'wrong',
    notSure: 'not sure',
  },

  crib: {
    heading: 'Crib',
    key: 'key',
    none: 'No key on the circle owns them all.',
    deciders: 'deciding note',
    settlers: 'chords that settle it',
    leaves: '{note} leaves {keys}',
    bass: 'bass',
    noVamp: 'The crib stands here once a round has begun.',
  },

  lesson: {
    heading: 'How it went',
    goOn: 'go on with another vamp',
    vamp: 'vamp {number}',
    counts: '{right} right, {part} partly, {wrong} wrong, {notSure} not sure',
    heard: '{n} heard {answer}',
  },

  pairing: {
    heading: 'Pair this phone.',
    lead: 'The code stands on the desk, under “room”. It is good for one minute.',
    code: 'code',
    go: 'pair',
    done: 'Paired. One moment.',
  },
} as const;

/** What the server and the commands print on a console. */
export const consoleWords = {
  vamps: {
    usage: 'Give a level: npm run vamps -- --level 7 --count 8 --seed 1',
    heading: 'Level {level}: {name}',
    columns: { chords: 'chords', bass: 'bass', keys: 'major keys', groove: 'groove', tempo: 'tempo' },
    directions: { up: 'up', down: 'down', same: 'stays' },
    alone: 'alone',
    noKey: 'none owns all',
  },
  server: {
    building: 'Building the pages, a moment …',
    buildFailed: 'The pages could not be built: {why}',
    ready: 'Hearsay is running.',
    teacher: 'Teacher link, for this laptop:',
    phones: 'Phones open:',
    otherAddresses: 'Other addresses of this machine:',
    moreAddresses: 'Other addresses ({n}): npm start -- --addresses',
    noNetwork: 'This machine is in no network that phones could reach. Join one, or open a hotspot, and start again.',
    data: 'Everything is kept in {folder}',
    stop: 'Stop with Ctrl-C.',
    stopping: 'Stopping …',
    portTaken: 'Port {port} is taken. Stop the other program, or choose another: PORT={next} npm start',
    portForbidden: 'Port {port} may not be used here. Choose another: PORT=4600 npm start',
    portWrong: 'PORT is a whole number from 1 to 65535, not “{found}”.',
    hostWrong: 'HEARSAY_HOST is an address such as 192.168.1.23 or laptop.local, not “{found}”.',
    optionWrong: 'There is no option {found}. Known here: --addresses',
    alreadyRunning: 'Hearsay is already running with the data in {folder}, at {url}. Use that one, or stop it first.',
    alreadyStarting: 'Hearsay is already starting with the data in {folder}. Use that one, or stop it first.',
    folderNotWritable:
      'The data folder {folder} cannot be written. Choose another: HEARSAY_DATA=/some/folder npm start',
    storeNotReadable:
      'The file {file} is damaged, or not from Hearsay. Nothing was changed. Move it away, or choose another folder with HEARSAY_DATA.',
    storeTooNew:
      'The file {file} was written by a newer Hearsay. Nothing was changed. Use that version, or choose another folder with HEARSAY_DATA.',
    driverMissing: 'The database driver for this machine is missing. Run: npm ci',
    failed: 'Hearsay could not start: {why}',
    /** Name of the class that exists from the first start. */
    firstClass: 'My class',
    fault: 'A fault inside Hearsay; the lesson goes on: {why}',
  },
  commandLine: {
    unknownOption: 'There is no option {found}. Options here: {known}.',
    twice: 'The option --{name} is given twice. Give it once.',
    needsValue: 'The option --{name} needs a value after it.',
    takesNoValue: 'The option --{name} takes no value.',
    notNumber: 'The option --{name} is a number from {low} to {high}, not “{found}”.',
    notWhole: 'The option --{name} is a whole number from {low} to {high}, not “{found}”.',
    notAChoice: 'The option --{name} is one of {choices}, not “{found}”.',
    noChords: 'There are no chords: {suggestion}',
    chordsNotReadable: 'Could not read the chords at “{found}”: {suggestion}',
  },
  render: {
    usage:
      'Give chords, a groove and a file: npm run render -- --chords "Em D" --groove relaxed-alternate --tempo 100 --out vamp.wav. All grooves: npm run render -- --grooves',
    beatsAndBars: 'Bar lines say how long each chord lasts: leave out --beats, or write the chords without bar lines.',
    tempo: '{groove} goes from {low} to {high} beats a minute, not {found}.',
    notWritten: 'Could not write {file}: {why}',
    wrote: '{file}: {seconds} s, {chords}, {groove}, {tempo} beats a minute',
    groove: '{id}  {name}, {meter}, {low} to {high} beats a minute',
  },
  bench: {
    usage: 'This takes no words, only --json: npm run bench -- --json',
    value: '{name} {value} {unit} ({low} to {high}); {budget}',
    ratio: '{name} {value} {unit}, {ratio} to one against {against} ({low} to {high}); {budget}',
    over: 'OVER',
  },
  crib: {
    usage: 'Give the chords of one vamp in quotes: npm run crib -- "Em D"',
    policies: { majors: 'major keys only', relatives: 'major keys and their relative minors' },
    noKey: {
      majors: 'No major key owns all of these.',
      relatives: 'No major key and no natural minor owns all of these.',
    },
    clash: {
      majors: 'No major key has both {low} and {high}.',
      relatives: 'No major key or natural minor has both {low} and {high}.',
    },
    raisedSeventh: '{key} with its raised seventh: {numerals}',
    deciders: 'Deciding notes, and the keys they leave',
    settlers: 'Settlers: third chords, and the keys they leave',
    open: 'Third chords that all these keys own',
  },
} as const;

/** Plain pages for people who come without the teacher's cookie, or to a place that is none. */
export const pageWords = {
  title: 'Hearsay',
  notTeacher: 'This page is the teacher’s. Open the teacher link that the server printed, on this device.',
  wrongKey: 'This teacher link is not valid any more. Open the one that the server printed when it was last started.',
  notFound: 'There is nothing at this address.',
  wrongHost: 'This server does not answer to that name. Open the address on the host screen.',
  fault: 'Something went wrong here. Try again.',
} as const;

/** What is wrong with a message that could not be read; fills `{what}` of the refusal. */
export const messageFaults = {
  notAnObject: 'it is no object with named fields',
  unknown: 'its {field} “{found}” is not known',
  missing: 'its field {field} is missing',
  surplus: 'it has a field {field} that nobody expects',
  field: 'its field {field} should be {expected}',
  other: 'something else',
} as const;
