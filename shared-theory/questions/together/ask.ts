import { readTaps, tappedTempo } from '../../taps/taps.ts';
import { ofTheGroove } from '../of-the-groove.ts';
import type { Ask } from '../question.ts';

export const togetherAsk: Ask<'together'> = {
  kind: 'together',
  targets: ofTheGroove,
  ask: () => ({ kind: 'together', target: 0 }),
  read: readTaps,
  key: (taps) => String(tappedTempo(taps)),
};
