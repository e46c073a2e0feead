import { chordSymbol } from './chords.ts';
import type { Chord, Quality } from './chords.ts';
import { differentSlots } from './different-chords.ts';
import { distanceNumber, type Distance } from './distance-line.ts';
import { beatsPerSlot, readGroove, slotsPerBar, type Groove } from './grooves.ts';
import { candidateKeys } from './candidates.ts';
import { STANDARD_TUNING, usualShape } from './neck.ts';
import { grooveOf, perform } from './perform.ts';
import type { Performance, SoundedNote } from './perform.ts';
import { modulo, pitchClass } from './pitch.ts';
import type { NoteName } from './pitch.ts';
import { isSwung } from './rhythm/feel.ts';
import { rhythmOf } from './rhythm/rhythm-of.ts';
import type { RhythmTruth } from './rhythm/rhythm-truth.ts';
import { remembered } from './remembered.ts';
import { settlersOf } from './settle.ts';
import { heardSlot } from './sounding.ts';
import type { Meter, Slot, VoicedVamp } from './vamps.ts';

export type Direction = 'up' | 'down' | 'same';

/**
 * Which keys count. `majors`: majors only. `relatives`: majors with their relative minors. `raised-seventh`: those, and minors
 * whose seventh may be raised (V and vii° in minor). `modes`: a parent scale and the chord of the vamp that is home.
 */
export const POLICIES = ['majors', 'relatives', 'raised-seventh', 'modes'] as const;
export type Policy = (typeof POLICIES)[number];

/** The seventh of a chord: `seventh` is the minor one of C7 and Cm7. */
const SEVENTHS = ['none', 'seventh', 'major-seventh', 'diminished-seventh'] as const;
export type Seventh = (typeof SEVENTHS)[number];

/** How the sounding strokes go: all down, down and up by turns (with or without misses), or neither asked. */
export type StrokeFeel = 'all-downs' | 'down-up';

/**
 * The right answers, computed from the performance. Arrays have one entry per slot of the loop;
 * `directions` and `distances` one fewer, each from the first chord.
 */
export type Truth = {
  /** Different chords; one over another bass is the same. */
  readonly count: number;
  readonly directions: readonly Direction[];
  /** Chords as written, in ASCII: `F#m7`, `C/E`. */
  readonly chords: readonly string[];
  readonly qualities: readonly Quality[];
  /** A sixth or an added ninth is none. */
  readonly sevenths: readonly Seventh[];
  readonly roots: readonly NoteName[];
  readonly distances: readonly Distance[];
  /** MIDI note of each slot's first bass stroke. */
  readonly bass: readonly number[];
  /** True where the groove's bass goes to another note while a chord lasts; absent where it does not. */
  readonly bassAlternates?: boolean;
  /** MIDI note of the highest string in each slot's first full stroke; empty where the teacher plays. */
  readonly top: readonly number[];
  /** Names such as `G major`, `E minor`, `A dorian`; empty where no key owns all. */
  readonly keys: Readonly<Record<Policy, readonly string[]>>;
  /** Beats a minute; null where the teacher plays and named none. */
  readonly tempo: number | null;
  /** null where no groove was named, and where the strokes are neither. */
  readonly strokes: StrokeFeel | null;
  /** What the groove was; null where none was named, absent in rounds of a time that did not know it. */
  readonly rhythm?: RhythmTruth | null;
  /**
   * What throws some of the keys out, and the keys that each leaves; now and then a chord that leaves all is among them. Exactly
   * one of a third chord, behind the loop, and a note, sung for two beats from the first over its first chord, both in ASCII.
   * Empty where fewer than two major keys own the loop.
   */
  readonly settlers: readonly {
    readonly chord: string | null;
    readonly note: NoteName | null;
    readonly keys: Readonly<Record<Policy, readonly string[]>>;
  }[];
};

/** The seventh that a chord has. */
export function seventhOf({ addition }: Pick<Chord, 'addition'>): Seventh {
  return SEVENTHS.find((seventh) => seventh === addition) ?? 'none';
}

const keysOfLoops = new Map<string, Truth['keys']>();

/** Names of the keys that own all chords, under each policy. */
export function keysByPolicy(chords: readonly Chord[]): Truth['keys'] {
  return remembered(keysOfLoops, chords.map(chordSymbol).join(' '), () => {
    const named = (policy: Policy) => candidateKeys(chords, policy).map(({ name }) => name);
    return {
      majors: named('majors'),
      relatives: named('relatives'),
      'raised-seventh': named('raised-seventh'),
      modes: named('modes'),
    };
  });
}

/** Which way the bass went from one MIDI note to another. */
export function directionOf(from: number, to: number): Direction {
  return to > from ? 'up' : to < from ? 'down' : 'same';
}

/** The distance number of a root from the first root. Throws `RangeError` where one is no note. */
export function distanceOf(first: NoteName, root: NoteName): Distance {
  return distanceNumber(pitchClass(root) - pitchClass(first));
}

/** Down and up by turns: the hand never stops, it comes down on every other slot of the bar and goes up between. */
function strokeFeel(vamp: VoicedVamp, notes: readonly SoundedNote[]): StrokeFeel | null {
  const groove = grooveOf(vamp);
  // Fingers have no strokes down and up.
  if (groove === null || notes.some(({ by }) => by !== undefined)) return null;
  if (notes.every((note) => note.stroke === 'down')) return 'all-downs';
  const slot = (beatsPerSlot(groove) * 60) / vamp.tempo;
  // Swing, the strings of a stroke and a player's small differences keep a note within its slot, or just before it.
  const handOf = ({ time }: SoundedNote) => (Math.floor(time / slot + 0.1) % slotsPerBar(groove)) % 2;
  return notes.every((note) => handOf(note) === (note.stroke === 'down' ? 0 : 1)) ? 'down-up' : null;
}

/**
 * The right answers to a vamp from what sounded in its first loop. Throws `RangeError` where what sounded contradicts the
 * chords: a note that is not the chord's, one of its notes unheard, or a bass other than the root.
 */
export function truthOf(vamp: VoicedVamp, performance: Performance): Truth {
  const loopNotes = firstLoop(vamp, performance);
  const heard = vamp.slots.map(({ chord }, slot) =>
    heardSlot(
      chord,
      loopNotes.filter((note) => note.chord === slot),
    ),
  );
  const chords = vamp.slots.map((slot) => slot.chord);
  const home = chords[0]?.root ?? '';
  const homeBass = heard[0]?.bass ?? 0;
  return {
    count: differentSlots(chords).length,
    directions: heard.slice(1).map(({ bass }) => directionOf(homeBass, bass)),
    chords: chords.map(chordSymbol),
    qualities: chords.map((chord) => chord.quality),
    sevenths: chords.map(seventhOf),
    roots: chords.map((chord) => chord.root),
    distances: chords.slice(1).map((chord) => distanceOf(home, chord.root)),
    bass: heard.map(({ bass }) => bass),
    ...(heard.some(({ bassAlternates }) => bassAlternates) ? { bassAlternates: true } : {}),
    top: heard.map(({ top }) => top),
    keys: keysByPolicy(chords),
    tempo: vamp.grooveText === '' ? null : vamp.tempo,
    strokes: strokeFeel(vamp, loopNotes),
    rhythm: rhythmOf(vamp, performance),
    settlers: settlersOf(vamp).map(({ slot, note, keys }) => ({
      chord: slot && chordSymbol(slot.chord),
      note: note && note.name,
      keys,
    })),
  };
}

function firstLoop(vamp: VoicedVamp, performance: Performance): readonly SoundedNote[] {
  const seconds = performance.seconds / performance.loops;
  const slots = new Set(performance.notes.map((note) => note.chord));
  if (slots.size !== vamp.slots.length)
    throw new RangeError(`The performance plays ${slots.size} chords, the vamp has ${vamp.slots.length}.`);
  return performance.notes.filter((note) => note.time < seconds);
}

/** What the teacher's bass did from the first chord; `usual` where it went as the usual open shapes go. */
type StatedDirection = Direction | 'usual';

export type GuitarOptions = {
  /** Default: the groove's, else 4/4. */
  readonly meter?: Meter;
  /** One per slot after the first; null where all are usual. */
  readonly directions?: readonly StatedDirection[] | null;
  /** Groove id of the catalogue, or a groove of one's own; null or absent where the teacher named none. */
  readonly groove?: string | Groove | null;
  /** Beats a minute; null or absent where the teacher named none. */
  readonly tempo?: number | null;
};

/**
 * The right answers where the teacher plays his own guitar: the usual open shapes, the bass moved by octaves to where the
 * teacher says it went. Throws `RangeError` for a direction that no octave gives ("same" between different roots).
 */
export function guitarTruth(slots: readonly Slot[], options: GuitarOptions = {}): Truth {
  const { directions = null, tempo = null } = options;
  const groove = options.groove ? readGroove(options.groove) : null;
  const vamp: VoicedVamp = {
    slots: slots.map((slot) => ({ ...slot, frets: usualShape(slot.chord) })),
    meter: options.meter ?? groove?.meter ?? '4/4',
    grooveText: groove?.text ?? '',
    tempo: tempo ?? groove?.tempo[0] ?? 90,
    seed: 0,
  };
  // Which strings rang on top is not known: no answer is blamed on the top note.
  const played = truthOf(vamp, perform(vamp));
  const truth = { ...played, tempo, top: [], rhythm: groove && played.rhythm ? asPlayed(played.rhythm, groove) : null };
  if (!directions) return truth;
  if (directions.length !== slots.length - 1)
    throw new RangeError(
      `Directions are one for each chord after the first: ${slots.length - 1}, not ${directions.length}.`,
    );
  const home = truth.bass[0] ?? 0;
  const moved = truth.bass.map((bass, slot) =>
    slot === 0 ? bass : moveBass(home, bass, directions[slot - 1] ?? 'usual'),
  );
  const lift = Math.max(0, Math.ceil((STANDARD_TUNING[0] - Math.min(...moved)) / 12)) * 12;
  const bass = moved.map((midi) => midi + lift);
  return { ...truth, bass, directions: bass.slice(1).map((midi) => directionOf(home + lift, midi)) };
}

/** What is known of a groove that the teacher plays: how he swings one that may go straight or swung is not. */
function asPlayed(rhythm: RhythmTruth, { swing: [low, high] }: Groove): RhythmTruth {
  return isSwung(low) === isSwung(high) ? rhythm : { ...rhythm, swing: null };
}

/** The bass nearest to its usual place, by octaves, that lies in the stated direction from home. */
function moveBass(home: number, usual: number, stated: StatedDirection): number {
  if (stated === 'usual' || directionOf(home, usual) === stated) return usual;
  if (stated === 'same' && modulo(usual - home, 12) !== 0)
    throw new RangeError('The bass cannot stay where the roots differ: say up or down.');
  if (stated === 'same') return home;
  // Within an octave above or below home; a whole octave where the roots are one.
  const above = home + (modulo(usual - home, 12) || 12);
  return stated === 'up' ? above : home - (modulo(home - usual, 12) || 12);
}
