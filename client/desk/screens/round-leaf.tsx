import { deskWords, errorKinds } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { numberWord, questionPrompt } from '../../../server/protocol/words/questions.ts';
import type { DeskView, WireSpread, WireStep } from '../../../server/protocol/views.ts';
import { answerText } from '../../shared/answer-text.ts';
import { Mark } from '../../shared/marks.tsx';
import { Tally } from '../../shared/music-marks.tsx';
import { Spread } from '../../shared/spreads/spread.tsx';
import type { Desk } from '../desk-state.ts';
import { counted } from '../sentences.ts';
import { ChordLine } from './chord-line.tsx';
import { CribLeaf } from './crib-leaf.tsx';
import { rightHands, shareRight } from './script.tsx';
import { SoundControls } from './sound-controls.tsx';

const words = deskWords.round;

/** Of a spread on a phone held upright, in pixels. */
const SIZE = { width: 350, height: 270, scale: 0.45 };
const SIZES: Readonly<Record<string, typeof SIZE>> = {
  keys: { width: 350, height: 340, scale: 0.45 },
  root: { width: 350, height: 300, scale: 0.42 },
};

/** The round under way: what plays, what is asked, who has answered; after the close how the answers fell. */
export function RoundLeaf({ desk, view }: { readonly desk: Desk; readonly view: DeskView }) {
  const step = desk.step.value;
  const isCurrent = step !== null && step.question === view.current?.question;
  const fallen = isCurrent && view.spread !== null && (step.status === 'closed' || step.status === 'shown');
  return (
    <div class="desk-round">
      <div class="desk-question">
        {view.vamp && <ChordLine vamp={view.vamp} />}
        {step && !fallen && <Asked view={view} step={step} isCurrent={isCurrent} />}
        {fallen && <Fallen view={view} step={step} />}
        {!step && <p class="lead">{deskWords.room.seats.none}</p>}
      </div>
      <div class="desk-aside">
        {view.vamp?.source === 'host' && <SoundControls desk={desk} view={view} />}
        <Hands desk={desk} view={view} />
        <div class="wide-only">
          <CribLeaf view={view} />
        </div>
      </div>
    </div>
  );
}

function Asked(props: { readonly view: DeskView; readonly step: WireStep; readonly isCurrent: boolean }) {
  const { view, step, isCurrent } = props;
  const asking = (isCurrent && view.current?.asking) || {
    kind: step.kind,
    target: step.target,
    options: step.kind === 'quality' ? view.settings.qualities : [view.settings.policy],
  };
  const right = view.truths[step.question];
  return (
    <section>
      <h1>{questionPrompt(asking)}</h1>
      {right !== undefined && <p class="lead">{fill(words.right, { answer: answerText(step.kind, right) })}</p>}
      {isCurrent && step.status === 'open' && (
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
      {step.sheet > 1 && <p class="hint">{words.secondSheet}</p>}
    </section>
  );
}

function Fallen({ view, step }: { readonly view: DeskView; readonly step: WireStep }) {
  const { closed } = deskWords;
  const { spread, truth, topWrong } = view;
  if (!spread) return null;
  const hands = spread.counts.reduce((sum, { count }) => sum + count, spread.notSure);
  const right = rightHands(view) ?? 0;
  const share = shareRight(view);
  const heard =
    hands === 0
      ? closed.none
      : right === 0
        ? fill(closed.nobody, { of: hands })
        : fill(closed.heard, { n: capital(numberWord(right)), of: hands });
  return (
    <section class="fallen">
      <h1>{heard}</h1>
      <p class="lead">
        {truth && fill(words.right, { answer: answerText(step.kind, truth.answer) })}
        {spread.notSure > 0 && ` · ${counted(spread.notSure, closed.notSure)}`}
        {spread.silent > 0 && ` · ${counted(spread.silent, words.silent)}`}
      </p>
      <div class="desk-spread">
        <Spread spread={spread} truth={truth} size={SIZES[step.kind] ?? SIZE} label={spreadLabel(step.kind, spread)} />
      </div>
      {share !== null && step.status === 'closed' && <p class="advice">{advice(share, step.kind)}</p>}
      {view.spreadShown && step.status === 'closed' && <p class="hint">{closed.spreadIsUp}</p>}
      {topWrong && (
        <div class="top-wrong">
          <h2>
            {fill(closed.heardWrong, {
              n: capital(numberWord(topWrong.count)),
              answer: answerText(step.kind, topWrong.answer),
            })}
          </h2>
          <Misheard error={topWrong.error} />
          {topWrong.suspectSpeaker && <p class="advice">{closed.speaker}</p>}
          {hands >= 5 && <p class="hint">{topWrong.manyTheSame ? closed.manyTheSame : closed.scattered}</p>}
        </div>
      )}
    </section>
  );
}

function Misheard({ error }: { readonly error: string | null }) {
  const kind = error === null ? undefined : errorKinds[error];
  if (!kind) return null;
  const { say, playNext } = deskWords.closed;
  return (
    <>
      <p class="finding">{kind.finding}</p>
      <p class="label">{say}</p>
      <p class="say">“{kind.say}”</p>
      <p class="label">{playNext}</p>
      <p>{kind.play}</p>
    </>
  );
}

/** What the drawing shows, in words: each answer with its hands. */
function spreadLabel(kind: string, spread: WireSpread): string {
  return spread.counts.map(({ answer, count }) => `${answerText(kind, answer)}: ${count}`).join(', ');
}

/** Questions that the bass alone helps to answer. */
const OF_THE_BASS = new Set(['direction', 'root']);

function advice(share: number, kind: string): string {
  const { fewHeard, fewHeardBass, talk, mostHeard } = deskWords.closed;
  return share < 0.3 ? (OF_THE_BASS.has(kind) ? fewHeardBass : fewHeard) : share <= 0.7 ? talk : mostHeard;
}

function Hands({ desk, view }: { readonly desk: Desk; readonly view: DeskView }) {
  const open = view.current?.status === 'open';
  const silent = open ? view.students.filter(({ here, wrote }) => here && !wrote).length : 0;
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

function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}
