import type { HostView, WireTruth } from '../../../server/protocol/views.ts';
import { hostWords, rightWords } from '../../../server/protocol/words/en.ts';
import { questionInstruction, questionPrompt } from '../../../server/protocol/words/questions.ts';
import { answerText } from '../../shared/answer-text.ts';
import { tapsAloud } from '../../shared/spreads/taps-sentences.ts';
import { Spread } from '../../shared/spreads/spread.tsx';
import { echoOf } from '../echo-layout.ts';
import { isNarrow, MARGIN, moreLines, setQuestion, type Frame } from '../frame.ts';
import { BothReadings } from '../parts/both-readings.tsx';
import { EchoGrid } from '../parts/echo-grid.tsx';
import { Header, StepRow } from '../parts/header.tsx';
import { JoinLine } from '../parts/join-card.tsx';
import { SoundLine, type SoundProps } from '../parts/sound-panel.tsx';
import { heardSentence } from '../heard-sentence.ts';
import { legend, revealSentence } from '../sentences.ts';

export type SpreadScreenProps = Omit<SoundProps, 'view'> & {
  readonly view: HostView & { readonly current: NonNullable<HostView['current']> };
  readonly frame: Frame;
  /** Reduced motion: nothing travels. */
  readonly still: boolean;
};

/** Height of header, question and foot, in drawing units: the drawing has the rest. */
const AROUND = 500;
/** The circle is the finest of the drawings, and has all that is left. */
const AROUND_CIRCLE = 430;

/** What is said of kinds that are collected and never marked, once they are shown. */
const OPINIONS: Readonly<Record<string, string>> = { home: rightWords.opinion, together: rightWords.together };

/** How the answers fell, on the drawing they were given on; with the truth, the right one in brass and the sentence. */
export function SpreadScreen({ view, frame, still, sound, actions }: SpreadScreenProps) {
  const { current, spread, truth } = view;
  const echo = echoOf(view);
  // What is right stands over no other grid.
  const said = truth ? revealSentence(view, truth) : questionPrompt(current.asking);
  const title = echo ? hostWords.round.echo : said;
  // Of opinions none is right: once they are shown, that is said.
  const opinion = current.status === 'shown' && OPINIONS[current.kind];
  const fallen = truth ? (heardSentence(spread, truth) ?? '') : questionInstruction(current.asking);
  const below = echo ? hostWords.round.echoBelow : opinion ? opinion : fallen;
  const width = frame.width - 2 * MARGIN;
  const setting = setQuestion(title, width, 1, [106, 96, 85]);
  const circle = current.kind === 'keys' || current.kind === 'settler';
  const height = frame.height - (circle ? AROUND_CIRCLE : AROUND) - moreLines(setting);
  return (
    <main class="screen spread-screen">
      <Header>
        <StepRow steps={view.steps} current={current} />
      </Header>
      <section class="ask" aria-live="polite">
        <h1 class={truth && !echo ? 'question shown' : 'question'} style={{ fontSize: `${setting.size / 16}rem` }}>
          {title}
        </h1>
        <p class="instruction">{below}</p>
      </section>
      <section class="drawing">
        {echo ? (
          <EchoGrid groove={echo.groove} width={width} height={height} still={still} position={sound.position} />
        ) : (
          <Spread
            label={spreadLabel(view, truth)}
            spread={spread ?? emptySpread(current)}
            truth={truth}
            hands={spread !== null}
            size={{ width, height, scale: 1, bleed: MARGIN }}
          />
        )}
      </section>
      <footer class="foot low">
        <JoinLine room={view.room} addresses={view.addresses} />
        <BothReadings view={view} sound={sound} />
        {view.vamp?.source === 'host' ? (
          <SoundLine view={view} sound={sound} actions={actions} bare={isNarrow(frame)} />
        ) : null}
        <span class="label legend">{echo ? '' : spread ? legend(spread, truth) : ''}</span>
      </footer>
    </main>
  );
}

/** The drawing without hands, where the answer is shown and the spread never was. */
export function emptySpread(current: NonNullable<HostView['current']>): NonNullable<HostView['spread']> {
  const { kind, target, asking } = current;
  return { ask: current.ask ?? '', kind, target, asking, counts: [], notSure: 0, silent: 0, of: 0 };
}

/** The spread in words, for those who cannot see it. */
export function spreadLabel(
  { spread, current }: Pick<HostView, 'spread' | 'current'>,
  truth: WireTruth | null,
): string {
  if (!current) return '';
  const said = (answer: unknown): string => answerText(current.kind, answer, current.asking.grid);
  const counts = spread?.taps
    ? tapsAloud(current.kind, spread.taps)
    : (spread?.counts ?? []).map(({ answer, count }) => `${said(answer)}: ${count}`);
  return [questionPrompt(current.asking), ...counts, ...(truth ? [said(truth.answer)] : [])].join(', ');
}
