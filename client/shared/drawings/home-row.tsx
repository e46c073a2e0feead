import { homeWords } from '../../../server/protocol/words/asked/keys.ts';
import { figureOrdinal } from '../../../server/protocol/words/ordinals.ts';

type Row = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** Where the cell of a home lies in a row of so many; the word stands before the first. */
export function homeCell({ x, y, width, height }: Row, homes: number, at: number): Row {
  const word = Math.min(width * 0.22, height * 1.6);
  const cell = Math.min((width - word) / homes, height * 2.4);
  return { x: x + word + at * cell, y, width: cell, height };
}

/** The chords of a loop in a row of bars, by their places: which of them is home. One's own is heavy, a right one underlined in brass. */
export function HomeRow(
  props: Row & {
    readonly homes: readonly string[];
    readonly said: readonly string[];
    readonly sounded: readonly string[];
  },
) {
  const { homes, x, y, height } = props;
  const [size, middle] = [height * 0.4, y + height / 2];
  return (
    <>
      <text x={x} y={middle + size * 0.32} font-size={size * 0.8} class="spread-label fill-ink2">
        {homeWords.before}
      </text>
      {homes.map((id, at) => {
        const cell = homeCell(props, homes.length, at);
        const isSaid = props.said.includes(id);
        return (
          <g key={id}>
            <path d={`M${cell.x} ${y + height * 0.16}v${height * 0.68}`} class="line-ink g3" />
            {isSaid && (
              <rect
                x={cell.x + 5}
                y={y + height * 0.16}
                width={cell.width - 10}
                height={height * 0.68}
                rx={height * 0.2}
                class="fill-ink"
              />
            )}
            {props.sounded.includes(id) && (
              <path
                d={`M${cell.x + cell.width * 0.2} ${y + height * 0.95}h${cell.width * 0.6}`}
                class="line-brass g6"
              />
            )}
            <text
              x={cell.x + cell.width / 2}
              y={middle + size * 0.36}
              font-size={size}
              text-anchor="middle"
              class={`digit ${isSaid ? 'text-paper' : 'between'}`}
            >
              {figureOrdinal(at)}
            </text>
          </g>
        );
      })}
    </>
  );
}
