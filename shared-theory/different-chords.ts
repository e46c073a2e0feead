import { bassPitchClass, chordPitchClasses, soundsAs } from './chords.ts';
import type { Chord } from './chords.ts';
import { itemAt } from './items.ts';
import { namesOfSound } from './questions/same-sound.ts';

/** Whether a class counts a chord over another bass as another chord. Default false. */
export type SlashRule = { readonly slashIsNew?: boolean };

/** Whether two chords are the same notes over the same bass, whatever they are called: C6 and Am7/C. */
export function isSameSound(one: Chord, other: Chord): boolean {
  return soundOf(one) === soundOf(other);
}

/**
 * By slot, the index of its chord among the different ones in order of their first sounding. Chords are one where they are the same
 * notes over the same bass, and where they are the same chord over another bass, unless the class counts that as another.
 */
export function chordIndices(chords: readonly Chord[], { slashIsNew = false }: SlashRule = {}): readonly number[] {
  return numberedBy(chords, slashIsNew ? isSameSound : isSameChord);
}

/** The slots where a chord sounds for the first time. */
export function differentSlots(chords: readonly Chord[], rule: SlashRule = {}): readonly number[] {
  const indices = chordIndices(chords, rule);
  return indices.flatMap((index, slot) => (indices.indexOf(index) === slot ? [slot] : []));
}

/** The different chords in order of their first sounding, each as it is written there. */
export function differentChords(chords: readonly Chord[], rule: SlashRule = {}): readonly Chord[] {
  return differentSlots(chords, rule).map((slot) => itemAt(chords, slot));
}

/**
 * The other ways to number the chords that are as right; often none. Where the same notes stand over another bass (C6, then Am7),
 * who hears one chord over two basses is as right as who hears two, unless the class counts another bass as another chord; and so
 * is, where a chord joins two that are not one (C C/A Am7), who puts it to either.
 */
export function otherIndices(chords: readonly Chord[], rule: SlashRule = {}): readonly (readonly number[])[] {
  if (rule.slashIsNew === true) return [];
  const strict = chordIndices(chords, rule);
  const loose = numberedBy(chords, mayBeOne);
  const open = [...new Set(loose)].filter(
    (group) => new Set(strict.filter((_, slot) => loose[slot] === group)).size > 1,
  );
  const merged = subsetsOf(open).map((groups) =>
    strict.map((index, slot) => {
      const group = itemAt(loose, slot);
      return groups.includes(group) ? itemAt(strict, loose.indexOf(group)) : index;
    }),
  );
  const joined = chords.some((one, slot) =>
    chords.some((other, place) => strict[slot] === strict[place] && !isSameChord(one, other)),
  );
  const apart = joined ? [numberedBy(chords, soundsAs), numberedBy(chords, isSameSound)] : [];
  const ways = [...merged, ...apart].map(renumbered);
  const known = new Set([strict.join()]);
  return ways.filter((way) => !known.has(way.join()) && known.add(way.join()));
}

const sounds = new WeakMap<Chord, number>();

/** Pitch classes as bits, and the bass above them. */
function soundOf(chord: Chord): number {
  const known = sounds.get(chord);
  if (known !== undefined) return known;
  const bits = chordPitchClasses(chord).reduce((sum, sound) => sum | (1 << sound), 0);
  const sound = (bassPitchClass(chord) << 12) | bits;
  sounds.set(chord, sound);
  return sound;
}

function isSameChord(one: Chord, other: Chord): boolean {
  return isSameSound(one, other) || soundsAs(one, other);
}

/** Whether a name for what sounds of one is a name for what sounds of the other. */
function mayBeOne(one: Chord, other: Chord): boolean {
  return (
    isSameChord(one, other) ||
    namesOfSound(one).some((reading) => namesOfSound(other).some((each) => soundsAs(reading, each)))
  );
}

/** Chords in one group where a chain of equals joins them: then a loop has as many wherever it starts. */
function numberedBy(chords: readonly Chord[], isOne: (one: Chord, other: Chord) => boolean): readonly number[] {
  let groups = chords.map((_, slot) => slot);
  for (const [slot, chord] of chords.entries()) {
    for (const [before, other] of chords.slice(0, slot).entries()) {
      const [from, to] = [itemAt(groups, slot), itemAt(groups, before)];
      if (from !== to && isOne(chord, other)) groups = groups.map((group) => (group === from ? to : group));
    }
  }
  return renumbered(groups);
}

/** The same groups, numbered as they come. */
function renumbered(groups: readonly number[]): readonly number[] {
  const numbers = [...new Set(groups)];
  return groups.map((group) => numbers.indexOf(group));
}

/** All but the empty one, the whole first. */
function subsetsOf(items: readonly number[]): readonly (readonly number[])[] {
  const subsets = items.reduce<readonly (readonly number[])[]>(
    (known, item) => known.flatMap((subset) => [[...subset, item], subset]),
    [[]],
  );
  return subsets.filter((subset) => subset.length > 0);
}
