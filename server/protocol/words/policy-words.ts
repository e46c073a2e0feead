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
  /** By where the visitor comes from, several of one place or of more. */
  'home-key-with-visitor': {
    borrowed: 'At home in {key} as {numerals}, with {chords} borrowed from its minor.',
    applied: 'At home in {key} as {numerals}, with {chords} as {of}.',
    dorian: 'At home in {key} as {numerals}, with {chords} from its dorian form.',
    phrygian: 'At home in {key} as {numerals}, with {chords} from its phrygian form.',
    'raised-seventh': 'At home in {key} as {numerals}, with {chords} on its raised seventh.',
    risen: 'At home in {key} as {numerals}, with {chords} on its raised sixth and seventh.',
    several: 'At home in {key} as {numerals}, with {chords} as visitors.',
  },
  'home-in-a-mode': '{parent} alone owns these; heard from the first chord they are {key}: {numerals}.',
  blues: 'A blues on {tonic}: {numerals}. No key owns its sevenths, so ask no key of it.',
} as const;
