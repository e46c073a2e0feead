import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { deskWords } from '../../../server/protocol/words/en.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { GrooveChoice } from './groove-choice.tsx';

const words = deskWords.start;

type Bass = 'usual' | 'up' | 'down' | 'same';
const BASS: readonly Bass[] = ['usual', 'up', 'down', 'same'];

/** What the teacher says was played. */
export type Played = {
  readonly chords: string;
  readonly groove: string | null;
  readonly tempo: number | null;
  /** One per slot after the first; null where all went as in the usual open shapes. */
  readonly directions: readonly Bass[] | null;
};

type Props = {
  readonly view: Pick<DeskView, 'grooves' | 'settings'>;
  /** What stands in the fields at first. */
  readonly entered: DeskView['entered'];
  readonly go: string;
  readonly busy: boolean;
  readonly onPlayed: (played: Played) => void;
  readonly children?: ComponentChildren;
};

/** Chords, groove, tempo and bass of the teacher's own guitar; `children` stand before the press. */
export function GuitarFields({ view, entered, go, busy, onPlayed, children }: Props) {
  const chords = useSignal(entered?.chords ?? '');
  const groove = useSignal(entered?.groove ?? '');
  const tempo = useSignal(entered?.tempo ? String(entered.tempo) : '');
  const bass = useSignal<readonly Bass[]>((entered?.directions ?? []).map(bassOf));
  const typed = typedChords(chords.value);
  const moves = typed.slice(1).map((_, index) => bass.value[index] ?? 'usual');
  const chosen = view.grooves.find(({ id }) => id === groove.value);
  const submit = (event: Event) => {
    event.preventDefault();
    onPlayed({
      chords: chords.value,
      groove: groove.value || null,
      tempo: groove.value && tempo.value ? Number(tempo.value) : null,
      directions: moves.some((move) => move !== 'usual') ? moves : null,
    });
  };
  return (
    <form onSubmit={submit}>
      <label class="field">
        <span>{words.chords}</span>
        <input
          class="chords-input"
          name="chords"
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          aria-describedby="chords-hint"
          value={chords.value}
          onInput={(event) => {
            chords.value = event.currentTarget.value;
            // Moves were told of other chords.
            bass.value = [];
          }}
        />
      </label>
      <p id="chords-hint" class="hint">
        {words.chordsHint}
      </p>
      <div class="field-row">
        <GrooveChoice
          name="groove"
          label={words.groove}
          view={view}
          chosen={groove.value}
          none={words.noGroove}
          onChoose={(id) => {
            groove.value = id;
          }}
        />
        {chosen && (
          <label class="field narrow">
            <span>{words.tempo}</span>
            <input
              name="tempo"
              type="number"
              inputMode="numeric"
              min={chosen.tempo[0]}
              max={chosen.tempo[1]}
              value={tempo.value}
              onInput={(event) => {
                tempo.value = event.currentTarget.value;
              }}
            />
          </label>
        )}
      </div>
      {chosen && <p class="hint">{words.tempoNote}</p>}
      {typed.length > 1 && (
        <fieldset>
          <legend>{words.bass}</legend>
          <p class="hint">{words.bassNote}</p>
          <ul class="bass-row">
            {moves.map((move, index) => (
              <li key={index}>
                <button
                  type="button"
                  class="bass-move"
                  onClick={() => {
                    const after = BASS[(BASS.indexOf(move) + 1) % BASS.length] ?? 'usual';
                    bass.value = moves.map((each, at) => (at === index ? after : each));
                  }}
                >
                  <strong>{typed[index + 1]}</strong> {words[move]}
                </button>
              </li>
            ))}
          </ul>
        </fieldset>
      )}
      {children}
      <button type="submit" class="desk-button" disabled={busy || typed.length === 0}>
        {go}
      </button>
    </form>
  );
}

function bassOf(move: string): Bass {
  return BASS.find((known) => known === move) ?? 'usual';
}

/** Chord words of a typed vamp, shown as typed to name the bass moves by: only the server reads and checks them. */
function typedChords(text: string): readonly string[] {
  return text.split(/[\s|]+/).filter((word) => word !== '' && word !== '.' && word !== '%');
}
