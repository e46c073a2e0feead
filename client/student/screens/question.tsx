import { useState } from 'preact/hooks';
import type { FunctionComponent } from 'preact';
import { questionWords } from '../../../server/protocol/words/question-words.ts';
import { questionPrompt } from '../../../server/protocol/words/questions.ts';
import { studentWords } from '../../../server/protocol/words/student.ts';
import type { StudentCommon, StudentOwn, WireAsking } from '../../../server/protocol/views.ts';
import { NOT_SURE, type Kind } from '../../../shared-theory/questions/question.ts';
import { answerText, truthSentence } from '../answer-text.ts';
import { momentOf, sameAnswer, type Moment } from '../moment.ts';
import { DirectionPad } from '../pads/direction-pad.tsx';
import { KeysPad, markedText } from '../pads/keys-pad.tsx';
import type { PadProps } from '../pads/pad.ts';
import { QualityPad } from '../pads/quality-pad.tsx';
import { RootPad } from '../pads/root-pad.tsx';
import { StrokesPad } from '../pads/strokes-pad.tsx';
import { sentenceOf } from '../sentences.ts';
import type { Student } from '../student-state.ts';
import { Foot, Panel } from './foot.tsx';
import { Heading, TopLine } from './heading.tsx';
import { MarkPanel } from './mark-panel.tsx';

const PADS = {
  direction: DirectionPad,
  quality: QualityPad,
  root: RootPad,
  keys: KeysPad,
  strokes: StrokesPad,
} as Readonly<Record<Kind, FunctionComponent<PadProps<unknown>>>>;

type Standing = {
  readonly student: Student;
  readonly common: StudentCommon & { readonly ask: string; readonly asking: WireAsking };
  readonly own: StudentOwn;
};

/** One question from opening to reveal. Keyed by its ask: a new question begins with an empty pad. */
export function Question({ student, common, own }: Standing) {
  const { ask, asking } = common;
  const { answering } = student;
  const phase = common.phase === 'shown' || common.phase === 'closed' ? common.phase : 'open';
  const [touched, touch] = useState<{ readonly answer: unknown } | null>(null);
  const [changing, change] = useState(false);

  const written = student.written.value;
  const underway = answering.pending.value;
  const pending = underway?.ask === ask ? underway.answer : undefined;
  const outcome = answering.outcome.value;
  const refusal = outcome?.kind === 'refused' && outcome.ask === ask ? outcome : null;
  const settled = pending === undefined ? written : pending;
  const chosen = touched ? touched.answer : settled === NOT_SURE ? null : settled;
  const moment = momentOf({
    phase,
    written,
    pending,
    refused: refusal !== null,
    chosen,
    changing,
    live: student.status.value.kind === 'live',
    slow: answering.slow.value,
  });

  const choose = (answer: unknown): void => {
    touch({ answer });
    change(true);
  };
  const write = (answer: unknown): void => {
    touch({ answer: answer === NOT_SURE ? null : answer });
    change(false);
    answering.write(ask, answer);
  };
  const writable = sameAnswer(chosen, settled === NOT_SURE ? null : settled)
    ? null
    : chosen === null
      ? 'take-back'
      : 'write';
  const Pad = PADS[asking.kind as Kind];
  const counts =
    moment.kind === 'shown' ? sameAnswer(chosen, moment.answer) : moment.kind !== 'late' && !isUnwritten(moment);
  const heading = common.truth ? truthSentence(asking, common.truth) : questionPrompt(asking);
  const call = student.call.value?.ask === ask ? student.call.value : null;

  return (
    <main class={`page question-page moment-${moment.kind}`}>
      <TopLine room={student.room} name={own.name} />
      <div class="question-words">
        <Heading screen={`${ask} ${phase}`}>{heading}</Heading>
        {phase === 'open' && <p class="instruction">{instruction(asking, chosen, common.sheet)}</p>}
      </div>
      <div class="pad" role="group" aria-label={studentWords.padLabel}>
        {Pad && (
          <Pad
            asking={asking}
            chosen={chosen}
            closed={phase !== 'open'}
            dashed={!counts}
            truth={common.truth}
            leftHanded={own.leftHanded}
            onChoose={choose}
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
      {refusal && phase === 'open' && moment.kind === 'choosing' && (
        <p class="call" role="alert">
          {sentenceOf(refusal)}
        </p>
      )}
      <div class="foot-place" role="status">
        <FootOf
          moment={moment}
          asking={asking}
          own={own}
          truthShown={phase === 'shown'}
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
        />
      </div>
    </main>
  );
}

const isUnwritten = (moment: Moment): boolean => moment.kind === 'closed' && moment.chosen;

function instruction(asking: WireAsking, chosen: unknown, sheet: number | undefined): string {
  if (asking.kind === 'keys' && Array.isArray(chosen) && chosen.length > 0) return markedText(chosen.length);
  if (sheet === 2) return studentWords.secondSheet;
  return questionWords.instructions[asking.kind as Kind];
}

function FootOf(props: {
  readonly moment: Moment;
  readonly asking: WireAsking;
  readonly own: StudentOwn;
  readonly truthShown: boolean;
  readonly foot: preact.JSX.Element;
  readonly onChange: () => void;
}) {
  const { moment, asking } = props;
  const change = (
    <button type="button" class="panel-link" onClick={props.onChange}>
      {studentWords.change}
    </button>
  );
  switch (moment.kind) {
    case 'choosing':
      return props.foot;
    case 'sending':
      return <Panel mark="sending" title={studentWords.sending} />;
    case 'in': {
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
      return <Panel mark="closed" title={studentWords.closedTitle} text={closedText(asking, moment)} />;
    case 'shown':
      return <MarkPanel asking={asking} answer={moment.answer} mark={props.own.mark ?? null} />;
  }
}

function closedText(asking: WireAsking, moment: { readonly answer: unknown; readonly chosen: boolean }): string {
  if (moment.answer !== null) return studentWords.closedIn.replace('{answer}', answerText(asking, moment.answer));
  return moment.chosen ? studentWords.closedChosen : studentWords.closedNone;
}
