import type { WireAsking, WireStep, WireVamp } from '../../server/protocol/views.ts';
import { readSymbol } from '../../shared-theory/chords.ts';
import type { Chord, Quality } from '../../shared-theory/chords.ts';
import { GRID_KINDS, RHYTHM_KINDS, type Kind } from '../../shared-theory/questions/question.ts';

/** What has been shown of one slot of the loop. Nothing that was only heard or only answered. */
export type ShownFact =
  | { readonly kind: 'chord'; readonly chord: Chord }
  | { readonly kind: 'quality'; readonly quality: Quality }
  | { readonly kind: 'root'; readonly root: string };

/**
 * What may stand over each slot: its letter once its root and quality have both been shown, or once the keys have (they name
 * every chord), without a seventh or a bass that has not been shown where rounds like this ask for them; else the one fact that has
 * been shown; else nothing. A slot is not filled because it repeats another: that it does has not been asked. While a question waits for its answer, nothing that answers it stands there, whatever was
 * shown before: not the quality, not the root of any slot that holds the same chord.
 */
export function shownFacts(vamp: Pick<WireVamp, 'slots'>, steps: readonly WireStep[]): readonly (ShownFact | null)[] {
  const shown = (kind: string, target: number): boolean =>
    steps.some((step) => step.kind === kind && step.target === target && step.status === 'shown');
  const keys = shown('keys', 0);
  const asked = steps.find(({ status }) => status === 'open' || status === 'closed');
  const asksOf = (kind: string, symbol: string): boolean =>
    asked?.kind === kind && vamp.slots[asked.target]?.chord === symbol;
  // Letters over the bars would tell the order, whichever they are.
  if (asked?.kind === 'order') return vamp.slots.map(() => null);
  // The row has one step for all questions of a kind that have not been opened: of a chord without one nothing has been told.
  const isAsked = (kind: string): boolean => steps.some((step) => step.kind === kind);
  const isTold = (kind: string, index: number): boolean =>
    (keys || !isAsked(kind) || shown(kind, index)) && !asksOf(kind, vamp.slots[index]?.chord ?? '');
  /** The chord without a seventh or a bass that has not been told. */
  const known = ({ addition, bass, ...triad }: Chord, index: number): Chord => ({
    ...triad,
    ...(addition !== undefined && isTold('seventh', index) ? { addition } : {}),
    ...(bass !== undefined && isTold('bass', index) ? { bass } : {}),
  });
  return vamp.slots.map((slot, index) => {
    const chord = readSymbol(slot.chord);
    const root = (keys || shown('root', index)) && !asksOf('root', slot.chord);
    const quality = (keys || shown('quality', index)) && !asksOf('quality', slot.chord);
    if (root && quality) return { kind: 'chord', chord: known(chord, index) };
    if (quality) return { kind: 'quality', quality: chord.quality };
    if (root) return { kind: 'root', root: chord.root };
    return null;
  });
}

/** Questions whose words name the first chord or those after it. */
const NAMES_SLOTS = new Set(['direction', 'bass', 'quality', 'root', 'seventh', 'distance']);

/**
 * Whether brackets may show where each chord begins. Only once a question has been opened that names the chords by their
 * places: until then the bars say how long the loop is and nothing of what changes in it.
 */
export function bracketsAllowed(vamp: Pick<WireVamp, 'slots'>, steps: readonly WireStep[]): boolean {
  if (vamp.slots.length < 2) return false;
  return steps.some((step) => NAMES_SLOTS.has(step.kind) && step.status !== 'ready');
}

/** Whether a question asks which chord is home: by feel, or beside the parent scales. */
export function asksForHome({ kind, options = [] }: WireAsking): boolean {
  return kind === 'home' || (kind === 'keys' && options[0] === 'modes');
}

/** Questions that drawn bars and counted numbers would answer: where the numbers fall, and how many there are in a bar. */
const TOLD_BY_BARS: ReadonlySet<string> = new Set<Kind>(['tempo', 'bar-count', 'threes']);

/** Whether a question shows by itself how the bar is made: on the beat grid, or about chords, which stand in bars. */
const tellsBars = (kind: string): boolean => !RHYTHM_KINDS.has(kind as Kind) || GRID_KINDS.has(kind as Kind);

/**
 * Whether nothing may tell yet how the bar is made, neither drawn bars nor a count before them: while a question is asked or is still to
 * come that they would answer, and nobody has been told by another one.
 */
export function barsUntold(steps: readonly WireStep[], current: Pick<WireStep, 'kind' | 'status'> | null): boolean {
  if (current && TOLD_BY_BARS.has(current.kind)) return current.status !== 'shown';
  if (steps.some(({ kind, status }) => status !== 'ready' && tellsBars(kind))) return false;
  return steps.some(({ kind, status }) => status === 'ready' && TOLD_BY_BARS.has(kind));
}
