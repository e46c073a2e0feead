import type { Kind } from '../../../shared-theory/questions/question.ts';
import { untilHere } from '../until-here.ts';
import type { PadModule } from './pad.ts';

const taps = () => import('./tap-pad.tsx');
const grid = () => import('./grid-pad.tsx');
const feel = () => import('./feel-pad.tsx');

/** One pad a question: only the one that is asked for stands between a phone and its answer. */
const LOADERS: Readonly<Record<Kind, () => Promise<unknown>>> = {
  direction: () => import('./direction-pad.tsx'),
  quality: () => import('./quality-pad.tsx'),
  root: () => import('./neck-pad.tsx'),
  keys: () => import('./keys-pad.tsx'),
  strokes: () => import('./strokes-pad.tsx'),
  count: () => import('./count-pad.tsx'),
  distance: () => import('./distance-pad.tsx'),
  numeral: () => import('./numeral-pad.tsx'),
  'one-or-several': () => import('./one-or-several-pad.tsx'),
  settler: () => import('./keys-pad.tsx'),
  bass: () => import('./neck-pad.tsx'),
  seventh: () => import('./seventh-pad.tsx'),
  order: () => import('./order-pad.tsx'),
  home: () => import('./home-pad.tsx'),
  tempo: taps,
  steadiness: taps,
  'drop-out': taps,
  together: taps,
  'bar-count': () => import('./bar-count-pad.tsx'),
  threes: feel,
  'half-time': feel,
  swing: feel,
  drive: feel,
  pendulum: feel,
  'change-place': feel,
  accents: grid,
  'stroke-grid': grid,
  roles: grid,
  opened: grid,
};

const loaded = new Map<string, PadModule>();

/** The pad of a kind, if it is here already. */
export const padOf = (kind: string): PadModule | undefined => loaded.get(kind);

/** Fetches the pad of a kind, if it is not here yet. */
export async function loadPad(kind: string): Promise<PadModule | undefined> {
  const load = LOADERS[kind as Kind];
  if (!loaded.has(kind) && load) loaded.set(kind, (await untilHere(load)) as PadModule);
  return loaded.get(kind);
}

/** Fetches the other pads one by one while nothing else is to do, so that a network that fails later costs no question. */
export async function loadOtherPads(): Promise<void> {
  for (const kind of Object.keys(LOADERS)) await loadPad(kind);
}
