/** Names and directions inside the files that are made of a vamp. */
export const fileWords = {
  vamp: '{chords}, {groove}',
  guitar: { steel: 'Steel guitar', nylon: 'Nylon guitar', clean: 'Electric guitar' },
  bass: 'Bass guitar',
  kit: 'Kit',
  kitPieces: { kick: 'Bass drum', snare: 'Snare drum', 'closed-hat': 'Closed hi-hat', 'open-hat': 'Open hi-hat' },
  swing: 'Swing {long}:{short}',
  palm: 'P.M.',
  half: 'half P.M.',
  software: 'Hearsay',
} as const;
