import { candidateKeys, seventhsUnder } from '../../shared-theory/candidates.ts';
import { chordSymbol, QUALITIES, readSymbol } from '../../shared-theory/chords.ts';
import type { Chord } from '../../shared-theory/chords.ts';
import { keyOwns } from '../../shared-theory/degrees.ts';
import { keysByPolicy } from '../../shared-theory/truth.ts';
import type { Policy, Truth } from '../../shared-theory/truth.ts';
import { part, type Plain } from './plain.ts';

/**
 * A round of the time of triads, two key policies and no capo, as it stands now. What was stored is right still: the chords are
 * those of its roots and qualities, and only what nobody asked for then is worked out. RangeError where it holds no such chords.
 */
export function presentRound(round: Plain): Plain {
  const truth = part(round, 'truth');
  const chords = chordsThen(truth);
  const settlers = list(truth['settlers']).map((settler) => ({
    chord: settler['chord'],
    note: null,
    keys: { ...keysLeft(chords, readSymbol(String(settler['chord']))), ...part(settler, 'keys') },
  }));
  return {
    ...round,
    truth: {
      ...truth,
      chords: chords.map(chordSymbol),
      sevenths: chords.map(() => 'none'),
      keys: { ...keysByPolicy(chords), ...part(truth, 'keys') },
      settlers,
    },
    entered: round['entered'] === null ? null : { naming: 'english', ...part(round, 'entered') },
    settings: { capo: 0, slashIsNew: false, ...part(round, 'settings') },
  };
}

function chordsThen({ roots, qualities }: Plain): readonly Chord[] {
  const named = Array.isArray(qualities) ? qualities : [];
  return (Array.isArray(roots) ? roots : []).map((root, slot) => {
    const quality = QUALITIES.find((each) => each === named[slot]);
    if (quality === undefined) throw new RangeError(`slot ${slot} has no quality`);
    // Read once more, so that a root that is none is found here.
    return readSymbol(chordSymbol({ root: String(root), quality }));
  });
}

/** The owners of a loop that own one chord more, under each policy. */
function keysLeft(chords: readonly Chord[], chord: Chord): Truth['keys'] {
  const under = (policy: Policy) =>
    candidateKeys(chords, policy)
      .filter((key) => keyOwns(key, chord, seventhsUnder(policy)))
      .map(({ name }) => name);
  return {
    majors: under('majors'),
    relatives: under('relatives'),
    'raised-seventh': under('raised-seventh'),
    modes: under('modes'),
  };
}

function list(value: unknown): readonly Plain[] {
  return Array.isArray(value) ? (value as readonly Plain[]) : [];
}
