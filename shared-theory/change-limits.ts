import type { Quality } from './chords.ts';
import type { Distance } from './distance-line.ts';
import type { Change, Draw } from './draws.ts';
import type { Form, Level, ShareRange } from './level.ts';
import type { PitchClass } from './pitch.ts';
import type { Limit } from './rake.ts';
import type { Seventh } from './truth.ts';

/** No more than this share for one distance, one root: always saying it earns little. */
const DISTANCE_CAP = 0.24;
const ROOT_CAP = 0.15;
/** Caps are aimed at with a margin, so that a run of vamps stays under them. */
const MARGIN = 0.9;
/** No kind of pair is rarer than so many times its even share, nor more usual where numerals are asked. */
const KIND_FLOOR = 0.3;
const KIND_CAP = 1.4;
const ANY: ShareRange = [0, 1];
/** Which way the bass goes from a root or over a distance follows the guitar's low strings; beyond this it would tell. */
const NEAR_HALF: ShareRange = [0.35, 0.65];
/** What one chord tells of another of its round, where usual rounds leave no more to choose. */
const LOOSE: ShareRange = [0.32, 0.68];

/** The same limit on the change to each chord that follows home. */
type ChangeLimit = {
  readonly within?: (change: Change, draw: Draw) => string | null;
  readonly group: (change: Change, draw: Draw) => string | null;
  readonly share: (group: string, within: string) => ShareRange;
};

export function onChange(place: number, { within = () => 'all', group, share }: ChangeLimit): Limit<Draw> {
  const at = (read: (change: Change, draw: Draw) => string | null) => (draw: Draw) => {
    const change = draw.changes[place];
    return change ? read(change, draw) : null;
  };
  return { within: at(within), group: at(group), share };
}

export function moves({ direction }: Change): boolean {
  return direction !== 'same';
}

/**
 * Up and down share each class of moving changes as near to halves as `range`. From the lowest note of a guitar there is only
 * up, and a step is never turned into a seventh: such a class is left alone.
 */
function evenDirections(within: (change: Change, draw: Draw) => string, range: ShareRange = NEAR_HALF): ChangeLimit {
  return {
    within: (change, draw) => (moves(change) ? within(change, draw) : null),
    group: ({ direction }) => direction,
    share: () => range,
  };
}

export const exactly = (share: number): ShareRange => [share, share];

export function rootCap(roots: readonly PitchClass[]): ShareRange {
  return [0, Math.max(ROOT_CAP, 1.3 / new Set(roots).size) * MARGIN];
}

/** Which way the bass goes hangs neither on where it starts nor on where it goes to, nor on the top note. */
const WAYS: readonly ChangeLimit[] = [
  evenDirections(({ root }) => `to ${root}`, [0.2, 0.8]),
  {
    within: (change) => (moves(change) ? change.direction : null),
    group: ({ together }) => (together ? 'together' : 'apart'),
    share: () => [0.4, 0.6],
  },
  evenDirections(({ quality }, draw) => `${draw.quality} ${quality}`, [0.45, 0.55]),
  evenDirections((_, draw) => `from ${draw.root}`, [0.44, 0.56]),
  evenDirections(({ distance }) => distance, [0.42, 0.58]),
  // From the lowest note there is up or stays, where a level knows it.
  {
    within: (_, { lowest }) => (lowest ? 'lowest' : null),
    group: ({ direction }) => direction,
    share: (group) => (group === 'up' ? [0, 0.5] : ANY),
  },
];

/** Limits on one change, those that matter most last: they are met best. */
export function changeLimits(
  level: Level,
  form: Form,
  changes: readonly Change[],
  draws: readonly Draw[],
): ChangeLimit[] {
  const distanceShare = (distance: string): ShareRange => {
    const [low, high] = level.balance.distances[distance as Distance] ?? [0, distance === '1' ? 1 : DISTANCE_CAP];
    // Two changes of one loop cannot both fall as the pairs of a level do: there a distance may be rarer.
    return [form === 'pair' ? low : 0, high];
  };
  const { leadsOn } = level;
  const kind = ({ quality, distance }: Change, draw: Draw) => `${draw.quality} ${quality} ${distance}`;
  const kinds = new Set(draws.flatMap((draw) => draw.changes.map((change) => kind(change, draw)))).size;
  const kindCap = level.questions.includes('numeral') ? KIND_CAP / kinds : 1;
  const cap = rootCap(changes.map(({ root }) => root));
  const { sevenths } = level.balance;
  return [
    // A kind of pair that the level holds is never left out.
    ...(leadsOn ? [] : [{ group: kind, share: (): ShareRange => [KIND_FLOOR / kinds, kindCap] }]),
    {
      within: (_, draw) => draw.quality,
      group: ({ quality }) => quality,
      share: (group, within) => (THIRDS.has(group) && THIRDS.has(within) ? (leadsOn ? LOOSE : [0.44, 0.56]) : ANY),
    },
    ...(leadsOn ? [] : WAYS),
    // I to IV is as usual as V to I, and IV to I as I to V.
    {
      within: ({ distance, quality }, draw) =>
        distance === '4' || distance === '5' ? `${draw.quality} ${quality}` : null,
      group: ({ distance }) => distance,
      share: () => (leadsOn ? LOOSE : [0.45, 0.55]),
    },
    {
      // Of one chord over another bass no distance is asked.
      group: ({ distance }) => (leadsOn && distance === '1' ? null : distance),
      share: distanceShare,
    },
    ...(sevenths?.[form] ? [{ group: ({ seventh }: Change) => seventh, share: seventhShare(level, form) }] : []),
    { group: ({ quality }) => quality, share: qualityShare(level, form) },
    { group: ({ root }) => String(root), share: () => cap },
  ];
}

const THIRDS: ReadonlySet<string> = new Set<Quality>(['major', 'minor']);

/** How home falls: as the chords after it, unless the level says otherwise. */
export function homeShare(level: Level, form: Form): (group: string) => ShareRange {
  const { home } = level.balance;
  const others = qualityShare(level, form);
  return (group) => home?.[group as Quality] ?? others(group);
}

function qualityShare({ balance }: Level, form: Form): (group: string) => ShareRange {
  const { power } = balance;
  const own = balance.qualities?.[form];
  return (group) => own?.[group as Quality] ?? exactly(group === 'power' ? power : (1 - power) / 2);
}

export function seventhShare({ balance }: Level, form: Form): (group: string) => ShareRange {
  return (group) => balance.sevenths?.[form]?.[group as Seventh] ?? ANY;
}
