import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { deskWords } from '../../../server/protocol/words/en.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import type { Desk } from '../desk-state.ts';
import { scriptOf, type Action } from '../script-actions.ts';
import { StepRow } from './step-row.tsx';

const words = deskWords.actions;

/** The session script at the thumb: the row of questions, and what can be done now, the likeliest in ink. */
export function Script({ desk, view }: { readonly desk: Desk; readonly view: DeskView }) {
  const asked = useSignal<string | null>(null);
  const row = useRef<HTMLDivElement>(null);
  const pressed = useRef(false);
  const step = desk.step.value;
  const standing = `${step?.question} ${step?.status} ${step?.sheet} ${view.awaited} ${view.spreadShown}`;
  useEffect(() => {
    asked.value = null;
    // The press is gone from the row with what it did: the keyboard goes on at the likeliest one.
    if (pressed.current && document.activeElement === document.body)
      row.current?.querySelector<HTMLElement>('.main')?.focus({ preventScroll: true });
    pressed.current = false;
  }, [standing]);
  useEffect(() => {
    if (asked.value !== null) row.current?.querySelector<HTMLElement>('.choice')?.focus({ preventScroll: true });
  }, [asked.value]);
  if (!view.vamp || view.status !== 'round' || desk.form.value !== null) return null;
  const { main, likely, others, note } = scriptOf(desk, view, step);
  const asking = [main, ...others].find(({ key }) => key === asked.value)?.asks;
  const press = (action: Action, event: MouseEvent): void => {
    // The second press of a double one was meant for what stood here before.
    if (event.detail > 1 || desk.busy.value || action.off) return;
    pressed.current = true;
    if (action.asks) asked.value = asked.value === action.key ? null : action.key;
    else {
      asked.value = null;
      action.press();
    }
  };
  const button = (action: Action, look: string) => (
    <button
      key={look.startsWith('main') ? 'main' : action.key}
      type="button"
      class={look}
      aria-disabled={action.off}
      aria-expanded={action.asks ? asked.value === action.key : undefined}
      onClick={(event) => press(action, event)}
    >
      {action.label}
      {action.detail && <span class="action-detail"> {action.detail}</span>}
    </button>
  );
  return (
    <div class="desk-script" ref={row}>
      {asking && (
        <div class="desk-asking" role="group" aria-label={words.asking}>
          <p>{asking.note}</p>
          {asking.choices.map((choice) => button(choice, 'choice'))}
        </div>
      )}
      <StepRow desk={desk} view={view} step={step} />
      <div class="desk-actions" role="group" aria-label={words.label} aria-busy={desk.busy.value}>
        <div class="desk-others">
          {others.map((action) => button(action, 'other'))}
          {note && <p class="desk-note">{note}</p>}
        </div>
        {button(main, likely ? 'main primary' : 'main')}
      </div>
    </div>
  );
}
