import { strokesAnswers, strokesSpoken } from '../../../server/protocol/words/asked/strokes.ts';
import type { StrokeFeel } from '../../../shared-theory/truth.ts';
import { useBox } from '../../shared/box.ts';
import { StrokesBar } from '../../shared/drawings/strokes.tsx';
import { Choice } from './choice.tsx';
import type { PadModule, PadProps } from './pad.ts';
import { Ring } from './ring.tsx';

const ROWS: readonly StrokeFeel[] = ['all-downs', 'down-up'];

export const spoken = { strokes: strokesSpoken };
export const said: PadModule<StrokeFeel>['said'] = (_asking, feel) => strokesAnswers[feel];

/** Two bars under their bow signs: all down-bows, or down-bow and up-bow in turn. */
export function Pad(props: PadProps<StrokeFeel>) {
  const [ref, { width, height }] = useBox({ width: 328, height: 420 });
  const row = height / 2;
  const word = Math.min(27, row * 0.17, width * 0.085);
  const bar = Math.min(row * 0.52, 130);
  const top = (row - bar - word * 1.9) / 2;
  return (
    <div class="rows" ref={ref}>
      {ROWS.map((feel) => {
        const said = props.chosen === feel;
        const y = top + bar + word * 1.2;
        const text = strokesAnswers[feel];
        return (
          <Choice
            key={feel}
            class="row"
            label={text}
            pressed={said}
            closed={props.closed}
            onTap={() => props.onChoose(said ? null : feel)}
          >
            <svg width={width} height={row} viewBox={`0 0 ${width} ${row}`} aria-hidden="true">
              <StrokesBar
                feel={feel}
                x={width * 0.04}
                y={top}
                width={width * 0.92}
                height={bar}
                said={said}
                sounded={props.truth?.answer === feel}
              />
              <text x={width / 2} y={y + word * 0.32} font-size={word} text-anchor="middle" class="serif">
                {text}
              </text>
              {said && (
                <Ring
                  x={width / 2}
                  y={y}
                  rx={word * (0.26 * text.length + 0.9)}
                  ry={word * 0.86}
                  dashed={props.dashed}
                />
              )}
            </svg>
          </Choice>
        );
      })}
    </div>
  );
}
