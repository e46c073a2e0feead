import { candidateKeys, seventhsUnder } from './candidates.ts';
import type { CandidateKey } from './candidates.ts';
import { chordSymbol, readSymbol } from './chords.ts';
import type { Chord } from './chords.ts';
import { decidersOf, holdsUnder } from './deciders.ts';
import { keyOwns } from './degrees.ts';
import { differentChords } from './different-chords.ts';
import { BEATS_PER_BAR } from './meters.ts';
import { shapeNotes, usualShape } from './neck.ts';
import { perform } from './perform.ts';
import { modulo, pitchClass } from './pitch.ts';
import type { NoteName, PitchClass } from './pitch.ts';
import { remembered } from './remembered.ts';
import { settlingTriads } from './settlers.ts';
import { heardAs } from './sounding.ts';
import type { Policy, Truth } from './truth.ts';
import type { VoicedSlot, VoicedVamp } from './vamps.ts';

type Keys = Truth['settlers'][number]['keys'];

/** What throws some of the keys out, or leaves all in, and the keys that it leaves. */
export type VoicedSettler =
  /** A third chord, with the shape that plays it for a bar behind the loop. */
  | { readonly slot: VoicedSlot; readonly note: null; readonly keys: Keys }
  /** A note that is sung over the loop, with its MIDI number. */
  | { readonly slot: null; readonly note: { readonly name: NoteName; readonly midi: number }; readonly keys: Keys };

/**
 * The settlers of a vamp. First chords: the most usual one that leaves only the key on the flat side, and the one that leaves
 * only the key on the sharp side; for one loop in three a chord that all the majors own stands among them. Then notes: the
 * decider that leaves the flat side's key, and the sharp side's. Which side comes first, and where the chord that settles
 * nothing stands, differs from loop to loop, so that a place never tells. Chords last a bar behind the loop, notes are sung over
 * its first chord, and the keys are those that hold all that then sounds. Empty where fewer than two major keys own the vamp; a
 * chord is missing where none of its kind would be heard in the vamp's groove.
 */
export function settlersOf(vamp: VoicedVamp): readonly VoicedSettler[] {
  const { owners, chords, notes } = planOf(vamp.slots.map(({ chord }) => chord));
  const behind = chords.flatMap(({ choices, leaves }) => {
    for (const chord of choices) {
      const slot = { chord, beats: BEATS_PER_BAR[vamp.meter], frets: usualShape(chord) };
      // The keys that own the whole chord are those that hold all that then sounds.
      if (soundsBehind(vamp, slot) === null) continue;
      const keys = left(owners, (key, policy) => keyOwns(key, chord, seventhsUnder(policy)));
      if (keys.majors.length === leaves) return [{ slot, note: null, keys }];
    }
    return [];
  });
  const sung = notes.map((name) => {
    const keys = left(owners, (key, policy) => holdsUnder(key, pitchClass(name), policy));
    return { slot: null, note: { name, midi: sungNote(name, vamp.slots) }, keys };
  });
  return [...behind, ...sung];
}

/** E4: from here up a note lies in a singing voice's middle, and above most of what a guitar's open chords sound. */
const SUNG_FROM = 64;

/** MIDI number of a note sung over the first chord of a loop: the lowest from E4 on that lies above all its strings. */
export function sungNote(name: NoteName, slots: readonly Pick<VoicedSlot, 'frets'>[]): number {
  const [first] = slots;
  if (!first) throw new RangeError('A note is sung over a loop of at least one chord.');
  const top = Math.max(...shapeNotes(first.frets).map(({ midi }) => midi));
  const lowest = Math.max(SUNG_FROM, top + 1);
  return lowest + modulo(pitchClass(name) - lowest, 12);
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

/** Names of those that stay in. */
function left(owners: Owners, stays: (key: CandidateKey, policy: Policy) => boolean): Keys {
  const under = (policy: Policy) => owners[policy].filter((key) => stays(key, policy)).map(({ name }) => name);
  return {
    majors: under('majors'),
    relatives: under('relatives'),
    'raised-seventh': under('raised-seventh'),
    modes: under('modes'),
  };
}

/** What settles a loop, before a groove says which chords of it can be heard. */
type Plan = {
  readonly owners: Owners;
  /** Chords that would do, the most usual first, and how many majors they leave. */
  readonly chords: readonly { readonly choices: readonly Chord[]; readonly leaves: number }[];
  readonly notes: readonly NoteName[];
};

/** No key has to leave. */
const SETTLED: Plan = {
  owners: { majors: [], relatives: [], 'raised-seventh': [], modes: [] },
  chords: [],
  notes: [],
};

const plans = new Map<string, Plan>();

function planOf(chords: readonly Chord[]): Plan {
  return remembered(plans, chords.map(chordSymbol).join(' '), () => {
    // A foreign bass is a note that a key must hold.
    const different = differentChords(chords, { slashIsNew: true });
    const majors = candidateKeys(different, 'majors');
    if (majors.length < 2) return SETTLED;
    const owners = ownersOf(different);
    const outer = [majors[0], majors.at(-1)].flatMap((key) => (key ? [key.name] : []));
    const { settlers, open } = settlingTriads(different, majors, 'majors');
    const alone = (name: string) => (leaves: readonly string[]) => leaves.length === 1 && leaves[0] === name;
    // Most usual first. A diminished chord would settle it as well, but hardly stands alone.
    const standing = (symbols: readonly string[]) =>
      symbols.map(readSymbol).filter(({ quality }) => quality !== 'diminished');
    const sides = outer.map((name) => ({
      choices: standing(settlers.filter(({ leaves }) => alone(name)(leaves)).map(({ chord }) => chord)),
      leaves: 1,
    }));
    const deciders = decidersOf(majors, 'majors');
    const notes = outer.flatMap((name) => deciders.find(({ leaves }) => alone(name)(leaves))?.note ?? []);
    const turn = turnOf(differentChords(different), majors);
    const both = turn.flatFirst ? sides : sides.toReversed();
    const idle = { choices: standing(open), leaves: majors.length };
    return {
      owners,
      chords: turn.idleAt === null ? both : both.toSpliced(turn.idleAt, 0, idle),
      notes: turn.flatFirst ? notes : notes.toReversed(),
    };
  });
}

/** One loop in so many has a chord that settles nothing among its settlers. */
const IDLE_EACH = 3;
/** Places among two chords: before, between and behind them. */
const PLACES = 3;

/**
 * By the different chords and the first key as they sound: the same loop has the same settlers wherever it starts, however it is
 * written, and a kind of loop has others in another key. The flat side comes first for about half of the loops of any kind.
 */
function turnOf(different: readonly Chord[], [first]: readonly CandidateKey[]) {
  const minors = different.filter(({ quality }) => quality === 'minor').length;
  const onCircle = modulo(pitchClass(first?.tonic ?? 'C') * 7, 12);
  const place = onCircle + minors;
  return {
    flatFirst: (Math.floor(onCircle / 2) + minors) % 2 === 0,
    idleAt: place % IDLE_EACH === 0 ? Math.floor(place / IDLE_EACH) % PLACES : null,
  };
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
