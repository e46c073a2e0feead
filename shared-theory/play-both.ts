import type { Answer, AskedOf, Kind, Target } from './questions/question.ts';
import type { VoicedSlot, VoicedVamp } from './vamps.ts';

/** What was wrongly heard and what sounds, as two short loops in the groove of the vamp. */
export type BothReadings = { readonly wrong: readonly VoicedSlot[]; readonly right: readonly VoicedSlot[] };

/**
 * A wrong answer to a question as it would sound, and what sounds. Null where the answer is right, where nothing playable
 * sounds as it says, or where the kind of question has no reading of its own (strokes, one key or several).
 */
export type PlayBoth = (
  vamp: VoicedVamp,
  question: { readonly kind: Kind; readonly target: Target },
  wrong: Answer,
  context: AskedOf,
) => BothReadings | null;

export const playBoth: PlayBoth = () => null;
