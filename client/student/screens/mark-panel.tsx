import { errorKinds } from '../../../server/protocol/words/errors.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { studentWords } from '../../../server/protocol/words/student.ts';
import type { StudentOwn, WireAsking } from '../../../server/protocol/views.ts';
import { NOT_SURE } from '../../../shared-theory/questions/question.ts';
import { BrassRule } from '../../shared/marks.tsx';
import { answerText } from '../answer-text.ts';

/** After the reveal: right, partly or not as words, what was written, and a sentence to go on with. */
export function MarkPanel(props: {
  readonly asking: WireAsking;
  readonly answer: unknown;
  readonly mark: StudentOwn['mark'] | null;
}) {
  const { asking, answer, mark } = props;
  const say = mark?.error ? errorKinds[mark.error]?.say : undefined;
  const wrote = answer !== null && answer !== NOT_SURE;
  return (
    <div class="panel-shown">
      <BrassRule />
      <div class="mark-words">
        <p class="mark-title">{verdict(answer, mark ?? null)}</p>
        {wrote && !mark?.exact && (
          <p class="panel-text">{fill(studentWords.youWrote, { answer: answerText(asking, answer) })}</p>
        )}
        {say && <p class="serif mark-say">{say}</p>}
      </div>
    </div>
  );
}

function verdict(answer: unknown, mark: StudentOwn['mark'] | null): string {
  if (answer === null || answer === undefined) return studentWords.absent;
  if (answer === NOT_SURE) return studentWords.unsure;
  // The mark comes a moment after the reveal; until then the page says nothing about it.
  if (!mark) return '';
  if (mark.exact) return studentWords.right;
  return mark.credit > 0 ? studentWords.part : studentWords.wrong;
}
