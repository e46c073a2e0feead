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
import { tempoAsk } from './tempo/ask.ts';
import { steadinessAsk } from './steadiness/ask.ts';
import { dropOutAsk } from './drop-out/ask.ts';
import { togetherAsk } from './together/ask.ts';
import { barCountAsk } from './bar-count/ask.ts';
import { threesAsk } from './threes/ask.ts';
import { halfTimeAsk } from './half-time/ask.ts';
import { swingAsk } from './swing/ask.ts';
import { driveAsk } from './drive/ask.ts';
import { pendulumAsk } from './pendulum/ask.ts';
import { changePlaceAsk } from './change-place/ask.ts';
import { accentsAsk } from './accents/ask.ts';
import { strokeGridAsk } from './stroke-grid/ask.ts';
import { rolesAsk } from './roles/ask.ts';
import { openedAsk } from './opened/ask.ts';

/** The asking side of every question. May reach phones: no judge, no truth. */
export const asks: { readonly [K in Kind]: Ask<K> } = {
  tempo: tempoAsk,
  steadiness: steadinessAsk,
  'drop-out': dropOutAsk,
  together: togetherAsk,
  'bar-count': barCountAsk,
  threes: threesAsk,
  'half-time': halfTimeAsk,
  swing: swingAsk,
  drive: driveAsk,
  strokes: strokesAsk,
  pendulum: pendulumAsk,
  'change-place': changePlaceAsk,
  accents: accentsAsk,
  'stroke-grid': strokeGridAsk,
  roles: rolesAsk,
  opened: openedAsk,
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
