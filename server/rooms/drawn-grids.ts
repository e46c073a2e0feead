import { GRIDS } from '../../shared-theory/groove-grid.ts';
import { NOT_SURE } from '../../shared-theory/questions/question.ts';
import type { Answer, NotSure } from '../../shared-theory/questions/question.ts';
import type { Weight } from '../../shared-theory/rhythm/rhythm-truth.ts';
import type { Sheet } from './state.ts';

/** What was drawn of the accents on a sheet. */

/** The weights that a student drew; null where nothing was drawn. */
export function drawnBy({ answers, grid }: Sheet, student: string): readonly Weight[] | null {
  return grid === null ? null : drawn(answers.get(student)?.answer ?? null);
}

/** The middle of what all drew, slot by slot, to a hundredth: 0 silent to 2 heavy; null where nobody drew anything. */
export function meanGrid({ answers, grid }: Sheet): readonly number[] | null {
  if (grid === null) return null;
  const sums = Array.from({ length: GRIDS[grid].slots }, () => 0);
  let hands = 0;
  for (const { answer } of answers.values()) {
    const weights = drawn(answer);
    if (weights === null) continue;
    hands += 1;
    for (const [slot, weight] of weights.entries()) sums[slot] = (sums[slot] ?? 0) + weight;
  }
  return hands === 0 ? null : sums.map((sum) => Math.round((sum * 100) / hands) / 100);
}

/** The weights that a middle grid comes nearest to. */
export function nearestWeights(mean: readonly number[]): readonly Weight[] {
  return mean.map((value) => (value >= 1.5 ? 2 : value >= 0.5 ? 1 : 0));
}

function drawn(answer: Answer | NotSure | null): readonly Weight[] | null {
  return answer === null || answer === NOT_SURE ? null : (answer as readonly Weight[]);
}
