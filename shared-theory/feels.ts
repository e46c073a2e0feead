import { grooveById } from './grooves.ts';
import { grooveOf } from './perform.ts';
import type { Meter, VoicedVamp } from './vamps.ts';

/** The groove as it was written, or one of its meter that drives or is relaxed in its place. */
export type Feel = 'written' | 'driving' | 'relaxed';

type Swapped = Exclude<Feel, 'written'>;

/**
 * Driving and relaxed of the meters whose grooves the catalogue has none of: driving is all downs on muted low strings, each chord
 * opened by one full stroke; relaxed is open, with a down on each beat and an up between. Both are common practice. Their eighths
 * go as fast as those of the two in 4/4.
 */
const TEXTS: Readonly<Record<Exclude<Meter, '4/4'>, Readonly<Record<Swapped, string>>>> = {
  '3/4': {
    driving: `driving-three, Driving three | W6 | 3/4 | 120-184 | r=1 | all downs, palm-muted low strings
strk D D D D D D
zone L L L L L L
tch  p p p p p p
acc  3 1 2 1 2 1
open-strk D u D D D D
open-zone A . L L L L
open-tch  o . p p p p
open-acc  3 0 2 1 2 1`,
    relaxed: `relaxed-three, Relaxed three | W6 | 3/4 | 66-120 | r=1..1.3 | heavy numbers, light ands
strk D U D U D U
zone A H A H A H
tch  o o o o o o
acc  3 1 2 1 2 1`,
  },
  '6/8': {
    driving: `driving-six, Driving six | C6 | 6/8 | 80-122 | r=1 | all downs, palm-muted low strings
strk D D D D D D
zone L L L L L L
tch  p p p p p p
acc  3 1 1 2 1 1
open-strk D u D D D D
open-zone A . L L L L
open-tch  o . p p p p
open-acc  3 0 1 2 1 1`,
    relaxed: `relaxed-six, Relaxed six | C6 | 6/8 | 44-80 | r=1 | down, up, down on each big beat
strk D U D D U D
zone A H H A H H
tch  o o o o o o
acc  3 1 1 2 1 1`,
  },
  '12/8': {
    driving: `driving-twelve, Driving twelve | T12 | 12/8 | 80-122 | r=1 | all downs, palm-muted low strings
strk D D D D D D D D D D D D
zone L L L L L L L L L L L L
tch  p p p p p p p p p p p p
acc  3 1 1 2 1 1 3 1 1 2 1 1
open-strk D u D D D D D D D D D D
open-zone A . L L L L L L L L L L
open-tch  o . p p p p p p p p p p
open-acc  3 0 1 2 1 1 3 1 1 2 1 1`,
    relaxed: `relaxed-twelve, Relaxed twelve | T12 | 12/8 | 44-80 | r=1 | down, up, down on each beat
strk D U D D U D D U D D U D
zone A H H A H H A H H A H H
tch  o o o o o o o o o o o o
acc  3 1 1 2 1 1 3 1 1 2 1 1`,
  },
  '7/8': {
    driving: `driving-seven, Driving seven | V7 | 7/8 | 120-184 | r=1 | all downs, palm-muted low strings, grouped 2+2+3
strk D D D D D D D
zone L L L L L L L
tch  p p p p p p p
acc  3 1 2 1 2 1 1
open-strk D u D D D D D
open-zone A . L L L L L
open-tch  o . p p p p p
open-acc  3 0 2 1 2 1 1`,
    relaxed: `relaxed-seven, Relaxed seven | V7 | 7/8 | 66-120 | r=1 | a down on each group, grouped 2+2+3
strk D U D U D U D
zone A H A H A H H
tch  o o o o o o o
acc  3 1 2 1 2 1 1`,
  },
};

const IN_FOUR = { driving: 'driving-eighths', relaxed: 'relaxed-alternate' } as const;

/** The text of a meter's driving or relaxed groove. */
function feelText(meter: Meter, feel: Swapped): string {
  return meter === '4/4' ? grooveById(IN_FOUR[feel]).text : TEXTS[meter][feel];
}

/**
 * The vamp in another feel: its meter's driving or relaxed groove in place of its own, at the same tempo, so that the feel alone is
 * heard to change; but not past that groove's fastest, where its chords could not be told. `written` is the vamp itself. Chords that
 * begin between the slots of that groove cannot be performed.
 */
export function withFeel<Vamp extends VoicedVamp>(vamp: Vamp, feel: Feel): Vamp {
  if (feel === 'written') return vamp;
  const swapped = { ...vamp, grooveText: feelText(vamp.meter, feel) };
  const [, fastest] = grooveOf(swapped)?.tempo ?? [vamp.tempo, vamp.tempo];
  return { ...swapped, tempo: Math.min(fastest, vamp.tempo) };
}
