import type { Reply, SoundChange, SoundOrder } from '../../server/protocol/messages.ts';
import type { WireSound, WireVamp } from '../../server/protocol/views.ts';
import type { Meter } from '../../shared-theory/vamps.ts';
import { liveSettler, voicedSlot, type LiveVamp } from './played-slots.ts';
import type { Sound } from './sound.ts';

/** What the teacher wants to hear now. */
type Wanted = { readonly round: string; readonly change: SoundChange; readonly tempo: number | null };

/** Follows the room's orders with the page's sound, also where they come before the vamp or while the sound is away. */
export type SoundDesk = {
  readonly obey: (order: SoundOrder) => void;
  /** The vamp of the round that runs, whenever it may have changed; with another round the sound of the one before ends. */
  readonly vamp: (vamp: WireVamp | null) => void;
  /** The sound runs and is this page's: what is wanted is played, or what the log says plays, where a log is given. */
  readonly ready: (logged: WireSound | null) => void;
  /** The log as it has just arrived: what it says has stopped is stopped. */
  readonly logged: (sound: WireSound) => void;
  /** The player began a round. The function returned takes the room's answer to that news. */
  readonly started: (round: string) => (reply: Reply) => void;
  /** The player stopped a round. */
  readonly stopped: (round: string) => void;
  /** The system took the sound away: what is wanted is kept, to go on once it is back. */
  readonly lost: () => void;
  /** Nothing is wanted any more, and nothing sounds. */
  readonly silence: () => void;
};

/** A tempo for vamps of chords alone; the host never plays one, but the type of a vamp asks for it. */
const PLAIN_TEMPO = 100;

/** Makes the vamp that can sound from the vamp that travels. */
function voicedVamp(vamp: WireVamp): LiveVamp {
  return {
    slots: vamp.slots.map(voicedSlot),
    settlers: vamp.settlers.map(liveSettler),
    meter: vamp.meter as Meter,
    grooveText: vamp.grooveText,
    tempo: vamp.tempo ?? PLAIN_TEMPO,
    seed: vamp.seed,
  };
}

export function createSoundDesk(sound: Pick<Sound, 'play' | 'change' | 'stop' | 'state'>): SoundDesk {
  let wanted: Wanted | null = null;
  let here: WireVamp | null = null;
  /** What the player was last asked to play; null once it was stopped. Each asking is an object of its own. */
  let asked: { readonly round: string } | null = null;
  /** What sounds now; `inLog` once the room has acknowledged that it began. */
  let sounding: { readonly round: string; inLog: boolean } | null = null;

  const follow = (): void => {
    if (!wanted || !here || here.round !== wanted.round || asked?.round === wanted.round) return;
    if (here.source === 'guitar' || sound.state() !== 'running') return;
    const { round, change, tempo } = wanted;
    const mine = { round };
    asked = mine;
    void sound.play(round, voicedVamp(here)).then((begun) => {
      if (asked === mine && !begun) asked = null;
    });
    // While it is made ready already: what is ordered meanwhile comes after.
    if (change.kind !== 'full') void sound.change(change);
    if (tempo !== null && tempo !== here.tempo) void sound.change({ kind: 'tempo', tempo });
  };

  /** Ends one round, and no other that is wanted by now. */
  const end = (round: string): void => {
    if (wanted?.round === round) wanted = null;
    if (asked?.round !== round) return;
    asked = null;
    sound.stop();
  };

  const silence = (): void => {
    wanted = null;
    asked = null;
    sound.stop();
  };

  return {
    obey: (order) => {
      if (order.order === 'stop') {
        silence();
        return;
      }
      if (order.order === 'play') {
        // It plays on as it is.
        if (wanted?.round === order.round && asked?.round === order.round) return;
        wanted = { round: order.round, change: { kind: 'full' }, tempo: null };
        follow();
        return;
      }
      if (wanted?.round !== order.round) return;
      const { change } = order;
      wanted = change.kind === 'tempo' ? { ...wanted, tempo: change.tempo } : { ...wanted, change };
      if (asked?.round === order.round) void sound.change(change);
    },
    vamp: (vamp) => {
      const before = here;
      here = vamp;
      // Whoever began it, the room has gone on: its order to stop may never come.
      if (before && before.round !== vamp?.round) end(before.round);
      follow();
    },
    ready: (logged) => {
      // After a reload the log knows what plays, and this page does not.
      if (!wanted && logged?.playing && logged.round !== null && logged.round === here?.round) {
        wanted = { round: logged.round, change: logged.change, tempo: logged.tempo };
      }
      follow();
    },
    logged: ({ playing, round }) => {
      // News of the log that follow the acknowledgement know of the start: it was stopped while this page was away.
      if (sounding?.inLog && !(playing && round === sounding.round)) end(sounding.round);
    },
    started: (round) => {
      const mine = { round, inLog: false };
      sounding = mine;
      return (reply) => {
        if (sounding !== mine) return;
        mine.inLog = reply.ok;
        // The room does not know of it and could never stop it.
        if (!reply.ok) end(round);
      };
    },
    stopped: (round) => {
      if (sounding?.round === round) sounding = null;
    },
    lost: () => {
      asked = null;
    },
    silence,
  };
}
