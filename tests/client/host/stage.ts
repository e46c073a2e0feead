import type { PerformedBar } from '../../../shared-theory/live.ts';
import type { BassNote, KitStrike, SoundedNote } from '../../../shared-theory/perform.ts';
import type { Program } from '../../../client/host/live-program.ts';
import type { Voice } from '../../../client/host/placed.ts';
import { createPlayer } from '../../../client/host/player.ts';

export type Struck = {
  readonly note: SoundedNote | KitStrike | BassNote | 'tick' | 'tick on one';
  readonly by: 'guitar' | 'kit' | 'bass' | 'count';
  readonly at: number;
  readonly program: Program | null;
  end: number;
  dropped: boolean;
};

/** A player whose clock the test moves, and all it struck; `ready` says which bars can sound. */
export function bench(ready: (program: Program, bar: PerformedBar) => boolean = () => true) {
  const struck: Struck[] = [];
  const told: string[] = [];
  let clock = 10;
  let hushed = 0;
  const record = (sound: Omit<Struck, 'end' | 'dropped'>, seconds: number): Voice => {
    const sounding: Struck = { ...sound, end: sound.at + seconds, dropped: false };
    struck.push(sounding);
    return {
      get end() {
        return sounding.end;
      },
      stopAt: (time) => {
        sounding.end = Math.min(sounding.end, time);
      },
      drop: () => {
        sounding.dropped = true;
      },
    };
  };
  const player = createPlayer(
    {
      now: () => clock,
      ready,
      strike: (note, at, { program }) => record({ note, by: 'guitar', at, program }, note.duration),
      strikeKit: (note, at, { program }) => record({ note, by: 'kit', at, program }, note.duration ?? 0.3),
      strikeBass: (note, at, { program }) => record({ note, by: 'bass', at, program }, note.duration),
      count: ({ accented }, at) => [
        record({ note: accented ? 'tick on one' : 'tick', by: 'count', at, program: null }, 0.08),
      ],
      hush: () => {
        hushed += 1;
        for (const sounding of struck) sounding.end = Math.min(sounding.end, clock);
      },
    },
    {
      onStarted: (round, tempo) => told.push(`started ${round} ${tempo}`),
      onTook: (round, change, bar) => told.push(`took ${JSON.stringify(change)} at bar ${bar} of ${round}`),
      onSilent: (round) => told.push(`silent for two bars of ${round}`),
      onRest: (round, seconds) => told.push(`rest for ${Math.round(seconds * 10) / 10} s of ${round}`),
      onStopped: (round) => told.push(`stopped ${round}`),
    },
  );
  const run = (seconds: number, step = 0.1): void => {
    for (const until = clock + seconds; clock < until - 1e-9;) {
      clock = Math.min(until, clock + step);
      player.advance();
    }
  };
  const heard = (by: Struck['by']) => struck.filter((each) => each.by === by && !each.dropped);
  const notes = () => heard('guitar').filter((each): each is Struck & { note: SoundedNote } => each.by === 'guitar');
  return {
    player,
    struck,
    told,
    run,
    notes,
    heard,
    now: () => clock,
    jump: (by: number) => (clock += by),
    hushes: () => hushed,
    /** Forgets what was struck and is over. */
    forget: () => {
      const lasting = struck.filter(({ end, dropped }) => !dropped && end > clock);
      struck.length = 0;
      struck.push(...lasting);
    },
  };
}
