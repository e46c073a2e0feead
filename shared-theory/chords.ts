import { pitchClass, transpose } from './pitch.ts';
import type { Interval, NoteName, PitchClass } from './pitch.ts';

// The reader takes nothing but types from here, so that no circle arises.
export { parseChord } from './chord-reading.ts';

/** Qualities of chords in the order of the answer pads. */
export const QUALITIES = [
  'major',
  'minor',
  'power',
  'suspended-fourth',
  'diminished',
  'augmented',
  'suspended-second',
] as const;

/** What a chord is built of from its root: its third and fifth. A seventh and the like is an addition. */
export type Quality = (typeof QUALITIES)[number];

/**
 * What may sound beside the third and fifth: a minor seventh (named `seventh`, as in C7 and Cm7), a major seventh, a diminished
 * seventh, a major sixth, or a ninth without a seventh.
 */
const ADDITIONS = ['seventh', 'major-seventh', 'diminished-seventh', 'sixth', 'ninth'] as const;
export type Addition = (typeof ADDITIONS)[number];

/** A chord: a spelled root, a quality, and what more there is: one addition, and a bass other than the root. */
export type Chord = {
  readonly root: NoteName;
  readonly quality: Quality;
  /** Only those that `qualityAdditions` names for the quality have a symbol. */
  readonly addition?: Addition;
  /** The lowest note as spelled, where that is not the root: E in C/E. It counts as a note of the chord. */
  readonly bass?: NoteName;
};

const ROOT: Interval = { steps: 0, semitones: 0 };
const FIFTH: Interval = { steps: 4, semitones: 7 };

/** What each quality is built of, from the root up, and how a chord of it is written (ASCII), bare and with each addition. */
const BUILD: Readonly<
  Record<
    Quality,
    {
      readonly intervals: readonly Interval[];
      readonly suffix: string;
      readonly with: Readonly<Partial<Record<Addition, string>>>;
    }
  >
> = {
  major: {
    intervals: [ROOT, { steps: 2, semitones: 4 }, FIFTH],
    suffix: '',
    with: { seventh: '7', 'major-seventh': 'maj7', sixth: '6', ninth: 'add9' },
  },
  minor: {
    intervals: [ROOT, { steps: 2, semitones: 3 }, FIFTH],
    suffix: 'm',
    with: { seventh: 'm7', 'major-seventh': 'm(maj7)', sixth: 'm6' },
  },
  power: { intervals: [ROOT, FIFTH], suffix: '5', with: {} },
  'suspended-fourth': { intervals: [ROOT, { steps: 3, semitones: 5 }, FIFTH], suffix: 'sus4', with: {} },
  diminished: {
    intervals: [ROOT, { steps: 2, semitones: 3 }, { steps: 4, semitones: 6 }],
    suffix: 'dim',
    with: { seventh: 'm7b5', 'diminished-seventh': 'dim7' },
  },
  augmented: { intervals: [ROOT, { steps: 2, semitones: 4 }, { steps: 4, semitones: 8 }], suffix: 'aug', with: {} },
  'suspended-second': { intervals: [ROOT, { steps: 1, semitones: 2 }, FIFTH], suffix: 'sus2', with: {} },
};

const ADDED: Readonly<Record<Addition, Interval>> = {
  seventh: { steps: 6, semitones: 10 },
  'major-seventh': { steps: 6, semitones: 11 },
  'diminished-seventh': { steps: 6, semitones: 9 },
  sixth: { steps: 5, semitones: 9 },
  ninth: { steps: 8, semitones: 14 },
};

/** Every suffix that a chord symbol of ours can have, with what it stands for; the bare quality before its additions. */
export const SUFFIXES: readonly {
  readonly suffix: string;
  readonly quality: Quality;
  readonly addition: Addition | null;
}[] = QUALITIES.flatMap((quality) => [
  { suffix: BUILD[quality].suffix, quality, addition: null },
  ...ADDITIONS.flatMap((addition) => {
    const suffix = BUILD[quality].with[addition];
    return suffix === undefined ? [] : [{ suffix, quality, addition }];
  }),
]);

/** What a quality adds to the root in a chord symbol, ASCII: `m`, `dim`, `sus4`; nothing for major. */
export function qualitySuffix(quality: Quality): string {
  return BUILD[quality].suffix;
}

/** The additions that a quality can have: none for power and suspended chords. */
export function qualityAdditions(quality: Quality): readonly Addition[] {
  return ADDITIONS.filter((addition) => BUILD[quality].with[addition] !== undefined);
}

/** Semitones above the root of each note of a quality, from the root up. */
export function qualitySemitones(quality: Quality): readonly number[] {
  return BUILD[quality].intervals.map(({ semitones }) => semitones);
}

/** What a chord symbol has after its root, ASCII, without a slash bass: `m7`, `maj7`. RangeError for an addition without a symbol. */
export function chordSuffix({ quality, addition }: Pick<Chord, 'quality' | 'addition'>): string {
  if (addition === undefined) return BUILD[quality].suffix;
  const suffix = BUILD[quality].with[addition];
  if (suffix === undefined) throw new RangeError(`No chord is ${quality} with a ${addition}.`);
  return suffix;
}

/** Symbol of a chord in ASCII: `F#m`, `Bdim`, `Csus4`, `Am7`, `D/F#`. RangeError for an addition without a symbol. */
export function chordSymbol(chord: Chord): string {
  const { root, bass } = chord;
  return root + chordSuffix(chord) + (bass === undefined ? '' : `/${bass}`);
}

/** Intervals of a chord above its root, from the root up; its slash bass is not among them unless it is one of its notes. */
export function chordIntervals({ quality, addition }: Pick<Chord, 'quality' | 'addition'>): readonly Interval[] {
  const { intervals } = BUILD[quality];
  return addition === undefined ? intervals : [...intervals, ADDED[addition]];
}

/** Notes of a chord as spelled, from the root up, a foreign bass last: C# major is C# E# G#, C/D is C E G D. */
export function chordNotes(chord: Chord): readonly NoteName[] {
  const notes = chordIntervals(chord).map((interval) => transpose(chord.root, interval));
  const { bass } = chord;
  if (bass === undefined || notes.some((note) => pitchClass(note) === pitchClass(bass))) return notes;
  return [...notes, bass];
}

/** Pitch classes of a chord from the root up, a foreign bass last. */
export function chordPitchClasses(chord: Chord): readonly PitchClass[] {
  const start = pitchClass(chord.root);
  const sounds = chordIntervals(chord).map(({ semitones }) => (start + semitones) % 12);
  const bass = bassPitchClass(chord);
  return sounds.includes(bass) ? sounds : [...sounds, bass];
}

/** The note in the bass: the slash bass, else the root. */
export function bassNote({ root, bass }: Chord): NoteName {
  return bass ?? root;
}

/** Pitch class of the note in the bass. */
export function bassPitchClass(chord: Chord): PitchClass {
  return pitchClass(bassNote(chord));
}

/**
 * Whether two chords are one and the same however spelled, and whatever stands in the bass: root, quality and addition are equal.
 * C/E is C over another bass.
 */
export function soundsAs(one: Chord, other: Chord): boolean {
  return (
    one.quality === other.quality && one.addition === other.addition && pitchClass(one.root) === pitchClass(other.root)
  );
}

/** Whether two chords are one and the same and stand on the same bass. */
export function soundsAsOverBass(one: Chord, other: Chord): boolean {
  return soundsAs(one, other) && bassPitchClass(one) === bassPitchClass(other);
}

/** A chord without its slash bass. */
export function overRoot({ root, quality, addition }: Chord): Chord {
  return { root, quality, ...(addition === undefined ? {} : { addition }) };
}

/** The third and fifth of a chord on its root, without addition and slash bass. */
export function triadOf({ root, quality }: Chord): Chord {
  return { root, quality };
}

const known = new Map<string, Chord>();

/** Reads a symbol as `chordSymbol` writes it, and nothing else: for what the program itself wrote. RangeError where it is none. */
export function readSymbol(symbol: string): Chord {
  const found = known.get(symbol) ?? parseSymbol(symbol);
  known.set(symbol, found);
  return found;
}

function parseSymbol(symbol: string): Chord {
  const [, root = '', suffix = '', bass] =
    /^([A-G](?:#{1,3}|b{0,3}))([^/]*)(?:\/([A-G](?:#{1,3}|b{0,3})))?$/.exec(symbol) ?? [];
  const found = root === '' ? undefined : SUFFIXES.find((each) => each.suffix === suffix);
  if (!found) throw new RangeError(`Not a chord symbol of ours: ${JSON.stringify(symbol)}.`);
  const { quality, addition } = found;
  return { root, quality, ...(addition ? { addition } : {}), ...(bass === undefined ? {} : { bass }) };
}
