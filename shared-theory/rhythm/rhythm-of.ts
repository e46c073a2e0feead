import type { GrooveSlot } from '../groove-grid.ts';
import { grooveOf, perform, type Performance } from '../perform.ts';
import { remembered } from '../remembered.ts';
import type { VoicedVamp } from '../vamps.ts';
import { changePlaceOf } from './change-place.ts';
import { countsOf, hasLikeHalves, hasTwoSteps, weighsAnds, type Countable } from './counts.ts';
import { driveAt, driveOf, halfTimeOf, pendulumOf, swingOf, threesOf } from './feel.ts';
import { heardLoop, onSlots, type HeardLoop, type HeardStroke } from './heard-bars.ts';
import { mutedOf, openedOf, rolesOf } from './roles.ts';
import type { RhythmTruth } from './rhythm-truth.ts';

/** What follows from the strokes of a loop alone, whatever their tempo, swing and chords. */
type StrokeFacts = {
  readonly truth: Pick<
    RhythmTruth,
    'accents' | 'strokes' | 'roles' | 'opened' | 'muted' | 'pendulum' | 'drive' | 'halfTime' | 'threes'
  >;
  readonly countable: Countable;
};

const TOUCHES = { open: 0, ring: 1, half: 2, palm: 3, dead: 4, choke: 5 } as const;
const REACHES = { low: 0, middle: 1, high: 2, full: 3 } as const;

/** A number for all that matters of a stroke but its time and its chord; another for none. */
function codeOf(stroke: HeardStroke | null): number {
  if (stroke === null) return 0;
  const flags = (stroke.stroke === 'up' ? 4 : 0) + (stroke.plucked ? 2 : 0) + (stroke.bass ? 1 : 0);
  return ((TOUCHES[stroke.touch] * 4 + REACHES[stroke.reach]) * 4 + stroke.accent) * 8 + flags;
}

function factsOf(loop: HeardLoop): StrokeFacts {
  const plucked = loop.slots.some((stroke) => stroke?.plucked);
  const halfTime = halfTimeOf(loop);
  const threes = threesOf(loop);
  const weighs = weighsAnds(loop);
  const muted = mutedOf(loop);
  const downs = loop.slots.every((stroke) => stroke === null || stroke.stroke === 'down');
  return {
    truth: {
      accents: onSlots(loop, (stroke) => stroke?.accent ?? 0),
      strokes: plucked ? null : onSlots(loop, (stroke) => stroke?.stroke ?? 'silent'),
      roles: rolesOf(loop),
      opened: openedOf(loop),
      ...(muted.length > 0 ? { muted } : {}),
      // Downs alone, the ands heavy: counted twice as fast all of them fall on numbers, where no hand stops.
      pendulum: weighs && downs ? null : pendulumOf(loop),
      drive: driveOf(loop),
      halfTime,
      threes,
    },
    countable: { halfTime, threes, weighs, steps: hasTwoSteps(loop), alike: hasLikeHalves(loop) },
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
  const isPush = ({ pushes }: GrooveSlot) => pushes === true;
  const pushes = groove.slots.some(isPush) || groove.opening?.some(isPush) === true;
  const again = pushes && performance.loops === 1 ? perform(vamp, { loops: 2 }) : performance;
  const loop = heardLoop(vamp, grid, again);
  const strokes = grid + String.fromCharCode(...loop.slots.map(codeOf));
  const { truth, countable } = remembered(knownFacts, strokes, () => factsOf(loop));
  const { counts, barCounts } = countsOf(grid, countable, vamp.tempo);
  return {
    grid,
    counts,
    barCounts,
    accents: truth.accents,
    strokes: truth.strokes,
    roles: truth.roles,
    opened: truth.opened,
    ...(truth.muted && { muted: truth.muted }),
    pendulum: truth.pendulum,
    drive: driveAt(truth.drive, loop),
    swing: swingOf(loop),
    halfTime: truth.halfTime,
    threes: truth.threes,
    changePlace: changePlaceOf(loop, vamp),
  };
}
