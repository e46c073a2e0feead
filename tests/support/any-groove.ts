import * as fc from 'fast-check';
import {
  ACCENTS,
  GRIDS,
  STROKES,
  TOUCHES,
  ZONES,
  type Grid,
  type GrooveSlot,
} from '../../shared-theory/groove-grid.ts';
import { grooveLine, type Groove } from '../../shared-theory/grooves.ts';

const silent = fc
  .constantFrom('down-silent', 'up-silent', 'none')
  .map((stroke): GrooveSlot => ({ stroke, zone: 'none', touch: 'none', accent: 0 }));

const sounding = fc
  .record({
    stroke: fc.constantFrom(...Object.values(STROKES).slice(0, 5)),
    zone: fc.constantFrom(...Object.values(ZONES).slice(0, 6)),
    touch: fc.constantFrom(...Object.values(TOUCHES).slice(0, 6)),
    accent: fc.constantFrom(...Object.values(ACCENTS).slice(1)),
  })
  .map((slot): GrooveSlot => {
    // A pinch takes several strings.
    const single = slot.zone === 'root' || slot.zone === 'other-bass';
    return slot.stroke === 'pinch' && single ? { ...slot, zone: 'all' } : slot;
  });

const anySlots = (count: number) => fc.array(fc.oneof(silent, sounding), { minLength: count, maxLength: count });

const push: GrooveSlot = { stroke: 'up', zone: 'all', touch: 'open', accent: 3, pushes: true };

const ofGrid = (grid: Grid): fc.Arbitrary<Groove> => {
  const { meter, slots: count, bars, swings } = GRIDS[grid];
  return fc
    .record({
      id: fc.stringMatching(/^[a-z][a-z0-9]{0,6}(-[a-z0-9]{1,4}){0,3}$/),
      name: fc.constantFrom('Mine', 'Für uns', 'Chop 3/4', 'a, b; c'),
      low: fc.integer({ min: 30, max: 80 }),
      more: fc.integer({ min: 0, max: 40 }),
      swing: fc.constantFrom([1, 1] as const, [1, 1.25] as const, [1.2, 1.2] as const),
      slots: anySlots(count),
      opening: fc.option(anySlots(count / bars)),
      pushes: fc.boolean(),
    })
    .map(({ id, name, low, more, swing, slots, opening, pushes }) => {
      const played = pushes || !slots.some(({ accent }) => accent > 0) ? slots.with(count - 1, push) : slots;
      const groove = {
        id,
        name,
        grid,
        meter,
        tempo: [low, low + more] as const,
        swing: swings ? swing : ([1, 1] as const),
        slots: played,
        ...(opening ? { opening } : {}),
      };
      return { ...groove, text: grooveLine(groove) };
    });
};

/** Any groove that can be written, of any grid. */
export const anyGroove: fc.Arbitrary<Groove> = fc.constantFrom(...(Object.keys(GRIDS) as Grid[])).chain(ofGrid);
