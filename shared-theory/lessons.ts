import { kindsOfLevel, levelOf, LEVELS } from './levels.ts';
import { KINDS, type Kind } from './questions/question.ts';

/** What a round is for in a lesson. In the closing one everyone answers alone, without help. */
export type LessonRole = 'warm-up' | 'practice' | 'step-up' | 'closing';

/** A round of a lesson before it is played: its level, and the kinds it asks in the order of a round. */
export type LessonRound = { readonly role: LessonRole; readonly level: number; readonly kinds: readonly Kind[] };

/** What a class is asked on its way out, as far as its level asks it. */
const EXIT: ReadonlySet<Kind> = new Set(['strokes', 'quality', 'distance']);

/** The level's own kinds that are exit questions; all its own where only its strokes are. */
function exitKinds(own: readonly Kind[]): readonly Kind[] {
  const exit = own.filter((kind) => EXIT.has(kind));
  return exit.length > 1 ? exit : own;
}

/**
 * A lesson of a level that can be played as it stands: a groove to warm up on, from the level below where there is one; two
 * rounds of practice; one a level up, save at the top; and a closing round. Throws `RangeError` for a level that there is not.
 */
export function readyLesson(number: number): readonly LessonRound[] {
  const own = levelOf(number);
  const below = LEVELS.find(({ level }) => level === number - 1) ?? own;
  const above = LEVELS.find(({ level }) => level === number + 1);
  const practice: LessonRound = { role: 'practice', level: number, kinds: own.questions };
  return [
    { role: 'warm-up', level: below.level, kinds: ['strokes'] },
    practice,
    practice,
    ...(above ? [{ role: 'step-up', level: above.level, kinds: above.questions } as const] : []),
    { role: 'closing', level: number, kinds: exitKinds(own.questions) },
  ];
}

/** Those of the kinds that a round of a level can ask, in the order of a round, each once: what is kept when its level changes. */
export function kindsFor(number: number, kinds: readonly string[]): readonly Kind[] {
  const possible = kindsOfLevel(number);
  return KINDS.filter((kind) => kinds.includes(kind) && possible.includes(kind));
}
