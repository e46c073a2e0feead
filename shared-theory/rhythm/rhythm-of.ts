import { grooveOf, perform, type Performance } from '../perform.ts';
import type { VoicedVamp } from '../vamps.ts';
import { changePlaceOf } from './change-place.ts';
import { countsOf } from './counts.ts';
import { driveOf, halfTimeOf, pendulumOf, swingOf, threesOf } from './feel.ts';
import { heardLoop, onSlots } from './heard-bars.ts';
import { openedOf, rolesOf } from './roles.ts';
import type { RhythmTruth } from './rhythm-truth.ts';

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
  const plucked = loop.slots.some((stroke) => stroke?.plucked);
  return {
    grid,
    ...countsOf(loop, vamp.tempo),
    accents: onSlots(loop, (stroke) => stroke?.accent ?? 0),
    strokes: plucked ? null : onSlots(loop, (stroke) => stroke?.stroke ?? 'silent'),
    roles: rolesOf(loop),
    opened: openedOf(loop),
    pendulum: pendulumOf(loop),
    drive: driveOf(loop),
    swing: swingOf(loop),
    halfTime: halfTimeOf(loop),
    threes: threesOf(loop),
    changePlace: changePlaceOf(loop, vamp),
  };
}
