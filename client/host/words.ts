import { hostWords } from '../../server/protocol/words/en.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import { numberWord } from '../../server/protocol/words/counting.ts';

/** A place in an order, in words: `five of nine`. */
export function positionWords(n: number, of: number): string {
  return fill(hostWords.position, { n: numberWord(n), of: numberWord(of) });
}

/** A count of hands, in figures: `17 of 24`. */
export function handsOf(n: number, of: number): string {
  return fill(hostWords.round.handsOf, { n, of });
}
