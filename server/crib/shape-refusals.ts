import type { CribShape, Guitar } from '../../shared-theory/crib/shapes.ts';
import type { ShapeRefusal } from '../../shared-theory/neck/solve.ts';
import { listed } from '../protocol/words/counting.ts';
import { cribWords } from '../protocol/words/crib-words.ts';
import { fill } from '../protocol/words/fill.ts';
import type { SheetNames } from './names.ts';

const words = cribWords.refused;

/**
 * What cannot be played on a guitar and what would be right, a sentence for each reason with the chords that it holds for; empty where
 * every chord has a shape.
 */
export function shapeRefusals(shapes: readonly CribShape[], guitar: Guitar, names: SheetNames): readonly string[] {
  const chords = new Map<string, string[]>();
  for (const { chord, refusal } of shapes) {
    if (refusal === null) continue;
    const why = reasonOf(refusal, guitar, names);
    chords.set(why, [...(chords.get(why) ?? []), names.chord(chord)]);
  }
  return [...chords].map(([why, refused]) => fill(words.sentence, { chords: listed(refused), why }));
}

function reasonOf(refusal: ShapeRefusal, { capo }: Guitar, { note }: SheetNames): string {
  switch (refusal.reason) {
    case 'no-low-bass':
    case 'one-note-at-a-time':
      return fill(words[refusal.reason], { tuning: cribWords.tunings[refusal.tuning] });
    case 'bass':
      return fill(capo > 0 ? words.bassUnderCapo : words.bass, { note: note(refusal.bass) });
    case 'notes':
      return fill(words.notes, { notes: listed(refusal.missing.map(note)) });
  }
}
