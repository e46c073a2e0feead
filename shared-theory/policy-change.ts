import { bluesOf } from './blues.ts';
import { candidateKeys, raisedSevenths } from './candidates.ts';
import type { CandidateKey } from './candidates.ts';
import { soundsAs } from './chords.ts';
import type { Chord } from './chords.ts';
import { spelledScale } from './degrees.ts';
import { itemAt } from './items.ts';
import { keyName, parentKey, parseKeyName } from './keys.ts';
import type { NoteName } from './pitch.ts';
import { isTonicOf, visitedKeys } from './visited-keys.ts';
import type { Visitor } from './visitors.ts';

/** A minor key that owns a vamp once its seventh is raised. */
type RaisedOwner = {
  readonly key: string;
  readonly numerals: readonly string[];
  /** Its raised seventh: G# of A minor. */
  readonly seventh: NoteName;
};

/** Why a vamp's answer is another under another key policy. Names, notes and numerals in ASCII. */
export type PolicyChange =
  /** No major owns all, but minors do with their seventh raised: Am E. */
  | { readonly change: 'minor-by-raised-seventh'; readonly keys: readonly RaisedOwner[] }
  /** Majors own all, and minors join them with their seventh raised that are no relatives of theirs: C alone, in F minor. */
  | { readonly change: 'minors-join-by-raised-seventh'; readonly keys: readonly RaisedOwner[] }
  /** No major owns all, but a key whose tonic chord sounds does save for a visitor or two: C Fm, D F G, Bdim7 C. */
  | {
      readonly change: 'home-key-with-visitor';
      readonly key: string;
      readonly numerals: readonly string[];
      readonly visitors: readonly Visitor[];
    }
  /** One parent is certain, and the first chord is home in another mode of it: G F, F#m B. */
  | {
      readonly change: 'home-in-a-mode';
      readonly key: string;
      readonly parent: string;
      readonly numerals: readonly string[];
    }
  /** The sevenths of a blues are in no key: C7 F7. */
  | { readonly change: 'blues'; readonly tonic: NoteName; readonly numerals: readonly string[] };

/**
 * What the choice of the key policy changes about a vamp, beyond each major's relative minor beside it. Empty where every policy
 * names the same families. RangeError without chords.
 */
export function policyChanges(chords: readonly Chord[]): readonly PolicyChange[] {
  const majors = candidateKeys(chords, 'majors');
  const blues = bluesOf(chords);
  if (blues) return [{ change: 'blues', ...blues }];
  const owners = raisedOwners(chords, majors);
  const raised = owners.length === 0 ? null : owners;
  if (majors.length > 0) {
    const home = homeInMode(chords, majors);
    return [
      ...(raised ? [{ change: 'minors-join-by-raised-seventh', keys: raised } as const] : []),
      ...(home ? [home] : []),
    ];
  }
  const home = homeWithVisitor(chords);
  const changes = [
    ...(raised ? [{ change: 'minor-by-raised-seventh', keys: raised } as const] : []),
    ...(home ? [home] : []),
  ];
  // Minors that own all only in another spelling come last: Bdim7 C is heard in C.
  return raisedSevenths(chords).length === 0 ? changes.toReversed() : changes;
}

/** The minors that own all only with their seventh raised. */
function raisedOwners(chords: readonly Chord[], majors: readonly CandidateKey[]): readonly RaisedOwner[] {
  const families = new Set(majors.map(({ name }) => name));
  return candidateKeys(chords, 'raised-seventh')
    .filter((key) => key.mode === 'minor' && !families.has(keyName(parentKey(key))))
    .map((key) => ({ key: key.name, numerals: key.numerals, seventh: itemAt(spelledScale(key, true), 6) }));
}

/** The likeliest key with a visitor, where its tonic chord sounds and a raised seventh alone does not make it the owner. */
function homeWithVisitor(chords: readonly Chord[]): PolicyChange | null {
  const [own] = visitedKeys(chords);
  if (!own || own.visitors.every(({ visit }) => visit === 'raised-seventh')) return null;
  const key = parseKeyName(own.key);
  if (!chords.some((chord) => isTonicOf(chord, key))) return null;
  return { change: 'home-key-with-visitor', key: own.key, numerals: own.numerals, visitors: own.visitors };
}

/**
 * The first chord as home in a mode of the only parent. Not where it is the parent's own tonic or its relative's, and not where
 * that tonic sounds and draws it home, save from the V: I-bVII-IV of a rock loop is V-IV-I as well.
 */
function homeInMode(chords: readonly Chord[], majors: readonly CandidateKey[]): PolicyChange | null {
  const [parent, ...others] = majors;
  const [first] = chords;
  if (!parent || !first || others.length > 0) return null;
  const homes = candidateKeys(chords, 'modes');
  const home = homes.find((key) => soundsAs({ ...first, root: key.tonic }, first));
  if (!home || home.mode === 'ionian' || home.mode === 'aeolian') return null;
  const drawn = chords.some((chord) => isTonicOf(chord, parent));
  if (drawn && home.mode !== 'mixolydian') return null;
  return { change: 'home-in-a-mode', key: home.name, parent: parent.name, numerals: home.numerals };
}
