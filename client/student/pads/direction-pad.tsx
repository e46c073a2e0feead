import { directionAnswers, directionSpoken } from '../../../server/protocol/words/asked/direction.ts';
import type { Direction } from '../../../shared-theory/truth.ts';
import { useBox } from '../../shared/box.ts';
import { Stairs } from '../../shared/drawings/stairs.tsx';
import { Choice } from './choice.tsx';
import type { PadModule, PadProps } from './pad.ts';
import { Ring } from './ring.tsx';

/** From high to low, as the bass would go. */
const ROWS: readonly Direction[] = ['up', 'same', 'down'];

export const spoken = { direction: directionSpoken };
export const said: PadModule<Direction>['said'] = (_asking, direction) => directionAnswers[direction];

/** Three zones, each with its stair; the word stands where the stair arrives. */
export function Pad(props: PadProps<Direction>) {
  const [ref, { width, height }] = useBox({ width: 328, height: 420 });
  const row = height / 3;
  const rise = Math.min(62, row * 0.4);
  const stairs = Math.min(width * 0.53, 260);
  const word = Math.min(27, row * 0.3, width * 0.09);
  return (
    <div class="rows" ref={ref}>
      {ROWS.map((direction) => {
        const said = props.chosen === direction;
        const lift = direction === 'up' ? -rise / 2 : direction === 'down' ? rise / 2 : 0;
        const [x, y] = [width * 0.8, row / 2 + lift];
        return (
          <Choice
            key={direction}
            class="row"
            label={directionAnswers[direction]}
            pressed={said}
            closed={props.closed}
            onTap={() => props.onChoose(said ? null : direction)}
          >
            <svg width={width} height={row} viewBox={`0 0 ${width} ${row}`} aria-hidden="true">
              <Stairs
                direction={direction}
                x={width * 0.07 + stairs / 2}
                y={row / 2}
                width={stairs}
                rise={rise}
                said={said}
                sounded={props.truth?.answer === direction}
              />
              <text x={x} y={y + word * 0.32} font-size={word} text-anchor="middle" class="serif">
                {directionAnswers[direction]}
              </text>
              {said && (
                <Ring x={x} y={y} rx={Math.min(word * 1.72, width * 0.2 - 10)} ry={word * 0.98} dashed={props.dashed} />
              )}
            </svg>
          </Choice>
        );
      })}
    </div>
  );
}
