import type { ComponentChildren } from 'preact';
import { deskWords, errorKinds } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { numberWord } from '../../../server/protocol/words/counting.ts';
import { questionPrompt } from '../../../server/protocol/words/questions.ts';
import type { DeskView, WireSpread, WireStep } from '../../../server/protocol/views.ts';
import { answerText } from '../../shared/answer-text.ts';
import { tapsAloud } from '../../shared/spreads/taps-sentences.ts';
import { Spread } from '../../shared/spreads/spread.tsx';
import { GRID_KINDS, TAPPED_KINDS, type Kind } from '../../../shared-theory/questions/question.ts';
import { nextReady, type Desk } from '../desk-state.ts';
import { FEW, handsIn, MOST, rightHands, shareRight } from '../fallen.ts';
import { quietList } from '../reports.ts';
import { rightText } from '../right-text.ts';
import { counted } from '../sentences.ts';
import { askingOf, isCollected } from '../step-names.ts';
import { AnswerList } from './answer-list.tsx';
import { Echo } from './echo.tsx';
import { PlayBoth } from './play-both.tsx';
import { TapsTable } from './taps-table.tsx';

const words = deskWords.closed;

/** Of a spread on a phone held upright, in pixels. */
const SIZE = { width: 350, height: 270, scale: 0.45 };
const SIZES: Readonly<Record<string, typeof SIZE>> = {
  keys: { width: 350, height: 340, scale: 0.45 },
  settler: { width: 350, height: 340, scale: 0.45 },
  root: { width: 350, height: 300, scale: 0.42 },
};

type Props = { readonly desk: Desk; readonly view: DeskView; readonly step: WireStep };

/** How the answers to the closed question fell, what was misheard most, and what may be done about it. */
export function FallenAnswers({ desk, view, step, sound }: Props & { readonly sound: ComponentChildren }) {
  const { spread, truth } = view;
  if (!spread) return null;
  const hands = handsIn(spread);
  const closed = step.status === 'closed';
  const share = shareRight(view);
  // Where few heard it, what plays it again comes first.
  const again = closed && share !== null && share < FEW;
  return (
    <section class="fallen">
      <h1>
        {isCollected(step) && hands > 0
          ? fill(words.answered, { n: capital(numberWord(hands)), of: spread.of })
          : heard(view, step, hands)}
      </h1>
      <p class="lead">
        {[
          truth ? rightText(view, step, truth.answer) : '',
          spread.notSure > 0 ? counted(spread.notSure, words.notSure) : '',
          spread.silent > 0 ? counted(spread.silent, deskWords.round.silent) : '',
        ]
          .filter(Boolean)
          .join(' · ')}
      </p>
      {!closed && <NextUp desk={desk} view={view} step={step} />}
      <div class="desk-spread">
        <Spread spread={spread} truth={truth} size={SIZES[step.kind] ?? SIZE} label={spreadLabel(spread)} />
      </div>
      {step.struck && <p class="advice">{words.struck}</p>}
      {share !== null && closed && !step.struck && <p class="advice">{advice(share, step.kind)}</p>}
      {view.spreadShown && closed && <p class="hint">{words.spreadIsUp}</p>}
      {again && sound}
      <TopWrong desk={desk} view={view} step={step} hands={hands} />
      {step.kind === 'accents' && <Echo key={step.ask} desk={desk} view={view} step={step} />}
      {!again && sound}
      {isTapped(step) ? <TapsTable view={view} /> : <AnswerList desk={desk} view={view} step={step} />}
      {closed && <Quiet view={view} />}
      <Strike desk={desk} view={view} step={step} />
    </section>
  );
}

/** Whether it was answered by tapping: nobody's tempo is let stand, and none is played beside the right one. */
const isTapped = ({ kind }: WireStep): boolean => TAPPED_KINDS.has(kind as Kind);

function heard(view: DeskView, step: WireStep, hands: number): string {
  const right = rightHands(view) ?? 0;
  if (hands === 0) return words.none;
  const [some, nobody] = isTapped(step) ? [words.had, words.nobodyHad] : [words.heard, words.nobody];
  return right === 0 ? fill(nobody, { of: hands }) : fill(some, { n: capital(numberWord(right)), of: hands });
}

/** The question that the next press opens, to be spoken before it. */
function NextUp({ desk, view, step }: Props) {
  const next = nextReady(view.steps, step.question, desk.skipped.value);
  if (!next) return null;
  return (
    <p class="next-up">
      <span class="label">{deskWords.round.next}</span> {questionPrompt(askingOf(view, next))}
    </p>
  );
}

function TopWrong({ desk, view, step, hands }: Props & { readonly hands: number }) {
  const { topWrong, truth } = view;
  if (!topWrong) return null;
  const kind = topWrong.error === null ? undefined : errorKinds[topWrong.error];
  const said = (answer: unknown): string => answerText(step.kind, answer, view.spread?.asking.grid);
  const wrong = said(topWrong.answer);
  return (
    <div class="top-wrong">
      <h2>{fill(wrongSentence(step), { n: capital(numberWord(topWrong.count)), answer: wrong })}</h2>
      {kind && (
        <>
          <p class="finding">{kind.finding}</p>
          <p class="label">{words.say}</p>
          <p class="say">“{kind.say}”</p>
          <p class="label">{words.playNext}</p>
          <p>{kind.play}</p>
        </>
      )}
      {step.ask !== null && !isTapped(step) && step.kind !== 'accents' && (
        <PlayBoth
          desk={desk}
          view={view}
          ask={step.ask}
          playable={topWrong.playable}
          readings={{ wrong, right: said(truth?.answer) }}
        />
      )}
      {topWrong.suspectSpeaker && <p class="advice">{words.speaker}</p>}
      {hands >= 5 && <p class="hint">{topWrong.manyTheSame ? words.manyTheSame : words.scattered}</p>}
    </div>
  );
}

/** What is said of a wrong answer: what was tapped, marked or heard, or how where no tempo was asked for. */
function wrongSentence(step: WireStep): string {
  if (step.kind === 'steadiness') return words.tappedUnevenly;
  if (step.kind === 'drop-out') return words.tappedAway;
  if (isTapped(step)) return words.tappedWrong;
  return GRID_KINDS.has(step.kind as Kind) ? words.markedWrong : words.heardWrong;
}

function Quiet({ view }: Pick<Props, 'view'>) {
  const quiet = quietList(view);
  if (quiet.length === 0) return null;
  return (
    <>
      <h2>{words.quiet}</h2>
      <ul class="quiet-list">
        {quiet.map(({ student, name, notes }) => (
          <li key={student}>
            <bdi>{name}</bdi> <span>{notes.join(', ')}</span>
          </li>
        ))}
      </ul>
    </>
  );
}

function Strike({ desk, view, step }: Props) {
  const round = view.vamp?.round ?? '';
  const { question, struck } = step;
  return (
    <p class="strike">
      <button
        type="button"
        class="desk-link"
        onClick={() => void desk.wish({ type: 'StrikeQuestion', round, question, struck: !struck })}
      >
        {struck ? words.unstrike : words.strike}
      </button>
      {!struck && <span class="hint">{words.strikeNote}</span>}
    </p>
  );
}

/** What the drawing shows, in words: each answer with its hands, or what the room tapped. */
function spreadLabel({ kind, asking, counts, taps }: WireSpread): string {
  if (taps) return tapsAloud(kind, taps).join(', ');
  return counts.map(({ answer, count }) => `${answerText(kind, answer, asking.grid)}: ${count}`).join(', ');
}

/** Questions that the bass alone helps to answer. */
const OF_THE_BASS = new Set(['direction', 'root', 'distance']);

function advice(share: number, kind: string): string {
  if (share < FEW) return OF_THE_BASS.has(kind) ? words.fewHeardBass : words.fewHeard;
  return share <= MOST ? words.talk : words.mostHeard;
}

function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}
