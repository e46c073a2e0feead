import { MOST_GROOVES, type RoomSettings } from '../protocol/messages.ts';
import { consoleWords } from '../protocol/words/en.ts';
import { readOwnGroove } from '../rooms/own-grooves.ts';
import { classSettings, DEFAULT_SETTINGS } from '../rooms/settings.ts';
import type { EventStore } from '../store/event-store.ts';

/** The class whose settings a new room copies, as its rooms have left them; made at the first start. */
export async function ensureClass(
  store: Pick<EventStore, 'classes' | 'putClass'>,
): Promise<{ readonly id: string; readonly settings: RoomSettings }> {
  const [first] = await store.classes();
  if (first !== undefined) {
    const settings = classSettings(first.settings);
    // A groove that another version wrote stays with the class, and out of the room; so do the oldest where several rooms have saved
    // more between them than one room may have.
    const grooves = settings.grooves.filter((text) => !('reason' in readOwnGroove(text))).slice(-MOST_GROOVES);
    return { id: first.id, settings: { ...settings, grooves } };
  }
  await store.putClass({
    id: 'class-1',
    name: consoleWords.server.firstClass,
    settings: JSON.stringify(DEFAULT_SETTINGS),
  });
  return { id: 'class-1', settings: DEFAULT_SETTINGS };
}
