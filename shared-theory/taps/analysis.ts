/** What taps say. For the server and its judges; nothing of it reaches a phone, which only needs `taps.ts`. */
export { analyseTaps } from './analyse.ts';
export type { TapAnalysis, TempoChange } from './analyse.ts';
export { heldTempo, rushesOrDrags } from './holding.ts';
export { tempoLevel } from './level.ts';
export type { TempoLevel } from './level.ts';
export { roomTaps } from './room.ts';
export type { RoomTaps } from './room.ts';
