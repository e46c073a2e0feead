/** Names of the questions by kind, as they stand in the row of steps; host and desk. */
export const stepWords = {
  strokes: 'strokes',
  count: 'count',
  direction: 'bass',
  quality: 'quality',
  root: 'root',
  distance: 'distance',
  numeral: 'numerals',
  'one-or-several': 'one or several',
  keys: 'keys',
  settler: 'settler',
} as const;
