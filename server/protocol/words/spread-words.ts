/** What stands in the drawings of what a room tapped or marked on the beat grid: wall and desk. */
export const spreadWords = {
  tempo: {
    /** At the right tempo; at others that are as lawful; where twice or half as many were counted. */
    right: 'the numbers',
    also: 'right too',
    double: 'twice as fast',
    half: 'half as fast',
  },
  steadiness: { even: 'even', uneven: 'uneven', percent: '{n} %', more: '{n} % +' },
  dropOut: {
    ahead: 'ahead',
    groove: 'with the groove',
    behind: 'behind',
    silent: 'silent',
    back: 'back',
    /** Taps can be read, but none of them say where the beat lay while the groove sounded. */
    noneBefore: 'Nobody tapped from before the silence.',
  },
  /** How the room went through the silence. */
  through: {
    faster: 'In the silence the room went {n} % faster.',
    slower: 'In the silence the room went {n} % slower.',
    holds: 'In the silence the room held the tempo.',
    unknown: 'Too few taps came through the silence to tell.',
  },
  together: {
    width: 'How close',
    around: 'two taps in three within {n} ms of each hand’s middle',
    drift: 'How steady',
    faster: 'the room gets faster: {n} % in eight beats',
    slower: 'the room gets slower: {n} % in eight beats',
    holds: 'the room holds its tempo',
    unknown: 'too few beats to tell',
    beat: 'each hand’s own middle',
  },
  /** Nobody's taps could be read. */
  unread: 'No taps could be read.',
  /** For those who hear the page. */
  aloud: {
    tempo: '{read} of {of} hands can be read: about {tempo} a minute in the middle, half of them from {low} to {high}',
    steadiness: '{read} of {of} hands can be read: {uneven} percent uneven in the middle',
    dropOut: 'on the last beat {n} percent of a beat ahead',
    dropOutBehind: 'on the last beat {n} percent of a beat behind',
  },
} as const;
