import type { WirePolicyChange } from '../views.ts';
import { listed } from './counting.ts';
import { fill } from './fill.ts';
import { policyWords } from './policy-words.ts';

/** How the names in a sentence are printed, each from ASCII. */
type PrintedNames = Readonly<Record<'note' | 'chord' | 'key' | 'numeral', (name: string) => string>>;

/** What the choice of the key policy changes, in a sentence. */
export function policySentence(change: WirePolicyChange, names: PrintedNames): string {
  const numerals = (row: readonly string[]) => row.map(names.numeral).join('–');
  switch (change.change) {
    case 'minor-by-raised-seventh':
    case 'minors-join-by-raised-seventh':
      return raisedSentence(policyWords[change.change], change.keys, names);
    case 'home-key-with-visitor': {
      const { key, visitors } = change;
      return fill(policyWords['home-key-with-visitor'][placeOf(visitors)], {
        key: names.key(key),
        numerals: numerals(change.numerals),
        of: (visitors[0]?.of ?? '')
          .split('/')
          .map((part) => (part === '' ? '' : names.numeral(part)))
          .join('/'),
        chords: listed(visitors.map(({ chord }) => names.chord(chord))),
      });
    }
    case 'home-in-a-mode':
      return fill(policyWords['home-in-a-mode'], {
        parent: names.key(change.parent),
        key: names.key(change.key),
        numerals: numerals(change.numerals),
      });
    case 'blues':
      return fill(policyWords.blues, { tonic: names.note(change.tonic), numerals: numerals(change.numerals) });
  }
}

type Visitors = Extract<WirePolicyChange, { readonly visitors: unknown }>['visitors'];

/** Where visitors come from, if all come from one place. */
function placeOf(visitors: Visitors): keyof (typeof policyWords)['home-key-with-visitor'] {
  const [first, ...others] = visitors;
  if (first === undefined) return 'several';
  if (others.every(({ visit, of }) => visit === first.visit && of === first.of)) return first.visit;
  return visitors.every(({ visit }) => visit === 'dorian' || visit === 'raised-seventh') ? 'risen' : 'several';
}

function raisedSentence(
  words: { readonly one: string; readonly several: string },
  keys: Extract<WirePolicyChange, { readonly keys: unknown }>['keys'],
  names: PrintedNames,
): string {
  const [only, ...others] = keys;
  if (only === undefined || others.length > 0)
    return fill(words.several, { keys: listed(keys.map(({ key }) => names.key(key))) });
  return fill(words.one, {
    key: names.key(only.key),
    seventh: names.note(only.seventh),
    numerals: only.numerals.map(names.numeral).join('–'),
  });
}
