import type { Kind, MarkingContext, Answer } from '../../../shared-theory/questions/question.ts';
import { judgeOf } from '../../../shared-theory/questions/judges.ts';
import type { GridStroke, OnSlot, RhythmTruth, Role, Weight } from '../../../shared-theory/rhythm/rhythm-truth.ts';
import { context } from './given.ts';

const STROKES = { D: 'down', U: 'up', '-': 'silent' } as const;
const ROLES = { k: 'kick', s: 'slap', c: 'closed', o: 'open', '-': 'silent' } as const;

function lane<T>(text: string, read: (sign: string) => T): readonly OnSlot<T>[] {
  return text.split(' ').map((slot) => {
    const [first, ...others] = slot.split('/').map(read);
    if (first === undefined) throw new RangeError(`"${text}" has an empty slot`);
    return [first, ...others];
  });
}

/** What sounds by slot: `3 1 2 1`; where bars differ `1/0`, the most frequent first. */
export const accents = (text: string) => lane(text, (sign) => Number(sign) as 0 | 1 | 2 | 3);
export const strokes = (text: string) => lane<GridStroke>(text, (sign) => STROKES[sign as keyof typeof STROKES]);
export const roles = (text: string) => lane<Role>(text, (sign) => ROLES[sign as keyof typeof ROLES]);

/** Answers on the grid: `21112111`, `DUDU-UDU`, `kcscksco`. */
export const weights = (text: string) => text.split('').map((sign) => Number(sign) as Weight);
export const hand = (text: string) => text.split('').map((sign): GridStroke => STROKES[sign as keyof typeof STROKES]);
export const kit = (text: string) => text.split('').map((sign): Role => ROLES[sign as keyof typeof ROLES]);

/** Down and up on ringing strings, the numbers heavier; the relaxed alternate of the catalogue. */
export const RELAXED: RhythmTruth = {
  grid: 'E8',
  counts: [1],
  barCounts: [4],
  accents: accents('3 1 2 1 3 1 2 1'),
  strokes: strokes('D U D U D U D U'),
  roles: null,
  opened: null,
  pendulum: 'keeps',
  drive: 'relaxed',
  swing: 'straight',
  halfTime: null,
  threes: null,
  changePlace: 'on-one',
};

/** What is known when an answer about a groove is marked; it is the relaxed one but where a case changes it. */
export function heard(changes: Partial<RhythmTruth> = {}): MarkingContext {
  return context(0, { rhythm: { ...RELAXED, ...changes } });
}

/** The mark of an answer about a groove. */
export function markOf(kind: Kind, answer: Answer, changes: Partial<RhythmTruth> = {}) {
  return judgeOf<Kind>(kind).mark(answer, heard(changes));
}
