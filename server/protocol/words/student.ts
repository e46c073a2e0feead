/** Sentences on a student's phone. */
export const studentWords = {
  pageTitle: 'Hearsay, room {room}',

  /** The door. */
  room: 'room',
  roomLabel: 'room code, on the host screen',
  roomWrong: 'A room code has five letters. It stands on the host screen.',
  goIn: 'go in',
  otherRoom: 'another room',
  nameLabel: 'your first name, or any name',
  guitarLabel: 'my guitar',
  rightHanded: 'right-handed',
  leftHanded: 'left-handed',
  seatsLabel: 'on this phone',
  one: 'one of us',
  two: 'two of us',
  thumbLabel: 'my thumb',
  rightThumb: 'right',
  leftThumb: 'left',
  takeSeat: 'take a seat',
  takingSeat: 'one moment…',
  failed: 'That did not work. Try again.',
  nobodyThere: 'No answer from the room. Is this phone on the same network? Then press again.',
  doorForgets: 'This phone keeps nothing after the page is closed: leave it open during the lesson.',

  /** Before and between questions. */
  connecting: 'Looking for the room…',
  lost: 'No network just now. This page goes on by itself.',
  listen: 'Listen.',
  listenMore: 'The next question comes by itself.',
  seated: 'You have a seat, {name}.',

  /** The foot. */
  cannotHear: 'can’t hear',
  notSure: 'not sure',
  write: 'write it',
  takeBack: 'take it back',
  change: 'change',
  told: 'Your teacher knows that you can’t hear it.',
  notTold: 'That did not reach your teacher. Raise a hand.',

  /** What became of an answer. */
  sending: 'Sending…',
  inTitle: 'It is in.',
  inText: 'You can change it until your teacher closes.',
  /** Where one taps along and what is in changes with each tap. */
  inTogether: 'Tap on: it follows you.',
  notSureTitle: 'Not sure: it is in.',
  backTitle: 'Taken back.',
  keptMark: 'kept',
  keptTitle: 'Kept on this phone.',
  keptText: 'It goes in by itself.',
  keptClosedText: 'It goes in by itself. It counts if it gets there before the answer is shown.',
  closedTitle: 'Closed.',
  closedIn: 'Your answer is in.',
  closedNone: 'Nothing was written this time.',
  closedChosen: 'Chosen, but not written. The next question is yours.',
  lateTitle: 'After the double bar.',
  lateText: ['This one does not count.', 'The next question is yours.'],
  secondSheet: 'Once more, after talking it over.',
  memory: 'From memory.',
  aloud: 'Hands off the phone: answer aloud.',
  echo: 'Listen: the grid that sounds now is yours.',
  struck: 'This one is struck: everybody has it.',

  /** Pads. */
  padLabel: 'Your answer',
  frets: 'frets {from}–{to}',
  fretsWord: 'frets',
  span: '{from}–{to}',
  marked: 'Marked: {n}.',

  /** The end. */
  lessonEnded: 'That was the lesson.',
  lessonRight: '{right} of {of} heard right.',
  lessonPartToo: 'Partly right: {part}.',
  lessonThanks: 'Play one of today’s vamps at home.',
  roomEnded: 'This room has closed.',
} as const;
