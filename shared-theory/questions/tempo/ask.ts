import { readTaps, tappedTempo } from '../../taps/taps.ts';
import { ofTheGroove } from '../of-the-groove.ts';
import type { Ask } from '../question.ts';

export const tempoAsk: Ask<'tempo'> = {
  kind: 'tempo',
  targets: ofTheGroove,
  ask: () => ({ kind: 'tempo', target: 0 }),
  read: readTaps,
  key: (taps) => String(tappedTempo(taps)),
};
