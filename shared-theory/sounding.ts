import { bassPitchClass, chordPitchClasses, chordSymbol } from './chords.ts';
import type { Chord } from './chords.ts';
import type { SoundedNote } from './perform.ts';
import { midiPitchClass } from './pitch.ts';
import type { PitchClass } from './pitch.ts';

/** Strings of one stroke follow each other faster than this; strokes do not. In seconds. */
const STROKE_SECONDS = 0.06;

/** Notes taken together that one movement of the hand sounded, in order of time. */
function strokesOf(notes: readonly SoundedNote[]): SoundedNote[][] {
  const strokes: SoundedNote[][] = [];
  for (const note of notes) {
    const last = strokes.at(-1);
    const first = last?.[0];
    const joins = first && note.stroke === first.stroke && note.time - first.time < STROKE_SECONDS;
    if (joins && !last.some((other) => other.string === note.string)) last.push(note);
    else strokes.push([note]);
  }
  return strokes;
}

/** One slot of a performance as it sounds. */
type HeardSlot = {
  /** MIDI note of its first bass stroke. */
  readonly bass: number;
  /** MIDI note of the highest string in its first full stroke. */
  readonly top: number;
  /** Whether a bass stroke sounds another note than its bass. */
  readonly bassAlternates: boolean;
  readonly sounds: ReadonlySet<PitchClass>;
};

/**
 * What sounded of a chord in its slot. Throws `RangeError` unless that is the chord: its notes, all of them, no other, and its
 * bass note lowest.
 */
export function heardSlot(chord: Chord, notes: readonly SoundedNote[]): HeardSlot {
  const heard = soundingSlot(notes);
  if (!heard) throw new RangeError(`${chordSymbol(chord)} never sounded.`);
  const fault = faultOf(chord, notes, heard);
  if (fault !== null) throw new RangeError(fault);
  return heard;
}

/** What sounded of a chord in its slot; null unless that is the chord. */
export function heardAs(chord: Chord, notes: readonly SoundedNote[]): HeardSlot | null {
  const heard = soundingSlot(notes);
  return heard && faultOf(chord, notes, heard) === null ? heard : null;
}

function soundingSlot(notes: readonly SoundedNote[]): HeardSlot | null {
  const strokes = strokesOf(notes);
  const bassStroke =
    strokes.find((stroke) => stroke.some(({ bass }) => bass)) ??
    strokes.find(([first]) => first?.stroke === 'down') ??
    strokes[0];
  const [firstStroke, ...others] = strokes;
  if (!bassStroke || !firstStroke) return null;
  const fullest = others.reduce((best, stroke) => (stroke.length > best.length ? stroke : best), firstStroke);
  const highest = fullest.reduce((best, note) => (note.string < best.string ? note : best));
  const bass = Math.min(...bassStroke.map((note) => note.midi));
  return {
    bass,
    top: highest.midi,
    // A down-stroke on one string is a bass stroke.
    bassAlternates: strokes.some(([note, more]) => note?.stroke === 'down' && !more && note.midi !== bass),
    sounds: new Set(notes.filter(({ touch }) => touch !== 'dead').map(({ midi }) => midiPitchClass(midi))),
  };
}

/** Why what sounded is not the chord; null where it is. */
function faultOf(chord: Chord, notes: readonly SoundedNote[], { bass, sounds }: HeardSlot): string | null {
  const symbol = chordSymbol(chord);
  const wanted = chordPitchClasses(chord);
  const stray = notes.find(({ touch, midi }) => touch !== 'dead' && !wanted.includes(midiPitchClass(midi)));
  if (stray) return `MIDI note ${stray.midi} sounded in ${symbol}, which does not hold it.`;
  const missing = wanted.find((sound) => !sounds.has(sound));
  if (missing !== undefined) return `Pitch class ${missing} of ${symbol} never sounded.`;
  if (midiPitchClass(bass) !== bassPitchClass(chord))
    return `The bass of ${symbol} sounded as MIDI note ${bass}, which is not its bass note.`;
  return null;
}
