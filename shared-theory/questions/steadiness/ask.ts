import { readTaps, tappedTempo } from '../../taps/taps.ts';
import { ofTheGroove } from '../of-the-groove.ts';
import type { Ask } from '../question.ts';

export const steadinessAsk: Ask<'steadiness'> = {
  kind: 'steadiness',
  targets: ofTheGroove,
  ask: () => ({ kind: 'steadiness', target: 0 }),
  read: readTaps,
  key: (taps) => String(tappedTempo(taps)),
};
