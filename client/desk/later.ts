/** Leaves that a teacher turns to beside the round: fetched when the first of them is turned to. */
export { LessonEnd, LessonLeaf } from './screens/lesson-leaf.tsx';
export { RollLeaf } from './screens/roll-leaf.tsx';
export { RoomLeaf } from './screens/room-leaf.tsx';
