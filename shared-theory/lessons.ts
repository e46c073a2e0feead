import { beatLevelOf } from './beat-levels.ts';
import { kindsOfLevel, levelOf, LEVELS } from './levels.ts';
import { KINDS, RHYTHM_KINDS, type Kind } from './questions/question.ts';

/** What a round is for in a lesson. In the closing one everyone answers alone, without help. */
export type LessonRole = 'warm-up' | 'practice' | 'step-up' | 'closing';

/** A round of a lesson before it is played: its level, and the kinds it asks in the order of a round. */
export type LessonRound = { readonly role: LessonRole; readonly level: number; readonly kinds: readonly Kind[] };

/** What a class is asked of the chords on its way out, as far as its level asks it. */
const EXIT: ReadonlySet<Kind> = new Set(['quality', 'distance']);

/** What is asked of the chords on the way out: all that the level asks of them where none of it is an exit question. */
function exitKinds(questions: readonly Kind[]): readonly Kind[] {
  const exit = questions.filter((kind) => EXIT.has(kind));
  return exit.length > 0 ? exit : questions;
}

/** The groove's questions first: what the beat level asks, and where none is given how the strokes go; then these of the chords. */
function rhythmFirst(chords: readonly Kind[], beat: number | undefined): readonly Kind[] {
  const rhythm: readonly Kind[] = beat === undefined ? ['strokes'] : beatLevelOf(beat).kinds;
  return KINDS.filter((kind) => (RHYTHM_KINDS.has(kind) ? rhythm : chords).includes(kind));
}

/** All that a round of a level asks, of the groove first what the beat level asks. Throws `RangeError` for a level that there is not. */
export function roundKinds(number: number, beat?: number): readonly Kind[] {
  return rhythmFirst(levelOf(number).questions, beat);
}

/**
 * A lesson of a level that can be played as it stands: a groove to warm up on, from the level below where there is one; two
 * rounds of practice; one a level up, save at the top; and a closing round. Every round asks about the groove first. Throws
 * `RangeError` for a level of chords or of the beat that there is not.
 */
export function readyLesson(number: number, beat?: number): readonly LessonRound[] {
  const own = levelOf(number);
  const below = LEVELS.find(({ level }) => level === number - 1) ?? own;
  const above = LEVELS.find(({ level }) => level === number + 1);
  const practice: LessonRound = { role: 'practice', level: number, kinds: roundKinds(number, beat) };
  return [
    { role: 'warm-up', level: below.level, kinds: rhythmFirst([], beat) },
    practice,
    practice,
    ...(above ? [{ role: 'step-up', level: above.level, kinds: roundKinds(above.level, beat) } as const] : []),
    { role: 'closing', level: number, kinds: rhythmFirst(exitKinds(own.questions), beat) },
  ];
}

/** Those of the kinds that a round of a level can ask, in the order of a round, each once: what is kept when its level changes. */
export function kindsFor(number: number, kinds: readonly string[], beat?: number): readonly Kind[] {
  const possible = kindsOfLevel(number, beat);
  return KINDS.filter((kind) => kinds.includes(kind) && possible.includes(kind));
}
