import { grooveLine } from '../../../shared-theory/grooves.ts';
import { MOST_GROOVES } from '../../protocol/messages.ts';
import type { CommandOf, Decision } from '../commands.ts';
import { already, happens, refuse } from '../commands.ts';
import { grooveId, readOwnGroove } from '../own-grooves.ts';
import type { RoomState } from '../state.ts';

/** Keeps a groove of the class's own, in place of one of the same id. */
export function saveGroove({ settings }: RoomState, { text: typed }: CommandOf<'SaveGroove'>): Decision {
  const groove = readOwnGroove(typed);
  if ('reason' in groove) return groove;
  const text = grooveLine(groove);
  const value = { groove: groove.id };
  if (settings.grooves.includes(text)) return already(value);
  const isNew = !settings.grooves.some((each) => grooveId(each) === groove.id);
  if (isNew && settings.grooves.length >= MOST_GROOVES) return refuse('too-many-grooves', { most: MOST_GROOVES });
  return happens([{ type: 'GrooveSaved', text }], value);
}

/** Rounds that were played in it keep what they were played in. */
export function eraseGroove({ settings }: RoomState, { groove }: CommandOf<'EraseGroove'>): Decision {
  const there = settings.grooves.map(grooveId);
  if (there.includes(groove)) return happens([{ type: 'GrooveErased', groove }]);
  return refuse('groove-unknown', { found: groove, known: there.join(', ') });
}
