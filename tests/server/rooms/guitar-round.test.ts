import { describe, expect, test } from 'vitest';
import { guitarRound } from '../../../server/rooms/guitar-round.ts';
import type { CommandOf } from '../../../server/rooms/commands.ts';
import { QUALITIES } from '../../../shared-theory/chords.ts';
import { SETTINGS } from '../../support/given.ts';

type Directions = CommandOf<'StartGuitarRound'>['directions'];

/** A round on the teacher's guitar, under any settings. */
function strummed(chords: string, directions: Directions = null, settings = SETTINGS) {
  const entered = { chords, naming: settings.naming, groove: 'relaxed-alternate', tempo: null, directions };
  const round = guitarRound({ id: 'r1', settings, beat: 1, grooves: [] }, entered, 7);
  if ('reason' in round) throw new Error(`no such round: ${JSON.stringify(round)}`);
  return round;
}
const slotsOf = (round: ReturnType<typeof strummed>) => round.slots.map(({ chord, beats }) => `${chord} ${beats}`);
/** Settlers apart: how many there are is tested beside them. */
const idsOf = (round: ReturnType<typeof strummed>) =>
  round.questions.filter(({ kind }) => kind !== 'settler').map(({ id }) => id);

describe('a chord typed again', () => {
  test('goes on: nobody is asked about a change that is not heard', () => {
    const round = strummed('A A D');
    expect(slotsOf(round)).toEqual(['A 8', 'D 4']);
    expect(round.truth.directions).toEqual(['up']);
    expect(idsOf(round)).toEqual([
      // Without a tempo nothing is tapped: what can be asked first of any other groove.
      'bar-count-0',
      'count-0',
      'direction-1',
      'quality-0',
      'root-0',
      'distance-1',
      'quality-1',
      'numeral-0',
      'one-or-several-0',
      'keys-0',
      'home-0',
    ]);
  });

  test.each([
    ['| A | A | D |', ['A 8', 'D 4']],
    ['| A . A D |', ['A 3', 'D 1']],
    ['F# Gb B', ['F# 8', 'B 4']],
    ['A D D A', ['A 4', 'D 8', 'A 4']],
    ['A Am A', ['A 4', 'Am 4', 'A 4']],
    ['A A', ['A 4', 'A 4']],
    ['A', ['A 4']],
  ])('%s', (chords, slots) => {
    expect(slotsOf(strummed(chords))).toEqual(slots);
  });

  test('after another chord keeps its slot, and is not asked about anew', () => {
    expect(idsOf(strummed('A D A E')).filter((id) => id.startsWith('direction'))).toEqual([
      'direction-1',
      'direction-3',
    ]);
  });

  test('on and on is one chord: its bass goes nowhere', () => {
    expect(idsOf(strummed('A A'))).toEqual([
      // Without a tempo nothing is tapped: what can be asked first of any other groove.
      'bar-count-0',
      'count-0',
      'quality-0',
      'root-0',
      'one-or-several-0',
      'keys-0',
    ]);
  });

  test('with its bass an octave away is a change, and what the teacher says of the others stays theirs', () => {
    const moved = strummed('A A D', ['up', 'down']);
    expect(slotsOf(moved)).toEqual(['A 4', 'A 4', 'D 4']);
    expect(moved.truth.directions).toEqual(['up', 'down']);
    expect(idsOf(strummed('A A', ['up']))).toContain('direction-1');
    expect(strummed('A A D', ['usual', 'down']).truth.directions).toEqual(['down']);
    expect(strummed('D D A A', ['same', 'up', 'up']).truth.directions).toEqual(['up']);
  });
});

describe('a quality that the pad cannot name', () => {
  test.each([
    ['Em Bdim', ['major', 'minor'], ['quality-0']],
    ['Caug F', ['major', 'minor'], ['quality-1']],
    ['Csus2 G5', ['major', 'minor'], []],
    ['Csus2 Bdim', ['major', 'minor', 'power', 'suspended-fourth'], ['quality-0']],
    ['Bdim Csus2', [...QUALITIES], ['quality-0', 'quality-1']],
  ])('%s on %j is not asked', (chords, qualities, asked) => {
    const round = strummed(chords, null, { ...SETTINGS, qualities });
    expect(idsOf(round).filter((id) => id.startsWith('quality'))).toEqual(asked);
  });
});
