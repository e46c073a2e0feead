import { barCountSpoken } from '../../../server/protocol/words/asked/bar-count.ts';
import { numberWord } from '../../../server/protocol/words/counting.ts';
import { BAR_COUNTS } from '../../../shared-theory/questions/bar-count/ask.ts';
import type { BarCount } from '../../../shared-theory/rhythm/rhythm-truth.ts';
import { useBox } from '../../shared/box.ts';
import { PairBar } from '../../shared/drawings/pair-marks.tsx';
import { pairBar } from '../../shared/drawings/pair-marks-layout.ts';
import { Choice } from './choice.tsx';
import type { PadModule, PadProps } from './pad.ts';
import { Ring } from './ring.tsx';

export const spoken = { 'bar-count': barCountSpoken };
export const said: PadModule<BarCount>['said'] = (_asking, count) => numberWord(count);

/** Five bars, each with as many strokes as it has numbers, the one heavy. */
export function Pad(props: PadProps<BarCount>) {
  const [ref, { width, height }] = useBox({ width: 328, height: 440 });
  const row = height / BAR_COUNTS.length;
  const tall = Math.min(row * 0.78, 76);
  const figure = Math.min(30, row * 0.42);
  const left = figure * 1.9;
  return (
    <div class="rows" ref={ref}>
      {BAR_COUNTS.map((count) => {
        const said = props.chosen === count;
        return (
          <Choice
            key={count}
            class="row"
            label={numberWord(count)}
            pressed={said}
            closed={props.closed}
            onTap={() => props.onChoose(said ? null : count)}
          >
            <svg width={width} height={row} viewBox={`0 0 ${width} ${row}`} aria-hidden="true">
              <text x={left / 2} y={row / 2 + figure * 0.36} font-size={figure} text-anchor="middle" class="digit">
                {count}
              </text>
              <PairBar
                bar={pairBar('bar-count', count)}
                x={left}
                y={row / 2 - tall * 0.56}
                width={width - left - 2}
                height={tall}
                said={said}
                sounded={props.truth?.answer === count}
              />
              {said && <Ring x={left / 2} y={row / 2} rx={figure * 0.78} ry={figure * 0.74} dashed={props.dashed} />}
            </svg>
          </Choice>
        );
      })}
    </div>
  );
}
