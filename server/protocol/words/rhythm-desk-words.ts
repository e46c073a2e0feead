/** What the desk says of taps, of grids that are played, and of hands that have played a groove through. */
export const rhythmDeskWords = {
  taps: {
    label: 'the class so far',
    /** Under a tempo that stands large. */
    aMinute: 'a minute',
    waiting: 'not tapped yet',
    read: '{read} of {of} can be read',
    between: 'half of them between {low} and {high}',
    uneven: 'uneven by {percent}\u00a0%',
    /** The private table, by seat. */
    table: 'hand by hand',
    tableLess: 'fewer hands',
    columns: { name: 'name', tempo: 'a minute', uneven: 'uneven', drift: 'in eight beats' },
    /** Of one hand, in the roll. */
    unevenAndDrift: 'uneven {uneven}, in eight beats {drift}',
    unread: 'could not be read',
    none: 'did not tap',
    percent: '{percent}\u00a0%',
    signed: '{sign}{percent}\u00a0%',
    unknown: '–',
  },

  echo: {
    heading: 'Hear a grid',
    lead: 'On muted strings, in the tempo that runs.',
    class: 'the class’s grid',
    right: 'the right one',
    back: 'back to full',
    each: 'each one’s grid',
    eachLess: 'fewer grids',
    play: 'play this grid',
    playOf: 'play this grid: {name}',
    now: 'now: {what}',
    next: 'next bar: {what}',
    waits: 'Once the vamp plays.',
    noSound: 'No host screen has its sound on.',
    another: 'a grid',
  },

  hands: {
    open: 'hand ledger',
    close: 'back to the roll',
    heading: 'Played through, beat level {level}',
    note: 'Press a name once that hand has played a groove of this level through. Press again to take it back.',
    heard: 'heard {right} of {of}, needs {needs} of {last}',
    heardNothing: 'nothing heard at this level yet',
    played: 'played through',
    notPlayed: 'not yet',
    others: 'also levels {levels}',
    otherOne: 'also level {levels}',
  },
} as const;
