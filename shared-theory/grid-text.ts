import { GRIDS, slotsPerBar, type Grid } from './groove-grid.ts';
import type { GridStroke, Role } from './rhythm/rhythm-truth.ts';
import { beatOf, countOf } from './slot-count.ts';

/** Kinds of question that are answered by drawing on the beat grid. */
export type DrawnKind = 'accents' | 'stroke-grid' | 'roles' | 'opened';

/** The words that a drawn answer is told in. */
export type GridWords = {
  /** Silent, light, heavy. */
  readonly accents: readonly [string, string, string];
  readonly roles: Readonly<Record<Role, string>>;
  readonly strokes: Readonly<Record<GridStroke, string>>;
  /** All slots on a number, and all on an and. */
  readonly numbers: string;
  readonly ands: string;
  readonly on: (choice: string, places: string) => string;
  /** It stands on every slot. */
  readonly all: (choice: string) => string;
  /** A part of a beat, by its sign over the grid. */
  readonly within: (beat: string, sign: string) => string;
  /** Places in a bar of several, from 1. */
  readonly ofBar: (places: string, bar: number) => string;
  /** The same places in every bar of several. */
  readonly ofEachBar: (places: string) => string;
  /** Between the places of one bar and those of the next. */
  readonly nextBar: string;
  readonly listed: (names: readonly string[]) => string;
  /** Between what is heavy and what is silent. */
  readonly join: string;
};

/** Grids by the number of their slots, where nobody says which one was drawn. */
const BY_SIZE: Readonly<Record<number, Grid>> = { 6: 'C6', 7: 'V7', 8: 'E8', 12: 'T12', 16: 'S16' };

/**
 * An answer that is drawn on the grid, in a few words: `heavy on 2 and 4; silent on 1`, `D· DU ·U DU`, `kick on 1 and 3; closed on the
 * ands`, `4 and 4-and`. `named` is the grid that was drawn on.
 */
export function gridText(kind: DrawnKind, answer: readonly unknown[], words: GridWords, named?: string): string {
  // Which slots open says nothing of how many there are.
  const usual = kind === 'opened' ? 'E8' : (BY_SIZE[answer.length] ?? 'S16');
  const grid = named !== undefined && named in GRIDS ? (named as Grid) : usual;
  switch (kind) {
    case 'accents':
      // What is neither is light.
      return choicesText(grid, answer, [2, 0], words.accents, words) || words.all(words.accents[1]);
    case 'stroke-grid':
      return strokesText(grid, answer as readonly GridStroke[], words);
    case 'roles':
      return (
        choicesText(grid, answer, ['kick', 'slap', 'closed', 'open'], words.roles, words) ||
        words.all(words.roles.silent)
      );
    case 'opened':
      return placesText(grid, answer as readonly number[], words);
  }
}

/** Where each of some choices stands: `heavy on 2 and 4; silent on 1`; one that stands everywhere `heavy all the way`. */
function choicesText<T extends string | number>(
  grid: Grid,
  cells: readonly unknown[],
  choices: readonly T[],
  names: { readonly [choice in T]: string },
  words: GridWords,
): string {
  return choices
    .flatMap((choice) => {
      const slots = cells.flatMap((cell, slot) => (cell === choice ? [slot] : []));
      if (slots.length === 0) return [];
      if (slots.length === cells.length) return [words.all(names[choice])];
      return [words.on(names[choice], placesText(grid, slots, words))];
    })
    .join(words.join);
}

/** Strokes, those of one beat or group together. */
function strokesText(grid: Grid, strokes: readonly GridStroke[], words: GridWords): string {
  return strokes
    .map((stroke, slot) => `${slot > 0 && countOf(grid, slot).strong ? ' ' : ''}${words.strokes[stroke]}`)
    .join('');
}

/** Slots of the pattern, from 0, as a teacher counts them: `1 and 3`, `2-and`, `the ands`, `1 and 3 of bar 2`, `1 of each bar`. */
function placesText(grid: Grid, slots: readonly number[], words: GridWords): string {
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
    return words.listed(inBar.map((slot) => placeText(grid, slot, words)));
  });
  const [first = ''] = inBars;
  if (bars === 1 || slots.length === 0) return first;
  if (inBars.every((places) => places === first)) return words.ofEachBar(first);
  return inBars.flatMap((places, bar) => (places === '' ? [] : [words.ofBar(places, bar + 1)])).join(words.nextBar);
}

/** One slot: `2`, `2-and`. */
function placeText(grid: Grid, slot: number, words: GridWords): string {
  const { sign } = countOf(grid, slot);
  const beat = beatOf(grid, slot);
  return beat === sign ? sign : words.within(beat, sign);
}
