import type { AskedQuestion, AskedRound } from '../../shared-theory/diagnosis/asked.ts';
import { parseQuestionId } from '../../shared-theory/questions/round-questions.ts';
import type { RoundQuestion } from '../../shared-theory/questions/round-questions.ts';
import { letStandOn } from './let-stand.ts';
import type { RoomState, RoundRecord } from './state.ts';
import { phoneSheets, seatsOf } from './state.ts';

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
  const sheets = phoneSheets(asked).filter(({ closed }) => closed !== null);
  return {
    ...question,
    sheets: sheets.map((sheet) => ({ answers: sheet.answers, seats: seatsOf(state, sheet) })),
    letStand: letStandOn(state, record.heard, question),
    struck: asked?.struck === true,
    returned: sheets[0]?.returned ?? null,
    shownUnder:
      asked?.shownUnder.map((heard) => ({ truth: heard.truth, letStand: letStandOn(state, heard, question) })) ?? [],
  };
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
