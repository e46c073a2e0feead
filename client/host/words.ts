import { hostWords } from '../../server/protocol/words/en.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import { numberWord } from '../../server/protocol/words/counting.ts';

/** A place in an order, in words: `five of nine`; both in figures where one would be. */
export function positionWords(n: number, of: number): string {
  const said = numberWord(of) === String(of) ? String : numberWord;
  return fill(hostWords.position, { n: said(n), of: said(of) });
}

/** A count of hands, in figures: `17 of 24`. */
export function handsOf(n: number, of: number): string {
  return fill(hostWords.round.handsOf, { n, of });
}
