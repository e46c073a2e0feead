import type { ComponentChildren } from 'preact';
import { useBox } from '../../shared/box.ts';
import { Choice } from './choice.tsx';
import type { PadProps } from './pad.ts';
import { Ring } from './ring.tsx';

/** Where a bar is drawn, and whether it was chosen and is what sounded. */
export type BarPlace = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly said: boolean;
  readonly sounded: boolean;
};

type Props<Answer extends string> = PadProps<Answer> & {
  readonly answers: readonly Answer[];
  readonly textOf: (answer: Answer) => string;
  readonly bar: (answer: Answer, place: BarPlace) => ComponentChildren;
};

/** Two bars, one over the other, each over its word. */
export function TwoBars<Answer extends string>(props: Props<Answer>) {
  const [ref, { width, height }] = useBox({ width: 328, height: 420 });
  const row = height / 2;
  const word = Math.min(27, row * 0.17, width * 0.085);
  const bar = Math.min(row * 0.52, 130);
  const top = (row - bar - word * 1.9) / 2;
  const y = top + bar + word * 1.2;
  return (
    <div class="rows" ref={ref}>
      {props.answers.map((answer) => {
        const said = props.chosen === answer;
        const text = props.textOf(answer);
        const place = { x: width * 0.04, y: top, width: width * 0.92, height: bar };
        return (
          <Choice
            key={answer}
            class="row"
            label={text}
            pressed={said}
            closed={props.closed}
            onTap={() => props.onChoose(said ? null : answer)}
          >
            <svg width={width} height={row} viewBox={`0 0 ${width} ${row}`} aria-hidden="true">
              {props.bar(answer, { ...place, said, sounded: props.truth?.answer === answer })}
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
