/** Names of the questions by kind, as they stand in the row of steps; host and desk. */
export const stepWords = {
  strokes: 'strokes',
  count: 'count',
  order: 'order',
  direction: 'bass',
  bass: 'bass note',
  quality: 'quality',
  root: 'root',
  seventh: 'seventh',
  distance: 'distance',
  numeral: 'numerals',
  'one-or-several': 'one or several',
  keys: 'keys',
  settler: 'settler',
  home: 'home',
} as const;
