import { readSymbol, soundsAsOverBass, type Chord } from '../chords.ts';
import { itemAt } from '../items.ts';
import type { MasteryEvidence } from '../mastery.ts';
import type { Trait } from '../mastery-rules.ts';
import { answerKey } from '../questions/asks.ts';
import { familiesOf, sameSet } from '../questions/keys/families.ts';
import { rightKeys } from '../questions/keys/right-keys.ts';
import type { Kind } from '../questions/question.ts';
import type { RoundQuestion } from '../questions/round-questions.ts';
import { directionOf, type Truth } from '../truth.ts';
import { visitedKeys } from '../visited-keys.ts';
import { evidenceQuestions, type AskedRound } from './asked.ts';

/** A round with the day, or session, that it was played on. */
export type RoundOfDay = { readonly round: AskedRound; readonly day: string };

/**
 * What a student's answers show of mastery, oldest first as the rounds are given, each round a vamp of its own. Only first sheets
 * count: what was answered after talk with the neighbour was helped. Struck questions, silence and "not sure" are no evidence.
 */
export function masteryEvidence(rounds: readonly RoundOfDay[], student: string): readonly MasteryEvidence[] {
  return rounds.flatMap(({ round, day }, place) =>
    evidenceQuestions([round]).flatMap(({ question, right, hands }): readonly MasteryEvidence[] => {
      const hand = hands.find((each) => each.student === student);
      if (hand === undefined || hand.mark.evidence === 'abstain') return [];
      const { evidence, credit, errors } = hand.mark;
      return [
        {
          kind: question.kind,
          target: question.target,
          vamp: String(place),
          day,
          right: evidence === 'right',
          credit,
          truth: answerKey<Kind>(question.kind, right),
          error: errors[0] ?? null,
          traits: traitsOf(round, question),
        },
      ];
    }),
  );
}

function traitsOf({ truth, settings: { policy } }: AskedRound, { kind, target }: RoundQuestion): readonly Trait[] {
  const chords = truth.chords.map(readSymbol);
  const owners = rightKeys(truth.keys, policy);
  const families = familiesOf(owners).size;
  const settler = kind === 'settler' ? truth.settlers[target] : undefined;
  const chord = kind === 'settler' ? undefined : chords[target];
  const has: Readonly<Record<Trait, boolean>> = {
    'two-chords': chords.length === 2 && truth.count === 2,
    'top-against-bass': topAgainstBass(truth, target),
    'one-key': families === 1,
    'no-key': families === 0,
    'settles-nothing': settler !== undefined && sameSet(rightKeys(settler.keys, policy), owners),
    'four-slots': chords.length === 4 && (truth.count === 3 || truth.count === 4),
    'off-root': chord?.bass !== undefined,
    visitor: chord !== undefined && isVisitor(chord, chords, truth),
  };
  return (Object.keys(has) as Trait[]).filter((trait) => has[trait]);
}

/** From home to a chord the bass moves, and the top note stays or goes the other way. A teacher's own playing has no known top. */
function topAgainstBass({ bass, top }: Truth, target: number): boolean {
  if (target < 1 || target >= Math.min(bass.length, top.length)) return false;
  const below = directionOf(itemAt(bass, 0), itemAt(bass, target));
  return below !== 'same' && directionOf(itemAt(top, 0), itemAt(top, target)) !== below;
}

/** Whether a chord visits the key that a loop is most usually read in. In a loop that a major key owns nobody visits. */
function isVisitor(chord: Chord, chords: readonly Chord[], { keys }: Truth): boolean {
  if (keys.majors.length > 0) return false;
  const [usual] = visitedKeys(chords);
  return usual?.visitors.some((visitor) => soundsAsOverBass(readSymbol(visitor.chord), chord)) ?? false;
}
