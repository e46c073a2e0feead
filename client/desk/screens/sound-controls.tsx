import { deskWords } from '../../../server/protocol/words/en.ts';
import type { SoundChange } from '../../../server/protocol/messages.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { Mark, PencilRing } from '../../shared/marks.tsx';
import { printChord } from '../../../shared-theory/printer.ts';
import type { Desk } from '../desk-state.ts';

const words = deskWords.round;

/** One press of slower or faster. */
const STEP = 0.08;

type Control = { readonly label: string; readonly change: SoundChange; readonly on: boolean };

/** What the sound does from the next bar line on. */
export function SoundControls({ desk, view }: { readonly desk: Desk; readonly view: DeskView }) {
  const { vamp, sound } = view;
  if (!vamp) return null;
  const playing = sound.playing && sound.round === vamp.round;
  const tempo = sound.tempo ?? vamp.tempo ?? 0;
  const controls = [...holds(view), ...rest(view, tempo)];
  return (
    <section class="sound-controls" aria-label={words.nextBar}>
      <p class="label">
        {view.soundHeld ? words.nextBar : words.noSound}
        {playing && <span class="tempo">{fill(words.tempo, { tempo })}</span>}
      </p>
      <div class="control-grid">
        {controls.map(({ label, change, on }) => (
          <button
            key={label}
            type="button"
            aria-pressed={change.kind === 'tempo' ? undefined : on}
            disabled={!playing || desk.busy.value}
            onClick={() => void desk.change(change)}
          >
            {label}
            {on && playing && (
              <Mark width={104} height={48} class="ring">
                <PencilRing x={52} y={24} rx={44} ry={18} />
              </Mark>
            )}
          </button>
        ))}
      </div>
    </section>
  );
}

function holds({ vamp, sound }: DeskView): readonly Control[] {
  const slots = vamp?.slots ?? [];
  return slots
    .map(({ chord }, slot) => ({ chord, slot }))
    .filter(({ chord }, slot) => slots.findIndex((each) => each.chord === chord) === slot)
    .map(({ chord, slot }) => ({
      label: fill(words.hold, { chord: printChord(chord).text }),
      change: { kind: 'hold', slot },
      on: sound.change.kind === 'hold' && sound.change.slot === slot,
    }));
}

function rest({ sound }: DeskView, tempo: number): readonly Control[] {
  return [
    { label: words.bassAlone, change: { kind: 'bass-alone' }, on: sound.change.kind === 'bass-alone' },
    { label: words.slower, change: { kind: 'tempo', tempo: Math.round(tempo * (1 - STEP)) }, on: false },
    { label: words.faster, change: { kind: 'tempo', tempo: Math.round(tempo * (1 + STEP)) }, on: false },
    { label: words.full, change: { kind: 'full' }, on: sound.change.kind === 'full' },
  ];
}
