import type { WireSoloSource } from '../views.ts';
import { listed } from './counting.ts';
import { cribWords } from './crib-words.ts';
import { fill } from './fill.ts';

/** How the names in a sentence are printed, each from ASCII. */
type PrintedNames = Readonly<Record<'note' | 'chord' | 'key', (name: string) => string>>;

/** Notes to solo on with what they are of: `A B C D E F G (A minor; over E G♯ for G)`; where there are none, what to do instead. */
export function safeSentence(notes: readonly string[], of: WireSoloSource | null, names: PrintedNames): string {
  if (notes.length === 0) return cribWords.safeNone;
  const printed = notes.map(names.note).join(' ');
  return of === null ? printed : fill(cribWords.safeOf, { notes: printed, source: sourceText(of, names) });
}

function sourceText(of: WireSoloSource, names: PrintedNames): string {
  const words = cribWords.safeSources;
  switch (of.source) {
    case 'raised-seventh':
      return fill(words['raised-seventh'], {
        key: names.key(of.key),
        chords: listed(of.over.map(names.chord)),
        raised: names.note(of.raised),
        natural: names.note(of.natural),
      });
    case 'visited-key':
      return fill(of.without.length === 0 ? words.whole : words['visited-key'], {
        key: names.key(of.key),
        without: listed(of.without.map(names.note)),
        chords: listed(of.visitors.map(names.chord)),
      });
    case 'blues':
      return fill(words.blues, { tonic: names.note(of.tonic) });
  }
}
