/** What the host screen says of speakers that are late. */
export const speakerDelayWords = {
  open: 'Wireless speakers?',
  heading: 'Late speakers',
  why: 'Wireless speakers and projectors sound late. Set here how late, and the marks of the beat wait for them. Marking never depends on it.',
  help: 'Press, listen and look: shift it until click and mark agree.',
  compare: 'hear and see clicks',
  compareOff: 'end the clicks',
  playing: 'Shift it until ear and beat mark agree.',
  value: '{ms} ms',
  label: 'Delay of the speakers, in milliseconds',
  sooner: '{ms} ms sooner',
  later: '{ms} ms later',
} as const;
