import { useSignal, type Signal } from '@preact/signals';
import { deskWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import type { Desk } from '../desk-state.ts';
import { begin, startRound } from '../start-round.ts';
import { GuitarFields } from './guitar-fields.tsx';
import { GrooveChoice } from './groove-choice.tsx';
import { LevelChoice } from './level-row.tsx';
import { NextPlanned } from './next-planned.tsx';
import { Tones } from './tones.tsx';

const words = deskWords.start;

type Props = { readonly desk: Desk; readonly view: DeskView };

/** The next vamp: the next round of the lesson, a level that Hearsay plays, or the chords that the teacher is going to play. */
export function StartForm({ desk, view }: Props) {
  const level = useSignal(view.vamp?.level ?? view.levels[0]?.level ?? 2);
  return (
    <div class="start-form">
      <h1>{words.heading}</h1>
      <NextPlanned desk={desk} view={view} />
      <LevelForm desk={desk} view={view} level={level} />
      <section>
        <h2>{words.guitarTitle}</h2>
        <GuitarFields
          view={view}
          entered={null}
          go={words.guitar}
          busy={desk.busy.value}
          onPlayed={(played) =>
            void begin(desk, { type: 'StartGuitarRound', after: view.vamp?.number ?? 0, ...played })
          }
        />
      </section>
      <Contrasts desk={desk} view={view} level={level.value} />
      {!view.vamp && <Tones desk={desk} view={view} />}
      {view.vamp && (
        <p>
          <button type="button" class="desk-link" onClick={() => desk.show(null)}>
            {words.back}
          </button>
        </p>
      )}
    </div>
  );
}

function LevelForm({ desk, view, level }: Props & { readonly level: Signal<number> }) {
  const groove = view.grooves.find(({ id }) => id === desk.groove.value)?.id ?? null;
  const start = (event: Event) => {
    event.preventDefault();
    void startRound(desk, view, { level: level.value, groove });
  };
  return (
    <form onSubmit={start}>
      <fieldset>
        <legend>{words.level}</legend>
        <LevelChoice
          name="level"
          levels={view.levels}
          chosen={level.value}
          onChoose={(chosen) => {
            level.value = chosen;
          }}
        />
        <p class="level-name">{view.levels.find((each) => each.level === level.value)?.name}</p>
      </fieldset>
      <BeatLevel desk={desk} view={view} />
      <GrooveChoice
        name="level-groove"
        label={deskWords.sound.groove.label}
        view={view}
        chosen={groove ?? ''}
        none={deskWords.sound.groove.drawn}
        onChoose={(id) => {
          desk.groove.value = id || null;
        }}
      />
      <button type="submit" class={`desk-button${desk.plan.next.value ? '' : ' primary'}`} disabled={desk.busy.value}>
        {fill(words.play, { level: level.value })}
      </button>
    </form>
  );
}

/** How far up all rounds of the class ask about the groove: kept with the class, at once. */
function BeatLevel({ desk, view }: Props) {
  const { beatLevel } = view.settings;
  return (
    <fieldset>
      <legend>{words.beatLevel}</legend>
      <LevelChoice
        name="beat-level"
        levels={view.beatLevels}
        chosen={beatLevel}
        onChoose={(chosen) => void desk.wish({ type: 'ChangeSettings', settings: { beatLevel: chosen } })}
      />
      <p class="level-name">{view.beatLevels.find(({ level }) => level === beatLevel)?.name}</p>
    </fieldset>
  );
}

/** Pairs of grooves that differ in one thing: a press plays one of the two, on chords of the level chosen above. */
function Contrasts({ desk, view, level }: Props & { readonly level: number }) {
  return (
    <section class="contrasts">
      <h2>{words.contrastTitle}</h2>
      <p class="hint">{words.contrastNote}</p>
      <ul>
        {view.contrasts.map(({ id, name }) => (
          <li key={id}>
            <button
              type="button"
              class="contrast"
              disabled={desk.busy.value}
              onClick={() => void startRound(desk, view, { level, contrast: id })}
            >
              {name}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
