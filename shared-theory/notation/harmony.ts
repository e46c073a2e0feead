import { chordSuffix, type Addition, type Chord, type Quality } from '../chords.ts';
import { readNote, type NoteName } from '../pitch.ts';
import type { Frets, Slot } from '../vamps.ts';
import { element, elementWith, type Element } from './xml.ts';

/** Each chord's kind as MusicXML names it; an added ninth is a degree beside it. */
const KINDS: Readonly<Record<Quality, string>> = {
  major: 'major',
  minor: 'minor',
  power: 'power',
  'suspended-fourth': 'suspended-fourth',
  diminished: 'diminished',
  augmented: 'augmented',
  'suspended-second': 'suspended-second',
};
const KINDS_WITH: Readonly<Partial<Record<Quality, Readonly<Partial<Record<Addition, string>>>>>> = {
  major: { seventh: 'dominant', 'major-seventh': 'major-seventh', sixth: 'major-sixth' },
  minor: { seventh: 'minor-seventh', 'major-seventh': 'major-minor', sixth: 'minor-sixth' },
  diminished: { seventh: 'half-diminished', 'diminished-seventh': 'diminished-seventh' },
};

const FRETS_DRAWN = 4;

function named(part: 'root' | 'bass', note: NoteName): Element {
  const { letter, alteration } = readNote(note);
  return element(part, element(`${part}-step`, letter), alteration !== 0 && element(`${part}-alter`, alteration));
}

function degrees({ addition }: Chord): Element[] {
  if (addition !== 'ninth') return [];
  // The kind's own text shows it already.
  return [
    elementWith(
      'degree',
      { 'print-object': 'no' },
      element('degree-value', 9),
      element('degree-alter', 0),
      element('degree-type', 'add'),
    ),
  ];
}

/** A chord's shape as a fretboard; strings that are not played have no dot. */
function frame(frets: Frets): Element {
  const pressed = frets.filter((fret) => fret !== null && fret > 0) as readonly number[];
  const highest = Math.max(0, ...pressed);
  const first = highest > FRETS_DRAWN ? Math.min(...pressed) : 1;
  const notes = frets.flatMap((fret, index) =>
    fret === null ? [] : [element('frame-note', element('string', frets.length - index), element('fret', fret))],
  );
  return element(
    'frame',
    element('frame-strings', frets.length),
    element('frame-frets', Math.max(FRETS_DRAWN, highest - first + 1)),
    first > 1 && element('first-fret', first),
    ...notes,
  );
}

/** A chord as a symbol over the staff, with its shape where one is given. */
export function harmony({ chord }: Slot, frets: Frets | null): Element {
  const { quality, addition } = chord;
  const kind = (addition && KINDS_WITH[quality]?.[addition]) ?? KINDS[quality];
  const suffix = chordSuffix(chord);
  return element(
    'harmony',
    named('root', chord.root),
    elementWith('kind', suffix === '' ? {} : { text: suffix }, kind),
    chord.bass !== undefined && named('bass', chord.bass),
    ...degrees(chord),
    frets !== null && frame(frets),
  );
}
