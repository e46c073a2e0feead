import { chordSymbol, parseChord, soundsAs } from './chords.ts';
import type { Chord } from './chords.ts';
import { cribOf } from './crib.ts';
import { candidateKeys, seventhsUnder } from './candidates.ts';
import { keyOwns } from './degrees.ts';
import type { CandidateKey } from './candidates.ts';
import { BEATS_PER_BAR } from './meters.ts';
import { usualShape } from './neck.ts';
import { perform } from './perform.ts';
import { pitchClass } from './pitch.ts';
import type { PitchClass } from './pitch.ts';
import { heardAs } from './sounding.ts';
import type { Policy, Truth } from './truth.ts';
import type { VoicedSlot, VoicedVamp } from './vamps.ts';

/** A third chord that throws some of the keys out, with the shape that plays it. */
export type VoicedSettler = { readonly slot: VoicedSlot; readonly keys: Truth['settlers'][number]['keys'] };

/**
 * The settlers of a vamp: the most usual chord that leaves only the key on the flat side, and the one that leaves only the key
 * on the sharp side; which comes first differs from loop to loop, so that the first never tells. Each lasts a bar behind the
 * loop, and the keys are those that hold all that then sounds. Empty where fewer than two major keys own the vamp; a side is
 * missing where no chord of it would be heard in the vamp's groove.
 */
export function settlersOf(vamp: VoicedVamp): readonly VoicedSettler[] {
  const { owners, sides } = planOf(vamp.slots.map(({ chord }) => chord));
  return sides.flatMap((chords) => {
    for (const chord of chords) {
      const slot = { chord, beats: BEATS_PER_BAR[vamp.meter], frets: usualShape(chord) };
      // The keys that own the whole chord are those that hold all that then sounds.
      if (soundsBehind(vamp, slot) === null) continue;
      const keys = keysLeft(owners, chord);
      if (keys.majors.length === 1) return [{ slot, keys }];
    }
    return [];
  });
}

/** The keys that own a loop, under each policy. */
type Owners = Readonly<Record<Policy, readonly CandidateKey[]>>;

function ownersOf(chords: readonly Chord[]): Owners {
  const under = (policy: Policy) => candidateKeys(chords, policy);
  return {
    majors: under('majors'),
    relatives: under('relatives'),
    'raised-seventh': under('raised-seventh'),
    modes: under('modes'),
  };
}

/** Names of those that own one chord more. */
function keysLeft(owners: Owners, chord: Chord): Truth['settlers'][number]['keys'] {
  const left = (policy: Policy) =>
    owners[policy].filter((key) => keyOwns(key, chord, seventhsUnder(policy))).map(({ name }) => name);
  return {
    majors: left('majors'),
    relatives: left('relatives'),
    'raised-seventh': left('raised-seventh'),
    modes: left('modes'),
  };
}

/** The keys that own a loop, and for each side the chords that should leave its outermost key alone. */
type Plan = { readonly owners: Owners; readonly sides: readonly (readonly Chord[])[] };

/** More than a class hears in a term; thousands of vamps are drawn from far fewer loops. */
const REMEMBERED = 4000;
const plans = new Map<string, Plan>();

function planOf(chords: readonly Chord[]): Plan {
  return remembered(plans, chords.map(chordSymbol).join(' '), () => {
    const different = chords.filter((chord, slot) => chords.findIndex((other) => soundsAs(chord, other)) === slot);
    const owners = ownersOf(different);
    const { majors } = owners;
    const [flat, sharp] = [majors[0], majors.at(-1)];
    if (!flat || !sharp || flat === sharp) return { owners, sides: [] };
    // Most usual first. A diminished chord would settle it as well, but hardly stands alone.
    const thirds = cribOf(different, 'majors').settlers.map(({ chord, leaves }) => ({
      chord: parseChord(chord),
      leaves,
    }));
    const leaving = ({ name }: CandidateKey) =>
      thirds
        .filter(({ chord, leaves }) => chord.quality !== 'diminished' && leaves.length === 1 && leaves[0] === name)
        .map(({ chord }) => chord);
    const sides = [leaving(flat), leaving(sharp)];
    return { owners, sides: flatFirst(different) ? sides : sides.toReversed() };
  });
}

/**
 * By the different chords as they sound: the same loop has the same settlers wherever it is played, however it is written.
 * Whether home's pitch class and the number of minor chords make an even sum is so for about half of the loops of any kind.
 */
function flatFirst(different: readonly Chord[]): boolean {
  const minors = different.filter(({ quality }) => quality === 'minor').length;
  return (pitchClass(different[0]?.root ?? 'C') + minors) % 2 === 0;
}

const heard = new Map<string, ReadonlySet<PitchClass> | null>();

/** What sounds of a chord behind the loop, in its groove; null where that is not the whole chord, root lowest. */
function soundsBehind(vamp: VoicedVamp, slot: VoicedSlot): ReadonlySet<PitchClass> | null {
  const beats = vamp.slots.reduce((sum, each) => sum + each.beats, 0);
  const key = `${chordSymbol(slot.chord)} ${beats} ${vamp.meter}\n${vamp.grooveText}`;
  return remembered(heard, key, () => {
    const { notes } = perform({ ...vamp, slots: [...vamp.slots, slot] });
    return (
      heardAs(
        slot.chord,
        notes.filter(({ chord }) => chord === vamp.slots.length),
      )?.sounds ?? null
    );
  });
}

/** What was worked out for a key before, or is now; forgotten all together where it grows too much. */
function remembered<T>(known: Map<string, T>, key: string, work: () => T): T {
  const found = known.get(key);
  if (found !== undefined) return found;
  if (known.size >= REMEMBERED) known.clear();
  const made = work();
  known.set(key, made);
  return made;
}
