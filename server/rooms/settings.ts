import { QUALITIES } from '../../shared-theory/chords.ts';
import { PITCH_RANGE, STEEL, VOICES } from '../../shared-theory/sound/instrument.ts';
import { POLICIES } from '../../shared-theory/truth.ts';
import { HIGHEST_CAPO, NAMINGS } from '../protocol/messages.ts';
import type { RoomSettings } from '../protocol/messages.ts';
import { beatLevelFault } from './beat-level.ts';
import type { RoomEvent } from './events.ts';
import { groovesFault, withGroove, withoutGroove } from './own-grooves.ts';

/**
 * What a class begins with: major keys only, English names, no capo, a chord over another bass is the same chord, two qualities on
 * the pad, no names on the host screen, the sound follows the questions; steel strings at the usual pitch, nobody beside them, and
 * the first beat level.
 */
export const DEFAULT_SETTINGS: RoomSettings = {
  policy: 'majors',
  naming: 'english',
  capo: 0,
  slashIsNew: false,
  qualities: ['major', 'minor'],
  namesShown: false,
  soundFollows: true,
  ...STEEL,
  band: { kit: false, bass: false },
  beatLevel: 1,
  grooves: [],
};

/** What changes settings: those of a room, and with them those of its class. */
export type SettingsEvent = Extract<RoomEvent, { type: 'SettingsChanged' | 'GrooveSaved' | 'GrooveErased' }>;

/** Settings after one change. */
export function settingsAfter(settings: RoomSettings, event: SettingsEvent): RoomSettings {
  switch (event.type) {
    case 'SettingsChanged':
      return { ...settings, ...event.settings };
    case 'GrooveSaved':
      return { ...settings, grooves: withGroove(settings.grooves, event.text) };
    case 'GrooveErased':
      return { ...settings, grooves: withoutGroove(settings.grooves, event.groove) };
  }
}

/** Settings of a class as they are kept. Those that came later than the class take their first value. */
export function classSettings(stored: string): RoomSettings {
  return { ...DEFAULT_SETTINGS, ...(JSON.parse(stored) as Partial<RoomSettings>) };
}

/** Settings of a class as they are kept, after changes in one of its rooms. */
export function classAfter(stored: string, changes: readonly SettingsEvent[]): string {
  return JSON.stringify(changes.reduce(settingsAfter, classSettings(stored)));
}

/** Whether an event changes settings. */
export function isSettingsEvent(event: RoomEvent): event is SettingsEvent {
  return event.type === 'SettingsChanged' || event.type === 'GrooveSaved' || event.type === 'GrooveErased';
}

/** What is wrong with settings that shall hold; null where nothing is. */
export function wrongSetting(settings: Partial<RoomSettings>): string | null {
  const { policy, naming, capo, qualities, voice, pitch, beatLevel, grooves } = settings;
  if (policy !== undefined && !POLICIES.includes(policy)) return `policy ${JSON.stringify(policy)}`;
  if (naming !== undefined && !NAMINGS.includes(naming)) return `naming ${JSON.stringify(naming)}`;
  if (capo !== undefined && !(Number.isInteger(capo) && capo >= 0 && capo <= HIGHEST_CAPO)) {
    return `a capo on fret ${capo}: 0 for none to ${HIGHEST_CAPO}`;
  }
  if (voice !== undefined && !VOICES.includes(voice)) return `voice ${JSON.stringify(voice)}: ${VOICES.join(', ')}`;
  const [lowest, highest] = PITCH_RANGE;
  if (pitch !== undefined && !(pitch >= lowest && pitch <= highest)) {
    return `a pitch of ${pitch} hertz: ${lowest} to ${highest}`;
  }
  if (beatLevel !== undefined && beatLevelFault(beatLevel) !== null) return `beat level ${beatLevel}`;
  return (qualities && wrongPad(qualities)) ?? (grooves && groovesFault(grooves)) ?? null;
}

function wrongPad(qualities: readonly string[]): string | null {
  const known = new Set<string>(QUALITIES);
  const unknown = qualities.find((quality) => !known.has(quality));
  if (unknown !== undefined) return `quality ${JSON.stringify(unknown)}`;
  if (new Set(qualities).size !== qualities.length) return 'a quality twice on the pad';
  return qualities.length < 2 ? 'fewer than two qualities on the pad' : null;
}
