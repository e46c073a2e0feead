import { changeLimits, exactly, homeShare, moves, onChange, rootCap, seventhShare } from './change-limits.ts';
import { bassPitchClass, chordSymbol, type Chord } from './chords.ts';
import type { Draw } from './draws.ts';
import { itemAt } from './items.ts';
import type { Balance, Form, Level, ShareRange } from './level.ts';
import { addedBy } from './pools.ts';
import type { Limit } from './rake.ts';
import type { Direction } from './truth.ts';

/** No more than this share for one bass: always saying it earns little. */
const BASS_CAP = 0.13;
/** No loop is rarer or more usual than so many times its even share. */
const LOOP_FLOOR = 0.5;
const LOOP_CAP = 2.4;
/** Where the bass never stays, no more vamps than these start on the lowest note, from which there is only up. */
const LOWEST_CAP = 0.06;
/** Where longer loops are asked for numerals, none is more usual. */
const NUMERALS_CAP = 0.06;

/** What is balanced about the draws of a level in one form, what matters most last: that is met best. */
export function limitsOf(level: Level, form: Form, stays: number, draws: readonly Draw[]): readonly Limit<Draw>[] {
  const loopName = (draw: Draw) => draw.loop.map(chordSymbol).join(' ');
  const loops = new Set(draws.map(loopName)).size;
  const cap = rootCap(draws.map(({ root }) => root));
  const oneKey = level.balance.oneKey[form];
  const upAlone =
    level.questions.includes('direction') && draws.every(({ changes }) => changes.length > 0 && changes.every(moves));
  const places = Array.from(
    { length: Math.max(0, ...draws.map(({ changes }) => changes.length)) },
    (_, place) => place,
  );
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
  const familiar = level.balance.familiar?.[form];
  const isAdded = familiar === undefined ? null : addedBy(level, form);
  const over = offRoot ? offRootLimits(offRoot, draws) : [];
  return [
    overall(loopName, () => [LOOP_FLOOR / loops, LOOP_CAP / loops]),
    ...over,
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
      ({ loop }) => (isAdded ? String(isAdded(loop)) : null),
      (group) => exactly(group === 'true' ? 1 - (familiar ?? 0) : (familiar ?? 0)),
    ),
    overall(
      ({ readings }) => (owners < 1 ? readings.map(({ id }) => id).join() : null),
      () => [0, owners],
    ),
    overall(({ seventh }) => (level.balance.sevenths?.[form] ? seventh : null), seventhShare(level, form)),
    overall(({ quality }) => quality, homeShare(level, form)),
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

/** How often a bass lies off its chord's root, in each slot, and how usual one bass is there. */
function offRootLimits(
  { home, later, minor }: NonNullable<Balance['offRoot']>,
  draws: readonly Draw[],
): readonly Limit<Draw>[] {
  const isOver = ({ bass }: Chord) => bass !== undefined;
  const bySlot = Array.from({ length: draws[0]?.loop.length ?? 0 }, (_, slot): readonly Limit<Draw>[] => [
    overall(
      ({ loop }) => String(isOver(itemAt(loop, slot))),
      (group) => shareOf(group === 'true', slot === 0 ? home : later),
    ),
    overall(
      ({ loop }) => String(bassPitchClass(itemAt(loop, slot))),
      () => [0, BASS_CAP],
    ),
  ]);
  const minorOver = overall(
    ({ loop }) => String(loop.some((chord) => isOver(chord) && chord.quality === 'minor')),
    (group) => shareOf(group === 'true', [0, minor]),
  );
  return [minorOver, ...bySlot.flat()];
}

function overall(group: (draw: Draw) => string | null, share: (group: string) => ShareRange): Limit<Draw> {
  return { within: () => 'all', group, share };
}

/** The range of those that are so, or of those that are not. */
function shareOf(so: boolean, [low, high]: ShareRange): ShareRange {
  return so ? [low, high] : [1 - high, 1 - low];
}
