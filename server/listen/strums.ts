import { parseChord, type Quality } from '../../shared-theory/chords.ts';
import { GROOVES, type Groove } from '../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { bassOf, shapesFor } from '../../shared-theory/neck.ts';
import { perform, type Performance } from '../../shared-theory/perform.ts';
import { pickOne, seededRandom, type Random } from '../../shared-theory/random.ts';
import { VOICES, type Voice } from '../../shared-theory/sound/instrument.ts';
import type { Frets } from '../../shared-theory/vamps.ts';
import { voice } from '../../shared-theory/voice.ts';

/** One chord strummed over a bar, and what it is. */
export type Strum = {
  /** Symbol in ASCII: `F#m7`. */
  readonly symbol: string;
  readonly quality: Quality;
  /** MIDI note of the shape's lowest string, the root. */
  readonly bass: number;
  readonly frets: Frets;
  readonly voice: Voice;
  readonly groove: Groove;
  readonly tempo: number;
  readonly performance: Performance;
};

const ROOTS = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];

/** What is strummed, as often as classes hear it: mostly triads with a third, some with a seventh. */
const SUFFIXES = 'M m M m sus4 M m 7 M m 5 M m m7 dim M m sus2 maj7 aug'
  .split(' ')
  .map((name) => (name === 'M' ? '' : name));

/** Shapes further up are not what a class plays. */
const HIGHEST_FRET = 9;

/**
 * `count` chords, each strummed over one bar in a shape, a voice and a groove of its own: suffixes, voices and grooves in turn, so
 * that all are heard, roots and shapes by chance. The same seed gives the same strums.
 */
export function strums(count: number, seed: number): readonly Strum[] {
  const random = seededRandom(seed, 'strums');
  const roots = shuffled(ROOTS, random);
  const grooves = shuffled(GROOVES, random);
  return Array.from({ length: count }, (_, index) => {
    // A root meets another suffix each time round: the steps have no factor in common with the lists' lengths.
    const root = roots[(index * 5 + Math.floor(index / ROOTS.length)) % roots.length] ?? 'C';
    const symbol = root + (SUFFIXES[index % SUFFIXES.length] ?? '');
    const groove = grooves[index % grooves.length] ?? pickOne(random, GROOVES);
    const chord = parseChord(symbol);
    const shapes = shapesFor(chord).filter((frets) => frets.every((fret) => (fret ?? 0) <= HIGHEST_FRET));
    const frets = pickOne(random, shapes.length > 0 ? shapes : shapesFor(chord));
    const tempo = Math.round((groove.tempo[0] + groove.tempo[1]) / 2);
    const slots = [{ chord, beats: BEATS_PER_BAR[groove.meter] }];
    const vamp = voice({ slots, groove: groove.id, tempo, seed: index, shapes: [frets] });
    return {
      symbol,
      quality: chord.quality,
      bass: bassOf(frets),
      frets,
      // A groove is played by another voice each time round.
      voice: VOICES[(index + Math.floor(index / grooves.length)) % VOICES.length] ?? 'steel',
      groove,
      tempo,
      performance: perform(vamp),
    };
  });
}

function shuffled<T>(items: readonly T[], random: Random): readonly T[] {
  return items
    .map((item) => ({ item, place: random() }))
    .toSorted((one, other) => one.place - other.place)
    .map(({ item }) => item);
}
