import { chordFault, plainSigns } from './chord-faults.ts';
import { pitchClass, transpose } from './pitch.ts';
import type { Interval, NoteName, PitchClass } from './pitch.ts';

/** Chord qualities in the order of the answer pads. */
export const QUALITIES = [
  'major',
  'minor',
  'power',
  'suspended-fourth',
  'diminished',
  'augmented',
  'suspended-second',
] as const;

/** The quality of a chord built on its root. */
export type Quality = (typeof QUALITIES)[number];

/** A chord: a spelled root and a quality; its root is its bass. */
export type Chord = { readonly root: NoteName; readonly quality: Quality };

const ROOT: Interval = { steps: 0, semitones: 0 };
const FIFTH: Interval = { steps: 4, semitones: 7 };

/** What each quality is written with (ASCII) and built of, from the root up. */
const BUILD: Readonly<Record<Quality, { readonly suffix: string; readonly intervals: readonly Interval[] }>> = {
  major: { suffix: '', intervals: [ROOT, { steps: 2, semitones: 4 }, FIFTH] },
  minor: { suffix: 'm', intervals: [ROOT, { steps: 2, semitones: 3 }, FIFTH] },
  power: { suffix: '5', intervals: [ROOT, FIFTH] },
  'suspended-fourth': { suffix: 'sus4', intervals: [ROOT, { steps: 3, semitones: 5 }, FIFTH] },
  diminished: { suffix: 'dim', intervals: [ROOT, { steps: 2, semitones: 3 }, { steps: 4, semitones: 6 }] },
  augmented: { suffix: 'aug', intervals: [ROOT, { steps: 2, semitones: 4 }, { steps: 4, semitones: 8 }] },
  'suspended-second': { suffix: 'sus2', intervals: [ROOT, { steps: 1, semitones: 2 }, FIFTH] },
};

/** What a quality adds to the root in a chord symbol, ASCII: `m`, `dim`, `sus4`; nothing for major. */
export function qualitySuffix(quality: Quality): string {
  return BUILD[quality].suffix;
}

/** Semitones above the root of each note of a quality, from the root up. */
export function qualitySemitones(quality: Quality): readonly number[] {
  return BUILD[quality].intervals.map(({ semitones }) => semitones);
}

/** Symbol of a chord in ASCII: `F#m`, `Bdim`, `Csus4`. */
export function chordSymbol({ root, quality }: Chord): string {
  return root + qualitySuffix(quality);
}

/** Notes of a chord as spelled, from the root up: C# major is C# E# G#. */
export function chordNotes({ root, quality }: Chord): readonly NoteName[] {
  return BUILD[quality].intervals.map((interval) => transpose(root, interval));
}

/** Pitch classes of a chord from the root up. */
export function chordPitchClasses({ root, quality }: Chord): readonly PitchClass[] {
  const start = pitchClass(root);
  return qualitySemitones(quality).map((semitones) => (start + semitones) % 12);
}

/** Whether two chords sound alike: same root and quality, however spelled. */
export function soundsAs(one: Chord, other: Chord): boolean {
  return one.quality === other.quality && pitchClass(one.root) === pitchClass(other.root);
}

/** Suffixes that a chord may be typed with. Capital and small letters differ: CM is major, Cm is minor. */
const TYPED_SUFFIXES: Readonly<Record<Quality, readonly string[]>> = {
  major: ['', 'M', 'maj', 'Maj'],
  minor: ['m', 'min', 'mi', '-', '−'],
  power: ['5'],
  'suspended-fourth': ['sus', 'sus4'],
  diminished: ['dim', '°', 'º'],
  augmented: ['aug', '+'],
  'suspended-second': ['sus2'],
};

/**
 * Reads a typed chord: `C`, `F♯m`, `Bdim`, `B°`, `C+`, `C5`, `Csus`. Spaces around it are ignored.
 * ReadingError for anything else, with the first character that cannot be read and what to write instead.
 */
export function parseChord(text: string): Chord {
  const lead = text.length - text.trimStart().length;
  const typed = plainSigns(text.trim());
  const root = /^[A-G][#b]?/.exec(typed)?.[0];
  if (root !== undefined) {
    const suffix = typed.slice(root.length);
    const quality = QUALITIES.find((each) => TYPED_SUFFIXES[each].includes(suffix));
    if (quality) return { root, quality };
  }
  throw chordFault(text.trim()).movedBy(lead);
}
