import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { deskWords } from '../../../server/protocol/words/en.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import type { Desk } from '../desk-state.ts';

type Props = { readonly desk: Desk; readonly view: DeskView };

/** The leaf once it has been fetched: most lessons never turn to it. */
const leaf = signal<{ readonly GrooveLeaf: (props: Props) => preact.JSX.Element } | null>(null);
const failed = signal(false);

/** The leaf of the grooves, fetched when it is first turned to. */
export function LateGrooves(props: Props) {
  useEffect(() => {
    if (leaf.value) return;
    failed.value = false;
    import('./groove-leaf.tsx').then(
      (module) => {
        leaf.value = module;
      },
      () => {
        failed.value = true;
      },
    );
  }, []);
  if (leaf.value) return <leaf.value.GrooveLeaf {...props} />;
  return <p role="status">{failed.value ? deskWords.groovesFailed : deskWords.moment}</p>;
}
