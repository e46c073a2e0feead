import { oneOrSeveralAnswers, oneOrSeveralSpoken } from '../../../server/protocol/words/asked/one-or-several.ts';
import type { OneOrSeveral } from '../../../shared-theory/questions/question.ts';
import { useBox } from '../../shared/box.ts';
import { Fork } from '../../shared/drawings/fork.tsx';
import { Choice } from './choice.tsx';
import type { PadModule, PadProps } from './pad.ts';
import { Ring } from './ring.tsx';

const ROWS: readonly OneOrSeveral[] = ['one', 'several'];

export const spoken = { 'one-or-several': oneOrSeveralSpoken };
export const said: PadModule<OneOrSeveral>['said'] = (_asking, prongs) => oneOrSeveralAnswers[prongs];

/** Two forks: one prong for one key, several for several. */
export function Pad(props: PadProps<OneOrSeveral>) {
  const [ref, { width, height }] = useBox({ width: 328, height: 420 });
  const row = height / 2;
  const word = Math.min(27, row * 0.17, width * 0.085);
  const fork = Math.min(row * 0.4, 84);
  const top = (row - fork - word * 2.4) / 2;
  return (
    <div class="rows" ref={ref}>
      {ROWS.map((prongs) => {
        const said = props.chosen === prongs;
        const text = oneOrSeveralAnswers[prongs];
        const [x, y] = [width / 2, top + fork + word * 1.7];
        return (
          <Choice
            key={prongs}
            class="row"
            label={text}
            pressed={said}
            closed={props.closed}
            onTap={() => props.onChoose(said ? null : prongs)}
          >
            <svg width={width} height={row} viewBox={`0 0 ${width} ${row}`} aria-hidden="true">
              <Fork
                prongs={prongs}
                x={width * 0.1}
                y={top + fork / 2}
                width={width * 0.8}
                height={fork}
                said={said}
                sounded={props.truth?.answer === prongs}
              />
              <text x={x} y={y + word * 0.32} font-size={word} text-anchor="middle" class="serif">
                {text}
              </text>
              {said && (
                <Ring x={x} y={y} rx={word * (0.26 * text.length + 0.9)} ry={word * 0.86} dashed={props.dashed} />
              )}
            </svg>
          </Choice>
        );
      })}
    </div>
  );
}
