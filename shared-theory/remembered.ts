/** More than a class hears in a term; thousands of vamps are drawn from far fewer loops. */
const REMEMBERED = 4000;

/** What was worked out for a key before, or is now; forgotten all together where it grows too much. */
export function remembered<T>(known: Map<string, T>, key: string, work: () => T): T {
  const found = known.get(key);
  if (found !== undefined) return found;
  if (known.size >= REMEMBERED) known.clear();
  const made = work();
  known.set(key, made);
  return made;
}
