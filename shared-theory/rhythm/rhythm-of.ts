import { grooveOf, perform, type Performance } from '../perform.ts';
import { remembered } from '../remembered.ts';
import type { VoicedVamp } from '../vamps.ts';
import { changePlaceOf } from './change-place.ts';
import { countsOf, hasTwoSteps, weighsAnds } from './counts.ts';
import { driveAt, driveOf, halfTimeOf, pendulumOf, swingOf, threesOf } from './feel.ts';
import { heardLoop, onSlots, type HeardLoop, type HeardStroke } from './heard-bars.ts';
import { openedOf, rolesOf } from './roles.ts';
import type { RhythmTruth } from './rhythm-truth.ts';

/** What follows from the strokes of a loop alone, whatever their tempo, swing and chords. */
type StrokeFacts = Pick<
  RhythmTruth,
  'accents' | 'strokes' | 'roles' | 'opened' | 'pendulum' | 'drive' | 'halfTime' | 'threes'
> & { readonly weighs: boolean; readonly steps: boolean };

const TOUCHES = ['open', 'ring', 'half', 'palm', 'dead', 'choke'] as const;
const REACHES = ['low', 'middle', 'high', 'full'] as const;

/** One letter for all that matters of a stroke but its time and its chord. */
function letterOf(stroke: HeardStroke | null): string {
  if (stroke === null) return '.';
  const touched = TOUCHES.indexOf(stroke.touch) * REACHES.length + REACHES.indexOf(stroke.reach);
  const done = (touched * 3 + stroke.accent - 1) * 8;
  return String.fromCodePoint(
    256 + done + (stroke.stroke === 'up' ? 4 : 0) + (stroke.plucked ? 2 : 0) + (stroke.bass ? 1 : 0),
  );
}

function factsOf(loop: HeardLoop): StrokeFacts {
  return {
    accents: onSlots(loop, (stroke) => stroke?.accent ?? 0),
    strokes: loop.slots.some((stroke) => stroke?.plucked)
      ? null
      : onSlots(loop, (stroke) => stroke?.stroke ?? 'silent'),
    roles: rolesOf(loop),
    opened: openedOf(loop),
    pendulum: pendulumOf(loop),
    drive: driveOf(loop),
    halfTime: halfTimeOf(loop),
    threes: threesOf(loop),
    weighs: weighsAnds(loop),
    steps: hasTwoSteps(loop),
  };
}

/** Vamps of a level differ in chords and tempo far more than in the strokes that play them. */
const knownFacts = new Map<string, StrokeFacts>();

/**
 * What the groove of a vamp is, from the notes of its performance; null where no groove was named. It is what comes round again and
 * again: where a push makes the first loop differ, the second.
 */
export function rhythmOf(vamp: VoicedVamp, performance: Performance): RhythmTruth | null {
  const groove = grooveOf(vamp);
  if (groove === null) return null;
  const { grid } = groove;
  const pushes = [...groove.slots, ...(groove.opening ?? [])].some((slot) => slot.pushes);
  const again = pushes && performance.loops === 1 ? perform(vamp, { loops: 2 }) : performance;
  const loop = heardLoop(vamp, grid, again);
  const strokes = `${grid} ${loop.slots.map(letterOf).join('')}`;
  const { weighs, steps, ...facts } = remembered(knownFacts, strokes, () => factsOf(loop));
  return {
    grid,
    ...countsOf(grid, { ...facts, weighs, steps }, vamp.tempo),
    ...facts,
    drive: driveAt(facts.drive, loop),
    swing: swingOf(loop),
    changePlace: changePlaceOf(loop, vamp),
  };
}
