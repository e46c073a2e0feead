import { readSymbol, soundsAs, triadOf } from './chords.ts';
import type { Chord } from './chords.ts';

/** The 24 major and minor triads by how soon a guitarist meets them: open shapes, then the first barres, then the rest. */
const TRIADS = 'G C D A E Em Am Dm F Bm Bb B F#m Gm Cm C#m Eb Ab Db F# Fm G#m Bbm Ebm'.split(' ').map(readSymbol);
/** Sevenths that are played open, by how soon; the others come as barres, in the order of their triads. */
const OPEN_SEVENTHS = 'D7 A7 E7 G7 C7 B7 Cmaj7 Dmaj7 Fmaj7 Gmaj7 Amaj7 Emaj7'.split(' ').map(readSymbol);

/** How late a guitarist meets a triad: its place in the guitar order; diminished ones come after all others. */
export function lateness(chord: Chord): number {
  return placeIn(TRIADS, chord);
}

/** How late a guitarist meets a chord with a seventh, beside others with sevenths. */
export function seventhLateness(chord: Chord): number {
  const open = placeIn(OPEN_SEVENTHS, chord);
  return open < OPEN_SEVENTHS.length ? open : open + lateness(triadOf(chord));
}

/** 0 for major and minor triads, 1 for those with a seventh, 2 for diminished chords: guitarists reach for them last. */
export function reach({ quality, addition }: Chord): 0 | 1 | 2 {
  if (quality === 'diminished') return 2;
  return addition === undefined ? 0 : 1;
}

function placeIn(order: readonly Chord[], chord: Chord): number {
  const place = order.findIndex((known) => soundsAs(known, chord));
  return place < 0 ? order.length : place;
}
