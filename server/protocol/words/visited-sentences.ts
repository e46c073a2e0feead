import type { WireVisitedKey } from '../views.ts';
import { listed } from './counting.ts';
import { cribWords } from './crib-words.ts';
import { fill } from './fill.ts';

/** How the names in a sentence are printed, each from ASCII. */
type PrintedNames = Readonly<Record<'key' | 'numeral', (name: string) => string>>;

/**
 * A key that owns a loop but for its visitors, its numerals, and where its visitors come from: `C major: I–III7–vi–V; III7: V7 of
 * vi`.
 */
export function visitedSentence({ key, numerals, visitors }: WireVisitedKey, names: PrintedNames): string {
  const { said, visit, applied, byVisit } = cribWords.visited;
  const places = visitors.map((visitor) => {
    if (visitor.visit !== 'applied') return byVisit[visitor.visit];
    const [chord = '', goal = ''] = visitor.of?.split('/') ?? [];
    return fill(applied, { chord: names.numeral(chord), goal: names.numeral(goal) });
  });
  const visits = [...new Set(places)].map((from) => {
    const guests = visitors.filter((_, index) => places[index] === from).map(({ numeral }) => names.numeral(numeral));
    return fill(visit, { numeral: listed(guests), from });
  });
  return fill(said, {
    key: names.key(key),
    numerals: numerals.map(names.numeral).join('–'),
    visits: visits.join('; '),
  });
}
