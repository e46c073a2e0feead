import type { ShareRange } from './level.ts';

/**
 * One thing to be balanced: among the items of a class, each group keeps a share of the class's weight. `within` and `group`
 * give null for items that the limit does not touch.
 */
export type Limit<Item> = {
  readonly within: (item: Item) => string | null;
  readonly group: (item: Item) => string | null;
  readonly share: (group: string, within: string) => ShareRange;
};

const ROUNDS = 400;
/** Factors this near to 1 leave the weights as they are. */
const SETTLED = 1e-4;

type Cell = { readonly members: readonly number[]; readonly range: ShareRange };

function cellsOf<Item>(items: readonly Item[], limit: Limit<Item>): readonly (readonly Cell[])[] {
  const classes = new Map<string, Map<string, number[]>>();
  for (const [index, item] of items.entries()) {
    const within = limit.within(item);
    const group = limit.group(item);
    if (within === null || group === null) continue;
    const groups = classes.get(within) ?? new Map<string, number[]>();
    classes.set(within, groups);
    const members = groups.get(group);
    if (members) members.push(index);
    else groups.set(group, [index]);
  }
  return [...classes].flatMap(([within, groups]) =>
    // A class of one group has nothing to balance.
    groups.size < 2
      ? []
      : [[...groups].map(([group, members]): Cell => ({ members, range: limit.share(group, within) }))],
  );
}

/**
 * Weights as near to the given ones as the limits allow: iterative proportional fitting (Deming and Stephan, "On a least
 * squares adjustment of a sampled frequency table", 1940), with ranges in place of exact shares.
 */
export function rake<Item>(
  items: readonly Item[],
  weights: readonly number[],
  limits: readonly Limit<Item>[],
): number[] {
  const raked = [...weights];
  const classes = limits.flatMap((limit) => cellsOf(items, limit));
  const weigh = (members: readonly number[]) => members.reduce((sum, index) => sum + (raked[index] ?? 0), 0);
  for (let round = 0; round < ROUNDS; round += 1) {
    let moved = 0;
    for (const cells of classes) {
      const masses = cells.map((cell) => weigh(cell.members));
      const total = masses.reduce((sum, mass) => sum + mass, 0);
      for (const [index, { members, range }] of cells.entries()) {
        const share = (masses[index] ?? 0) / total;
        if (!(share > 0)) continue;
        const factor = Math.min(range[1], Math.max(range[0], share)) / share;
        if (Math.abs(factor - 1) < SETTLED) continue;
        moved = Math.max(moved, Math.abs(factor - 1));
        for (const member of members) raked[member] = (raked[member] ?? 0) * factor;
      }
    }
    if (moved === 0) break;
  }
  return raked;
}
