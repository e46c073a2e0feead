import type { WireSettler } from '../../server/protocol/views.ts';
import { printChord, printNote } from './names.ts';

/** Whether it is a note that is sung over the loop; otherwise a chord behind it. */
export const isSung = (settler: WireSettler): settler is Extract<WireSettler, { readonly note: string }> =>
  'note' in settler;

/** What settles a loop, as it is named: a chord, or the note that is sung. */
export function settlerName(settler: WireSettler): string {
  return isSung(settler) ? printNote(settler.note).text : printChord(settler.chord).text;
}
