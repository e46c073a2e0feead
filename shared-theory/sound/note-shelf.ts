import type { SoundedNote } from '../perform.ts';
import { renderString } from './plucked-string.ts';

/** Rendered strings by what they sound like, so that every stroke of a vamp is rendered once. */
export type NoteShelf = {
  readonly sampleRate: number;
  /** The samples of a note, at least `ringingSeconds` of it where the string rings so long. */
  readonly take: (note: SoundedNote) => Float32Array;
  /** The different sounds among `notes` that are not on the shelf yet, one note for each. */
  readonly missing: (notes: readonly SoundedNote[]) => readonly SoundedNote[];
};

/** Seconds in which a stopped string falls silent, by touch: the next strike is abrupt, a lifted hand is not. */
const STOP_SECONDS = { open: 0.012, palm: 0.012, dead: 0.012, choke: 0.035 } as const;

/** Longest sound kept of a touch; beyond it the string is too soft to matter or is faded out. */
const LONGEST_SECONDS = { open: 4, choke: 1, palm: 0.3, dead: 0.12 } as const;

/** Lengths are rounded up to this, so that small differences of tempo share a buffer. */
const LENGTH_STEP_SECONDS = 0.25;

/** Seconds from the end of a note until its string is silent: the same for the file and for the live sound. */
export function stopSeconds(note: Pick<SoundedNote, 'touch'>): number {
  return STOP_SECONDS[note.touch];
}

/** Factor for a note's own trim; the accent is in its samples. */
export function trimGain(note: Pick<SoundedNote, 'trim'>): number {
  return 10 ** (note.trim / 20);
}

/** An empty shelf for one sample rate. */
export function noteShelf(sampleRate: number): NoteShelf {
  const shelf = new Map<string, Float32Array>();
  const kept = (note: SoundedNote) => {
    const found = shelf.get(soundKey(note));
    return found && found.length >= Math.round(neededSeconds(note) * sampleRate) ? found : undefined;
  };
  return {
    sampleRate,
    take: (note) => {
      const found = kept(note);
      if (found) return found;
      const seed = (note.midi * 131 + note.string * 17 + note.accent * 5) | 0;
      const rendered = renderString(note, { seconds: neededSeconds(note), sampleRate, seed });
      shelf.set(soundKey(note), rendered);
      return rendered;
    },
    missing: (notes) => {
      const longest = new Map<string, SoundedNote>();
      for (const note of notes) {
        const key = soundKey(note);
        const other = longest.get(key);
        if (!kept(note) && (!other || other.duration < note.duration)) longest.set(key, note);
      }
      return [...longest.values()];
    },
  };
}

function soundKey({ midi, string, touch, accent, stroke }: SoundedNote): string {
  return `${midi}.${string}.${touch}.${accent}.${stroke}`;
}

function neededSeconds(note: SoundedNote): number {
  const wanted = note.duration + stopSeconds(note) + 0.03;
  return Math.min(LONGEST_SECONDS[note.touch], Math.ceil(wanted / LENGTH_STEP_SECONDS) * LENGTH_STEP_SECONDS);
}
