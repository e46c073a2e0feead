import { evidenceQuestions } from '../../shared-theory/diagnosis/asked.ts';
import { answerKey } from '../../shared-theory/questions/asks.ts';
import type { Answer, Kind, NotSure } from '../../shared-theory/questions/question.ts';
import { tableWords } from '../protocol/words/en.ts';
import { fill } from '../protocol/words/fill.ts';
import { askedRound } from '../rooms/asked-rounds.ts';
import type { People } from '../rooms/people.ts';
import type { RoomState } from '../rooms/state.ts';
import type { Cell } from './csv.ts';

/**
 * The lesson's evidence as a table with a heading: one row for each student and each question that was asked on the phones, by
 * first sheets, in the order of rounds, questions and seats. For the teacher alone: it holds names.
 */
export function lessonTable(state: RoomState, people: Pick<People, 'shown'>): readonly (readonly Cell[])[] {
  const seats = [...state.students.values()].toSorted((a, b) => a.seat - b.seat);
  const rounds = state.rounds.map((record) => askedRound(state, record));
  const rows = evidenceQuestions(rounds).flatMap(({ round, question, first, right, hands }) => {
    const chords = (state.rounds[round.number - 1]?.heard.slots ?? []).map(({ chord }) => chord).join(' ');
    const marks = new Map(hands.map((hand) => [hand.student, hand]));
    const there = new Set([...first.seats, ...marks.keys()]);
    return seats
      .filter(({ student }) => there.has(student))
      .map(({ student, seat }): readonly Cell[] => {
        const hand = marks.get(student);
        return [
          round.number,
          chords,
          question.id,
          seat,
          people.shown.get(student) ?? '',
          hand ? said(question.kind, hand.answer) : '',
          said(question.kind, right),
          hand ? hand.mark.credit : null,
          hand ? hand.mark.evidence : tableWords.absent,
          hand?.mark.errors[0] ?? '',
        ];
      });
  });
  return [tableWords.heading, ...rows];
}

/** An answer in a cell: as it is counted, a place on the neck in words. */
function said(kind: Kind, answer: Answer | NotSure): string {
  if (typeof answer === 'object' && 'fret' in answer) return fill(tableWords.place, answer);
  return answerKey<Kind>(kind, answer);
}
