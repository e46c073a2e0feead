import type { HeardLoop, HeardStroke } from './heard-bars.ts';
import { onSlots } from './heard-bars.ts';
import type { OnSlot, Role } from './rhythm-truth.ts';

const rings = ({ touch }: HeardStroke) => touch === 'open' || touch === 'ring';

/** Which piece of a kit a stroke imitates, as solo players do it (common practice); null where it stands for none. */
export function roleOf(stroke: HeardStroke): Exclude<Role, 'silent'> | null {
  const { touch, reach } = stroke;
  if (reach === 'low' && (touch === 'palm' || touch === 'dead')) return 'kick';
  if (reach === 'full' && touch === 'dead') return 'slap';
  if (reach === 'high' && touch === 'choke') return 'closed';
  return reach === 'high' && stroke.stroke === 'up' && rings(stroke) ? 'open' : null;
}

/**
 * Roles by slot. The stroke that opens a chord may stand for none where the slot has one in other bars. null where a slot never has
 * one though it sounds, and where fewer than two sound.
 */
export function rolesOf(loop: HeardLoop): readonly OnSlot<Role>[] | null {
  const heard = onSlots(loop, (stroke) => (stroke ? roleOf(stroke) : 'silent'));
  const roles: OnSlot<Role>[] = [];
  for (const slot of heard) {
    const [first, ...others] = slot.filter((role) => role !== null);
    if (first === undefined || (slot.includes(null) && first === 'silent' && others.length === 0)) return null;
    roles.push([first, ...others]);
  }
  const sounding = new Set(roles.flat().filter((role) => role !== 'silent'));
  return sounding.size < 2 ? null : roles;
}

/** Slots that usually ring open where others are muted or stopped short; null where all or none do. */
export function openedOf(loop: HeardLoop): readonly number[] | null {
  const usual = onSlots(loop, (stroke) => (stroke ? rings(stroke) : null)).map(([first]) => first);
  const opened = usual.flatMap((ring, slot) => (ring === true ? [slot] : []));
  return opened.length > 0 && usual.includes(false) ? opened : null;
}

/** Slots whose stroke usually knocks, a hand lying on the strings, where others do not; none where all do. */
export function mutedOf(loop: HeardLoop): readonly number[] {
  const knocks = (stroke: HeardStroke | null): boolean => stroke?.touch === 'dead' || stroke?.touch === 'palm';
  const usual = onSlots(loop, (stroke) => (stroke ? knocks(stroke) : null)).map(([first]) => first);
  return usual.includes(false) ? usual.flatMap((muted, slot) => (muted === true ? [slot] : [])) : [];
}
