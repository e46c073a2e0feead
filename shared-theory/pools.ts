import type { Form, Level } from './level.ts';
import { kept, nameOf, type Loop } from './pools/loops.ts';
import { roundLoops } from './pools/rounds.ts';
import { seventhLoops } from './pools/sevenths.ts';
import { slashLoops } from './pools/slashes.ts';
import { twoChordLoops } from './pools/two-chords.ts';
import { familiarLoops, visitorLoops } from './pools/visitors.ts';
import { voicingsOf } from './voicings.ts';

export { barsOf, sameLoop, type Loop } from './pools/loops.ts';

function candidates(level: Level, form: Form): readonly Loop[] {
  switch (level.level) {
    case 9:
      return roundLoops(level, form);
    case 10:
      return seventhLoops(level, form);
    case 11:
      return slashLoops(level, form);
    case 12:
      return [...visitorLoops(level, form), ...familiarLoops(level, form)];
    case 1:
    case 2:
    case 3:
    case 4:
    case 5:
    case 6:
    case 7:
    case 8:
      return twoChordLoops(level, form);
  }
}

/**
 * Every loop of a form that a level may draw, each sounding one once, spelled as the first of the level's keys that holds it. A
 * loop that the level's shapes cannot play is left out.
 */
export function poolOf(level: Level, form: Form): readonly Loop[] {
  return kept(candidates(level, form)).filter((loop) => voicingsOf(level, loop).length > 0);
}

/** Tells the loops of a level's pool that it adds to what stood before from those that one key owns as in the levels before. */
export function addedBy(level: Level, form: Form): (loop: Loop) => boolean {
  const added = new Set(visitorLoops(level, form).map(nameOf));
  return (loop) => added.has(nameOf(loop));
}
