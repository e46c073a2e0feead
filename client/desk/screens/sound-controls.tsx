import { deskWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { PencilRing } from '../../shared/marks.tsx';
import type { Desk } from '../desk-state.ts';
import { useAwaited } from '../awaited-sound.ts';
import { moreChoices, soundName, usualChoices, type Choice } from '../sound-choices.ts';
import { Climb } from './climb.tsx';

const words = deskWords.sound;

/** Half the width of a ring round a short label and round the longest, and what a letter adds; in pixels. */
const RING = 36;
const WIDEST_RING = 54;
const LETTER = 4.6;

type Props = { readonly desk: Desk; readonly view: DeskView };

/** What sounds, and what it may turn to on the next bar line: the usual four at hand, the rest behind one press. */
export function SoundControls({ desk, view }: Props) {
  const more = desk.moreSounds;
  const awaited = useAwaited(view);
  const { vamp, sound } = view;
  if (!vamp) return null;
  const playing = sound.playing && sound.round === vamp.round;
  const next = playing ? awaited.label : null;
  const now = playing
    ? fill(next === null ? words.now : words.next, { sound: soundName(view, sound.change), next: next ?? '' })
    : words.nothing;
  const tempo = sound.tempo ?? vamp.tempo ?? '';
  const press = async (choice: Choice) => {
    const given = awaited.begin(choice);
    if (!(await ask(desk, choice))) given.end();
  };
  const cell = (choice: Choice) => (
    <Control key={choice.name} choice={choice} playing={playing} press={() => void press(choice)} />
  );
  return (
    <section class="sound-controls" aria-label={words.label}>
      <p class="label">
        <span role="status">{view.soundHeld ? now : words.noSound}</span>
        {playing && (
          <span class="tempo">
            {sound.climb === null ? fill(words.tempo, { tempo }) : fill(words.climbing, { tempo, to: sound.climb })}
          </span>
        )}
      </p>
      <div class="control-row">{usualChoices(view, desk.step.value).map(cell)}</div>
      <button
        type="button"
        class="desk-link"
        aria-expanded={more.value}
        onClick={() => {
          more.value = !more.value;
        }}
      >
        {more.value ? words.fewer : words.more}
      </button>
      {more.value && (
        <div class="control-groups">
          {moreChoices(view).map(({ title, choices }) => (
            <div key={title} role="group" aria-label={title}>
              <p class="label" aria-hidden="true">
                {title}
              </p>
              <div class={choices.every(({ chord }) => chord) ? 'control-cells chords' : 'control-cells'}>
                {choices.map(cell)}
              </div>
              {title === words.tempoTitle && <Climb desk={desk} view={view} playing={playing} />}
            </div>
          ))}
        </div>
      )}
    </section>
  );
}

/** Asks for one change after the other, as long as none is refused; false where one was. */
async function ask(desk: Desk, { changes }: Choice): Promise<boolean> {
  for (const change of changes) {
    // One after the other: the second builds on the first.
    const reply = await desk.change(change);
    if (!reply?.ok) return false;
  }
  return true;
}

function Control(props: { readonly choice: Choice; readonly playing: boolean; readonly press: () => void }) {
  const { choice, playing, press } = props;
  const { label, name, on, chord } = choice;
  // Round the label, however long it is.
  const radius = chord ? RING : Math.max(RING, Math.min(WIDEST_RING, label.length * LETTER));
  const standing = on === true && playing;
  return (
    <button
      type="button"
      class={chord ? 'chord' : undefined}
      aria-label={name === label ? undefined : name}
      aria-pressed={on === null ? undefined : standing}
      disabled={!playing}
      onClick={press}
    >
      {label}
      {standing && (
        // Stretched to the cell where that is narrower.
        <svg
          class="ring"
          width={2 * radius + 12}
          height={48}
          viewBox={`0 0 ${2 * radius + 12} 48`}
          preserveAspectRatio="none"
          focusable="false"
          aria-hidden="true"
        >
          <PencilRing x={radius + 6} y={24} rx={radius} ry={18} />
        </svg>
      )}
    </button>
  );
}
