import { grooveWords } from '../../../server/protocol/words/groove-words.ts';
import { GRIDS, TEMPO_LIMITS, type Grid } from '../../../shared-theory/groove-grid.ts';
import { onGrid, type GrooveDraft } from '../groove-draft.ts';

const words = grooveWords.editor;

const [SLOWEST, FASTEST] = TEMPO_LIMITS;

/** In the order in which they are offered: the usual meters first. */
const OFFERED = ['E8', 'S16', 'E16', 'W6', 'C6', 'T12', 'V7'] as const satisfies readonly Grid[];

type Props = { readonly draft: GrooveDraft; readonly onChange: (draft: GrooveDraft) => void };

/** Name, and meter with its grid, of a groove under the pencil. */
export function NameFields({ draft, onChange }: Props) {
  return (
    <div class="groove-fields">
      <label class="field">
        <span>{words.name}</span>
        <input
          name="groove-name"
          autocomplete="off"
          maxLength={40}
          value={draft.name}
          onInput={(event) => onChange({ ...draft, name: event.currentTarget.value })}
        />
      </label>
      <label class="field">
        <span>{words.grid}</span>
        <select
          name="grid"
          value={draft.grid}
          onChange={(event) => {
            const chosen = OFFERED.find((grid) => grid === event.currentTarget.value);
            if (chosen) onChange(onGrid(draft, chosen));
          }}
        >
          {OFFERED.map((grid) => (
            <option key={grid} value={grid}>
              {words.grids[grid]}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}

/** Its tempo, and its swing where its grid may swing. */
export function TempoFields({ draft, onChange }: Props) {
  const number = (
    field: 'slowest' | 'fastest' | 'swingFrom' | 'swingTo',
    limits: { readonly min: number; readonly max?: number; readonly step: string },
  ) => (
    <label class="field">
      <span>{words[field]}</span>
      <input
        name={field}
        type="number"
        inputMode="decimal"
        {...limits}
        value={draft[field]}
        onInput={(event) => onChange({ ...draft, [field]: event.currentTarget.value })}
      />
    </label>
  );
  const tempo = { min: SLOWEST, max: FASTEST, step: '1' };
  const swing = { min: 1, step: '0.1' };
  const { swings } = GRIDS[draft.grid];
  return (
    <>
      <div class="groove-fields four">
        {number('slowest', tempo)}
        {number('fastest', tempo)}
        {swings && number('swingFrom', swing)}
        {swings && number('swingTo', swing)}
      </div>
      <p class="hint">{swings ? words.swingNote : words.straight}</p>
    </>
  );
}
