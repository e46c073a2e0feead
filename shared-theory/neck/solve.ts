import { bassNote, chordIntervals, chordNotes, type Chord } from '../chords.ts';
import { pitchClass, type NoteName, type PitchClass } from '../pitch.ts';
import type { Frets } from '../vamps.ts';
import { readCapo } from './capo.ts';
import { nearest } from './movement.ts';
import { searchShapes, type SolvedShape, type Wanted } from './search.ts';
import { TUNINGS, type TuningId } from './tunings.ts';

/** Shapes stay on the part of the neck that every guitar has: so high from the capo, and so high from the nut. */
const HIGHEST_FRET = 12;
const END_OF_NECK = 17;

export type ShapeRequest = {
  /** Default: standard. */
  readonly tuning?: TuningId;
  /** Fret of the capo, 0 (none) to 9; default 0. */
  readonly capo?: number;
  /** Highest fret, counted from the capo; default 12, and less where the capo leaves less. */
  readonly highestFret?: number;
  /** The shape before, on the same guitar: near ones come first. */
  readonly from?: Frets;
  /**
   * Default `sounds`: the fifth of a chord with an addition is left out only where no shape has it. `may-rest` ranks shapes
   * without it beside the others, as players take C7.
   */
  readonly fifth?: 'sounds' | 'may-rest';
};

/** Why a chord has no shape, and what cannot be played. */
export type ShapeRefusal =
  /** The tuning has no lowest string that could carry the bass. */
  | { readonly reason: 'no-low-bass'; readonly tuning: TuningId }
  /** The instrument plays one note at a time. */
  | { readonly reason: 'one-note-at-a-time'; readonly tuning: TuningId }
  /** No string has the bass below the rest of the chord. */
  | { readonly reason: 'bass'; readonly bass: NoteName }
  /** A hand that holds the rest of the chord over its bass does not reach these notes. */
  | { readonly reason: 'notes'; readonly missing: readonly NoteName[] };

export type ShapeAnswer = {
  /** The usual shape first; empty where there is a refusal. */
  readonly shapes: readonly SolvedShape[];
  readonly refusal: ShapeRefusal | null;
  /** The fifth that no shape has; null where every note of the chord sounds. */
  readonly leftOut: NoteName | null;
};

/** The fifth that a chord can do without: a perfect one beside an addition, and not in the bass. */
function restingFifth(chord: Chord): NoteName | null {
  if (chord.addition === undefined) return null;
  const place = chordIntervals(chord).findIndex(({ semitones }) => semitones === 7);
  const fifth = chordNotes(chord)[place];
  return fifth === undefined || pitchClass(fifth) === pitchClass(bassNote(chord)) ? null : fifth;
}

/** The notes of a chord that lean: a seventh, sixth or ninth but a major seventh, a diminished fifth, and every note of a dim7. */
function leaningOf(chord: Chord): readonly PitchClass[] {
  const all = chord.addition === 'diminished-seventh';
  return chordIntervals(chord)
    .filter(({ steps, semitones }) => all || semitones === 6 || (steps > 4 && semitones !== 11))
    .map(({ semitones }) => (pitchClass(chord.root) + semitones) % 12);
}

function fifthOf(chord: Chord): Wanted['sounding']['fifth'] {
  const { semitones = 7 } = chordIntervals(chord).find(({ steps }) => steps === 4) ?? {};
  return semitones < 7 ? 'diminished' : semitones > 7 ? 'augmented' : 'perfect';
}

type Neck = { readonly open: readonly number[]; readonly highestFret: number };

function readNeck(request: ShapeRequest): Neck {
  const { strings } = TUNINGS[request.tuning ?? 'standard'];
  const capo = readCapo(request.capo ?? 0);
  const most = Math.min(HIGHEST_FRET, END_OF_NECK - capo);
  const highestFret = request.highestFret ?? most;
  if (!Number.isInteger(highestFret) || highestFret < 0 || highestFret > most)
    throw new RangeError(`The highest fret is 0 to ${most} from a capo on ${capo}, not ${highestFret}.`);
  if (request.from && request.from.length !== strings.length)
    throw new RangeError(`The shape before has ${request.from.length} strings; this guitar has ${strings.length}.`);
  return { open: strings.map((string) => string + capo), highestFret };
}

function wantedOf(chord: Chord, { open, highestFret }: Neck, without: readonly NoteName[]): Wanted {
  const left = new Set(without.map(pitchClass));
  const bass = pitchClass(bassNote(chord));
  const own = chordIntervals(chord).map(({ semitones }) => (pitchClass(chord.root) + semitones) % 12);
  const foreign = !own.includes(bass);
  const leaning = foreign ? [...leaningOf(chord), bass] : leaningOf(chord);
  const sounds = chordNotes(chord)
    .map(pitchClass)
    .filter((sound) => !left.has(sound));
  return {
    open,
    highestFret,
    sounds,
    bass,
    sounding: {
      notes: sounds.length,
      root: pitchClass(chord.root),
      fifth: fifthOf(chord),
      bits: sounds.reduce((bits, sound) => bits | (1 << sound), 0),
      rooted: bass === pitchClass(chord.root),
      foreign,
      leaning: leaning.reduce((bits, sound) => bits | (1 << sound), 0),
      noFifth: without.length > 0,
    },
  };
}

/** The fewest notes of a chord, beside its bass, without which it could be held; null where not even two notes over the bass can. */
function missingNotes(chord: Chord, neck: Neck): readonly NoteName[] | null {
  const others = chordNotes(chord).filter((note) => pitchClass(note) !== pitchClass(bassNote(chord)));
  const ones = others.map((note) => [note]);
  const twos = others.flatMap((note, index) => others.slice(index + 1).map((more) => [note, more]));
  const threes = others.length > 3 ? others.map((kept) => others.filter((note) => note !== kept)) : [];
  const candidates = [...ones, ...twos, ...threes].filter((without) => without.length < others.length);
  return candidates.find((without) => searchShapes(wantedOf(chord, neck, without)).length > 0) ?? null;
}

function refuse(chord: Chord, neck: Neck): ShapeRefusal {
  const missing = missingNotes(chord, neck);
  return missing ? { reason: 'notes', missing } : { reason: 'bass', bass: bassNote(chord) };
}

function solve(chord: Chord, neck: Neck, fifth: 'sounds' | 'may-rest'): ShapeAnswer {
  const resting = restingFifth(chord);
  const whole = searchShapes(wantedOf(chord, neck, []));
  if (resting !== null && (whole.length === 0 || fifth === 'may-rest')) {
    const without = searchShapes(wantedOf(chord, neck, [resting]));
    const shapes = [...whole, ...without].toSorted((one, other) => one.cost - other.cost);
    if (shapes.length > 0) return { shapes, refusal: null, leftOut: whole.length === 0 ? resting : null };
  }
  if (whole.length > 0) return { shapes: whole, refusal: null, leftOut: null };
  return { shapes: [], refusal: refuse(chord, neck), leftOut: null };
}

function refuseInstrument(tuning: TuningId): ShapeRefusal | null {
  switch (TUNINGS[tuning].kind) {
    case 'guitar':
      return null;
    case 'high-string':
      return { reason: 'no-low-bass', tuning };
    case 'bass':
      return { reason: 'one-note-at-a-time', tuning };
  }
}

/** Solves a chord without looking at what was solved before; the shape before plays no part. Errors as of `solveShapes`. */
export function solveAnew(chord: Chord, request: ShapeRequest = {}): ShapeAnswer {
  const neck = readNeck(request);
  const refusal = refuseInstrument(request.tuning ?? 'standard');
  if (refusal) return { shapes: [], refusal, leftOut: null };
  return solve(chord, neck, request.fifth ?? 'sounds');
}

const solved = new Map<string, ShapeAnswer>();

/** Answers kept: every chord of a lesson in the class's tuning, many times over. */
const MOST_SOLVED = 2000;

/**
 * Shapes of a chord as it sounds, the one that a player takes first at the head: at most four fingers and four frets, the root or
 * slash bass lowest, every note of the chord and no other. Frets count from the capo. RangeError for a capo, highest fret or
 * shape before that this guitar has not.
 */
export function solveShapes(chord: Chord, request: ShapeRequest = {}): ShapeAnswer {
  const { tuning = 'standard', fifth = 'sounds', from } = request;
  const { open, highestFret } = readNeck(request);
  const { quality, addition, root } = chord;
  const name = [tuning, open[0], highestFret, fifth, quality, addition, root, bassNote(chord)].join(' ');
  const answer = solved.get(name) ?? solveAnew(chord, request);
  if (solved.size > MOST_SOLVED) solved.clear();
  solved.set(name, answer);
  return from ? { ...answer, shapes: nearest(answer.shapes, from) } : answer;
}
