import { deskWords, questionWords } from '../../../server/protocol/words/en.ts';
import type { DeskView, WireStep } from '../../../server/protocol/views.ts';
import { printChord } from '../../../shared-theory/printer.ts';
import { nextReady, type Desk } from '../desk-state.ts';

const words = deskWords.actions;

type Action = { readonly key: string; readonly label: string; readonly press: () => void; readonly off?: boolean };

/** Share of hands that were right: below `few` play again, above `most` show it, between them let the neighbours talk. */
const FEW = 0.3;
const MOST = 0.7;

/** The session script at the thumb: the row of questions, and what can be done now, the likeliest in ink. */
export function Script({ desk, view }: { readonly desk: Desk; readonly view: DeskView }) {
  if (!view.vamp || view.status !== 'round' || desk.choosing.value) return null;
  const step = desk.step.value;
  const { actions, primary } = actionsOf(desk, view, step);
  const busy = step?.status === 'open' || step?.status === 'closed';
  return (
    <div class="desk-script">
      <div class="desk-steps" role="group" aria-label={deskWords.round.steps}>
        {view.steps.map((each) => {
          const name = stepName(view, each);
          const skipped = each.status === 'ready' && desk.skipped.value.has(each.question);
          return (
            <button
              key={each.question}
              type="button"
              aria-current={each.question === step?.question ? 'step' : undefined}
              aria-label={`${name}, ${deskWords.round.stepState[skipped ? 'skipped' : each.status]}`}
              class={`desk-step ${each.status}${skipped ? ' skipped' : ''}`}
              disabled={busy && each.question !== step?.question}
              onClick={() => desk.pick(each.question)}
            >
              {name}
            </button>
          );
        })}
      </div>
      <div class="desk-actions" role="group" aria-label={words.label}>
        {actions.map(({ key, label, press, off }) => (
          <button
            key={key}
            type="button"
            class={key === primary ? 'primary' : ''}
            disabled={off === true || desk.busy.value}
            onClick={press}
          >
            {label}
          </button>
        ))}
      </div>
    </div>
  );
}

/** `keys`; where a round asks a kind more than once, with its chord: `quality Am`. */
function stepName({ steps, vamp }: DeskView, step: WireStep): string {
  const names: Readonly<Record<string, string>> = questionWords.steps;
  const name = names[step.kind] ?? step.kind;
  const chord = vamp?.slots[step.target]?.chord;
  const several = steps.filter(({ kind }) => kind === step.kind).length > 1;
  return several && chord !== undefined ? `${name} ${printChord(chord).text}` : name;
}

function actionsOf(
  desk: Desk,
  view: DeskView,
  step: WireStep | null,
): { readonly actions: readonly Action[]; readonly primary: string } {
  const round = view.vamp?.round ?? '';
  const newVamp: Action = { key: 'vamp', label: words.vamp, press: () => desk.choose(true) };
  const sound: Action | null = view.vamp?.source === 'guitar' ? null : soundAction(desk, view, round);
  const withSound = (actions: readonly Action[]) => (sound ? [sound, ...actions] : actions);
  const next = nextReady(view.steps, step?.question ?? null, desk.skipped.value);
  const goOn: Action = next
    ? { key: 'next', label: words.next, press: () => desk.pick(next.question) }
    : { ...newVamp, key: 'next' };
  if (!step) return { actions: withSound([newVamp]), primary: 'vamp' };
  const ask = step.ask ?? '';
  switch (step.status) {
    case 'ready': {
      const open: Action = {
        key: 'open',
        label: words.open,
        press: () => void desk.wish({ type: 'OpenQuestion', round, question: step.question }),
      };
      const skip: Action = { key: 'skip', label: words.skip, press: () => desk.skip(step.question), off: !next };
      const waiting = sound && !view.sound.playing && view.soundHeld;
      return { actions: [...withSound([newVamp, skip]), open], primary: waiting ? 'sound' : 'open' };
    }
    case 'open':
      return {
        actions: withSound([
          { key: 'close', label: words.close, press: () => void desk.wish({ type: 'CloseQuestion', ask }) },
        ]),
        primary: 'close',
      };
    case 'closed': {
      const spread: Action = {
        key: 'spread',
        label: view.spreadShown ? words.spreadOn : words.spread,
        press: () => void desk.wish({ type: 'ShowSpread', ask }),
        off: view.spreadShown,
      };
      const neighbour: Action = {
        key: 'neighbour',
        label: words.neighbour,
        press: () => void desk.wish({ type: 'AnswerAgain', ask }),
      };
      const show: Action = { key: 'show', label: words.show, press: () => void desk.wish({ type: 'ShowAnswer', ask }) };
      const share = shareRight(view);
      // Few heard it: nothing is pressed upon the teacher but to play it again, which the sound controls do.
      const primary = share === null || share > MOST || step.sheet > 1 ? 'show' : share < FEW ? '' : 'neighbour';
      return { actions: withSound([spread, neighbour, show]), primary };
    }
    case 'shown':
      return { actions: withSound(next ? [newVamp, goOn] : [goOn]), primary: 'next' };
  }
}

function soundAction(desk: Desk, view: DeskView, round: string): Action {
  const playing = view.sound.playing && view.sound.round === round;
  return playing
    ? { key: 'sound', label: words.stop, press: () => void desk.wish({ type: 'RequestStop' }) }
    : {
        key: 'sound',
        label: words.play,
        press: () => void desk.wish({ type: 'RequestPlay', round }),
        off: !view.soundHeld,
      };
}

/** Share of the hands that were in and right; null where none was in. */
export function shareRight(view: DeskView): number | null {
  const right = rightHands(view);
  const hands = view.spread ? view.spread.counts.reduce((sum, { count }) => sum + count, view.spread.notSure) : 0;
  return hands === 0 || right === null ? null : right / hands;
}

/** Hands whose answer was exact; null before the close. */
export function rightHands(view: DeskView): number | null {
  const { spread, truth } = view;
  if (!spread || !truth) return null;
  const right = new Set([truth.key, ...(truth.also ?? [])]);
  return spread.counts.reduce((sum, { key, count }) => (right.has(key) ? sum + count : sum), 0);
}
