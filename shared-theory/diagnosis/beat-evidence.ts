import type { MasteryEvidence } from '../mastery.ts';
import { answerKey } from '../questions/asks.ts';
import { RHYTHM_KINDS } from '../questions/question.ts';
import type { Kind } from '../questions/question.ts';
import { evidenceQuestions, type AskedRound } from './asked.ts';

/** What one answer about the groove shows. */
export type BeatEvidence = Pick<MasteryEvidence, 'kind' | 'right' | 'credit' | 'truth'>;

/**
 * What each student's answers about the grooves of a lesson show, oldest first as the rounds are given: of the first sheets of what is
 * marked, without struck questions, silence and "not sure". A student who has none is missing.
 */
export function beatEvidence(rounds: readonly AskedRound[]): ReadonlyMap<string, readonly BeatEvidence[]> {
  const all = new Map<string, BeatEvidence[]>();
  for (const { question, right, hands } of evidenceQuestions(rounds)) {
    const { kind } = question;
    if (!RHYTHM_KINDS.has(kind)) continue;
    const truth = answerKey<Kind>(kind, right);
    for (const { student, mark } of hands) {
      if (mark.evidence === 'abstain') continue;
      const shown = all.get(student) ?? [];
      all.set(student, shown);
      shown.push({ kind, right: mark.evidence === 'right', credit: mark.credit, truth });
    }
  }
  return all;
}
