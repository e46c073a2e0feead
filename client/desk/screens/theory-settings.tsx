import { HIGHEST_CAPO, NAMINGS, POLICIES, type RoomSettings } from '../../../server/protocol/messages.ts';
import { deskWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { namesOf } from '../../../shared-theory/namings/names-of.ts';
import { printNote, type Naming } from '../../../shared-theory/printer.ts';
import type { Desk } from '../desk-state.ts';
import { Part } from './part.tsx';

const words = deskWords.room;

type Props = { readonly desk: Desk; readonly view: DeskView };

const CAPOS = Array.from({ length: HIGHEST_CAPO + 1 }, (_, fret) => fret);

/** How the class names and counts: which keys count, how notes are called, where the capo is, what is another chord. */
export function Theory({ desk, view: { settings } }: Props) {
  const set = (changed: Partial<RoomSettings>) => void desk.wish({ type: 'ChangeSettings', settings: changed });
  return (
    <>
      <Part title={words.policyTitle}>
        <Choices
          name="policy"
          label={words.policyTitle}
          choices={POLICIES}
          now={settings.policy}
          text={(policy) => words.policy[policy]}
          onPick={(policy) => set({ policy })}
        />
        <p class="hint">{words.policyNote}</p>
      </Part>
      <Part title={words.namingTitle}>
        <Choices
          name="naming"
          label={words.namingTitle}
          choices={NAMINGS}
          now={settings.naming}
          text={(naming) => fill(words.namingLike, { naming: words.naming[naming], notes: notesIn(naming) })}
          onPick={(naming) => set({ naming })}
        />
        <p class="hint">{words.namingNote}</p>
      </Part>
      <Part title={words.capoTitle}>
        <p>
          <select
            aria-label={words.capoTitle}
            value={String(settings.capo)}
            onChange={(event) => set({ capo: Number(event.currentTarget.value) })}
          >
            {CAPOS.map((fret) => (
              <option key={fret} value={String(fret)}>
                {fret === 0 ? words.noCapo : fill(words.capo, { fret })}
              </option>
            ))}
          </select>
        </p>
        <p class="hint">{words.capoNote}</p>
      </Part>
      <Part title={words.slashTitle}>
        <div class="choice-row">
          <label>
            <input
              type="checkbox"
              checked={settings.slashIsNew}
              onChange={(event) => set({ slashIsNew: event.currentTarget.checked })}
            />
            {words.slash}
          </label>
        </div>
        <p class="hint">{words.slashNote}</p>
      </Part>
    </>
  );
}

/** The notes by which one tells namings apart. */
function notesIn(naming: Naming): string {
  const names = namesOf(naming);
  return ['C', 'Bb', 'B'].map((note) => printNote(note, names).text).join(' ');
}

type ChoicesProps<T extends string> = {
  readonly name: string;
  readonly label: string;
  readonly choices: readonly T[];
  readonly now: T;
  readonly text: (choice: T) => string;
  readonly onPick: (choice: T) => void;
};

function Choices<T extends string>({ name, label, choices, now, text, onPick }: ChoicesProps<T>) {
  return (
    <div class="choice-row" role="radiogroup" aria-label={label}>
      {choices.map((choice) => (
        <label key={choice}>
          <input type="radio" name={name} checked={now === choice} onChange={() => onPick(choice)} />
          {text(choice)}
        </label>
      ))}
    </div>
  );
}
