import { qualitySemitones, type Quality } from '../../shared-theory/chords.ts';
import { STANDARD_TUNING } from '../../shared-theory/neck.ts';

/** One note as a transcriber heard it: seconds from the beginning of its file, amplitude 0 to 1. */
export type HeardNote = {
  readonly midi: number;
  readonly start: number;
  readonly end: number;
  readonly amplitude: number;
};

/** A chord as it was heard; both null where nothing was. `sure` is how far the best quality lies before the next, 0 to 1. */
export type HeardChord = {
  readonly bass: number | null;
  readonly quality: HeardQuality | null;
  readonly sure: number;
};

/** Suspended chords are heard as such: over a root in the bass a second and a fourth do one thing. */
export type HeardQuality = Exclude<Quality, 'suspended-fourth' | 'suspended-second'> | 'suspended';

/** The lowest note of the guitar that is heard: what a transcriber writes under it, it has made up. */
const LOWEST = Math.min(...STANDARD_TUNING);

/** Doubles that transcribers hear an octave under a note stay mostly below this share of the strongest note. */
const BASS_SHARE = 0.25;

/** From this share of the strongest note on, a note counts in full; less counts in proportion. */
const FULL_SHARE = 0.25;

const TEMPLATES: readonly Quality[] = [
  'major',
  'minor',
  'diminished',
  'augmented',
  'power',
  'suspended-fourth',
  'suspended-second',
];

/** The quality as it can be heard. */
export function heardAs(quality: Quality): HeardQuality {
  return quality === 'suspended-fourth' || quality === 'suspended-second' ? 'suspended' : quality;
}

/**
 * The chord among a guitar's `notes` between two times in seconds. A note's strength is its amplitude times the seconds it sounds there. The
 * bass is the lowest note that has a quarter of the strongest one's strength. The quality is the one whose notes over that
 * bass are likest to what sounds: the cosine of its template and the twelve strengths, each full from a quarter of the strongest.
 */
export function hearChord(notes: readonly HeardNote[], from: number, to: number): HeardChord {
  const strengths = new Map<number, number>();
  for (const { midi, start, end, amplitude } of notes) {
    const seconds = Math.min(end, to) - Math.max(start, from);
    if (seconds > 0 && midi >= LOWEST) strengths.set(midi, (strengths.get(midi) ?? 0) + amplitude * seconds);
  }
  const strongest = Math.max(0, ...strengths.values());
  if (strongest === 0) return { bass: null, quality: null, sure: 0 };
  const bass = Math.min(...[...strengths].filter(([, has]) => has >= BASS_SHARE * strongest).map(([midi]) => midi));
  const sounding: number[] = Array.from({ length: 12 }, () => 0);
  for (const [midi, strength] of strengths) {
    if (midi < bass) continue;
    const above = (midi - bass) % 12;
    sounding[above] = Math.max(sounding[above] ?? 0, Math.min(1, strength / (FULL_SHARE * strongest)));
  }
  const length = Math.hypot(...sounding);
  const ranked = TEMPLATES.map((quality) => {
    const template = qualitySemitones(quality);
    const product = template.reduce((sum, semitones) => sum + (sounding[semitones] ?? 0), 0);
    return { quality: heardAs(quality), likeness: product / (length * Math.sqrt(template.length)) };
  }).toSorted((one, other) => other.likeness - one.likeness);
  const [best] = ranked;
  const next = ranked.find(({ quality }) => quality !== best?.quality);
  if (!best) return { bass, quality: null, sure: 0 };
  return { bass, quality: best.quality, sure: best.likeness - (next?.likeness ?? 0) };
}
