import { evidenceOf } from '../../shared-theory/diagnosis/asked.ts';
import type { AskedQuestion, AskedRound } from '../../shared-theory/diagnosis/asked.ts';
import { answerKey } from '../../shared-theory/questions/asks.ts';
import { namesOf } from '../../shared-theory/namings/names-of.ts';
import { printChord } from '../../shared-theory/printer.ts';
import { COLLECTED_KINDS } from '../../shared-theory/questions/question.ts';
import type { Answer, Kind, NotSure } from '../../shared-theory/questions/question.ts';
import { tableWords } from '../protocol/words/en.ts';
import { fill } from '../protocol/words/fill.ts';
import { askedRound } from '../rooms/asked-rounds.ts';
import type { People } from '../rooms/people.ts';
import type { RoomState } from '../rooms/state.ts';
import type { Cell } from './csv.ts';

/**
 * The lesson's evidence as a table with a heading: one row for each student and each question that was asked on the phones, by
 * first sheets, in the order of rounds, questions and seats. Opinions stand among them, with no mark. For the teacher alone: it
 * holds names.
 */
export function lessonTable(state: RoomState, people: Pick<People, 'shown'>): readonly (readonly Cell[])[] {
  const seats = [...state.students.values()].toSorted((a, b) => a.seat - b.seat);
  const names = namesOf(state.settings.naming);
  const rows = state.rounds.flatMap((record) => {
    const round = askedRound(state, record);
    const chords = record.heard.slots.map(({ chord }) => printChord(chord, names).text).join(' ');
    return round.questions.flatMap((question) => {
      const line = lineOf(round, question);
      if (line === null) return [];
      return seats
        .filter(({ student }) => line.there.has(student))
        .map(({ student, seat }): readonly Cell[] => {
          const named = [round.number, chords, question.id, seat, people.shown.get(student) ?? ''];
          return [...named, ...line.cells(student), question.memory === true ? tableWords.memory : ''];
        });
    });
  });
  return [tableWords.heading, ...rows];
}

/** A question that was asked: who was there, and what stands in the cells of each. */
type Line = { readonly there: ReadonlySet<string>; readonly cells: (student: string) => readonly Cell[] };

function lineOf(round: AskedRound, question: AskedQuestion): Line | null {
  if (COLLECTED_KINDS.has(question.kind)) return opinions(question);
  const evidence = evidenceOf(round, question);
  if (evidence === null) return null;
  const { first, right, hands } = evidence;
  const byStudent = new Map(hands.map((hand) => [hand.student, hand]));
  return {
    there: new Set([...first.seats, ...byStudent.keys()]),
    cells: (student) => {
      const hand = byStudent.get(student);
      return [
        hand ? said(question.kind, hand.answer) : '',
        said(question.kind, right),
        hand ? hand.mark.credit : null,
        hand ? hand.mark.evidence : tableWords.absent,
        hand?.mark.errors[0] ?? '',
      ];
    },
  };
}

function opinions({ kind, sheets: [first], struck, gone }: AskedQuestion): Line | null {
  if (first === undefined || struck === true || gone === true) return null;
  return {
    there: new Set([...first.seats, ...first.answers.keys()]),
    cells: (student) => {
      const answer = first.answers.get(student)?.answer ?? null;
      return [answer === null ? '' : said(kind, answer), '', null, answer === null ? tableWords.absent : '', ''];
    },
  };
}

/** An answer in a cell: as it is counted, a place on the neck in words, places counted from one. */
function said(kind: Kind, answer: Answer | NotSure): string {
  if (typeof answer === 'object' && 'fret' in answer) return fill(tableWords.place, answer);
  if (kind === 'home' && typeof answer === 'number') return fill(tableWords.home, { n: answer + 1 });
  return answerKey<Kind>(kind, answer);
}
