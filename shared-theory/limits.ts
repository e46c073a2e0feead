import { bassPitchClass, chordSymbol, type Quality } from './chords.ts';
import type { Distance } from './distance-line.ts';
import type { Change, Draw } from './draws.ts';
import { itemAt } from './items.ts';
import type { Form, Level, ShareRange } from './level.ts';
import type { PitchClass } from './pitch.ts';
import type { Limit } from './rake.ts';
import type { Direction, Seventh } from './truth.ts';

/** No more than this share for one distance, one root: always saying it earns little. */
const DISTANCE_CAP = 0.24;
const ROOT_CAP = 0.15;
const BASS_CAP = 0.13;
/** Caps are aimed at with a margin, so that a run of vamps stays under them. */
const MARGIN = 0.9;
/** No loop is rarer or more usual than so many times its even share. */
const LOOP_FLOOR = 0.5;
const LOOP_CAP = 2.4;
/** No kind of pair is rarer than so many times its even share, nor more usual where numerals are asked. */
const KIND_FLOOR = 0.3;
const KIND_CAP = 1.4;

/** Where the bass never stays, no more vamps than these start on the lowest note, from which there is only up. */
const LOWEST_CAP = 0.06;

const ANY: ShareRange = [0, 1];
/** Which way the bass goes from a root or over a distance follows the guitar's low strings; beyond this it would tell. */
const NEAR_HALF: ShareRange = [0.35, 0.65];
/** What one chord tells of another of its round, where usual rounds leave no more to choose. */
const LOOSE: ShareRange = [0.32, 0.68];
/** Where longer loops are asked for numerals, none is more usual. */
const NUMERALS_CAP = 0.06;

/** The same limit on the change to each chord that follows home. */
type ChangeLimit = {
  readonly within?: (change: Change, draw: Draw) => string | null;
  readonly group: (change: Change, draw: Draw) => string | null;
  readonly share: (group: string, within: string) => ShareRange;
};

function onChange(place: number, { within = () => 'all', group, share }: ChangeLimit): Limit<Draw> {
  const at = (read: (change: Change, draw: Draw) => string | null) => (draw: Draw) => {
    const change = draw.changes[place];
    return change ? read(change, draw) : null;
  };
  return { within: at(within), group: at(group), share };
}

function moves({ direction }: Change): boolean {
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

const exactly = (share: number): ShareRange => [share, share];

function rootCap(roots: readonly PitchClass[]): ShareRange {
  return [0, Math.max(ROOT_CAP, 1.3 / new Set(roots).size) * MARGIN];
}

/** Limits on one change, those that matter most last: they are met best. */
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
function changeLimits(level: Level, form: Form, changes: readonly Change[], draws: readonly Draw[]): ChangeLimit[] {
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

function qualityShare({ balance }: Level, form: Form): (group: string) => ShareRange {
  const { power } = balance;
  const own = balance.qualities?.[form];
  return (group) => own?.[group as Quality] ?? exactly(group === 'power' ? power : (1 - power) / 2);
}

function seventhShare({ balance }: Level, form: Form): (group: string) => ShareRange {
  return (group) => balance.sevenths?.[form]?.[group as Seventh] ?? ANY;
}

/** What is balanced about the draws of a level in one form, what matters most last: that is met best. */
export function limitsOf(level: Level, form: Form, stays: number, draws: readonly Draw[]): readonly Limit<Draw>[] {
  const overall = (group: (draw: Draw) => string | null, share: (group: string) => ShareRange): Limit<Draw> => ({
    within: () => 'all',
    group,
    share,
  });
  const loopName = (draw: Draw) => draw.loop.map(chordSymbol).join(' ');
  const loops = new Set(draws.map(loopName)).size;
  const cap = rootCap(draws.map(({ root }) => root));
  const oneKey = level.balance.oneKey[form];
  const upAlone =
    level.questions.includes('direction') && draws.every(({ changes }) => changes.length > 0 && changes.every(moves));
  const places = Array.from({ length: draws[0]?.changes.length ?? 0 }, (_, place) => place);
  const onChanges = places.map((place) => {
    const changes = draws.flatMap((draw) => draw.changes[place] ?? []);
    return changeLimits(level, form, changes, draws).map((limit) => onChange(place, limit));
  });
  const directions = { same: exactly(stays), up: exactly((1 - stays) / 2), down: exactly((1 - stays) / 2) };
  const onDirections = places.map((place) =>
    onChange(place, { group: ({ direction }) => direction, share: (group) => directions[group as Direction] }),
  );
  const { owners = 1, offRoot } = level.balance;
  const noKey = level.balance.noKey?.[form];
  const over = offRoot
    ? Array.from({ length: draws[0]?.loop.length ?? 0 }, (_, slot) => [
        overall(
          ({ loop }) => String(loop[slot]?.bass !== undefined),
          (group) => shareOf(group === 'true', slot === 0 ? offRoot.home : offRoot.later),
        ),
        overall(
          ({ loop }) => String(bassPitchClass(itemAt(loop, slot))),
          () => [0, BASS_CAP],
        ),
      ]).flat()
    : [];
  return [
    overall(loopName, () => [LOOP_FLOOR / loops, LOOP_CAP / loops]),
    ...onChanges.flat(),
    overall(
      ({ readings }) => (oneKey === undefined ? null : String(readings.length === 1)),
      (group) => exactly(group === 'true' ? (oneKey ?? 0) : 1 - (oneKey ?? 0)),
    ),
    overall(
      ({ readings }) =>
        level.leadsOn && level.questions.includes('numeral') ? (readings[0]?.numerals.join() ?? null) : null,
      () => [0, NUMERALS_CAP],
    ),
    overall(
      ({ readings }) => (noKey === undefined ? null : String(readings.length === 0)),
      (group) => exactly(group === 'true' ? (noKey ?? 0) : 1 - (noKey ?? 0)),
    ),
    overall(
      ({ readings }) => (owners < 1 ? readings.map(({ id }) => id).join() : null),
      () => [0, owners],
    ),
    ...over,
    overall(({ seventh }) => (level.balance.sevenths?.[form] ? seventh : null), seventhShare(level, form)),
    overall(({ quality }) => quality, qualityShare(level, form)),
    overall(
      ({ root }) => String(root),
      () => cap,
    ),
    overall(
      ({ lowest }) => (upAlone ? String(lowest) : null),
      (group) => [0, group === 'true' ? LOWEST_CAP : 1],
    ),
    ...(level.leadsOn ? [] : onDirections),
  ];
}

/** The range of those that are so, or of those that are not. */
function shareOf(so: boolean, [low, high]: ShareRange): ShareRange {
  return so ? [low, high] : [1 - high, 1 - low];
}
