import { bassAsk } from './bass/ask.ts';
import { countAsk } from './count/ask.ts';
import { directionAsk } from './direction/ask.ts';
import { distanceAsk } from './distance/ask.ts';
import { homeAsk } from './home/ask.ts';
import { keysAsk } from './keys/ask.ts';
import { numeralAsk } from './numeral/ask.ts';
import { oneOrSeveralAsk } from './one-or-several/ask.ts';
import { orderAsk } from './order/ask.ts';
import { qualityAsk } from './quality/ask.ts';
import type { Answer, AnswerOf, Ask, Kind, NotSure, QuestionSettings } from './question.ts';
import { NOT_SURE } from './question.ts';
import { rootAsk } from './root/ask.ts';
import { settlerAsk } from './settler/ask.ts';
import { seventhAsk } from './seventh/ask.ts';
import { strokesAsk } from './strokes/ask.ts';

/** The asking side of every question. May reach phones: no judge, no truth. */
export const asks: { readonly [K in Kind]: Ask<K> } = {
  strokes: strokesAsk,
  count: countAsk,
  order: orderAsk,
  direction: directionAsk,
  bass: bassAsk,
  quality: qualityAsk,
  root: rootAsk,
  seventh: seventhAsk,
  distance: distanceAsk,
  numeral: numeralAsk,
  'one-or-several': oneOrSeveralAsk,
  keys: keysAsk,
  settler: settlerAsk,
  home: homeAsk,
};

/** Reads what a phone sent to a question of a kind: an answer, `not-sure`, or null where it is neither. */
export function readAnswer(kind: Kind, value: unknown, settings: QuestionSettings): Answer | NotSure | null {
  return value === NOT_SURE ? NOT_SURE : asks[kind].read(value, settings);
}

/** One text per different answer of a kind: `up`, `6.5`, `2M 7M`, `none`, `not-sure`. */
export function answerKey<K extends Kind>(kind: K, answer: AnswerOf<K> | NotSure): string {
  return answer === NOT_SURE ? NOT_SURE : asks[kind].key(answer);
}
