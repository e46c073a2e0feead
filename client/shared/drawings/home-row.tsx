import { figureOrdinal } from '../../../server/protocol/words/counting.ts';
import { Stop } from './stop.tsx';

/** Homes as answers beside the keys: the different chords in order of first sounding, `h0` to `h3`. */
export const HOME_IDS: readonly string[] = ['h0', 'h1', 'h2', 'h3'];

/** The chords of a loop in a row, each as one to stop on, with its place in figures. */
export function HomeRow(props: {
  readonly homes: readonly string[];
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly said: readonly string[];
  readonly sounded: readonly string[];
}) {
  const { homes, x, y, width, height, said, sounded } = props;
  const cell = width / homes.length;
  const size = Math.min(height * 0.4, cell * 0.3);
  const mark = { width: Math.min(cell * 0.42, height), height: height * 0.68 };
  return (
    <>
      {homes.map((id, at) => {
        const left = x + at * cell;
        const isSaid = said.includes(id);
        return (
          <g key={id} class={isSaid ? 'said' : ''}>
            <Stop x={left + cell * 0.28} y={y + height / 2} {...mark} said={isSaid} sounded={sounded.includes(id)} />
            <text
              x={left + cell * 0.56}
              y={y + height / 2 + size * 0.4}
              font-size={size}
              class={isSaid ? 'digit' : 'digit between'}
            >
              {figureOrdinal(at)}
            </text>
          </g>
        );
      })}
    </>
  );
}
