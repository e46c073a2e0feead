import { deskWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { questionPrompt } from '../../../server/protocol/words/questions.ts';
import type { DeskView, WireStep, WireTaps } from '../../../server/protocol/views.ts';
import { usualSeconds } from '../../../shared-theory/questions/script.ts';
import type { Kind } from '../../../shared-theory/questions/question.ts';
import { Mark } from '../../shared/marks.tsx';
import { isSung, settlerName } from '../../shared/settler-name.ts';
import { Tally } from '../../shared/music-marks.tsx';
import type { Desk } from '../desk-state.ts';
import { rightText } from '../right-text.ts';
import { counted } from '../sentences.ts';
import { meanwhileName } from '../sound-choices.ts';
import { askingOf, isCollected } from '../step-names.ts';
import { ChordLine } from './chord-line.tsx';
import { CribLeaf } from './crib-leaf.tsx';
import { answers } from './late.tsx';
import { PolicyWarning } from './policy-warning.tsx';
import { SoundControls } from './sound-controls.tsx';

const words = deskWords.round;

/** The round under way: what plays, what is asked, who has answered; after the close how the answers fell. */
export function RoundLeaf({ desk, view }: { readonly desk: Desk; readonly view: DeskView }) {
  const step = desk.step.value;
  const isCurrent = step !== null && step.question === view.current?.question;
  const fallen = isCurrent && view.spread !== null && !step.aloud && ['closed', 'shown'].includes(step.status);
  const sound = view.vamp?.source === 'host' && <SoundControls desk={desk} view={view} />;
  return (
    <div class={fallen ? 'desk-round has-fallen' : 'desk-round'}>
      <div class="desk-question">
        {view.vamp && <ChordLine vamp={view.vamp} />}
        {step && !fallen && <Asked desk={desk} view={view} step={step} isCurrent={isCurrent} />}
        {fallen && (
          <answers.Late>
            {({ FallenAnswers }) => <FallenAnswers desk={desk} view={view} step={step} sound={sound} />}
          </answers.Late>
        )}
        {!step && <p class="lead">{words.none}</p>}
      </div>
      <div class="desk-aside">
        <p class="advice rested" role="status">
          {desk.rested.value && words.rested}
        </p>
        {!fallen && sound}
        <Hands desk={desk} view={view} />
        {view.entered && (
          <button type="button" class="desk-link" onClick={() => desk.show('correct')}>
            {deskWords.correct.open}
          </button>
        )}
        <div class="wide-only">
          <CribLeaf view={view} />
        </div>
      </div>
    </div>
  );
}

type AskedProps = {
  readonly desk: Desk;
  readonly view: DeskView;
  readonly step: WireStep;
  readonly isCurrent: boolean;
};

/** A question before its answers can be seen: as it is spoken, the right answer, its usual time, the hands. */
function Asked({ desk, view, step, isCurrent }: AskedProps) {
  const right = view.truths[step.question];
  const [low, high] = usualSeconds(step.kind as Kind);
  const guitar = view.vamp?.source === 'guitar';
  const settler = step.kind === 'settler' ? view.vamp?.settlers[step.target] : undefined;
  const open = isCurrent && step.status === 'open';
  const seconds = open ? desk.seconds.value : null;
  return (
    <section>
      <h1>{questionPrompt(askingOf(view, step))}</h1>
      {right !== undefined && <p class="lead">{rightText(view, step, right)}</p>}
      {step.status !== 'shown' && (
        <p class="hint">
          {fill(words.usual, { low, high })}
          {seconds !== null && ` · ${seconds > high ? words.over : fill(words.gone, { seconds })}`}
          {step.status === 'ready' && !guitar && ` · ${fill(words.meanwhile, { sound: meanwhileName(view, step) })}`}
        </p>
      )}
      {guitar && settler && (
        <p class="advice">
          {fill(isSung(settler) ? words.singSettler : words.playSettler, { name: settlerName(settler) })}
        </p>
      )}
      {isCollected(step) && <p class="advice">{words.collected}</p>}
      <PolicyWarning view={view} step={step} />
      {view.awaited === step.question && <p class="advice">{words.awaited}</p>}
      {step.aloud && step.status !== 'shown' && <p class="advice">{words.aloud}</p>}
      {open && !step.aloud && (
        <>
          <h2>{words.handsIn}</h2>
          <div class="hands-row">
            <Mark width={200} height={48} label={fill(words.of, { n: view.handsIn, of: view.handsOf })}>
              <Tally x={4} y={4} hands={view.handsIn} of={Math.max(view.handsOf, view.handsIn)} gap={7} height={40} />
            </Mark>
            <strong class="hands-count">{fill(words.of, { n: view.handsIn, of: view.handsOf })}</strong>
          </div>
        </>
      )}
      {open && view.classTaps && <Tapping key={step.ask} taps={view.classTaps} />}
      {step.sheet > 1 && <p class="hint">{words.secondSheet}</p>}
    </section>
  );
}

function Tapping({ taps }: { readonly taps: WireTaps }) {
  return <answers.Late>{({ ClassTaps }) => <ClassTaps taps={taps} />}</answers.Late>;
}

function Hands({ desk, view }: { readonly desk: Desk; readonly view: DeskView }) {
  const open = view.current?.status === 'open' && !view.current.aloud;
  // Who is asked something else, or listens, owes this question nothing.
  const silent = open
    ? view.students.filter(({ here, wrote, instead }) => here && !wrote && instead === undefined).length
    : 0;
  const deaf = view.students.filter(({ cannotHear }) => cannotHear).length;
  const parts = [
    silent > 0 ? counted(silent, words.silent) : '',
    deaf > 0 ? counted(deaf, words.cannotHear) : '',
  ].filter(Boolean);
  return (
    <p class="desk-quiet">
      <span>{parts.join(', ')}</span>
      <button type="button" class="desk-link" onClick={() => desk.turnTo('roll')}>
        {words.openRoll}
      </button>
    </p>
  );
}
