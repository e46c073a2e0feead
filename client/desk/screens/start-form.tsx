import { useSignal } from '@preact/signals';
import { deskWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { Mark, PencilRing } from '../../shared/marks.tsx';
import type { Desk } from '../desk-state.ts';

const words = deskWords.start;

type Props = { readonly desk: Desk; readonly view: DeskView };

/** The next vamp: a level that Hearsay plays, or the chords that the teacher is going to play. */
export function StartForm({ desk, view }: Props) {
  return (
    <div class="start-form">
      <h1>{words.heading}</h1>
      <LevelForm desk={desk} view={view} />
      <GuitarForm desk={desk} view={view} />
      {view.vamp && (
        <p>
          <button type="button" class="desk-link" onClick={() => desk.choose(false)}>
            {words.back}
          </button>
        </p>
      )}
    </div>
  );
}

/** Begins a round and turns to it; gives its id, null where it was refused. */
async function begin(desk: Desk, starting: ReturnType<Desk['wish']>): Promise<string | null> {
  const reply = await starting;
  if (!reply?.ok) return null;
  desk.choose(false);
  desk.turnTo('round');
  return (reply.value as { readonly round?: string } | undefined)?.round ?? null;
}

function LevelForm({ desk, view }: Props) {
  const last = view.vamp?.level ?? view.levels[0]?.level ?? 2;
  const level = useSignal(last);
  const start = (event: Event) => {
    event.preventDefault();
    const begun = begin(desk, desk.wish({ type: 'StartRound', after: view.vamp?.number ?? 0, level: level.value }));
    // It plays at once where a host screen can; otherwise the round waits for its sound.
    if (view.soundHeld) void begun.then((round) => (round === null ? null : desk.wish({ type: 'RequestPlay', round })));
  };
  return (
    <form onSubmit={start}>
      <fieldset>
        <legend>{words.level}</legend>
        <div class="level-row">
          {view.levels.map((each) => (
            <label key={each.level} class="level-cell">
              <input
                type="radio"
                name="level"
                value={each.level}
                checked={level.value === each.level}
                onChange={() => {
                  level.value = each.level;
                }}
              />
              <span class="level-number">
                {each.level}
                {level.value === each.level && <Ringed />}
              </span>
            </label>
          ))}
        </div>
        <p class="level-name">{view.levels.find((each) => each.level === level.value)?.name}</p>
      </fieldset>
      <button type="submit" class="desk-button primary" disabled={desk.busy.value}>
        {fill(words.play, { level: level.value })}
      </button>
    </form>
  );
}

function Ringed() {
  return (
    <Mark width={52} height={48} class="ring">
      <PencilRing x={26} y={24} rx={18} ry={17} />
    </Mark>
  );
}

type Bass = 'usual' | 'up' | 'down' | 'same';
const BASS: readonly Bass[] = ['usual', 'up', 'down', 'same'];

function GuitarForm({ desk, view }: Props) {
  const chords = useSignal('');
  const groove = useSignal('');
  const tempo = useSignal('');
  const bass = useSignal<readonly Bass[]>([]);
  const typed = typedChords(chords.value);
  const moves = typed.slice(1).map((_, index) => bass.value[index] ?? 'usual');
  const chosen = view.grooves.find(({ id }) => id === groove.value);
  const start = (event: Event) => {
    event.preventDefault();
    const beats = Number(tempo.value);
    void begin(
      desk,
      desk.wish({
        type: 'StartGuitarRound',
        after: view.vamp?.number ?? 0,
        chords: chords.value,
        groove: groove.value || null,
        tempo: groove.value && tempo.value ? beats : null,
        directions: moves.some((move) => move !== 'usual') ? moves : null,
      }),
    );
  };
  return (
    <form onSubmit={start}>
      <h2>{words.guitarTitle}</h2>
      <label class="field">
        <span>{words.chords}</span>
        <input
          class="chords-input"
          name="chords"
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          placeholder="Em D"
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
        <label class="field">
          <span>{words.groove}</span>
          <select
            name="groove"
            value={groove.value}
            onChange={(event) => {
              groove.value = event.currentTarget.value;
              const low = view.grooves.find(({ id }) => id === groove.value)?.tempo[0];
              if (low !== undefined && !tempo.value) tempo.value = String(low);
            }}
          >
            <option value="">{words.noGroove}</option>
            {view.grooves.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
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
      <button type="submit" class="desk-button" disabled={desk.busy.value || typed.length === 0}>
        {words.guitar}
      </button>
    </form>
  );
}

/** Chord words of a typed vamp, shown as typed to name the bass moves by: only the server reads and checks them. */
function typedChords(text: string): readonly string[] {
  return text.split(/[\s|]+/).filter((word) => word !== '' && word !== '.' && word !== '%');
}
