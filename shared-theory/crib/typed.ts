import type { QuestionSettings } from '../questions/question.ts';
import { guitarTruth } from '../truth.ts';
import type { GuitarOptions, Truth } from '../truth.ts';
import type { Frets, Slot } from '../vamps.ts';
import { cribShapes, directionsOf } from './shapes.ts';
import type { CribShape, Guitar } from './shapes.ts';
import type { CribSheet } from './sheet.ts';
import { cribSheet } from './sheet.ts';
import type { RoundQuestion } from '../questions/round-questions.ts';

/** A sheet with the shapes of its chords on a guitar. */
export type GuitarCrib = CribSheet & {
  readonly guitar: Guitar;
  /** The different chords, each over another bass on its own. */
  readonly shapes: readonly CribShape[];
  /** Whether it is known which way the bass goes. */
  readonly directionsKnown: boolean;
};

/**
 * The sheet of a vamp as typed: the bass goes as it does in the shapes on the sheet. With a groove, and its tempo, it says what is asked
 * of that too. RangeError without chords, and where they begin between the slots of the groove.
 */
export function typedCrib(
  slots: readonly Slot[],
  settings: QuestionSettings,
  guitar: Guitar,
  playing: Pick<GuitarOptions, 'groove' | 'tempo'> = {},
): GuitarCrib {
  const all = cribShapes(
    slots.map(({ chord }) => chord),
    guitar,
  );
  const directions = directionsOf(all, guitar);
  const truth = guitarTruth(slots, { directions, ...playing });
  return withShapes(cribSheet(truth, settings), all, guitar, directions !== null);
}

/** The sheet of a round as it is heard: its truth, its questions and, where they are known and the guitar is theirs, its shapes. */
export function roundCrib(
  round: {
    readonly truth: Truth;
    readonly settings: QuestionSettings;
    readonly questions: readonly RoundQuestion[];
    readonly slots: readonly (Slot & { readonly frets: Frets })[];
  },
  guitar: Guitar,
): GuitarCrib {
  const asHeard = guitar.tuning === 'standard' && guitar.capo === 0;
  const shapes = cribShapes(
    round.slots.map(({ chord }) => chord),
    guitar,
    asHeard ? round.slots.map(({ frets }) => frets) : [],
  );
  return withShapes(cribSheet(round.truth, round.settings, round.questions), shapes, guitar, true);
}

function withShapes(sheet: CribSheet, all: readonly CribShape[], guitar: Guitar, directionsKnown: boolean): GuitarCrib {
  const shapes = all.filter(({ chord }, slot) => all.findIndex((other) => other.chord === chord) === slot);
  const asked = sheet.questions.filter(({ kind }) => directionsKnown || kind !== 'direction');
  return { ...sheet, questions: asked, guitar, shapes, directionsKnown };
}
