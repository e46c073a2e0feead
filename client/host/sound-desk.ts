import {
  isBeside,
  type Band,
  type Feel,
  type ModeChange,
  type Reply,
  type SoundChange,
  type SoundOrder,
} from '../../server/protocol/messages.ts';
import type { WireSound, WireVamp } from '../../server/protocol/views.ts';
import type { Meter } from '../../shared-theory/vamps.ts';
import { liveSettler, voicedSlot, type LiveVamp } from './played-slots.ts';
import type { Sound } from './sound.ts';

/** What the teacher wants to hear now; null where nothing was said. */
type Wanted = {
  readonly round: string;
  readonly mode: ModeChange;
  readonly tempo: number | null;
  readonly climb: number | null;
  readonly feel: Feel;
  readonly band: Band | null;
};

/** Follows the room's orders with the page's sound, also where they come before the vamp or while the sound is away. */
export type SoundDesk = {
  readonly obey: (order: SoundOrder) => void;
  /**
   * The vamp of the round that runs, whenever it may have changed, who plays along when it begins, and whether its numbers may not be
   * counted before it; with another round the sound of the one before ends.
   */
  readonly vamp: (vamp: WireVamp | null, band?: Band, uncounted?: boolean) => void;
  /** The sound runs and is this page's: what is wanted is played, or what the log says plays, where a log is given. */
  readonly ready: (logged: WireSound | null) => void;
  /** The log as it has just arrived: what it says has stopped is stopped. */
  readonly logged: (sound: WireSound) => void;
  /** The player began a round. The function returned takes the room's answer to that news. */
  readonly started: (round: string) => (reply: Reply) => void;
  /** A change took: what the player does by itself is wanted from then on. */
  readonly took: (round: string, change: SoundChange) => void;
  /** The player stopped a round. */
  readonly stopped: (round: string) => void;
  /** The system took the sound away: what is wanted is kept, to go on once it is back. */
  readonly lost: () => void;
  /** Nothing is wanted any more, and nothing sounds. */
  readonly silence: () => void;
};

/** A tempo for vamps of chords alone; the host never plays one, but the type of a vamp asks for it. */
const PLAIN_TEMPO = 100;

/** What dropped out as the sound went away: of a vamp that begins anew something is heard first. */
const DROPS_ANEW: SoundChange = { kind: 'drop-out', after: 2 };

const GUITAR_ALONE: Band = { kit: false, bass: false };

/** A vamp as it begins. */
function begun(round: string): Wanted {
  return { round, mode: { kind: 'full' }, tempo: null, climb: null, feel: 'written', band: null };
}

/** What is wanted after one change more. */
function after(wanted: Wanted, change: SoundChange): Wanted {
  if (!isBeside(change)) return { ...wanted, mode: change };
  switch (change.kind) {
    case 'tempo':
      return { ...wanted, tempo: change.tempo, climb: null };
    case 'climb':
      return { ...wanted, climb: change.to };
    case 'feel':
      return { ...wanted, feel: change.feel };
    case 'band':
      return { ...wanted, band: { kit: change.kit, bass: change.bass } };
  }
}

/**
 * What makes a vamp that has just begun, at its written tempo and with the usual band, the one that is wanted. The room takes a
 * beginning for the usual, so that everything else is told as a change.
 */
function changesTo(
  { mode, feel, tempo, climb, band }: Wanted,
  { written, usual }: { readonly written: number | null; readonly usual: Band },
): readonly SoundChange[] {
  const joined = band !== null && (band.kit !== usual.kit || band.bass !== usual.bass);
  return [
    ...(joined ? [{ kind: 'band', ...band } as const] : []),
    ...(mode.kind === 'full' ? [] : [mode.kind === 'drop-out' ? DROPS_ANEW : mode]),
    ...(feel === 'written' ? [] : [{ kind: 'feel', feel } as const]),
    ...(tempo === null || (tempo === written && feel === 'written') ? [] : [{ kind: 'tempo', tempo } as const]),
    ...(climb === null ? [] : [{ kind: 'climb', to: climb } as const]),
  ];
}

/** Makes the vamp that can sound from the vamp that travels. */
function voicedVamp(vamp: WireVamp, band: Band, uncounted: boolean): LiveVamp {
  return {
    band,
    uncounted,
    slots: vamp.slots.map(voicedSlot),
    settlers: vamp.settlers.map(liveSettler),
    meter: vamp.meter as Meter,
    grooveText: vamp.grooveText,
    tempo: vamp.tempo ?? PLAIN_TEMPO,
    seed: vamp.seed,
  };
}

export function createSoundDesk(sound: Pick<Sound, 'play' | 'change' | 'tone' | 'stop' | 'state'>): SoundDesk {
  let wanted: Wanted | null = null;
  let here: WireVamp | null = null;
  let usual = GUITAR_ALONE;
  let untold = false;
  /** What the player was last asked to play; null once it was stopped. Each asking is an object of its own. */
  let asked: { readonly round: string } | null = null;
  /** What sounds now; `inLog` once the room has acknowledged that it began. */
  let sounding: { readonly round: string; inLog: boolean } | null = null;

  const follow = (): void => {
    if (!wanted || !here || here.round !== wanted.round || asked?.round === wanted.round) return;
    if (here.source === 'guitar' || sound.state() !== 'running') return;
    const { round } = wanted;
    const mine = { round };
    asked = mine;
    void sound.play(round, voicedVamp(here, usual, untold)).then((plays) => {
      if (asked === mine && !plays) asked = null;
    });
    // Under the count-in already: what is ordered meanwhile comes after.
    for (const change of changesTo(wanted, { written: here.tempo, usual })) void sound.change(change);
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
        wanted = begun(order.round);
        follow();
        return;
      }
      if (order.order === 'tone') {
        sound.tone(order.tone);
        return;
      }
      if (wanted?.round !== order.round) return;
      wanted = after(wanted, order.change);
      if (asked?.round === order.round) void sound.change(order.change);
    },
    vamp: (vamp, band = GUITAR_ALONE, uncounted = false) => {
      const before = here;
      here = vamp;
      usual = band;
      untold = uncounted;
      // Whoever began it, the room has gone on: its order to stop may never come.
      if (before && before.round !== vamp?.round) end(before.round);
      follow();
    },
    ready: (logged) => {
      // After a reload the log knows what plays, and this page does not.
      if (!wanted && logged?.playing && logged.round !== null && logged.round === here?.round) {
        const { round, tempo, climb, feel, band } = logged;
        const mode: ModeChange = isBeside(logged.change) ? { kind: 'full' } : logged.change;
        wanted = { round, mode, tempo, climb, feel, band };
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
    took: (round, change) => {
      if (wanted?.round !== round) return;
      // A loop that dropped out is back; a climb has come a step further.
      if (change.kind === 'full' && wanted.mode.kind === 'drop-out') wanted = { ...wanted, mode: change };
      if (change.kind === 'tempo' && wanted.climb !== null) wanted = { ...wanted, tempo: change.tempo };
      // Hands that were given a rest keep it.
      if (change.kind === 'feel') wanted = { ...wanted, feel: change.feel };
    },
    stopped: (round) => {
      if (sounding?.round === round) sounding = null;
      if (asked?.round !== round) return;
      // Nobody here stopped it. What the system took away goes on once it is back; what broke off by itself waits for its next order.
      asked = null;
      if (sound.state() === 'running') wanted = null;
    },
    lost: () => {
      asked = null;
    },
    silence,
  };
}
