import { grooveWords } from '../../../server/protocol/words/groove-words.ts';
import { GRIDS, TEMPO_LIMITS, type Grid } from '../../../shared-theory/groove-grid.ts';
import { onGrid, type GrooveDraft } from '../groove-draft.ts';

const words = grooveWords.editor;

const [SLOWEST, FASTEST] = TEMPO_LIMITS;

/** In the order in which they are offered: the usual meters first. */
const OFFERED = ['E8', 'S16', 'E16', 'W6', 'C6', 'T12', 'V7'] as const satisfies readonly Grid[];

type Props = { readonly draft: GrooveDraft; readonly onChange: (draft: GrooveDraft) => void };

/** Name, meter and grid, tempo and swing of a groove under the pencil. */
export function GrooveFields({ draft, onChange }: Props) {
  const number = (
    field: 'slowest' | 'fastest' | 'swingFrom' | 'swingTo',
    label: string,
    limits: { readonly min: number; readonly max?: number; readonly step: string },
  ) => (
    <label class="field">
      <span>{label}</span>
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
      <div class="field-row">
        {number('slowest', words.low, tempo)}
        {number('fastest', words.high, tempo)}
      </div>
      {GRIDS[draft.grid].swings ? (
        <>
          <div class="field-row">
            {number('swingFrom', words.swingLow, swing)}
            {number('swingTo', words.swingHigh, swing)}
          </div>
          <p class="hint">{words.swingNote}</p>
        </>
      ) : (
        <p class="hint">{words.straight}</p>
      )}
    </div>
  );
}
