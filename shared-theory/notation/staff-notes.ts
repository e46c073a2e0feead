import type { BassNote, KitPiece, KitStrike, SoundedNote } from '../perform.ts';
import { velocityOf } from '../sound/midi.ts';
import type { StaffPitch } from './spelling.ts';
import { element, type Element } from './xml.ts';

/** One head on a staff. */
export type StaffNote = {
  readonly pitch: StaffPitch;
  /** Id of the instrument that plays it where its part has several: then its place on the staff is no pitch. */
  readonly instrument: string | null;
  readonly notehead: 'x' | 'circle-x' | null;
  /** What stands at it, inside its `notations`. */
  readonly notations: readonly Element[];
  readonly muted: boolean;
  /** It is left to ring whatever else the hand does. */
  readonly letRing: boolean;
  readonly accent: SoundedNote['accent'];
};

/** MusicXML counts loudness in hundredths of a forte, whose MIDI velocity is 90. */
const FORTE = 90;

export function loudness(accent: SoundedNote['accent']): number {
  return Math.round((10_000 * velocityOf(accent)) / FORTE) / 100;
}

function articulations(heavy: boolean, short: boolean): Element[] {
  if (!heavy && !short) return [];
  return [element('articulations', heavy && element('accent'), short && element('staccato'))];
}

/** Fingers of the plucking hand from the lowest string they take. */
const FINGERS = ['i', 'm', 'a'] as const;

/** Signs at the lowest head of a stroke: its way, its accent, whether it is short. */
function strokeSigns({ stroke, by, accent, touch }: SoundedNote): Element[] {
  const way = by === undefined ? [element('technical', element(stroke === 'down' ? 'down-bow' : 'up-bow'))] : [];
  return [...way, ...articulations(accent === 3, touch === 'choke')];
}

/**
 * The notes of one stroke on the staff, from low to high, a pitch on two strings once. `spell` gives each its name. Dead ones have
 * a cross for a head.
 */
export function strokeNotes(
  notes: readonly SoundedNote[],
  spell: (note: SoundedNote) => StaffPitch,
): readonly StaffNote[] {
  const rising = notes.toSorted((one, other) => one.midi - other.midi || other.string - one.string);
  const heads = rising.filter(({ midi }, index) => midi !== rising[index - 1]?.midi);
  const fingers = heads.filter(({ by }) => by === 'finger');
  return heads.map((note, index) => {
    const { touch, by, accent } = note;
    const finger = FINGERS[Math.max(0, fingers.indexOf(note) + FINGERS.length - Math.max(fingers.length, 3))];
    const pluck = by === 'thumb' ? 'p' : finger;
    return {
      pitch: spell(note),
      instrument: null,
      notehead: touch === 'dead' ? 'x' : null,
      notations: [
        ...(by === undefined ? [] : [element('technical', element('pluck', pluck ?? 'i'))]),
        ...(index === 0 ? strokeSigns(note) : []),
      ],
      muted: touch === 'palm' || touch === 'half',
      letRing: touch === 'ring',
      accent,
    };
  });
}

/** A note of the bass guitar. */
export function bassNotes({ accent }: BassNote, pitch: StaffPitch): readonly StaffNote[] {
  const notations = articulations(accent === 3, false);
  return [{ pitch, instrument: null, notehead: null, notations, muted: false, letRing: false, accent }];
}

/** Places of the kit on a percussion staff as if it had a treble clef, and the heads there. Common practice. */
const KIT_PLACES: Readonly<Record<KitPiece, { readonly pitch: StaffPitch; readonly notehead: StaffNote['notehead'] }>> =
  {
    kick: { pitch: { step: 'F', alter: 0, octave: 4 }, notehead: null },
    snare: { pitch: { step: 'C', alter: 0, octave: 5 }, notehead: null },
    'closed-hat': { pitch: { step: 'G', alter: 0, octave: 5 }, notehead: 'x' },
    'open-hat': { pitch: { step: 'G', alter: 0, octave: 5 }, notehead: 'circle-x' },
  };
const FROM_BELOW: readonly KitPiece[] = ['kick', 'snare', 'closed-hat', 'open-hat'];

/** Strokes on the kit at one moment, from low to high; `idOf` names the instrument of a piece. */
export function kitNotes(strikes: readonly KitStrike[], idOf: (piece: KitPiece) => string): readonly StaffNote[] {
  const struck = FROM_BELOW.flatMap((piece) => strikes.find((strike) => strike.piece === piece) ?? []);
  const heavy = struck.some(({ accent }) => accent === 3);
  return struck.map(({ piece, accent }, index) => ({
    ...KIT_PLACES[piece],
    instrument: idOf(piece),
    notations: articulations(index === 0 && heavy, false),
    muted: false,
    letRing: false,
    accent,
  }));
}
