import { deskWords, errorKinds } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView, WireBreakdownLine, WireOpinions } from '../../../server/protocol/views.ts';
import { answerText, truthText } from '../../shared/answer-text.ts';
import type { Desk } from '../desk-state.ts';
import { kindName } from '../step-names.ts';
import { Findings } from './findings.tsx';
import { PlanList } from './plan-list.tsx';

const words = deskWords.lesson;

type Props = { readonly desk: Desk; readonly view: DeskView };

/** The lesson while it runs: its rounds, what the class mishears, and how each question went so far. */
export function LessonLeaf({ desk, view }: Props) {
  const lines = view.breakdown ?? [];
  return (
    <section class="lesson-leaf">
      <h1>{deskWords.plan.heading}</h1>
      <PlanList desk={desk} view={view} />
      <div>
        <Findings desk={desk} view={view} />
        {lines.length + view.opinions.length > 0 && <h2>{words.soFar}</h2>}
        <Lines lines={lines} opinions={view.opinions} />
        <TableLink view={view} />
      </div>
    </section>
  );
}

/** The end of the lesson: what was misheard most, and per question how it went. */
export function LessonEnd({ desk, view }: Props) {
  return (
    <section class="lesson-leaf">
      <h1>{words.heading}</h1>
      <Findings desk={desk} view={view} />
      <div>
        <Lines lines={view.breakdown ?? []} opinions={view.opinions} />
        <TableLink view={view} />
        <p>
          <button type="button" class="desk-button" onClick={() => desk.show('start')}>
            {words.goOn}
          </button>
        </p>
      </div>
    </section>
  );
}

/** The evidence as a file for spreadsheets, once there is any. */
function TableLink({ view: { breakdown, opinions, room } }: { readonly view: DeskView }) {
  if ((breakdown?.length ?? 0) + opinions.length === 0) return null;
  return (
    <p>
      <a class="desk-link" href={`/api/rooms/${room}/lesson.csv`} download>
        {words.table}
      </a>
    </p>
  );
}

type LinesProps = { readonly lines: readonly WireBreakdownLine[]; readonly opinions: readonly WireOpinions[] };

function Lines({ lines, opinions }: LinesProps) {
  const all = [...lines, ...opinions].map(({ round }) => round);
  const rounds = [...new Set(all)].toSorted((one, other) => one - other);
  return (
    <>
      {rounds.map((round) => (
        <section key={round}>
          <h3 class="lesson-round">{fill(words.vamp, { number: round })}</h3>
          <ul>
            {lines
              .filter((line) => line.round === round)
              .map((line) => (
                <Line key={line.question} line={line} />
              ))}
            {opinions
              .filter((line) => line.round === round)
              .map((line) => (
                <Opinions key={line.question} line={line} />
              ))}
          </ul>
        </section>
      ))}
    </>
  );
}

function Line({ line }: { readonly line: WireBreakdownLine }) {
  const [missed] = line.missed;
  const kind = missed?.error ? errorKinds[missed.error] : undefined;
  return (
    <li class="lesson-line">
      <p>
        <strong>{kindName(line.kind)}</strong> {truthText(line.kind, line.truth, line.asking.grid)}
        {line.memory && ` · ${words.memory}`}
      </p>
      <p>{fill(words.counts, { right: line.right, part: line.part, wrong: line.wrong, notSure: line.notSure })}</p>
      {missed && (
        <p class="hint">
          {fill(words.heard, { n: missed.count, answer: answerText(line.kind, missed.answer, line.asking.grid) })}
          {kind && `: ${kind.finding}`}
        </p>
      )}
    </li>
  );
}

/** How opinions fell: no more is to be said of them. */
function Opinions({ line: { kind, counts, notSure } }: { readonly line: WireOpinions }) {
  const fell = counts.map(({ answer, count }) => `${answerText(kind, answer)} ${count}`);
  const all = notSure > 0 ? [...fell, fill(words.unsure, { n: notSure })] : fell;
  return (
    <li class="lesson-line">
      <p>
        <strong>{kindName(kind)}</strong> · {kind === 'together' ? words.collected : words.opinions}
      </p>
      {all.length > 0 && <p>{all.join(', ')}</p>}
    </li>
  );
}
