import type { AskedRound } from '../../shared-theory/diagnosis/asked.ts';
import { beatEvidence } from '../../shared-theory/diagnosis/beat-evidence.ts';
import { breakdownOf } from '../../shared-theory/diagnosis/breakdown.ts';
import type { BreakdownLine } from '../../shared-theory/diagnosis/breakdown.ts';
import { commonErrors } from '../../shared-theory/diagnosis/common-errors.ts';
import { studentReports } from '../../shared-theory/diagnosis/reports.ts';
import { askedRound } from './asked-rounds.ts';
import type { RoomState } from './state.ts';

/** The lesson, question by question. */
export const breakdownFor = remembered((rounds) => rounds.flatMap(linesOf));

/** The lines of a round that has not changed are worked out once. */
const lines = new WeakMap<AskedRound, readonly BreakdownLine[]>();

function linesOf(round: AskedRound): readonly BreakdownLine[] {
  const known = lines.get(round) ?? breakdownOf([round]);
  lines.set(round, known);
  return known;
}

/** The common errors of the lesson. */
export const commonFor = remembered(commonErrors);

/** Each student's lesson. */
export const reportsFor = remembered(studentReports);

/** What each student's answers show of the beat. */
export const beatFor = remembered(beatEvidence);

/** Works something out of a lesson once for as long as no closed sheet changes: an answer to an open one costs nothing. */
function remembered<T>(work: (rounds: readonly AskedRound[]) => T): (state: RoomState) => T {
  const known = new WeakMap<RoomState, { readonly rounds: readonly AskedRound[]; readonly result: T }>();
  return (state) => {
    const rounds = state.rounds.map((record) => askedRound(state, record));
    const last = known.get(state);
    if (last?.rounds.length === rounds.length && rounds.every((round, index) => round === last.rounds[index])) {
      return last.result;
    }
    const result = work(rounds);
    known.set(state, { rounds, result });
    return result;
  };
}
