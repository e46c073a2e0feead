import { useCallback, useMemo, useRef } from 'preact/hooks';
import { isBeside } from '../../../server/protocol/messages.ts';
import type { HostView } from '../../../server/protocol/views.ts';
import { numberWord } from '../../../server/protocol/words/counting.ts';
import { hostWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { questionInstruction, questionPrompt } from '../../../server/protocol/words/questions.ts';
import { isNarrow, MARGIN, setQuestion, type Frame } from '../frame.ts';
import { BothReadings } from '../parts/both-readings.tsx';
import { CountIn } from '../parts/count-in.tsx';
import { EchoGrid } from '../parts/echo-grid.tsx';
import { HandsIn } from '../parts/hands-in.tsx';
import { Header, StepRow } from '../parts/header.tsx';
import { JoinCard } from '../parts/join-card.tsx';
import { SlotLabels } from '../parts/slot-labels.tsx';
import { SoundLine, type SoundProps } from '../parts/sound-panel.tsx';
import { Stave } from '../parts/stave.tsx';
import { moveSweep, stepX, SweepMark, sweepX, useHeard } from '../parts/sweep.tsx';
import { asksForHome, barsUntold, bracketsAllowed, shownFacts } from '../shown-facts.ts';
import { isSung } from '../../shared/settler-name.ts';
import type { Heard } from '../sound-view.ts';
import { echoOf } from '../echo-layout.ts';
import { layStave } from '../stave-layout.ts';

const words = hostWords.round;

export type RoundProps = Omit<SoundProps, 'view'> & {
  readonly view: HostView & { readonly vamp: NonNullable<HostView['vamp']> };
  readonly frame: Frame;
  /** Reduced motion: nothing travels. */
  readonly still: boolean;
};

/** While the room listens and writes: the question, the bars, how many hands are in. */
export function Round({ view, frame, still, sound, actions }: RoundProps) {
  const { vamp, current, steps } = view;
  const ours = vamp.source === 'host';
  const layout = useMemo(() => layStave(vamp, MARGIN, frame.width - 2 * MARGIN), [vamp, frame.width]);
  const mark = useRef<SVGGElement>(null);
  const tempo = view.sound.tempo ?? vamp.tempo;
  const onFrame = useCallback(
    (heard: Heard | null) => moveSweep(mark.current, still ? stepX(layout, heard, tempo) : sweepX(layout, heard)),
    [layout, still, tempo],
  );
  // This page's own sound is drawn as it sounds; the log, which comes later and may be cut off, is for pages without one.
  const elsewhere = view.soundHeld && !view.holdsSound;
  const own = !elsewhere && (sound.state === 'on' || sound.state === 'silent');
  const heard = useHeard(ours && own, sound.position, onFrame);
  const logged = view.sound.playing && view.sound.round === vamp.round;
  const playing = ours && (own ? heard !== null : logged);

  const closed = current !== null && current.status !== 'open';
  const begun = playing || steps.some((step) => step.status !== 'ready');
  const { question, instruction } = spoken(view);
  const echo = playing ? echoOf(view) : null;
  const untold = ours && barsUntold(steps, current);
  const bars = layout.bars.length;
  const counted = current !== null && !current.aloud;
  return (
    <main class="screen round">
      <Header>
        <StepRow steps={steps} current={current} />
      </Header>
      <section class="ask" aria-live="polite">
        <h1
          class="question"
          style={{ fontSize: `${setQuestion(question, frame.width - 2 * MARGIN, 2, [114, 106, 96, 85]).size / 16}rem` }}
        >
          {question}
        </h1>
        {heard?.phase === 'count-in' && !untold ? (
          <CountIn beat={heard.beat} of={heard.of} />
        ) : (
          <p class="instruction">{instruction}</p>
        )}
      </section>
      {echo ? (
        <section class="drawing">
          <EchoGrid
            groove={echo.groove}
            width={frame.width - 2 * MARGIN}
            height={ECHO_HEIGHT}
            still={still}
            position={sound.position}
          />
        </section>
      ) : (
        <section class="stave-box">
          <SlotLabels
            layout={layout}
            facts={untold ? [] : shownFacts(vamp, steps)}
            brackets={!untold && bracketsAllowed(vamp, steps)}
            homeAsked={current !== null && asksForHome(current.asking)}
          />
          <Stave
            layout={layout}
            frame={frame}
            label={
              untold ? words.staveUntold : bars === 1 ? words.staveOne : fill(words.stave, { bars: numberWord(bars) })
            }
            hollow={ours && !begun}
            untold={untold}
            brackets={!untold && bracketsAllowed(vamp, steps)}
            ringing={heard?.phase === 'vamp' && !heard.silent ? heard.bar : null}
          >
            {ours ? <SweepMark still={still} markRef={mark} /> : null}
          </Stave>
        </section>
      )}
      <footer class="foot">
        {counted ? (
          <HandsIn handsIn={view.handsIn} handsOf={view.handsOf} closed={closed} most={tallyWidth(frame)} />
        ) : (
          <span class="label">{ours ? '' : words.guitar}</span>
        )}
        <div class="foot-middle">
          {current && !ours ? <span class="label">{words.guitar}</span> : null}
          {ours ? <BothReadings view={view} sound={sound} /> : null}
          {ours ? <ChangeLine change={view.sound.change} settlers={vamp.settlers} playing={playing} /> : null}
          {ours ? (
            <SoundLine
              view={view}
              sound={sound}
              actions={actions}
              bare={isNarrow(frame) || counted}
              marked={!untold && !(counted && isNarrow(frame))}
            />
          ) : null}
        </div>
        <JoinCard room={view.room} addresses={view.addresses} />
      </footer>
    </main>
  );
}

/** Height of a drawn grid in the place of the bars, in drawing units. */
const ECHO_HEIGHT = 400;

/** What the other things of the foot leave to the tally. */
function tallyWidth(frame: Frame): number {
  return frame.width - 2 * MARGIN - (isNarrow(frame) ? 985 : 1140);
}

/** What stands largest on the wall, and the line under it. */
function spoken({ current, vamp, steps, sound }: Pick<HostView, 'current' | 'vamp' | 'steps' | 'sound'>): {
  readonly question: string;
  readonly instruction: string;
} {
  if (!current) {
    // Before a question from memory nothing sounds: that there is nothing to listen to has to be said.
    if (vamp?.source === 'host' && sound.playing && sound.change.kind === 'silence')
      return { question: words.silent, instruction: words.silentFeel };
    const begun = steps.some((step) => step.status !== 'ready');
    const guitar = vamp?.source === 'guitar';
    return { question: guitar ? words.guitarListen : begun ? words.between : words.listen, instruction: words.feel };
  }
  return {
    question: questionPrompt(current.asking),
    instruction: current.aloud
      ? words.aloud
      : current.sheet > 1
        ? words.again
        : [current.memory ? words.memory : '', questionInstruction(current.asking)].filter(Boolean).join(' '),
  };
}

/** Says what the teacher has changed in the sound, in words: nothing that tells an answer. */
function ChangeLine({
  change,
  settlers,
  playing,
}: {
  readonly change: HostView['sound']['change'];
  readonly settlers: NonNullable<HostView['vamp']>['settlers'];
  readonly playing: boolean;
}) {
  if (!playing || isBeside(change)) return null;
  const settler = change.kind === 'settler' ? settlers[change.index] : undefined;
  const said = words.changes[settler && isSung(settler) ? 'sung' : change.kind];
  return said === '' ? null : <span class="label">{said}</span>;
}
