import { useSignal } from '@preact/signals';
import { DEPTHS, type Depth } from '../../../server/protocol/messages.ts';
import { deskWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { grooveAnswers } from '../../../server/protocol/words/groove-answers.ts';
import { rhythmDeskWords } from '../../../server/protocol/words/rhythm-desk-words.ts';
import type { DeskView, WireStudent, WireStudentReport } from '../../../server/protocol/views.ts';
import { isPartly } from '../../../shared-theory/questions/points.ts';
import { NOT_SURE } from '../../../shared-theory/questions/question.ts';
import { answerText } from '../../shared/answer-text.ts';
import type { Desk } from '../desk-state.ts';
import { countsOf, findingsOf } from '../reports.ts';
import { kindName, stepName } from '../step-names.ts';
import { tapCells } from '../taps-text.ts';
import { HandLedger } from './hand-ledger.tsx';

const words = deskWords.roll;
const { hands } = rhythmDeskWords;

/**
 * Who is in the room, who has answered, and how each one's lesson goes; or who has played a groove through. By seat, private, no order
 * of merit.
 */
export function RollLeaf({ desk, view }: { readonly desk: Desk; readonly view: DeskView }) {
  const ledger = useSignal(false);
  return (
    <section>
      <h1>{words.heading}</h1>
      <p class="hint">{deskWords.privateNote}</p>
      {view.students.length > 0 && (
        <p>
          <button
            type="button"
            class="desk-link"
            onClick={() => {
              ledger.value = !ledger.value;
            }}
          >
            {ledger.value ? hands.close : hands.open}
          </button>
        </p>
      )}
      {ledger.value ? <HandLedger desk={desk} view={view} /> : <Roll desk={desk} view={view} />}
    </section>
  );
}

function Roll({ desk, view }: { readonly desk: Desk; readonly view: DeskView }) {
  return (
    <>
      {view.students.length === 0 ? <p class="lead">{words.none}</p> : <p class="hint">{words.depthNote}</p>}
      <ul class="roll">
        {view.students
          .toSorted((a, b) => a.seat - b.seat)
          .map((student) => (
            <Row key={student.student} desk={desk} view={view} student={student} />
          ))}
      </ul>
    </>
  );
}

function Row(props: { readonly desk: Desk; readonly view: DeskView; readonly student: WireStudent }) {
  const { desk, view, student } = props;
  const editing = useSignal(false);
  const name = useSignal(student.name);
  const erasing = useSignal(false);
  const report = view.reports.find((each) => each.student === student.student);
  const rename = async (event: Event) => {
    event.preventDefault();
    const reply = await desk.wish({ type: 'RenameStudent', student: student.student, name: name.value });
    if (reply?.ok) editing.value = false;
  };
  return (
    <li>
      <div class="roll-line">
        <bdi class="roll-name">{student.name}</bdi>
        <span class="roll-state">{stateOf(view, student).join(' · ')}</span>
        <button
          type="button"
          class="desk-link"
          onClick={() =>
            void desk.wish({ type: 'SetDepth', student: student.student, depth: nextDepth(student.depth) })
          }
        >
          {words.depth[student.depth]}
        </button>
        <button
          type="button"
          class="desk-link"
          aria-expanded={editing.value}
          onClick={() => {
            editing.value = !editing.value;
            name.value = student.name;
            erasing.value = false;
          }}
        >
          {words.change}
        </button>
      </div>
      {report && report.of > 0 && <Report report={report} />}
      {editing.value && (
        <form class="roll-edit" onSubmit={(event) => void rename(event)}>
          <input
            name="name"
            aria-label={words.rename}
            autocomplete="off"
            value={name.value}
            onInput={(event) => {
              name.value = event.currentTarget.value;
            }}
          />
          <button type="submit" class="desk-button">
            {words.save}
          </button>
          <button
            type="button"
            class="desk-link"
            onClick={() => {
              if (erasing.value) void desk.wish({ type: 'EraseStudent', student: student.student });
              else erasing.value = true;
            }}
          >
            {erasing.value ? words.eraseSure : words.erase}
          </button>
        </form>
      )}
    </li>
  );
}

/** One student's lesson so far: how the answers came out, what to notice, what to say. */
function Report({ report }: { readonly report: WireStudentReport }) {
  return (
    <div class="report">
      <p>
        {countsOf(report).join(', ')} · {fill(words.points, { points: Math.round(report.points) })}
        {report.memory.of > 0 && ` · ${fill(words.fromMemory, report.memory)}`}
      </p>
      {findingsOf(report).map(({ finding, say, firm }) => (
        <p key={finding} class={firm ? 'firm' : undefined}>
          {finding} <q>{say}</q>
        </p>
      ))}
    </div>
  );
}

function stateOf(view: DeskView, student: WireStudent): readonly string[] {
  const { current } = view;
  const { mark, instead } = student;
  const kind = (instead ?? current)?.kind;
  const written =
    kind !== undefined && (student.taps !== undefined || (student.answer ?? null) !== null)
      ? [writtenText(view, kind, student), mark && student.answer !== NOT_SURE ? verdict(mark) : '']
          .filter(Boolean)
          .join(', ')
      : student.wrote && current?.status === 'open'
        ? words.wrote
        : '';
  return [
    student.here ? words.here : words.asleep,
    student.cannotHear ? words.cannotHear : '',
    instead === undefined
      ? ''
      : instead === null
        ? words.listens
        : fill(words.instead, { question: insteadName(view, instead) }),
    written,
    student.pair ? words.pair : '',
    student.leftHanded ? words.leftHanded : '',
  ].filter(Boolean);
}

/** What was written, in words; of taps what they say, which is all that comes here of them. */
function writtenText(view: DeskView, kind: string, { answer, taps }: WireStudent): string {
  if (taps === undefined) return answerText(kind, answer, view.current?.asking.grid);
  if (taps === null) return rhythmDeskWords.taps.unread;
  const [tempo, uneven, drift] = tapCells(taps);
  const text = fill(grooveAnswers.tempo, { tempo: tempo ?? '' });
  return [text, fill(rhythmDeskWords.taps.unevenAndDrift, { uneven: uneven ?? '', drift: drift ?? '' })].join(', ');
}

function insteadName(view: DeskView, { kind, target }: NonNullable<WireStudent['instead']>): string {
  const step = view.steps.find((each) => each.kind === kind && each.target === target);
  return step === undefined ? kindName(kind) : stepName(view, step);
}

/** From all of it down to the floor, and round again. */
function nextDepth(depth: Depth): Depth {
  const at = DEPTHS.indexOf(depth);
  return DEPTHS[(at + DEPTHS.length - 1) % DEPTHS.length] ?? depth;
}

function verdict({ exact, credit }: NonNullable<WireStudent['mark']>): string {
  return exact ? words.right : isPartly(credit) ? words.part : words.wrong;
}
