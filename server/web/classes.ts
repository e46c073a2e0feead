import type { RoomSettings } from '../protocol/messages.ts';
import { consoleWords } from '../protocol/words/en.ts';
import { DEFAULT_SETTINGS } from '../rooms/settings.ts';
import type { EventStore } from '../store/event-store.ts';

/** The class whose settings a new room copies; made at the first start. */
export async function ensureClass(
  store: EventStore,
): Promise<{ readonly id: string; readonly settings: RoomSettings }> {
  const [first] = await store.classes();
  // Settings that came later than the class take their first value.
  if (first !== undefined) {
    return {
      id: first.id,
      settings: { ...DEFAULT_SETTINGS, ...(JSON.parse(first.settings) as Partial<RoomSettings>) },
    };
  }
  await store.putClass({
    id: 'class-1',
    name: consoleWords.server.firstClass,
    settings: JSON.stringify(DEFAULT_SETTINGS),
  });
  return { id: 'class-1', settings: DEFAULT_SETTINGS };
}
