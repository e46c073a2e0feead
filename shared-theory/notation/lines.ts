import type { KitPiece } from '../perform.ts';
import type { Frets, VoicedVamp } from '../vamps.ts';
import { palmMarks } from './directions.ts';
import { harmony } from './harmony.ts';
import type { Line, Placed } from './measures.ts';
import { DIVISIONS } from './note-values.ts';
import { attacksOf, type Layout, type Section } from './sections.ts';
import { spelledOver, type StaffPitch } from './spelling.ts';
import { bassNotes, kitNotes, strokeNotes } from './staff-notes.ts';

export const KIT_PIECES: readonly KitPiece[] = ['kick', 'snare', 'closed-hat', 'open-hat'];

/** Nothing that is stopped or struck is written longer than a quarter. */
const SHORT = DIVISIONS;

function speller(vamp: VoicedVamp, signature: number) {
  return ({ midi, chord }: { readonly midi: number; readonly chord: number }): StaffPitch => {
    const slot = vamp.slots[chord];
    if (!slot) throw new RangeError(`A note of chord ${chord}, and the loop has ${vamp.slots.length}.`);
    return spelledOver(midi, slot.chord, signature);
  };
}

/** The guitar: every stroke, and the palm over its strings. */
export function guitarLine(
  vamp: VoicedVamp,
  layout: Layout,
  { start, notes }: Section,
  signature: number,
  words: { readonly palm: string; readonly half: string },
): Line {
  const spell = speller(vamp, signature);
  const attacks = attacksOf(
    layout,
    start,
    notes,
    (stroke) => {
      const ringing = stroke.filter(({ touch }) => touch === 'open' || touch === 'ring');
      const rings = Math.max(0, ...ringing.map(({ duration }) => layout.lengthOf(duration)));
      return { most: ringing.length > 0 ? layout.loop : SHORT, rings, holds: rings };
    },
    (stroke) => strokeNotes(stroke, spell),
  );
  return { attacks, over: palmMarks(attacks, words) };
}

/** The bass guitar: each note as long as it sounds. */
export function bassLine(vamp: VoicedVamp, layout: Layout, { start, bass }: Section, signature: number): Line {
  const spell = speller(vamp, signature);
  const attacks = attacksOf(
    layout,
    start,
    bass,
    (notes) => {
      const most = Math.max(...notes.map(({ duration }) => layout.lengthOf(duration)));
      return { most, rings: 0, holds: most };
    },
    (notes) => notes.flatMap((note) => bassNotes(note, spell(note))),
  );
  return { attacks, over: [] };
}

/** Id of a kit piece among the instruments of its part. */
export function kitInstrument(part: string, piece: KitPiece): string {
  return `${part}-${piece}`;
}

/** The kit. */
export function kitLine(layout: Layout, { start, kit }: Section, part: string): Line {
  const attacks = attacksOf(
    layout,
    start,
    kit,
    () => ({ most: SHORT, rings: 0, holds: 0 }),
    (strikes) => kitNotes(strikes, (piece) => kitInstrument(part, piece)),
  );
  return { attacks, over: [] };
}

/**
 * Chord symbols: one where each slot begins, before it where its strokes come before it. Each shape is drawn once; `draws` is false in a
 * section that follows one with all of them.
 */
export function symbolsOver(
  vamp: VoicedVamp,
  layout: Layout,
  { start, notes }: Section,
  draws: boolean,
): readonly Placed[] {
  const starts = layout.slots.map((at, chord) => ({ at, chord }));
  const strokes = notes.map(({ time, chord }) => ({ at: layout.placeOf(time) - start, chord }));
  const changes = [...starts, ...strokes]
    .toSorted((one, other) => one.at - other.at)
    .filter(({ chord }, index, all) => all[index - 1]?.chord !== chord);
  const drawn = new Set<Frets>();
  return changes.flatMap(({ at, chord }) => {
    const slot = vamp.slots[chord];
    if (!slot) return [];
    const isNew = draws && ![...drawn].some((frets) => String(frets) === String(slot.frets));
    drawn.add(slot.frets);
    return [{ at, element: harmony(slot, isNew ? slot.frets : null) }];
  });
}
