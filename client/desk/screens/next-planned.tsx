import { deskWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import type { Desk } from '../desk-state.ts';
import { startRound } from '../start-round.ts';
import { kindName } from '../step-names.ts';

const words = deskWords.start;

/** The round of the lesson that comes next, to be started in one press; nothing where none is left. */
export function NextPlanned({ desk, view }: { readonly desk: Desk; readonly view: DeskView }) {
  const next = desk.plan.next.value;
  if (!next) return null;
  return (
    <section class="planned">
      <h2>{words.planned}</h2>
      <p class="hint">{next.kinds.map(kindName).join(', ')}</p>
      <button
        type="button"
        class="desk-button primary"
        disabled={desk.busy.value}
        onClick={() => void startRound(desk, view, { level: next.level, item: next.item })}
      >
        {fill(words.playPlanned, { level: next.level })}
      </button>
    </section>
  );
}
