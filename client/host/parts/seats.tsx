import type { WireSeat } from '../../../server/protocol/views.ts';
import { hostWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';

/** Cell sizes in drawing units, largest first; names need width, numbers do not. */
const NAME_CELLS = [
  { width: 280, height: 58, type: 40 },
  { width: 230, height: 48, type: 34 },
  { width: 188, height: 38, type: 28 },
  { width: 150, height: 31, type: 23 },
] as const;
const NUMBER_CELLS = [
  { width: 141, height: 88, type: 34 },
  { width: 84, height: 78, type: 30 },
  { width: 66, height: 62, type: 26 },
  { width: 50, height: 48, type: 21 },
  { width: 40, height: 38, type: 17 },
] as const;

type Cell = (typeof NAME_CELLS)[number] | (typeof NUMBER_CELLS)[number];

/** The largest cell at which so many seats fit, and how many are drawn where even the smallest is too large. */
export function fitSeats(
  count: number,
  named: boolean,
  width: number,
  height: number,
): { readonly cell: Cell; readonly columns: number; readonly drawn: number } {
  const cells: readonly Cell[] = named ? NAME_CELLS : NUMBER_CELLS;
  const capacity = (cell: Cell): number =>
    Math.floor(width / cell.width) * Math.max(1, Math.floor(height / cell.height));
  const least = cells.at(-1) ?? NUMBER_CELLS[3];
  const cell = cells.find((candidate) => capacity(candidate) >= count) ?? least;
  const fits = capacity(cell);
  // The last cell says how many more there are.
  return { cell, columns: Math.floor(width / cell.width), drawn: fits >= count ? count : fits - 1 };
}

/**
 * Seats filling in rows: names where the class shows them, else numbers in rings, as strings are numbered. A seat whose phone is
 * away keeps its place, its ring dashed.
 */
export function Seats({
  seats,
  named,
  width,
  height,
}: {
  readonly seats: readonly WireSeat[];
  readonly named: boolean;
  readonly width: number;
  readonly height: number;
}) {
  const { cell, columns, drawn } = fitSeats(seats.length, named, width, height);
  return (
    <ol
      class={named ? 'seats named' : 'seats'}
      style={{
        gridTemplateColumns: `repeat(${columns}, ${cell.width / 16}rem)`,
        gridAutoRows: `${cell.height / 16}rem`,
        fontSize: `${cell.type / 16}rem`,
      }}
    >
      {seats.slice(0, drawn).map((seat) => (
        <li
          key={seat.seat}
          class={seat.here ? 'seat' : 'seat away'}
          aria-label={fill(seat.here ? hostWords.register.seat : hostWords.register.away, { n: seat.seat })}
        >
          {seat.name ?? seat.seat}
        </li>
      ))}
      {drawn < seats.length ? (
        <li class="seat more">{fill(hostWords.register.moreSeats, { n: seats.length - drawn })}</li>
      ) : null}
    </ol>
  );
}
