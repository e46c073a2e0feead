import { withBand } from '../../shared-theory/band.ts';
import { withRootBass } from '../../shared-theory/grooves.ts';
import { grooveOf, perform, type Performance } from '../../shared-theory/perform.ts';
import { SCORE_LOOPS } from '../../shared-theory/sound/musicxml.ts';
import type { VoicedVamp } from '../../shared-theory/vamps.ts';
import { shapesGoing, tempoRange } from '../../shared-theory/voice.ts';
import type { Keeper } from '../keeper/keeper.ts';
import type { RoomSettings } from '../protocol/messages.ts';
import { refuse, type Refusal } from '../rooms/commands.ts';
import type { HeardRound } from '../rooms/events.ts';
import { vampOf } from '../rooms/heard-round.ts';
import { vampMidi } from '../vamp-midi.ts';
import { vampMusicXml } from '../vamp-musicxml.ts';
import type { WavMaker } from '../wav/maker.ts';
import type { SoundJob } from '../wav/sound-file.ts';
import type { RoomFile } from './files.ts';

/** Files that a round can be had as, by their extensions: sound, notes for sequencers, notes for notation programs. */
export const ROUND_FILES = ['wav', 'mid', 'musicxml'] as const;
export type RoundFileKind = (typeof ROUND_FILES)[number];

/** Beats a minute of a round whose tempo the teacher did not name. */
const USUAL_TEMPO = 90;

/** Bars that a sound lasts at least: a short loop goes round until then. */
const LEAST_BARS = 8;

/** Seconds that a sound lasts at most: some fifty megabytes. */
const MOST_SECONDS = 600;

/**
 * A round as it sounds: what the host played, or the teacher's chords in the shapes that send the bass where he said it went,
 * with the strokes he named or one a chord.
 */
function soundingVamp(round: HeardRound): VoicedVamp {
  const vamp = vampOf(round);
  if (round.source === 'host') return vamp;
  const shapes = shapesGoing(vamp.slots, round.truth.directions);
  const [low, high] = tempoRange(grooveOf(vamp));
  return {
    ...vamp,
    slots: vamp.slots.map((slot, index) => ({ ...slot, frets: shapes?.[index] ?? slot.frets })),
    grooveText: withRootBass(vamp.grooveText),
    tempo: round.tempo ?? Math.min(high, Math.max(low, USUAL_TEMPO)),
  };
}

function played(vamp: VoicedVamp, { band }: RoomSettings, loops: number): Performance {
  return withBand(vamp, perform(vamp, { loops }), band);
}

/** A round that lasts a few bars at least, or null where it would last too long. */
function soundPerformance(vamp: VoicedVamp, settings: RoomSettings): Performance | null {
  const once = perform(vamp);
  const loops = Math.ceil(LEAST_BARS / once.bars.length);
  return once.seconds * loops > MOST_SECONDS ? null : played(vamp, settings, loops);
}

/**
 * A room's round as a file, played by the guitar and the band of the room's settings: notes once through the loop, sound for some
 * bars. Refused where there is no such room or round, where its sound would be too long, or where the room cannot be read now. Rejects
 * with the reason of `signal` where nobody waits for it any more.
 */
export async function roundFile(
  { keeper, wav }: { readonly keeper: Pick<Keeper, 'find' | 'look'>; readonly wav: Pick<WavMaker, 'make'> },
  room: string,
  number: number,
  kind: RoundFileKind,
  signal?: AbortSignal,
): Promise<RoomFile | Refusal> {
  if ((await keeper.find(room)) === 'absent') return refuse('room-not-found', { room });
  const found = await keeper.look(room, ({ state: { rounds, settings } }) => ({
    round: rounds.find(({ heard }) => heard.number === number)?.heard,
    settings,
  }));
  if (found === null) return refuse('not-saved');
  const { round, settings } = found;
  if (round === undefined) return refuse('round-unknown');
  const vamp = soundingVamp(round);
  const bytes = await fileBytes(vamp, settings, kind, (job) => wav.make(job, signal));
  if (bytes === null) return refuse('sound-too-long', { most: MOST_SECONDS / 60 });
  return { ok: true, name: `hearsay-${room}-${number}.${kind}`, bytes };
}

async function fileBytes(
  vamp: VoicedVamp,
  settings: RoomSettings,
  kind: RoundFileKind,
  makeSound: (job: SoundJob) => Promise<Uint8Array>,
): Promise<Uint8Array | null> {
  if (kind === 'mid') return vampMidi(vamp, played(vamp, settings, 1), settings.voice);
  if (kind === 'musicxml') return vampMusicXml(vamp, played(vamp, settings, SCORE_LOOPS), settings.voice);
  const performance = soundPerformance(vamp, settings);
  if (performance === null) return null;
  const { voice, pitch, smallSpeaker } = settings;
  return makeSound({ performance, instrument: { voice, pitch, smallSpeaker } });
}
