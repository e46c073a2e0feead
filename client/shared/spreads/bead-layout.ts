/** One pile of beads: how far apart their middles lie, how large they are, and how many hands one bead stands for. */
export type Pile = {
  readonly pitch: number;
  readonly radius: number;
  /** Beads to draw. */
  readonly beads: number;
  /** Written beside a pile whose beads no longer fit one a hand. */
  readonly number: number | null;
};

/** Bead and pitch of the host at 1080 lines. */
export const BEAD_RADIUS = 20;
export const BEAD_PITCH = 47;

/** Beads smaller than this can no longer be counted from the back row. */
const LEAST_RADIUS = 6.5;

/**
 * Lays piles of beads of one drawing, so that every bead of the drawing has one size: `counts` hands a pile, `room` the length
 * that a pile may take, `pitch` the usual distance. Past the room all shrink together; past the least size a pile is one
 * bead with its number.
 */
export function layPiles(counts: readonly number[], room: number, pitch = BEAD_PITCH): readonly Pile[] {
  const most = Math.max(1, ...counts);
  const shrunk = Math.min(pitch, room / most);
  const radius = (shrunk * BEAD_RADIUS) / BEAD_PITCH;
  if (radius >= LEAST_RADIUS) return counts.map((count) => ({ pitch: shrunk, radius, beads: count, number: null }));
  const full = (pitch * BEAD_RADIUS) / BEAD_PITCH;
  return counts.map((count) => ({
    pitch,
    radius: full,
    beads: Math.min(count, 1),
    number: count > 0 ? count : null,
  }));
}
