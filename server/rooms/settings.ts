import { QUALITIES } from '../../shared-theory/chords.ts';
import { POLICIES } from '../../shared-theory/truth.ts';
import type { RoomSettings } from '../protocol/messages.ts';

/** What a class begins with: major keys only, two qualities on the pad, no names on the host screen, and the sound follows the questions. */
export const DEFAULT_SETTINGS: RoomSettings = {
  policy: 'majors',
  qualities: ['major', 'minor'],
  namesShown: false,
  soundFollows: true,
};

/** What is wrong with settings that shall hold; null where nothing is. */
export function wrongSetting({ policy, qualities }: Partial<RoomSettings>): string | null {
  if (policy !== undefined && !POLICIES.includes(policy)) return `policy ${JSON.stringify(policy)}`;
  if (qualities === undefined) return null;
  const known = new Set<string>(QUALITIES);
  const unknown = qualities.find((quality) => !known.has(quality));
  if (unknown !== undefined) return `quality ${JSON.stringify(unknown)}`;
  if (new Set(qualities).size !== qualities.length) return 'a quality twice on the pad';
  return qualities.length < 2 ? 'fewer than two qualities on the pad' : null;
}
