import { slotAnswers, slotWords } from './asked/beat-grid.ts';
import { listed } from './counting.ts';
import { fill } from './fill.ts';
import { grooveAnswers } from './groove-answers.ts';

const { on, all, within, ofBar, ofEachBar } = grooveAnswers;
const parts: Readonly<Record<string, string>> = slotWords.parts;

/** What an answer that is drawn on the beat grid is told in. */
export const gridWords = {
  ...grooveAnswers,
  accents: slotAnswers.accents,
  roles: slotAnswers.roles,
  on: (choice: string, places: string) => fill(on, { choice, places }),
  all: (choice: string) => fill(all, { choice }),
  within: (beat: string, sign: string) => fill(within, { beat, part: parts[sign] ?? sign }),
  ofBar: (places: string, bar: number) => fill(ofBar, { places, bar }),
  ofEachBar: (places: string) => fill(ofEachBar, { places }),
  listed: (names: readonly string[]) => listed(names),
};
