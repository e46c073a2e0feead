import { chordSymbol } from './chords.ts';
import { grooveLines } from './groove-text.ts';
import { beatsPerSlot, readGroove, swingCap, withRootBass, type Groove } from './grooves.ts';
import { bassOf, shapesFor, usualShape } from './neck.ts';
import { directionOf, type Direction } from './truth.ts';
import type { Frets, Meter, Slot, VoicedVamp } from './vamps.ts';

/** Tempos that a vamp without a groove may have, beats a minute. */
const OPEN_TEMPO = [30, 300] as const;

export type VoiceRequest = {
  readonly slots: readonly Slot[];
  /** Default: the groove's, 4/4 without one. */
  readonly meter?: Meter;
  /** Groove id of the catalogue, or a groove of one's own, read or as text; null for chords alone. */
  readonly groove: string | Groove | null;
  /** Beats a minute, within `tempoRange(groove)`. */
  readonly tempo: number;
  readonly seed: number;
  /** Long to short eighth, within the groove's range; default as `swingRatio` says. */
  readonly swing?: number;
  /** False leaves the groove's opening bar out; default true. */
  readonly opening?: boolean;
  /**
   * True where the groove's other bass plays the fifth, as a player's does; default false: it plays the root, so that the
   * bass that is asked about never moves inside a chord.
   */
  readonly alternatingBass?: boolean;
  /** A shape for each slot; default the usual ones, or those that give `directions`. */
  readonly shapes?: readonly Frets[];
  /** Where the bass of each slot after the first goes from the first. */
  readonly directions?: readonly Direction[];
};

/** Lowest and highest tempo of a groove in beats a minute; of chords alone for null. */
export function tempoRange(groove: string | Groove | null): readonly [number, number] {
  return groove === null ? OPEN_TEMPO : readGroove(groove).tempo;
}

/**
 * Makes a vamp that can sound: a shape for each chord and the groove in full. Throws `RangeError` for an unknown groove, a
 * tempo or swing outside its range, a meter that is not its own, or directions that no playable shapes give.
 */
export function voice(request: VoiceRequest): VoicedVamp {
  const { slots, tempo, seed } = request;
  if (slots.length === 0) throw new RangeError('A vamp has at least one chord.');
  const groove = request.groove === null ? null : readGroove(request.groove);
  const meter = request.meter ?? groove?.meter ?? '4/4';
  if (groove && groove.meter !== meter)
    throw new RangeError(`${groove.id} is in ${groove.meter}, not ${meter}: choose another groove or meter.`);
  const [low, high] = tempoRange(groove);
  if (!(tempo >= low && tempo <= high))
    throw new RangeError(`${groove?.id ?? 'A vamp'} goes from ${low} to ${high} beats a minute, not ${tempo}.`);
  const shapes =
    request.shapes ?? (request.directions ? directedShapes(slots, request.directions) : usualShapes(slots));
  if (shapes.length !== slots.length)
    throw new RangeError(`${slots.length} chords take as many shapes, not ${shapes.length}.`);
  return {
    slots: slots.map((slot, index) => ({ ...slot, frets: shapes[index] ?? usualShape(slot.chord) })),
    meter,
    grooveText: groove ? textOf(groove, request) : '',
    tempo,
    seed,
  };
}

function usualShapes(slots: readonly Slot[]): readonly Frets[] {
  return slots.map((slot) => usualShape(slot.chord));
}

/** The most usual shapes whose basses go as asked. */
function directedShapes(slots: readonly Slot[], directions: readonly Direction[]): readonly Frets[] {
  if (directions.length !== slots.length - 1)
    throw new RangeError(
      `Directions are one for each chord after the first: ${slots.length - 1}, not ${directions.length}.`,
    );
  const shapes = shapesGoing(slots, directions);
  if (shapes) return shapes;
  const symbols = slots.map((slot) => chordSymbol(slot.chord)).join(' ');
  throw new RangeError(`No playable shapes of ${symbols} send the bass ${directions.join(', ')} from the first chord.`);
}

/** The most usual shapes whose basses go from the first slot's as `directions` say, one per later slot; null where none do. */
export function shapesGoing(slots: readonly Slot[], directions: readonly Direction[]): readonly Frets[] | null {
  const [home, ...others] = slots;
  if (!home) return null;
  const choices = shapesFor(home.chord).flatMap((start, rank) => {
    const chosen = others.map((slot, index) => {
      const shapes = shapesFor(slot.chord);
      return shapes.findIndex((frets) => directionOf(bassOf(start), bassOf(frets)) === directions[index]);
    });
    if (chosen.includes(-1)) return [];
    const shapes = [start, ...others.map((slot, index) => shapesFor(slot.chord)[chosen[index] ?? 0] ?? start)];
    return [{ shapes, unusual: chosen.reduce((sum, place) => sum + place, rank) }];
  });
  const [best] = choices.toSorted((one, other) => one.unusual - other.unusual);
  return best?.shapes ?? null;
}

/** The groove's text with the swing and the bass asked for, and without its opening bar where that is asked. */
function textOf(groove: Groove, { swing, tempo, opening = true, alternatingBass = false }: VoiceRequest): string {
  const text = alternatingBass ? groove.text : withRootBass(groove.text);
  const [header = '', ...all] = grooveLines(text).lines;
  const lanes = opening ? all : all.filter((lane) => !lane.startsWith('open-'));
  if (swing === undefined) return [header, ...lanes].join('\n');
  const [low, high] = groove.swing;
  if (!(swing >= low && swing <= high) || (swing > 1 && swing > swingCap(tempo / (2 * beatsPerSlot(groove)))))
    throw new RangeError(
      `${groove.id} swings from ${low} to ${high} and keeps the short note above 100 ms; not ${swing}.`,
    );
  const fields = header.split('|');
  return [fields.with(4, ` r=${swing} `).join('|'), ...lanes].join('\n');
}
