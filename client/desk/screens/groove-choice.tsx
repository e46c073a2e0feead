import { deskWords } from '../../../server/protocol/words/en.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { ownGrooveIds } from '../own-grooves.ts';

const words = deskWords.sound.groove;

type Props = {
  readonly name: string;
  readonly label: string;
  readonly view: Pick<DeskView, 'grooves' | 'settings'>;
  /** Id of the groove chosen; empty for none. */
  readonly chosen: string;
  /** What stands for none. */
  readonly none: string;
  readonly onChoose: (groove: string) => void;
};

/** A list to choose a groove from: none by name, those of the class, those of the catalogue. */
export function GrooveChoice({ name, label, view, chosen, none, onChoose }: Props) {
  const own = ownGrooveIds(view.settings);
  const options = (mine: boolean) =>
    view.grooves
      .filter(({ id }) => own.has(id) === mine)
      .map((groove) => (
        <option key={groove.id} value={groove.id}>
          {groove.name}
        </option>
      ));
  return (
    <label class="field">
      <span>{label}</span>
      <select name={name} value={chosen} onChange={(event) => onChoose(event.currentTarget.value)}>
        <option value="">{none}</option>
        {own.size > 0 ? (
          <>
            <optgroup label={words.own}>{options(true)}</optgroup>
            <optgroup label={words.known}>{options(false)}</optgroup>
          </>
        ) : (
          options(false)
        )}
      </select>
    </label>
  );
}
