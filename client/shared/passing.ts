const PASSING: readonly string[] = ['not-saved', 'too-many-messages'];

/** Refusals that pass by themselves: the same is offered again after a pause. */
export const passes = (reason: string): boolean => PASSING.includes(reason);

/** Pause before the same is offered again, in milliseconds. */
export const AGAIN_MS = 1000;
