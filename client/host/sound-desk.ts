import type { SoundChange, SoundOrder } from '../../server/protocol/messages.ts';
import type { WireSound, WireVamp } from '../../server/protocol/views.ts';
import { parseChord } from '../../shared-theory/chords.ts';
import type { Meter, VoicedVamp } from '../../shared-theory/vamps.ts';
import type { Sound } from './sound.ts';

/** What the teacher wants to hear now. */
type Wanted = { readonly round: string; readonly change: SoundChange; readonly tempo: number | null };

/** Follows the room's orders with the page's sound, also where they come before the vamp or while the sound is away. */
export type SoundDesk = {
  readonly obey: (order: SoundOrder) => void;
  /** The view's vamp, whenever it may have changed. */
  readonly vamp: (vamp: WireVamp | null) => void;
  /** The sound runs and is this page's: what is wanted is played, or what the log says plays. */
  readonly ready: (logged: WireSound | null) => void;
  /** The player stopped a round. */
  readonly stopped: (round: string) => void;
  /** The system took the sound away: what is wanted is kept, to go on once it is back. */
  readonly lost: () => void;
};

/** A tempo for vamps of chords alone; the host never plays one, but the type of a vamp asks for it. */
const PLAIN_TEMPO = 100;

/** Makes the vamp that can sound from the vamp that travels. */
function voicedVamp(vamp: WireVamp): VoicedVamp {
  return {
    slots: vamp.slots.map(({ chord, beats, frets }) => ({ chord: parseChord(chord), beats, frets })),
    meter: vamp.meter as Meter,
    grooveText: vamp.grooveText,
    tempo: vamp.tempo ?? PLAIN_TEMPO,
    seed: vamp.seed,
  };
}

export function createSoundDesk(sound: Pick<Sound, 'play' | 'change' | 'stop' | 'state'>): SoundDesk {
  let wanted: Wanted | null = null;
  let here: WireVamp | null = null;
  /** Round that the player was last asked to play, until it stopped. */
  let asked: string | null = null;

  const follow = (): void => {
    if (!wanted || !here || here.round !== wanted.round || asked === wanted.round) return;
    if (here.source === 'guitar' || sound.state() !== 'running') return;
    const { round, change, tempo } = wanted;
    asked = round;
    void sound.play(round, voicedVamp(here)).then(() => {
      if (asked !== round) return;
      if (change.kind !== 'full') void sound.change(change);
      if (tempo !== null && tempo !== here?.tempo) void sound.change({ kind: 'tempo', tempo });
    });
  };

  return {
    obey: (order) => {
      if (order.order === 'stop') {
        wanted = null;
        asked = null;
        sound.stop();
        return;
      }
      if (order.order === 'play') {
        if (wanted?.round !== order.round) asked = null;
        wanted = { round: order.round, change: { kind: 'full' }, tempo: null };
        follow();
        return;
      }
      if (wanted?.round !== order.round) return;
      const { change } = order;
      wanted = change.kind === 'tempo' ? { ...wanted, tempo: change.tempo } : { ...wanted, change };
      if (asked === order.round) void sound.change(change);
    },
    vamp: (vamp) => {
      here = vamp;
      follow();
    },
    ready: (logged) => {
      // After a reload the log knows what plays, and this page does not.
      if (!wanted && logged?.playing && logged.round !== null) {
        wanted = { round: logged.round, change: logged.change, tempo: logged.tempo };
      }
      follow();
    },
    stopped: (round) => {
      // Making way for the next round stops the one before: that is no wish for silence.
      if (asked !== round) return;
      asked = null;
      wanted = null;
    },
    lost: () => {
      asked = null;
    },
  };
}
