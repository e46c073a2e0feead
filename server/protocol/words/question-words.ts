import { countingWords } from './counting.ts';
import { ordinalWords } from './ordinals.ts';
import { directionAnswers } from './asked/direction.ts';
import { distanceAnswers, lineWords } from './asked/distance.ts';
import { feelAnswers } from './asked/feel.ts';
import { homeAnswers } from './asked/home.ts';
import { homeWords, keysAnswers } from './asked/keys.ts';
import { neckAnswers } from './asked/neck.ts';
import { numeralAnswers } from './asked/numeral.ts';
import { oneOrSeveralAnswers } from './asked/one-or-several.ts';
import { orderAnswers } from './asked/order.ts';
import { qualityAnswers } from './asked/quality.ts';
import { seventhAnswers } from './asked/seventh.ts';
import { strokesAnswers } from './asked/strokes.ts';

/** Names of answers, of all questions together: host and desk. A phone fetches those of each question with its pad. */
export const questionWords = {
  ...countingWords,
  ...ordinalWords,
  line: lineWords,
  sevenths: seventhAnswers,
  order: orderAnswers,
  homes: homeAnswers,
  /** Beside the neck under a capo, in lines. */
  capoNames: ['names are', 'sounding names'],
  keysHome: homeWords,
  options: {
    ...directionAnswers,
    ...qualityAnswers,
    ...strokesAnswers,
    ...feelAnswers,
    ...keysAnswers,
    ...oneOrSeveralAnswers,
    ...distanceAnswers,
    ...numeralAnswers,
    ...neckAnswers,
    others: 'others',
    'not-sure': 'not sure',
  },
} as const;
