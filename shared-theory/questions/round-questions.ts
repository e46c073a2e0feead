import { asks } from './asks.ts';
import type { Kind, QuestionId, Target } from './question.ts';
import { KINDS } from './question.ts';

/** One question of a round. */
export type RoundQuestion = { readonly id: QuestionId; readonly kind: Kind; readonly target: Target };

/** What decides which questions a round has. */
export type RoundShape = {
  /** One text per slot of the loop, equal where the same chord stands, whatever its bass. */
  readonly chords: readonly string[];
  /** By slot, the bass where it is another note than the root, else null. Absent where every chord stands on its root. */
  readonly basses?: readonly (string | null)[];
  /** Whether anything is known of a groove. */
  readonly grooveKnown: boolean;
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
 * The questions of a round in the usual order: the groove, how many chords and in which order, where the bass goes, the first
 * chord's bass, quality, seventh and root, then of each chord not heard before its distance, bass, quality and seventh, and from
 * the third on its root as well, the numerals, one key or several, which, the settlers, and where it would stop. Where a chord
 * stands over another bass than its root, the bass of each chord over each bass is asked, and the root from the second on.
 */
export function questionsOf({ chords, basses = [], grooveKnown, settlers }: RoundShape): readonly RoundQuestion[] {
  const overBass = chords.map((chord, slot) => `${chord} ${basses[slot] ?? ''}`);
  const heardFirst = (slot: number) => chords.indexOf(chords[slot] ?? '') === slot;
  const soundsFirst = (slot: number) => overBass.indexOf(overBass[slot] ?? '') === slot;
  const rootsFrom = basses.some((bass) => bass !== null) ? 1 : ROOTS_ASKED_FROM;
  const targets = (kind: Kind) => asks[kind].targets(chords.length, { groove: grooveKnown, settlers });
  const question = (kind: Kind) => (target: Target) => ({ id: questionId(kind, target), kind, target });
  const ofChord = (kinds: readonly Kind[], slot: number) =>
    kinds.filter((kind) => targets(kind).includes(slot)).map((kind) => question(kind)(slot));
  const different = chords.map((_, slot) => slot).filter(heardFirst);
  const laterChords = chords.flatMap((_, slot) => {
    if (slot === 0 || !soundsFirst(slot)) return [];
    if (!heardFirst(slot)) return ofChord(['bass'], slot);
    const root: readonly Kind[] = different.indexOf(slot) < rootsFrom ? [] : ['root'];
    return ofChord(['distance', 'bass', 'quality', 'seventh', ...root], slot);
  });
  const byKind: Partial<Record<Kind, readonly RoundQuestion[]>> = {
    bass: ofChord(['bass', 'quality', 'seventh', 'root'], 0),
    quality: [],
    root: [],
    seventh: [],
    distance: laterChords,
    // A chord that comes back is not a new way to go; the first change is one even where the chord stays.
    direction: targets('direction')
      .filter((slot) => slot === 1 || soundsFirst(slot))
      .map(question('direction')),
  };
  return KINDS.flatMap((kind) => byKind[kind] ?? targets(kind).map(question(kind)));
}
