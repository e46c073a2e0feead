import { useState } from 'preact/hooks';
import type { HostView, WireBreakdownLine, WireOpinions } from '../../../server/protocol/views.ts';
import { hostWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { numberWord } from '../../../server/protocol/words/counting.ts';
import { questionPrompt } from '../../../server/protocol/words/questions.ts';
import { Header } from '../parts/header.tsx';
import { answerText, truthText } from '../../shared/answer-text.ts';
import type { Frame } from '../frame.ts';
import { Findings } from './findings.tsx';

const words = hostWords.end;

/** Lines that fit at full size; more shrink, down to what the back row still reads, and then the page is longer than the wall. */
const ROOMY_LINES = 7;

/** Wrong answers named in a line. */
const MISSED_NAMED = 2;

/** The end of the lesson: first what this room mishears, where something was found, then how the answers fell. */
export function LessonEnd({ view, frame }: { readonly view: HostView; readonly frame: Frame }) {
  const [turned, turn] = useState(false);
  if (view.common.length > 0 && !turned) return <Findings view={view} onTurn={() => turn(true)} />;
  return <Answers view={view} frame={frame} onTurn={view.common.length > 0 ? () => turn(false) : null} />;
}

type AnswersProps = { readonly view: HostView; readonly frame: Frame; readonly onTurn: (() => void) | null };

/** How the lesson's questions came out, as a page of print: counts of hands, no names. */
function Answers({ view, frame, onTurn }: AnswersProps) {
  const lines = view.breakdown ?? [];
  const { opinions } = view;
  const rounds = [...new Set(lines.map((line) => line.round))];
  const several = new Set([...lines, ...opinions].map((line) => line.round)).size > 1;
  const headings = rounds.length + (opinions.length > 0 ? 1 : 0);
  const rows = lines.length + opinions.length + headings * 0.8;
  const room = frame.height - 430;
  const row = Math.max(40, Math.min(84, room / Math.max(ROOMY_LINES, rows)));
  return (
    <main class="screen lesson-end">
      <Header>
        <span class="label">{words.label}</span>
      </Header>
      <h1 class="question">{words.heading}</h1>
      {lines.length + opinions.length === 0 ? (
        <p class="instruction">{words.empty}</p>
      ) : (
        <table class="print" style={{ fontSize: `${Math.min(32, row * 0.46) / 16}rem`, '--row': `${row / 16}rem` }}>
          {lines.length > 0 && (
            <thead>
              <tr>
                <td />
                {[words.right, words.part, words.wrong, words.notSure].map((name) => (
                  <th key={name} scope="col" class="figure">
                    {name}
                  </th>
                ))}
                <th scope="col">{words.missed}</th>
              </tr>
            </thead>
          )}
          {rounds.map((round) => (
            <tbody key={round}>
              {several ? (
                <tr class="round-name">
                  <th scope="rowgroup" colSpan={6}>
                    {fill(words.round, { n: numberWord(round) })}
                  </th>
                </tr>
              ) : null}
              {lines
                .filter((line) => line.round === round)
                .map((line) => (
                  <Line key={line.question} line={line} />
                ))}
            </tbody>
          ))}
          {opinions.length > 0 && (
            <tbody>
              <tr class="round-name">
                <th scope="rowgroup" colSpan={6}>
                  {words.opinions}
                </th>
              </tr>
              {opinions.map((line) => (
                <Opinions key={`${line.round} ${line.question}`} line={line} several={several} />
              ))}
            </tbody>
          )}
        </table>
      )}
      <footer class="foot low">
        <span class="label">{lines.length + opinions.length > 0 ? words.closing : ''}</span>
        {onTurn && (
          <button type="button" class="turn" onClick={onTurn}>
            {hostWords.findings.back}
          </button>
        )}
      </footer>
    </main>
  );
}

function Line({ line }: { readonly line: WireBreakdownLine }) {
  const missed = line.missed.slice(0, MISSED_NAMED);
  return (
    <tr>
      <th scope="row">
        {questionPrompt(line.asking)} <span class="truth">{truthText(line.kind, line.truth, line.asking.grid)}</span>
      </th>
      {[line.right, line.part, line.wrong, line.notSure].map((count, index) => (
        <td key={index} class={count === 0 ? 'figure nobody' : index === 0 ? 'figure most' : 'figure'}>
          {count}
        </td>
      ))}
      <td class="missed">
        {missed.map(({ key, answer, count }) => (
          <span key={key} class="missed-one">
            {answerText(line.kind, answer, line.asking.grid)} <span class="figure">{count}</span>
          </span>
        ))}
      </td>
    </tr>
  );
}

/** How opinions fell: all alike, without a mark. */
function Opinions({ line, several }: { readonly line: WireOpinions; readonly several: boolean }) {
  const { round, kind, target, counts, notSure } = line;
  const fell = counts.map(({ answer, count }) => [answerText(kind, answer), count] as const);
  const all = notSure > 0 ? [...fell, [words.notSure, notSure] as const] : fell;
  return (
    <tr>
      <th scope="row">
        {questionPrompt({ kind, target })}{' '}
        {several && <span class="truth">{fill(words.round, { n: numberWord(round) })}</span>}
      </th>
      <td class="missed" colSpan={5}>
        {all.map(([said, count]) => (
          <span key={said} class="missed-one">
            {said} <span class="figure">{count}</span>
          </span>
        ))}
      </td>
    </tr>
  );
}

/** The room has been closed: one plain sentence. */
export function RoomEnded() {
  return (
    <main class="screen room-ended">
      <Header />
      <h1 class="question">{words.roomEnded}</h1>
      <p class="instruction">{words.thanks}</p>
    </main>
  );
}

/** Before the first view has come, or where it cannot come. */
export function Waiting({ sentence }: { readonly sentence: string }) {
  return (
    <main class="screen room-ended">
      <Header />
      <p class="instruction" role="status">
        {sentence}
      </p>
    </main>
  );
}
