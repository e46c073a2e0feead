import type { AskedQuestion, AskedRound, ClosedSheet } from '../../shared-theory/diagnosis/asked.ts';
import type { Answer, NotSure } from '../../shared-theory/questions/question.ts';
import { parseQuestionId } from '../../shared-theory/questions/round-questions.ts';
import type { RoundQuestion } from '../../shared-theory/questions/round-questions.ts';
import { letStandOn } from './let-stand.ts';
import type { RoomState, RoundRecord, Sheet } from './state.ts';
import { phoneSheets, seatsOf, tempoOn } from './state.ts';

type Known = { readonly at: string; readonly asked: AskedRound };
const known = new WeakMap<RoundRecord, Known>();

/**
 * A round as the diagnosis needs it: the sheets that are closed, under what is right by now. The same object for as long as
 * nothing in it changes: an answer to an open sheet is none of it.
 */
export function askedRound(state: RoomState, record: RoundRecord): AskedRound {
  const at = `${record.revision} ${state.letStand.length}`;
  const last = known.get(record);
  if (last?.at === at) return last.asked;
  const { heard, tempoChanged } = record;
  const present = heard.questions.map((question) => askedQuestion(state, record, question));
  const asked: AskedRound = {
    number: heard.number,
    truth: heard.truth,
    settings: heard.settings,
    questions: [...present, ...goneQuestions(state, record)],
    steady: !tempoChanged,
  };
  known.set(record, { at, asked });
  return asked;
}

function askedQuestion(state: RoomState, record: RoundRecord, question: RoundQuestion): AskedQuestion {
  const asked = record.questions.get(question.id);
  const firsts = (asked?.firsts ?? []).filter(({ closed }) => closed !== null);
  const later = phoneSheets(asked)
    .slice(1)
    .filter(({ closed }) => closed !== null);
  const returns = new Set(firsts.map(({ returned }) => returned));
  return {
    ...question,
    sheets: firsts.length === 0 ? [] : [together(state, firsts), ...later.map((sheet) => closedSheet(state, sheet))],
    letStand: letStandOn(state, record.heard, question),
    struck: asked?.struck === true,
    memory: firsts.length > 0 && firsts.every(({ how }) => how === 'memory'),
    returned: returns.size === 1 ? (firsts[0]?.returned ?? null) : null,
    shownUnder:
      asked?.shownUnder.map((heard) => ({ truth: heard.truth, letStand: letStandOn(state, heard, question) })) ?? [],
  };
}

function closedSheet(state: RoomState, sheet: Sheet): ClosedSheet {
  const tempo = tempoOn(sheet);
  return { answers: sheet.answers, seats: seatsOf(state, sheet), ...(tempo === null ? {} : { tempo }) };
}

/** The sheets on which students were asked a question for the first time, as one: of each the first answer that stands. */
function together(state: RoomState, firsts: readonly Sheet[]): ClosedSheet {
  const [only] = firsts;
  if (only !== undefined && firsts.length === 1) return closedSheet(state, only);
  const answers = new Map<string, { readonly answer: Answer | NotSure | null }>();
  for (const sheet of firsts) {
    for (const [student, { answer }] of sheet.answers) {
      if ((answers.get(student)?.answer ?? null) === null) answers.set(student, { answer });
    }
  }
  return { answers, seats: new Set(firsts.flatMap((sheet) => seatsOf(state, sheet))) };
}

/**
 * Questions that the round had before it was corrected: what was shown of them, or struck, keeps its points, and is evidence of
 * nothing.
 */
function goneQuestions(state: RoomState, record: RoundRecord): readonly AskedQuestion[] {
  return [...record.questions].flatMap(([id, { shownUnder, struck }]) => {
    const question = parseQuestionId(id);
    const points = shownUnder.length > 0 || struck;
    if (question === null || !points || record.heard.questions.some((each) => each.id === id)) return [];
    return [{ ...askedQuestion(state, record, question), gone: true }];
  });
}
