import { printNote } from '../../shared/names.ts';
import type { Fork } from '../key-rows.ts';
import type { Columns } from './key-row.tsx';

/** Stem, yoke and two prongs that run off the picture: what two keys share, and the one note in which they part. */
export function TuningFork({
  fork,
  columns,
  y,
  scale,
  edge,
}: {
  readonly fork: Fork;
  readonly columns: Columns;
  readonly y: number;
  readonly scale: number;
  /** Right edge of the picture. */
  readonly edge: number;
}) {
  const { first, pitch } = columns;
  const at = (column: number): number => first + column * pitch;
  const half = 31 * scale;
  // The fork parts in the last column where the keys do; else after it, so that every letter keeps its column.
  const last = fork.column === 6;
  const yoke = last ? at(6) - 0.66 * pitch : at(6) + 0.5 * pitch;
  const tip = edge + 60;
  const letters = last ? at(6) : Math.min(yoke + 0.72 * pitch, edge - 34);
  const note = (name: string): string => printNote(name).text;
  const small = Math.min(34 * scale, pitch * 0.3);
  const large = Math.min(42 * scale, pitch * 0.36);
  return (
    <g>
      <circle cx={first - 0.62 * pitch} cy={y} r={13 * Math.max(0.7, scale)} class="fill-ink" />
      <path class="line-ink g6" d={`M${first - 0.62 * pitch} ${y}H${yoke}`} />
      <path
        class="line-ink g6"
        d={`M${tip} ${y - half}H${yoke + half}A${half} ${half} 0 0 0 ${yoke + half} ${y + half}H${tip}`}
      />
      {fork.stem.map((name, column) =>
        name === null ? null : (
          <text
            key={name}
            class="spread-label fork-shared"
            x={at(column)}
            y={y - 18 * scale}
            font-size={small}
            text-anchor="middle"
          >
            {note(name)}
          </text>
        ),
      )}
      <text class="spread-count" x={letters} y={y - half - 16 * scale} font-size={large} text-anchor="middle">
        {note(fork.upper)}
      </text>
      <text
        class="spread-count"
        x={letters}
        y={y + half + 18 * scale + 0.7 * large}
        font-size={large}
        text-anchor="middle"
      >
        {note(fork.lower)}
      </text>
    </g>
  );
}
