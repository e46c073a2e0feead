/** Said to the teacher where the choice of the key policy changes a vamp's answer. Keys, chords and numerals come printed. */
export const policyWords = {
  title: 'The answer depends on which keys count.',
  /** One minor, or several. */
  'minor-by-raised-seventh': {
    one: 'No major key owns these; {key} does with its seventh raised to {seventh}: {numerals}.',
    several: 'No major key owns these; with their sevenths raised these minors do: {keys}.',
  },
  'minors-join-by-raised-seventh': {
    one: 'With its seventh raised to {seventh}, {key} owns them too: {numerals}.',
    several: 'With their sevenths raised, these minors own them too: {keys}.',
  },
  /** By where the visitor comes from. */
  'home-key-with-visitor': {
    borrowed: 'In no one key; at home in {key} as {numerals}, with {chord} borrowed from its minor.',
    applied: 'In no one key; at home in {key} as {numerals}, with {chord} as {of}.',
    dorian: 'In no one key; at home in {key} as {numerals}, with {chord} from its dorian form.',
    phrygian: 'In no one key; at home in {key} as {numerals}, with {chord} from its phrygian form.',
    'raised-seventh': 'In no one key; at home in {key} as {numerals}, with {chord} on its raised seventh.',
    several: 'In no one key; at home in {key} as {numerals}, with {chords} as visitors.',
  },
  'home-in-a-mode': '{parent} alone owns these; heard from the first chord they are {key}: {numerals}.',
  blues: 'A blues on {tonic}: {numerals}. No key owns its sevenths, so ask no key of it.',
} as const;
