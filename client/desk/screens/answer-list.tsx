import { deskWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView, WireStep } from '../../../server/protocol/views.ts';
import { answerText } from '../../shared/answer-text.ts';
import type { Desk } from '../desk-state.ts';
import { countsAsRight } from '../fallen.ts';
import { counted } from '../sentences.ts';
import { Unfolding } from './unfolding.tsx';

const words = deskWords.closed;

type Props = { readonly desk: Desk; readonly view: DeskView; readonly step: WireStep };

/** Every different answer with its hands; a wrong one can be let stand, wherever these chords come again. */
export function AnswerList({ desk, view, step }: Props) {
  const { counts = [], asking } = view.spread ?? {};
  if (counts.length === 0) return null;
  return (
    <Unfolding more={words.answers} less={words.answersLess}>
      {() => (
        <ul class="answer-list">
          {counts.map(({ key, answer, count }) => (
            <li key={key}>
              <span class="answer">{answerText(step.kind, answer, asking?.grid)}</span>
              <span class="hands">{counted(count, words.hands)}</span>
              <Standing desk={desk} view={view} step={step} answer={answer} answerKey={key} />
            </li>
          ))}
        </ul>
      )}
    </Unfolding>
  );
}

function Standing({
  desk,
  view,
  step,
  answer,
  answerKey,
}: Props & { readonly answer: unknown; readonly answerKey: string }) {
  const stands = view.letStand.includes(answerKey);
  if (!stands && countsAsRight(view, answerKey)) return <span class="stands">{words.isRight}</span>;
  const round = view.vamp?.round ?? '';
  const wish = { type: 'LetStand', round, question: step.question, answer, stands: !stands } as const;
  return (
    <button
      type="button"
      class="stands toggle"
      aria-pressed={stands}
      aria-label={fill(words.letStand, { answer: answerText(step.kind, answer, view.spread?.asking.grid) })}
      onClick={() => void desk.wish(wish)}
    >
      {words.alsoRight}
    </button>
  );
}
