import { useSignal } from '@preact/signals';
import { deskWords } from '../../../server/protocol/words/en.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import type { Desk } from '../desk-state.ts';
import { GuitarFields, type Played } from './guitar-fields.tsx';

const words = deskWords.correct;

/** What the teacher really played in the running round; nothing where Hearsay plays. */
export function CorrectForm({ desk, view }: { readonly desk: Desk; readonly view: DeskView }) {
  const mayFall = useSignal(false);
  const { entered, vamp } = view;
  if (!entered || !vamp) return null;
  const correct = async (played: Played) => {
    const pointsMayFall = entered.shown > 0 && mayFall.value;
    const target = { round: vamp.round, after: entered.corrections };
    const reply = await desk.wish({ type: 'CorrectRound', ...target, ...played, pointsMayFall });
    if (reply?.ok) desk.show(null);
  };
  return (
    <div class="start-form correct-form">
      <h1>{words.heading}</h1>
      <p class="lead">{words.lead}</p>
      <GuitarFields
        // In another naming the chords are printed anew: what stands there is read in the naming of now.
        key={view.settings.naming}
        view={view}
        entered={entered}
        go={words.go}
        busy={desk.busy.value}
        onPlayed={(played) => void correct(played)}
      >
        {entered.shown > 0 && (
          <div class="choice-row">
            <label>
              <input
                type="checkbox"
                name="points-may-fall"
                aria-describedby="may-fall-note"
                checked={mayFall.value}
                onChange={(event) => {
                  mayFall.value = event.currentTarget.checked;
                }}
              />
              {words.mayFall}
            </label>
            <p id="may-fall-note" class="hint">
              {words.mayFallNote}
            </p>
          </div>
        )}
      </GuitarFields>
      <p>
        <button type="button" class="desk-link" onClick={() => desk.show(null)}>
          {deskWords.start.back}
        </button>
      </p>
    </div>
  );
}
