import type { Target } from './question.ts';

/** Targets of a question about the groove: the whole loop, wherever there is a groove. */
export function ofTheGroove(slots: number, { groove }: { readonly groove: boolean }): readonly Target[] {
  return groove && slots > 0 ? [0] : [];
}
