import { countSpoken } from '../../../server/protocol/words/asked/count.ts';
import { numberWord } from '../../../server/protocol/words/counting.ts';
import { MOST_CHORDS } from '../../../shared-theory/questions/count/ask.ts';
import { useBox } from '../../shared/box.ts';
import { CountBar } from '../../shared/drawings/count-bar.tsx';
import { countAt } from '../../shared/drawings/count-bar-layout.ts';
import { Choice } from './choice.tsx';
import type { PadModule, PadProps } from './pad.ts';
import { Ring } from './ring.tsx';

const COUNTS = Array.from({ length: MOST_CHORDS }, (_, index) => index + 1);

export const spoken = { count: countSpoken };
export const said: PadModule<number>['said'] = (_asking, count) => numberWord(count);

/** Five bars, one slash more in each. */
export function Pad(props: PadProps<number>) {
  const [ref, { width, height }] = useBox({ width: 328, height: 440 });
  const row = height / COUNTS.length;
  const bar = { x: 1, y: row / 2, width: width - 2, height: Math.min(row * 0.6, 52) };
  return (
    <div class="rows apart" ref={ref}>
      {COUNTS.map((count) => {
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
              <CountBar {...bar} count={count} said={said} sounded={props.truth?.answer === count} />
              {said && (
                <Ring x={countAt(bar)} y={bar.y} rx={bar.height * 0.5} ry={bar.height * 0.52} dashed={props.dashed} />
              )}
            </svg>
          </Choice>
        );
      })}
    </div>
  );
}
