import { generate, type GeneratedVamp } from '../../shared-theory/generate.ts';

/** A long evening of a level: each vamp knows those before it. Chords are counted where asked. */
export function evening(level: number, count: number, counting?: boolean): readonly GeneratedVamp[] {
  const made: GeneratedVamp[] = [];
  for (let seed = 0; seed < count; seed += 1) {
    const recent = made.slice(-8).map(({ vamp }) => vamp);
    made.push(generate(counting === undefined ? { level, seed, recent } : { level, seed, counting, recent }));
  }
  return made;
}

/** The share of each group among the items. */
export function shares<T>(items: readonly T[], group: (item: T) => string | number): Map<string, number> {
  const counts = new Map<string, number>();
  for (const item of items) counts.set(String(group(item)), (counts.get(String(group(item))) ?? 0) + 1 / items.length);
  return counts;
}

/** The mean of some figure where a condition holds, beside the mean where it does not, in standard deviations; 0 where all are one. */
export function gap<T>(items: readonly T[], figure: (item: T) => number, holds: (item: T) => boolean): number {
  const [those, others] = [items.filter(holds), items.filter((item) => !holds(item))];
  if (those.length === 0 || others.length === 0) return 0;
  const mean = (list: readonly T[]) => list.reduce((sum, item) => sum + figure(item), 0) / list.length;
  const all = mean(items);
  const deviation = Math.sqrt(items.reduce((sum, item) => sum + (figure(item) - all) ** 2, 0) / items.length);
  return Math.abs(mean(those) - mean(others)) / deviation;
}
