import { deskWords, errorKinds, questionWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { WireBreakdownLine } from '../../../server/protocol/views.ts';
import { answerText } from '../../shared/answer-text.ts';

const words = deskWords.lesson;

type Props = { readonly lines: readonly WireBreakdownLine[]; readonly onGoOn: () => void };

/** The end of the lesson: per question how it went, and what was misheard most. */
export function LessonLeaf({ lines, onGoOn }: Props) {
  const rounds = [...new Set(lines.map(({ round }) => round))];
  return (
    <section class="lesson-leaf">
      <h1>{words.heading}</h1>
      {rounds.map((round) => (
        <section key={round}>
          <h2>{fill(words.vamp, { number: round })}</h2>
          <ul>
            {lines
              .filter((line) => line.round === round)
              .map((line) => (
                <Line key={line.question} line={line} />
              ))}
          </ul>
        </section>
      ))}
      <p>
        <button type="button" class="desk-button" onClick={onGoOn}>
          {words.goOn}
        </button>
      </p>
    </section>
  );
}

function Line({ line }: { readonly line: WireBreakdownLine }) {
  const steps: Readonly<Record<string, string>> = questionWords.steps;
  const [missed] = line.missed;
  const kind = missed?.error ? errorKinds[missed.error] : undefined;
  return (
    <li class="lesson-line">
      <p>
        <strong>{steps[line.kind] ?? line.kind}</strong> {answerText(line.kind, line.truth)}
      </p>
      <p>{fill(words.counts, { right: line.right, part: line.part, wrong: line.wrong, notSure: line.notSure })}</p>
      {missed && (
        <p class="hint">
          {fill(words.heard, { n: missed.count, answer: answerText(line.kind, missed.answer) })}
          {kind && `: ${kind.finding}`}
        </p>
      )}
    </li>
  );
}
