import type { Groove, GrooveSlot } from './groove-grid.ts';

/** Strings that a full stroke crosses after its first. */
export const CROSSINGS = 5;

/** Milliseconds between the slow and the fast end of a feel: tempo and spread at each, `[beats a minute, milliseconds]`. */
function between(tempo: number, slow: readonly [number, number], fast: readonly [number, number]): number {
  const share = Math.min(1, Math.max(0, (tempo - slow[0]) / (fast[0] - slow[0])));
  return slow[1] + share * (fast[1] - slow[1]);
}

const rings = ({ touch }: GrooveSlot) => touch === 'open' || touch === 'ring';

/** Whether the hand comes down twice in a row, on a number and on its and, as where it drives in downstrokes. */
function comesDownOnAnds({ grid, slots }: Groove): boolean {
  const eighths = grid === 'E8' || grid === 'E16';
  return (
    eighths &&
    slots.some(({ stroke }, index) => stroke === 'down' && index % 2 === 1 && slots[index - 1]?.stroke === 'down')
  );
}

/**
 * Seconds a stroke takes from string 6 to string 1: 25 to 45 ms in a slow ballad, 12 to 22 relaxed, 6 to 12 where the hand drives, in
 * downstrokes on the ands too or in sixteenths of which none rings; the faster the shorter. Ringing sixteenths are a ballad up to 84
 * beats a minute, all else below 72 (common practice).
 */
export function strumSpread(groove: Groove | null, tempo: number): number {
  if (groove?.grid === 'S16') {
    if (!groove.slots.some(rings)) return between(tempo, [60, 12], [148, 6]) / 1000;
    return (tempo <= 84 ? between(tempo, [44, 45], [84, 25]) : between(tempo, [84, 22], [132, 12])) / 1000;
  }
  if (groove && comesDownOnAnds(groove)) return between(tempo, [90, 12], [180, 6]) / 1000;
  return (tempo < 72 ? between(tempo, [44, 45], [72, 25]) : between(tempo, [72, 22], [132, 12])) / 1000;
}

/** Milliseconds that plucking fingers take over so many strings: about 8 for three notes, 16 for four. */
const FINGER_SPREAD = [0, 0, 4, 8, 16] as const;

/**
 * Seconds between strings that fingers pluck nearly together: three notes within about 8 ms, four within 16, the medians of bossa
 * comping in published annotations (GuitarSet, Xi et al., ISMIR 2018, excerpt 03_BN3-119-G_comp).
 */
export function fingerStep(strings: number): number {
  if (strings < 2) return 0;
  const spread = FINGER_SPREAD[strings] ?? FINGER_SPREAD[4] + 8 * (strings - 4);
  return spread / (strings - 1) / 1000;
}
