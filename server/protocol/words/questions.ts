import type { Asked, Spoken } from './asked/asked.ts';
import { barCountSpoken } from './asked/bar-count.ts';
import { accentsSpoken, openedSpoken, rolesSpoken, strokeGridSpoken } from './asked/beat-grid.ts';
import { countSpoken } from './asked/count.ts';
import { directionSpoken } from './asked/direction.ts';
import { distanceSpoken } from './asked/distance.ts';
import { feelSpoken } from './asked/feel.ts';
import { homeSpoken } from './asked/home.ts';
import { keysSpoken, settlerSpoken } from './asked/keys.ts';
import { bassSpoken, rootSpoken } from './asked/neck.ts';
import { numeralSpoken } from './asked/numeral.ts';
import { oneOrSeveralSpoken } from './asked/one-or-several.ts';
import { orderSpoken } from './asked/order.ts';
import { qualitySpoken } from './asked/quality.ts';
import { seventhSpoken } from './asked/seventh.ts';
import { strokesSpoken } from './asked/strokes.ts';
import { dropOutSpoken, steadinessSpoken, tempoSpoken, togetherSpoken } from './asked/taps.ts';

/** By kind, in the usual order. */
const SPOKEN: Readonly<Record<string, Spoken>> = {
  tempo: tempoSpoken,
  steadiness: steadinessSpoken,
  'drop-out': dropOutSpoken,
  together: togetherSpoken,
  'bar-count': barCountSpoken,
  ...feelSpoken,
  strokes: strokesSpoken,
  accents: accentsSpoken,
  'stroke-grid': strokeGridSpoken,
  roles: rolesSpoken,
  opened: openedSpoken,
  count: countSpoken,
  order: orderSpoken,
  direction: directionSpoken,
  bass: bassSpoken,
  quality: qualitySpoken,
  root: rootSpoken,
  seventh: seventhSpoken,
  distance: distanceSpoken,
  numeral: numeralSpoken,
  'one-or-several': oneOrSeveralSpoken,
  keys: keysSpoken,
  settler: settlerSpoken,
  home: homeSpoken,
};

/** The question as spoken: `Third chord: major or minor?`. Throws RangeError for a kind that has no prompt. */
export function questionPrompt(asked: Asked): string {
  return spokenOf(asked).prompt(asked);
}

/** The line under the question. Throws RangeError for a kind that has none. */
export function questionInstruction(asked: Asked): string {
  return spokenOf(asked).instruction(asked);
}

function spokenOf({ kind }: Asked): Spoken {
  const spoken = Object.keys(SPOKEN).includes(kind) ? SPOKEN[kind] : undefined;
  if (!spoken) throw new RangeError(`No prompt for a question of kind ${kind}`);
  return spoken;
}
