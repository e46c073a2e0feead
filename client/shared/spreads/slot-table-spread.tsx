import { rolesAsk } from '../../../shared-theory/questions/roles/ask.ts';
import { strokeGridAsk } from '../../../shared-theory/questions/stroke-grid/ask.ts';
import type { GridStroke, Role } from '../../../shared-theory/rhythm/rhythm-truth.ts';
import { BeatGrid, RoleSign, StrokeSign } from '../drawings/beat-grid.tsx';
import type { GridCell } from '../drawings/beat-grid-layout.ts';
import { gridOf, handsOnSlots, layGrid, signsOn } from './grid-hands.ts';
import type { SpreadProps } from './spread-props.ts';

/** What may stand on a slot, from the top down. */
const STROKES = ['down', 'up', 'silent'] as const satisfies readonly GridStroke[];
const ROLES = ['open', 'closed', 'slap', 'kick', 'silent'] as const satisfies readonly Role[];

/** Which way the hand was heard to go on each slot: hands on each sign, one line a sign. */
export function StrokeGridSpread(props: SpreadProps) {
  return (
    <SlotTable
      {...props}
      choices={STROKES}
      text={(stroke) => strokeGridAsk.key([stroke])}
      sign={(stroke, at) => <StrokeSign stroke={stroke} {...at} />}
    />
  );
}

/** Which piece of a kit each slot was heard as: hands on each sign, one line a sign. */
export function RolesSpread(props: SpreadProps) {
  return (
    <SlotTable
      {...props}
      choices={ROLES}
      text={(role) => rolesAsk.key([role])}
      sign={(role, at) => <RoleSign role={role} {...at} />}
    />
  );
}

type At = { readonly x: number; readonly y: number; readonly size: number };

/** The lines of choices leave the line that the grid's marks stand on at their foot. */
const UNDER = 0.02;

function SlotTable<T extends string>({
  spread,
  truth,
  size,
  hands = true,
  choices,
  text,
  sign,
}: SpreadProps & {
  readonly choices: readonly T[];
  /** Its sign in the text of an answer. */
  readonly text: (choice: T) => string;
  readonly sign: (choice: T, at: At) => preact.JSX.Element;
}) {
  const rows = layGrid(gridOf(spread), size, UNDER);
  const on = handsOnSlots(spread);
  const right = signsOn(truth);
  return (
    <BeatGrid rows={rows}>
      {rows.map((row) =>
        choices.slice(1).map((choice, index) => {
          const y = lineOf(row, index + 1, choices.length);
          return <path key={choice} class="g2" style={{ stroke: 'var(--faint)' }} d={`M${row.x} ${y}h${row.width}`} />;
        }),
      )}
      {rows
        .flatMap((row) => row.cells)
        .map((cell) => (
          <g key={cell.slot}>
            {choices.map((choice, index) => (
              <Choice
                key={choice}
                cell={cell}
                top={lineOf(cell, index, choices.length)}
                foot={lineOf(cell, index + 1, choices.length)}
                hands={hands ? (on[cell.slot]?.get(choice) ?? 0) : null}
                of={Math.max(1, spread.of - spread.silent)}
                right={right[cell.slot]?.has(text(choice)) ?? false}
                sign={(at) => sign(choice, at)}
              />
            ))}
          </g>
        ))}
    </BeatGrid>
  );
}

/** Height of the upper edge of one of so many lines in a lane. */
function lineOf({ lane, base }: { readonly lane: number; readonly base: number }, index: number, of: number): number {
  return lane + ((base - lane) * index) / of;
}

/** One choice on one slot: its sign, the hands on it as a number, and as a stroke under both as long as their share. The right one stands on brass. */
function Choice({
  cell,
  top,
  foot,
  hands,
  of,
  right,
  sign,
}: {
  readonly cell: GridCell;
  readonly top: number;
  readonly foot: number;
  readonly hands: number | null;
  readonly of: number;
  readonly right: boolean;
  readonly sign: (at: At) => preact.JSX.Element;
}) {
  const height = foot - top;
  const size = Math.min(height * 0.5, cell.width * 0.3);
  const y = top + height * 0.44;
  const inset = cell.width * 0.08;
  const share = hands === null ? 0 : Math.min(1, hands / of) * (cell.width - 2 * inset);
  const line = foot - height * 0.1;
  return (
    <>
      {sign({ x: hands === null ? cell.middle : cell.x + cell.width * 0.28, y, size })}
      {hands === null ? null : (
        <text
          class={`spread-count${hands === 0 ? ' nobody' : ''}`}
          x={cell.x + cell.width * 0.66}
          y={y + size * 0.36}
          font-size={Math.min(size * 1.05, (cell.width * 0.5) / Math.max(2, String(hands).length) / 0.56)}
          text-anchor="middle"
        >
          {hands}
        </text>
      )}
      {share > 0 ? <path class="line-ink g5" d={`M${cell.x + inset} ${line}h${share}`} /> : null}
      {right ? (
        <rect
          class="line-brass g6"
          x={cell.x + inset * 0.4}
          y={top + height * 0.05}
          width={cell.width - inset * 0.8}
          height={height * 0.9}
        />
      ) : null}
    </>
  );
}
