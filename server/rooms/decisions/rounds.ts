import { beatLevelFault } from '../beat-level.ts';
import type { CommandOf, Context, Decision, Refusal } from '../commands.ts';
import { already, happens, refuse } from '../commands.ts';
import type { HeardRound, NewEvent } from '../events.ts';
import { guitarRound } from '../guitar-round.ts';
import { hostRound } from '../host-round.ts';
import { ownGrooves } from '../own-grooves.ts';
import { wrongSetting } from '../settings.ts';
import type { RoomState } from '../state.ts';
import { wantedRound } from './lesson-plan.ts';
import { andStop } from './sound.ts';

/** Starts a round that Hearsay plays. A second press names the same round before it and is answered with what came of the first. */
export function startRound(state: RoomState, command: CommandOf<'StartRound'>, context: Context): Decision {
  return started(state, command.after, context, (number) => {
    const wanted = wantedRound(state, command);
    return 'reason' in wanted ? wanted : hostRound(state, number, wanted, context.seed);
  });
}

/** Starts a round that the teacher plays on his own guitar: typed chords, and a groove or none. */
export function startGuitarRound(state: RoomState, command: CommandOf<'StartGuitarRound'>, context: Context): Decision {
  const { chords, groove, tempo, directions } = command;
  const { settings } = state;
  const entered = { chords, naming: settings.naming, groove, tempo, directions };
  return started(state, command.after, context, (number) =>
    guitarRound(
      { id: `r${number}`, settings, beat: settings.beatLevel, grooves: ownGrooves(settings) },
      entered,
      context.seed,
    ),
  );
}

/** Settings that stand in the round's own copy (policy, pad) hold from the next round on. */
export function changeSettings(state: RoomState, { settings }: CommandOf<'ChangeSettings'>): Decision {
  const unknown = settings.beatLevel === undefined ? null : beatLevelFault(settings.beatLevel);
  if (unknown !== null) return unknown;
  const wrong = wrongSetting(settings);
  if (wrong !== null) return refuse('message-not-readable', { what: wrong });
  const changed = (Object.keys(settings) as (keyof typeof settings)[]).filter(
    (name) => JSON.stringify(settings[name]) !== JSON.stringify(state.settings[name]),
  );
  if (changed.length === 0) return already();
  const picked = Object.fromEntries(changed.map((name) => [name, settings[name]]));
  return happens([{ type: 'SettingsChanged', settings: picked }]);
}

export function endLesson(state: RoomState, context: Context): Decision {
  if (state.status === 'lesson-ended') return already();
  if (state.rounds.length === 0) return refuse('no-round');
  if (state.open !== null) return refuse('question-still-open');
  return andStop(happens([{ type: 'LessonEnded' }]), state, context);
}

/** Closes the room for good, and with it a question that is still open. */
export function closeRoom(state: RoomState, context: Context): Decision {
  if (state.status === 'room-ended') return already();
  const closing: NewEvent[] = state.open === null ? [] : [{ type: 'QuestionClosed', ask: state.open.ask }];
  return andStop(happens([...closing, { type: 'RoomClosed' }]), state, context);
}

function started(
  state: RoomState,
  after: number,
  context: Context,
  make: (number: number) => HeardRound | Refusal,
): Decision {
  const { rounds } = state;
  if (after > rounds.length) return refuse('round-unknown');
  const next = rounds[after];
  if (next !== undefined) return already({ round: next.heard.id, number: next.heard.number });
  if (state.open !== null) return refuse('question-still-open');
  const round = make(after + 1);
  if ('reason' in round) return round;
  const value = { round: round.id, number: round.number };
  return andStop(happens([{ type: 'RoundStarted', round }], value), state, context);
}
