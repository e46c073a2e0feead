import { useEffect, useRef, useState } from 'preact/hooks';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { Spoken } from '../../../server/protocol/words/asked/asked.ts';
import { numberWord } from '../../../server/protocol/words/counting.ts';
import { studentWords } from '../../../server/protocol/words/student.ts';
import type { StudentCommon, StudentOwn, WireAsking } from '../../../server/protocol/views.ts';
import { NOT_SURE } from '../../../shared-theory/questions/question.ts';
import { fetchAllBehind, fetchLater, useLater } from '../late-parts.ts';
import { isWhole, momentOf, sameAnswer, type Moment } from '../moment.ts';
import { loadPad, padOf } from '../pads/pads.ts';
import { useStore } from '../store.ts';
import { writtenOf, type Student } from '../student-state.ts';
import { wholeCounts } from '../whole-counts.tsx';
import { Foot, Panel } from './foot.tsx';
import type { MarkPanel as MarkPanelType } from './mark-panel.tsx';
import { Heading, TopLine } from './heading.tsx';
import { Quiet } from './quiet.tsx';

type Standing = {
  readonly student: Student;
  readonly common: StudentCommon & { readonly ask: string; readonly asking: WireAsking };
  readonly own: StudentOwn;
};

/** One question from opening to reveal. Keyed by its ask: a new question begins with an empty pad. */
export function Question({ student, common, own }: Standing) {
  const { ask, asking } = common;
  const state = useStore(student.store);
  const phase = common.phase === 'shown' || common.phase === 'closed' ? common.phase : 'open';
  const [touched, touch] = useState<{ readonly answer: unknown } | null>(null);
  const [changing, change] = useState(false);
  const aloud = useRef(false);
  if (common.phase === 'aloud') aloud.current = true;

  const written = writtenOf(state);
  const pending = state.pending?.ask === ask ? state.pending.answer : undefined;
  const refusal = state.outcome?.ask === ask ? state.outcome.refusal : null;
  const settled = pending === undefined ? written : pending;
  const chosen = touched ? touched.answer : settled === NOT_SURE ? null : settled;
  const moment = momentOf({
    phase,
    written,
    pending,
    refused: refusal !== null,
    chosen,
    changing,
    live: state.status.kind === 'live',
    slow: state.slow,
  });

  const choose = (answer: unknown): void => {
    touch({ answer });
    change(false);
  };
  const write = (answer: unknown): void => {
    touch({ answer: answer === NOT_SURE ? null : answer });
    change(false);
    student.write(ask, answer);
  };
  const unchanged = sameAnswer(chosen, settled === NOT_SURE ? null : settled);
  const writable = unchanged || !isWhole(chosen) ? null : chosen === null ? 'take-back' : 'write';
  const pad = usePad(asking.kind);
  const spoken = pad?.spoken[asking.kind];
  const counts =
    moment.kind === 'shown' ? sameAnswer(chosen, moment.answer) : moment.kind !== 'late' && !isUnwritten(moment);
  const parts = useLater();
  const heading = (common.truth && parts?.truthSentence(asking, common.truth)) ?? spoken?.prompt(asking);
  // Needed now, whatever else waits.
  const missed = phase === 'shown' || refusal !== null;
  useEffect(() => {
    if (missed) void fetchLater();
  }, [missed]);
  const call = state.call?.ask === ask ? state.call : null;

  if (common.phase === 'aloud') {
    return (
      <Quiet room={student.room} name={own.name} title={heading ?? ''}>
        <p>{studentWords.aloud}</p>
      </Quiet>
    );
  }
  return (
    <main class="page question-page" data-kind={asking.kind} data-policy={asking.options?.[0]}>
      <TopLine room={student.room} name={own.name} />
      <div class="question-words">
        <Heading screen={`${ask} ${phase} ${common.truth?.key} ${heading !== undefined}`}>
          {heading !== undefined && wholeCounts(heading)}
        </Heading>
        {phase !== 'shown' && <p class="instruction">{instruction(common, chosen, spoken)}</p>}
      </div>
      <div class="pad" role="group" aria-label={studentWords.padLabel}>
        {pad && (
          <pad.Pad
            asking={asking}
            chosen={chosen}
            closed={phase !== 'open'}
            dashed={!counts}
            truth={common.truth}
            leftHanded={own.leftHanded}
            droppedOut={common.droppedOut === true}
            onChoose={choose}
            onWrite={(answer) => {
              touch(null);
              student.write(ask, answer);
            }}
          />
        )}
      </div>
      {call && (
        <p class="call" role="status">
          {call.state === 'told'
            ? studentWords.told
            : call.state === 'failed'
              ? studentWords.notTold
              : studentWords.sending}
        </p>
      )}
      {own.echo && own.ask === ask && (
        <p class="call" role="status">
          {studentWords.echo}
        </p>
      )}
      {refusal && phase === 'open' && moment.kind === 'choosing' && (
        <p class="call" role="alert">
          {parts?.sentenceOf(refusal)}
        </p>
      )}
      <div class="foot-place" role="status">
        <FootOf
          moment={moment}
          asking={asking}
          truth={common.truth}
          markPanel={parts?.MarkPanel}
          foot={
            <Foot
              leftThumb={own.leftThumb}
              write={writable}
              notSure={settled === NOT_SURE && chosen === null}
              called={call?.state === 'told'}
              onCannotHear={() => void student.callCannotHear(ask)}
              onNotSure={() => (settled === NOT_SURE && chosen === null ? write(null) : write(NOT_SURE))}
              onWrite={() => writable && write(chosen)}
            />
          }
          onChange={() => change(true)}
          // Common and own travel apart: a mark may still be that of the question before.
          mark={(own.ask === ask && own.mark) || null}
          struck={common.struck === true}
          aloud={aloud.current}
        />
      </div>
    </main>
  );
}

/** The pad of a kind, fetched if need be; once it is on the screen the rest follows behind it. */
function usePad(kind: string) {
  const [, arrived] = useState(0);
  const pad = padOf(kind);
  useEffect(() => {
    void loadPad(kind).then(() => {
      arrived((times) => times + 1);
      setTimeout(() => void fetchAllBehind(), BEHIND_MS);
    });
  }, [kind]);
  return pad;
}

const BEHIND_MS = 1000;

const isUnwritten = (moment: Moment): boolean => moment.kind === 'closed' && moment.chosen;

/** How many keys are marked; other lists are answers of one piece. */
const markedKeys = (kind: string, chosen: unknown): number =>
  (kind === 'keys' || kind === 'settler') && Array.isArray(chosen)
    ? chosen.filter((id: string) => !id.startsWith('h')).length
    : 0;

/** The line under the question. */
function instruction(
  { asking, sheet, memory, struck }: Standing['common'],
  chosen: unknown,
  spoken: Spoken | undefined,
): string {
  if (struck) return studentWords.struck;
  const marked = markedKeys(asking.kind, chosen);
  if (marked > 0) return fill(studentWords.marked, { n: numberWord(marked) });
  const said = sheet === 2 ? studentWords.secondSheet : (spoken?.instruction(asking) ?? '');
  return memory ? `${studentWords.memory} ${said}` : said;
}

function FootOf(props: {
  readonly moment: Moment;
  readonly asking: WireAsking;
  readonly truth: StudentCommon['truth'];
  readonly mark: StudentOwn['mark'] | null;
  readonly struck: boolean;
  readonly aloud: boolean;
  readonly markPanel: typeof MarkPanelType | undefined;
  readonly foot: preact.JSX.Element;
  readonly onChange: () => void;
}) {
  const { moment } = props;
  const change = (
    <button type="button" class="panel-link" onClick={props.onChange}>
      {studentWords.change}
    </button>
  );
  // Written again and again: the page does not tell of each time.
  const together = props.asking.kind === 'together' && moment.kind !== 'choosing' && (
    <Panel mark="in" title={studentWords.inTitle} text={studentWords.inTogether} />
  );
  switch (moment.kind) {
    case 'choosing':
      return props.foot;
    case 'sending':
      if (together) return together;
      return <Panel mark="sending" title={studentWords.sending} />;
    case 'in': {
      if (together) return together;
      const title = moment.answer === NOT_SURE ? studentWords.notSureTitle : studentWords.inTitle;
      return (
        <Panel mark="in" title={title} text={studentWords.inText}>
          {change}
        </Panel>
      );
    }
    case 'kept': {
      const text = moment.closed ? studentWords.keptClosedText : studentWords.keptText;
      return (
        <Panel mark="kept" title={studentWords.keptTitle} text={text}>
          {!moment.closed && change}
        </Panel>
      );
    }
    case 'late':
      return <Panel mark="closed" title={studentWords.lateTitle} text={studentWords.lateText.join(' ')} />;
    case 'closed':
      return <Panel mark="closed" title={studentWords.closedTitle} text={closedText(moment)} />;
    case 'shown': {
      const MarkPanel = props.markPanel;
      return MarkPanel ? <MarkPanel {...props} answer={moment.answer} /> : null;
    }
  }
}

function closedText(moment: { readonly answer: unknown; readonly chosen: boolean }): string {
  if (moment.answer !== null) return studentWords.closedIn;
  return moment.chosen ? studentWords.closedChosen : studentWords.closedNone;
}
