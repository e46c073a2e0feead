import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { Mark, PencilRing } from '../../shared/marks.tsx';

/** So many stand in one row on any phone. */
const EIGHT = 8;

/** Levels to choose one of, ringed by a pencil; `name` tells two such rows of a page apart. */
export function LevelChoice(props: {
  readonly name: string;
  readonly levels: DeskView['levels'];
  readonly chosen: number;
  readonly onChoose: (level: number) => void;
}) {
  return (
    <div class={props.levels.length === EIGHT ? 'level-row eight' : 'level-row'}>
      {props.levels.map(({ level }) => (
        <label key={level} class="level-cell">
          <input
            type="radio"
            name={props.name}
            value={level}
            checked={props.chosen === level}
            onChange={() => props.onChoose(level)}
          />
          <span class="level-number">
            {level}
            {props.chosen === level && (
              <Mark width={52} height={48} class="ring">
                <PencilRing x={26} y={24} rx={18} ry={17} />
              </Mark>
            )}
          </span>
        </label>
      ))}
    </div>
  );
}

/** Levels of which each is a press; `name` says in full what it does. */
export function LevelPresses(props: {
  readonly levels: DeskView['levels'];
  readonly label: string;
  readonly name: string;
  readonly onPress: (level: number) => void;
}) {
  return (
    <div role="group" aria-label={props.label}>
      <p class="label" aria-hidden="true">
        {props.label}
      </p>
      <div class="level-row">
        {props.levels.map(({ level }) => (
          <button
            key={level}
            type="button"
            class="level-cell level-number"
            aria-label={fill(props.name, { level })}
            onClick={() => props.onPress(level)}
          >
            {level}
          </button>
        ))}
      </div>
    </div>
  );
}
