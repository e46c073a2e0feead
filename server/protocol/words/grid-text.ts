import { slotAnswers, slotWords } from './asked/beat-grid.ts';
import { listed } from './counting.ts';
import { fill } from './fill.ts';
import { grooveAnswers as words } from './groove-answers.ts';
import { GRIDS, slotsPerBar, type Grid } from '../../../shared-theory/groove-grid.ts';
import type { GridStroke } from '../../../shared-theory/rhythm/rhythm-truth.ts';
import { beatOf, countOf } from '../../../shared-theory/slot-count.ts';

/** Grids by the number of their slots, where nobody says which one was drawn. */
const BY_SIZE: Readonly<Record<number, Grid>> = { 6: 'C6', 7: 'V7', 8: 'E8', 12: 'T12', 16: 'S16' };

/**
 * An answer that is drawn on the grid, in a few words: `heavy on 2 and 4; silent on 1`, `D– DU –U DU`, `kick on 1 and 3; closed on the
 * ands`, `4 and 4-and`. `named` is the grid that was drawn on.
 */
export function gridText(
  kind: 'accents' | 'stroke-grid' | 'roles' | 'opened',
  answer: readonly unknown[],
  named?: string,
): string {
  // Which slots open says nothing of how many there are.
  const usual = kind === 'opened' ? 'E8' : (BY_SIZE[answer.length] ?? 'S16');
  const grid = named !== undefined && named in GRIDS ? (named as Grid) : usual;
  switch (kind) {
    case 'accents':
      // What is neither is light.
      return (
        choicesText(grid, answer, [2, 0], slotAnswers.accents) || fill(words.all, { choice: slotAnswers.accents[1] })
      );
    case 'stroke-grid':
      return strokesText(grid, answer as readonly GridStroke[]);
    case 'roles':
      return (
        choicesText(grid, answer, ['kick', 'slap', 'closed', 'open'], slotAnswers.roles) ||
        fill(words.all, { choice: slotAnswers.roles.silent })
      );
    case 'opened':
      return placesText(grid, answer as readonly number[]);
  }
}

/** Where each of some choices stands: `heavy on 2 and 4; silent on 1`; one that stands everywhere `heavy all the way`. */
function choicesText<T extends string | number>(
  grid: Grid,
  cells: readonly unknown[],
  choices: readonly T[],
  names: { readonly [choice in T]: string },
): string {
  return choices
    .flatMap((choice) => {
      const slots = cells.flatMap((cell, slot) => (cell === choice ? [slot] : []));
      if (slots.length === 0) return [];
      if (slots.length === cells.length) return [fill(words.all, { choice: names[choice] })];
      return [fill(words.on, { choice: names[choice], places: placesText(grid, slots) })];
    })
    .join(words.join);
}

/** Strokes, those of one beat or group together. */
function strokesText(grid: Grid, strokes: readonly GridStroke[]): string {
  return strokes
    .map((stroke, slot) => `${slot > 0 && countOf(grid, slot).strong ? ' ' : ''}${words.strokes[stroke]}`)
    .join('');
}

/** Slots of the pattern, from 0, as a teacher counts them: `1 and 3`, `2-and`, `the ands`, `1 and 3 of bar 2`. */
export function placesText(grid: Grid, slots: readonly number[]): string {
  const { bars, slots: size } = GRIDS[grid];
  const perBar = slotsPerBar({ grid });
  const all = Array.from({ length: size }, (_, place) => place);
  const same = (places: readonly number[]): boolean =>
    places.length === slots.length && places.every((place) => slots.includes(place));
  const ands = all.filter((place) => countOf(grid, place).sign === '&');
  // Where every slot has a number of its own, none lies between two.
  if (ands.length > 0 && same(ands)) return words.ands;
  if (ands.length > 0 && same(all.filter((place) => countOf(grid, place).strong))) return words.numbers;
  const inBars = Array.from({ length: bars }, (_, bar) => {
    const inBar = slots.filter((slot) => Math.floor(slot / perBar) === bar);
    const places = listed(inBar.map((slot) => placeText(grid, slot)));
    return bars === 1 || places === '' ? places : fill(words.ofBar, { places, bar: bar + 1 });
  });
  return listed(inBars.filter(Boolean));
}

/** One slot: `2`, `2-and`. */
function placeText(grid: Grid, slot: number): string {
  const { sign } = countOf(grid, slot);
  const beat = beatOf(grid, slot);
  const { parts } = slotWords;
  return beat === sign ? sign : fill(words.within, { beat, part: parts[sign as keyof typeof parts] });
}
