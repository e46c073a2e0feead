import { useSignal } from '@preact/signals';
import { deskWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import type { Desk } from '../desk-state.ts';
import { climbRange } from '../sound-choices.ts';

const words = deskWords.sound;

type Props = { readonly desk: Desk; readonly view: DeskView; readonly playing: boolean };

/** A little faster each time round, up to a mark; while it climbs, one press stays at the tempo of now. */
export function Climb({ desk, view, playing }: Props) {
  // What was typed; until then the mark goes with the tempo.
  const typed = useSignal<string | null>(null);
  const { climb, tempo } = view.sound;
  const { low, high, usual } = climbRange(view);
  const atTop = playing && (tempo ?? high) >= high;
  const climbing = playing && climb !== null && tempo !== null;
  const go = (event: Event) => {
    event.preventDefault();
    const to = typed.value === null ? usual : Number(typed.value);
    void desk.change({ kind: 'climb', to }).then((reply) => {
      if (reply?.ok) typed.value = null;
    });
  };
  return (
    <form class="climb" onSubmit={go}>
      <div class="field-row">
        <label class="field narrow">
          <span>{words.climbTo}</span>
          <input
            name="climb"
            type="number"
            inputMode="numeric"
            min={low}
            max={high}
            required
            aria-describedby="climb-note"
            value={typed.value ?? String(climb ?? usual)}
            disabled={!playing}
            onInput={(event) => {
              typed.value = event.currentTarget.value;
            }}
          />
        </label>
        <button type="submit" class="toggle" disabled={!playing || atTop} aria-pressed={climbing}>
          {words.climbGo}
        </button>
        {climbing && (
          <button type="button" class="desk-link" onClick={() => void desk.change({ kind: 'tempo', tempo })}>
            {fill(words.stay, { tempo: Math.round(tempo) })}
          </button>
        )}
      </div>
      <p id="climb-note" class="hint">
        {fill(atTop ? words.climbAtTop : words.climbNote, { low, high })}
      </p>
    </form>
  );
}
