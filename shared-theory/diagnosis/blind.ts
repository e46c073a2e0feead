import { QUALITIES } from '../chords.ts';
import { asks } from '../questions/asks.ts';
import { MOST_CHORDS } from '../questions/count/ask.ts';
import { OCTAVE } from '../questions/distance/ask.ts';
import { MOST_HOMES } from '../questions/home/ask.ts';
import { differentChords } from '../different-chords.ts';
import { judgeOf } from '../questions/judges.ts';
import { blindKeySets, LONGEST_ARC } from '../questions/keys/guesses.ts';
import { MOST_NUMERALS } from '../questions/numeral/ask.ts';
import { CHART } from '../questions/numeral/judge.ts';
import { chordsOf } from '../questions/own-chords.ts';
import { ORDERS } from '../questions/order/ask.ts';
import type { Answer, AskedOf, Kind } from '../questions/question.ts';
import { neckPlaces } from '../questions/root/ask.ts';
import { ASKED_SEVENTHS } from '../questions/seventh/ask.ts';

/**
 * The answers that somebody gives who has heard nothing, each as likely as any other: every answer of the pad; of keys the arcs
 * of neighbours, of numerals the triads of a major key on as many bars as are right.
 */
export function blindAnswers(kind: Kind, context: AskedOf): readonly Answer[] {
  const read = (value: unknown): readonly Answer[] => {
    const answer = asks[kind].read(value, context.settings);
    return answer === null ? [] : [answer];
  };
  switch (kind) {
    case 'strokes':
      return ['all-downs', 'down-up'].flatMap(read);
    case 'count':
      return Array.from({ length: MOST_CHORDS }, (_, index) => index + 1);
    case 'order':
      return ORDERS;
    case 'direction':
      return ['up', 'down', 'same'].flatMap(read);
    case 'quality':
      return QUALITIES.flatMap(read);
    case 'bass':
    case 'root':
      return neckPlaces(context.settings.capo);
    case 'seventh':
      return ASKED_SEVENTHS;
    case 'distance':
      return Array.from({ length: 2 * OCTAVE + 1 }, (_, index) => index - OCTAVE);
    case 'numeral':
      return numerals(context);
    case 'one-or-several':
      return ['one', 'several'].flatMap(read);
    case 'keys':
      return blindKeySets(context.settings.policy, LONGEST_ARC, differentChords(chordsOf(context.truth)).length);
    case 'settler':
      return blindKeySets(context.settings.policy, LONGEST_ARC, 0);
    case 'home':
      return Array.from({ length: MOST_HOMES }, (_, index) => index);
  }
}

function numerals(context: AskedOf): readonly Answer[] {
  const right = judgeOf('numeral').truth(context);
  const bars = Math.min(MOST_NUMERALS, right?.length ?? 0);
  const rows = Array.from({ length: bars }).reduce<readonly (readonly string[])[]>(
    (longer) => longer.flatMap((row) => CHART.map((numeral) => [...row, numeral])),
    [[]],
  );
  // A chord that was named is not named again.
  return rows.filter((row) => new Set(row).size === row.length);
}
