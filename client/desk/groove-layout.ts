import { grooveWords } from '../../server/protocol/words/groove-words.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import { GRIDS, slotsPerBar, type Grid } from '../../shared-theory/groove-grid.ts';
import { beatOf, countOf } from '../../shared-theory/slot-count.ts';

/** A count as it is said: `2`, `2 and`, `bar 2, 3 and`. */
export function saidCount(grid: Grid, place: number): string {
  const { sign } = countOf(grid, place);
  const beat = beatOf(grid, place);
  const said = beat === sign ? sign : `${beat} ${sign === '&' ? grooveWords.and : sign}`;
  const { bars } = GRIDS[grid];
  const bar = Math.floor(place / slotsPerBar({ grid })) + 1;
  return bars > 1 ? `${fill(grooveWords.editor.bar, { bar })}, ${said}` : said;
}
