import { feelAnswers, feelSpoken } from '../../../server/protocol/words/asked/feel.ts';
import { useBox } from '../../shared/box.ts';
import { PairBar } from '../../shared/drawings/pair-marks.tsx';
import { PAIR_BARS, pairBar, type PairKind } from '../../shared/drawings/pair-marks-layout.ts';
import { Choice } from './choice.tsx';
import type { PadModule, PadProps } from './pad.ts';
import { Ring } from './ring.tsx';

type Feel = keyof typeof feelAnswers;

export const spoken = feelSpoken;
export const said: PadModule<Feel>['said'] = (_asking, feel) => feelAnswers[feel];

/** Two bars, one over the other, that differ in what is asked and in nothing else. */
export function Pad(props: PadProps<Feel>) {
  const [ref, { width, height }] = useBox({ width: 328, height: 420 });
  const { kind } = props.asking;
  const row = height / 2;
  const word = Math.min(27, row * 0.17, width * 0.085);
  const bar = Math.min(row * 0.52, 130);
  const top = (row - bar - word * 1.9) / 2;
  return (
    <div class="rows" ref={ref}>
      {(Object.keys(PAIR_BARS[kind as PairKind]) as readonly Feel[]).map((feel) => {
        const said = props.chosen === feel;
        const y = top + bar + word * 1.2;
        const text = feelAnswers[feel];
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
              <PairBar
                bar={pairBar(kind, feel)}
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
                  rx={Math.min(word * (0.26 * text.length + 0.9), width / 2 - 4)}
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
