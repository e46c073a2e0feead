import { GRIDS } from '../../shared-theory/groove-grid.ts';
import type { Grid } from '../../shared-theory/groove-grid.ts';
import { NOT_SURE } from '../../shared-theory/questions/question.ts';
import type { Answer, Kind, NotSure } from '../../shared-theory/questions/question.ts';

/**
 * Why an answer does not fit the beat grid that it was drawn on: the slots that it fills, or for those that ring open reaches, and those
 * that there are. Null where it fits.
 */
export function gridMisfit(
  kind: Kind,
  grid: Grid,
  answer: Answer | NotSure,
): { readonly found: number; readonly slots: number } | null {
  if (answer === NOT_SURE || !Array.isArray(answer)) return null;
  const { slots } = GRIDS[grid];
  const values = answer as readonly unknown[];
  if (kind !== 'opened') return values.length === slots ? null : { found: values.length, slots };
  const reached = 1 + Math.max(...(values as readonly number[]));
  return reached <= slots ? null : { found: reached, slots };
}
