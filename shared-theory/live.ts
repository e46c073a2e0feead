/** What a teacher can change about a vamp while it sounds, as performances; and a performance bar by bar. */
export { chordAlone, rootAlone, rootThenChord } from './live/alone.ts';
export { barsOf, inTurn, type PerformedBar } from './live/bars.ts';
export { bassAlone, bassForward } from './live/bass.ts';
export { countIn, type CountInBeat } from './live/count-in.ts';
export { echoed, mutedStrings } from './live/hand.ts';
export { kitOnly } from './live/kit.ts';
export { softly, unheard } from './live/levels.ts';
export { holdSlot, pairSlots, wholeBars } from './live/slots.ts';
export { sungOver } from './live/sung.ts';
export { climbed, withTempo } from './live/tempo.ts';
