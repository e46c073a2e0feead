import { asks } from './asks.ts';
import type { Kind, QuestionId, Target } from './question.ts';
import { KINDS } from './question.ts';

/** One question of a round. */
export type RoundQuestion = { readonly id: QuestionId; readonly kind: Kind; readonly target: Target };

/** What decides which questions a round has. */
export type RoundShape = {
  /** One text per slot of the loop, equal where the same chord stands. */
  readonly chords: readonly string[];
  /** Whether a groove is known whose strokes all go down or go down and up. */
  readonly strokesKnown: boolean;
  /** How many settlers there are. */
  readonly settlers: number;
};

/** Names a question of a round: `quality-1`. */
export function questionId(kind: Kind, target: Target): QuestionId {
  return `${kind}-${target}`;
}

/** Reads `quality-1`; null where it names no question. */
export function parseQuestionId(text: string): RoundQuestion | null {
  const parts = /^([a-z]+(?:-[a-z]+)*)-(0|[1-9]\d?)$/.exec(text);
  const kind = KINDS.find((known) => known === parts?.[1]);
  return kind === undefined ? null : { id: text, kind, target: Number(parts?.[2]) };
}

/** From this chord on, counting different ones, the root is asked of a later chord too: of the second its distance says it. */
const ROOTS_ASKED_FROM = 2;

/**
 * The questions of a round in the usual order: the strokes, how many chords, where the bass goes, the first chord's quality and
 * root, then of each chord not heard before its distance and quality, and from the third on its root as well, the numerals, one
 * key or several, which, and the settlers.
 */
export function questionsOf({ chords, strokesKnown, settlers }: RoundShape): readonly RoundQuestion[] {
  const heardFirst = (slot: number) => chords.indexOf(chords[slot] ?? '') === slot;
  const targets = (kind: Kind) => asks[kind].targets(chords.length, { groove: strokesKnown, settlers });
  const question = (kind: Kind) => (target: Target) => ({ id: questionId(kind, target), kind, target });
  const different = chords.map((_, slot) => slot).filter(heardFirst);
  const ofChord = (kind: Kind, slot: number) => (targets(kind).includes(slot) ? [question(kind)(slot)] : []);
  return KINDS.flatMap((kind) => {
    if (kind === 'quality') return [...ofChord('quality', 0), ...ofChord('root', 0)];
    if (kind === 'root') return [];
    if (kind === 'distance')
      return different.flatMap((slot, index) => {
        if (index === 0) return [];
        const root = index < ROOTS_ASKED_FROM ? [] : ofChord('root', slot);
        return [...ofChord('distance', slot), ...ofChord('quality', slot), ...root];
      });
    // A chord that comes back is not a new way to go; the first change is one even where the chord stays.
    const kept = kind === 'direction' ? targets(kind).filter((slot) => slot === 1 || heardFirst(slot)) : targets(kind);
    return kept.map(question(kind));
  });
}
