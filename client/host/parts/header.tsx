import type { ComponentChildren } from 'preact';
import type { HostView } from '../../../server/protocol/views.ts';
import { stepWords } from '../../../server/protocol/words/en.ts';
import { Wordmark } from '../../shared/marks.tsx';
import { positionWords } from '../words.ts';

/** The line at the top of every screen: where we are on the left, the name of the house on the right. */
export function Header({ children }: { readonly children?: ComponentChildren }) {
  return (
    <header class="header">
      <div class="header-left">{children}</div>
      <Wordmark />
    </header>
  );
}

/** More steps than this stand beside the name of the house only in smaller letters. */
const MOST_LARGE = 10;

/**
 * The kinds of question of the round in order, the one asked now underlined; its place said in words. A kind that is asked of
 * several chords stands once: how often it comes would tell how many chords there are.
 */
export function StepRow({ steps: all, current }: Pick<HostView, 'steps' | 'current'>) {
  const names: Readonly<Record<string, string>> = stepWords;
  const steps = all.filter(({ kind }, index) => all.findIndex((step) => step.kind === kind) === index);
  const at = steps.findIndex((step) => step.kind === current?.kind);
  return (
    <div class={steps.length > MOST_LARGE ? 'steps many' : 'steps'}>
      {at >= 0 ? <strong class="steps-place">{positionWords(at + 1, steps.length)}</strong> : null}
      <ol class="steps-row">
        {steps.map((step, index) => (
          <li
            key={step.question}
            class={index === at ? 'step now' : step.status === 'ready' ? 'step ready' : 'step done'}
            aria-current={index === at ? 'step' : undefined}
          >
            {names[step.kind] ?? step.kind}
          </li>
        ))}
      </ol>
    </div>
  );
}
