import { readTaps, tappedTempo } from '../../taps/taps.ts';
import { ofTheGroove } from '../of-the-groove.ts';
import type { Ask } from '../question.ts';

/** Whether a number is the index of one of so many taps, or one past the last. */
const isPlace = (value: unknown, taps: number): value is number =>
  Number.isInteger(value) && (value as number) >= 0 && (value as number) <= taps;

export const dropOutAsk: Ask<'drop-out'> = {
  kind: 'drop-out',
  targets: ofTheGroove,
  ask: () => ({ kind: 'drop-out', target: 0 }),
  read: (value) => {
    if (typeof value !== 'object' || value === null || !('taps' in value)) return null;
    const taps = readTaps(value.taps);
    const silentFrom = 'silentFrom' in value ? value.silentFrom : null;
    if (taps === null || (silentFrom !== null && !isPlace(silentFrom, taps.length))) return null;
    return { taps, silentFrom: silentFrom === null ? null : silentFrom + 0 };
  },
  key: ({ taps }) => String(tappedTempo(taps)),
};
