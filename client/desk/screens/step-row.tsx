import { useLayoutEffect, useRef } from 'preact/hooks';
import { deskWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView, WireStep } from '../../../server/protocol/views.ts';
import type { Desk } from '../desk-state.ts';
import { isHeardFirst } from '../script-actions.ts';
import { startRound } from '../start-round.ts';
import { stepName } from '../step-names.ts';

const words = deskWords.round;

type Props = { readonly desk: Desk; readonly view: DeskView; readonly step: WireStep | null };

/** All questions of the round in a row that scrolls, or in rows where the page is wide, the one under the thumb kept in sight; what plays can be stopped beside it. */
export function StepRow({ desk, view, step }: Props) {
  const row = useRef<HTMLDivElement>(null);
  const open = view.current?.status === 'open' || view.awaited !== null;
  useLayoutEffect(() => {
    const current = row.current?.querySelector<HTMLElement>('[aria-current]');
    if (row.current && current) {
      row.current.scrollLeft = current.offsetLeft - (row.current.clientWidth - current.offsetWidth) / 2;
      row.current.scrollTop = current.offsetTop - (row.current.clientHeight - current.offsetHeight) / 2;
    }
  }, [step?.question, view.steps.length]);
  return (
    <div class="desk-row">
      <PlayStop desk={desk} view={view} step={step} />
      <div class="desk-steps" role="group" aria-label={words.steps} ref={row}>
        {view.steps.map((each) => {
          const state = stateOf(desk, view, each);
          return (
            <button
              key={each.question}
              type="button"
              aria-current={each.question === step?.question ? 'step' : undefined}
              aria-label={`${stepName(view, each)}, ${words.stepState[state]}`}
              class={`desk-step ${state}`}
              disabled={open && each.question !== step?.question}
              onClick={() => desk.pick(each.question)}
            >
              {stepName(view, each)}
            </button>
          );
        })}
        <Onward desk={desk} view={view} open={open} />
      </div>
    </div>
  );
}

function PlayStop({ desk, view, step }: Props) {
  const { vamp, sound } = view;
  if (vamp?.source !== 'host') return null;
  const playing = sound.playing && sound.round === vamp.round;
  // There the press to play stands at the thumb.
  if (!playing && step !== null && isHeardFirst(view, step)) return null;
  return playing ? (
    <button type="button" class="desk-stop" onClick={() => void desk.wish({ type: 'RequestStop' })}>
      {deskWords.actions.stop}
    </button>
  ) : (
    <button
      type="button"
      class="desk-stop"
      disabled={!view.soundHeld}
      onClick={() => void desk.wish({ type: 'RequestPlay', round: vamp.round })}
    >
      {deskWords.actions.play}
    </button>
  );
}

/** At the end of the row: what else can be tapped along with, the same pair again, and on to the next round before all is asked. */
function Onward({ desk, view, open }: Omit<Props, 'step'> & { readonly open: boolean }) {
  const next = desk.plan.next.value;
  const last = desk.contrast.value;
  const pair = last?.round === view.vamp?.round ? view.contrasts.find(({ id }) => id === last?.contrast) : undefined;
  return (
    <>
      {last && pair && (
        <button
          type="button"
          class="desk-step onward"
          disabled={open}
          onClick={() => void startRound(desk, view, { level: last.level, contrast: pair.id })}
        >
          {deskWords.start.contrastAgain}
        </button>
      )}
      {next && (
        <button
          type="button"
          class="desk-step onward"
          disabled={open}
          onClick={() => void startRound(desk, view, { level: next.level, item: next.item })}
        >
          {fill(words.nextRound, { level: next.level })}
        </button>
      )}
      <button type="button" class="desk-step onward" disabled={open} onClick={() => desk.show('start')}>
        {deskWords.actions.vamp}
      </button>
    </>
  );
}

type State = keyof typeof words.stepState;

function stateOf(desk: Desk, view: DeskView, step: WireStep): State {
  if (step.question === view.awaited) return 'awaited';
  if (step.struck) return 'struck';
  if (step.status === 'ready' && desk.skipped.value.has(step.question)) return 'skipped';
  return step.aloud && step.status !== 'shown' ? 'aloud' : step.status;
}
