import type { ComponentChildren } from 'preact';
import { useSignal } from '@preact/signals';

type Props = { readonly more: string; readonly less: string; readonly children: () => ComponentChildren };

/** A press that unfolds what is long, and folds it again; `more` and `less` are what it says. */
export function Unfolding({ more, less, children }: Props) {
  const open = useSignal(false);
  return (
    <>
      <p>
        <button
          type="button"
          class="desk-link"
          aria-expanded={open.value}
          onClick={() => {
            open.value = !open.value;
          }}
        >
          {open.value ? less : more}
        </button>
      </p>
      {open.value && children()}
    </>
  );
}
