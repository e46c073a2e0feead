import { isLoopback, plainAddress } from './addresses.ts';

/** More than a school has phones; the count says whether phones get through, not how many there are. */
const MOST_COUNTED = 5000;

/** Counts the distinct addresses, other than this machine, that reached the server. */
export function createVisitors(more: () => void) {
  const seen = new Set<string>();
  return {
    visited: (peer: string): void => {
      const address = plainAddress(peer);
      if (address === '' || isLoopback(address) || seen.has(address) || seen.size >= MOST_COUNTED) return;
      seen.add(address);
      more();
    },
    count: (): number => seen.size,
  };
}
