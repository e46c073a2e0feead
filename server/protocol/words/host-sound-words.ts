/** What the host screen says of speakers that are late. */
export const speakerDelayWords = {
  open: 'Is the beat mark early?',
  heading: 'Late speakers',
  why: 'Wireless speakers and projectors sound late. Set here how late, and the marks of the beat wait for them. Marking never depends on it.',
  help: 'Press, listen and look: shift it until click and mark agree.',
  compare: 'hear and see clicks',
  compareOff: 'end the clicks',
  playing: 'A vamp plays: look at its own mark.',
  value: '{ms} ms',
  label: 'Delay of the speakers, in milliseconds',
  sooner: 'mark sooner',
  later: 'mark later',
  soonerBy: 'Marks 10 milliseconds sooner',
  laterBy: 'Marks 10 milliseconds later',
} as const;
