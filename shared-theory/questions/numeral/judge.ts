import { candidateKeys } from '../../keys.ts';
import { needed, notRight, RIGHT } from '../marks.ts';
import type { AskedOf, Judge } from '../question.ts';
import { MOST_NUMERALS, numeralAsk } from './ask.ts';

/** Numerals in any key that owns all chords. */
export const numeralJudge: Judge<'numeral'> = {
  kind: 'numeral',
  truth: (context) => readings(context)[0] ?? null,
  mark: (answer, context) => {
    needed(readings(context)[0], 'numeral', context.target);
    return readings(context).some((right) => numeralAsk.key(right) === numeralAsk.key(answer))
      ? RIGHT
      : notRight(0, null);
  },
  also: (context) => readings(context).slice(1),
  heard: numeralAsk.key,
  chance: () => 1 / 40,
};

function readings({ truth, settings }: AskedOf): readonly (readonly string[])[] {
  const chords = truth.roots.map((root, slot) => ({ root, quality: truth.qualities[slot] ?? 'major' }));
  const different = chords.filter(
    (chord, index) =>
      chords.findIndex(({ root, quality }) => root === chord.root && quality === chord.quality) === index,
  );
  return candidateKeys(different, settings.policy).map(({ numerals }) => numerals.slice(0, MOST_NUMERALS));
}
