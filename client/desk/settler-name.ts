import type { WireSettler } from '../../server/protocol/views.ts';
import { printChord, printNote } from '../shared/names.ts';

/** What settles a loop, as it is named: a chord, or the note that is sung. */
export function settlerName(settler: WireSettler): string {
  return 'note' in settler ? printNote(settler.note).text : printChord(settler.chord).text;
}
