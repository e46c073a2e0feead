import { BarLine, Lens, Slash } from '../music-marks.tsx';
import type { DrawnBar } from './pair-marks-layout.ts';

/**
 * A bar of slashes by which one feel is told from another: heavy and light, near and far, beamed, changing chord, or under the
 * hand's way. Chosen its line is heavy; where it sounded its line rings.
 */
export function PairBar(props: {
  readonly bar: DrawnBar;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly said?: boolean;
  readonly sounded?: boolean;
}) {
  const { x, y, width, height } = props;
  const { strokes, beams, line: inside, hand } = props.bar;
  const line = y + height * 0.7;
  const at = (stroke: number): number => x + (strokes[stroke]?.at ?? 0) * width;
  const pitch = width / Math.max(strokes.length, 4);
  const tall = Math.min(height * 0.52, pitch * 1.2);
  const beam = line - tall - height * 0.1;
  const end = line - height * 0.26;
  return (
    <>
      <path d={`M${x} ${line}h${width}`} class={props.said ? 'line-ink g5' : 'line-string g1'} />
      {props.sounded && <Lens from={[x, line]} to={[x + width, line]} amplitude={height * 0.12} />}
      <BarLine x={x} y={end} height={height * 0.52} />
      <BarLine x={x + width} y={end} height={height * 0.52} />
      {inside !== undefined && <BarLine x={x + inside * width} y={end} height={height * 0.52} />}
      {strokes.map(({ weight, hollow }, index) => (
        <Slash
          key={index}
          x={at(index)}
          y={line}
          height={weight === 2 ? tall : tall * 0.5}
          {...(hollow && { hollow })}
        />
      ))}
      {beams?.map(([first, last]) => (
        <path
          key={first}
          d={`M${at(first)} ${beam + height * 0.06}V${beam}H${at(last)}V${beam + height * 0.06}`}
          class="line-ink g4"
        />
      ))}
      {hand && <path d={handPath(hand, at, y + height * 0.06, height * 0.3)} class="line-ink g4 round" />}
    </>
  );
}

/** The way of the hand over strokes: a line down on a downstroke and up on an upstroke, broken where it has to go back silently. */
function handPath(hand: readonly boolean[], at: (stroke: number) => number, top: number, height: number): string {
  return hand
    .map((down, index) => {
      const half = (at(1) - at(0)) / 2;
      const [from, to] = down ? [top, top + height] : [top + height, top];
      const joined = index > 0 && hand[index - 1] !== down;
      return `${joined ? 'L' : 'M'}${at(index) - half} ${from}L${at(index) + half} ${to}`;
    })
    .join('');
}
