import { QUALITIES } from '../../shared-theory/chords.ts';
import { POLICIES } from '../../shared-theory/truth.ts';
import { HIGHEST_CAPO, NAMINGS } from '../protocol/messages.ts';
import type { RoomSettings } from '../protocol/messages.ts';

/**
 * What a class begins with: major keys only, English names, no capo, a chord over another bass is the same chord, two qualities on
 * the pad, no names on the host screen, and the sound follows the questions.
 */
export const DEFAULT_SETTINGS: RoomSettings = {
  policy: 'majors',
  naming: 'english',
  capo: 0,
  slashIsNew: false,
  qualities: ['major', 'minor'],
  namesShown: false,
  soundFollows: true,
};

/** What is wrong with settings that shall hold; null where nothing is. */
export function wrongSetting({ policy, naming, capo, qualities }: Partial<RoomSettings>): string | null {
  if (policy !== undefined && !POLICIES.includes(policy)) return `policy ${JSON.stringify(policy)}`;
  if (naming !== undefined && !NAMINGS.includes(naming)) return `naming ${JSON.stringify(naming)}`;
  if (capo !== undefined && !(Number.isInteger(capo) && capo >= 0 && capo <= HIGHEST_CAPO)) {
    return `a capo on fret ${capo}: 0 for none to ${HIGHEST_CAPO}`;
  }
  if (qualities === undefined) return null;
  const known = new Set<string>(QUALITIES);
  const unknown = qualities.find((quality) => !known.has(quality));
  if (unknown !== undefined) return `quality ${JSON.stringify(unknown)}`;
  if (new Set(qualities).size !== qualities.length) return 'a quality twice on the pad';
  return qualities.length < 2 ? 'fewer than two qualities on the pad' : null;
}
