import {
  accentsSpoken,
  openedSpoken,
  rolesSpoken,
  slotWords,
  strokeGridSpoken,
} from '../../../server/protocol/words/asked/beat-grid.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { Grid } from '../../../shared-theory/groove-grid.ts';
import type { GridStroke, Role } from '../../../shared-theory/rhythm/rhythm-truth.ts';
import { useBox } from '../../shared/box.ts';
import { AccentMark, AccentRing, BeatGrid, RoleSign, SlotLens, StrokeSign } from '../../shared/drawings/beat-grid.tsx';
import { beatGrid, type GridCell } from '../../shared/drawings/beat-grid-layout.ts';
import {
  afterTap,
  saidChoice,
  saidSlot,
  slotAfterKey,
  slotsOf,
  type GridKind,
  type SlotChoice,
} from './grid-choices.ts';
import type { PadProps } from './pad.ts';

export const spoken = {
  accents: accentsSpoken,
  'stroke-grid': strokeGridSpoken,
  roles: rolesSpoken,
  opened: openedSpoken,
};
/** Share of a lane under its line: room for what sounded, and for the names of the pieces. */
const UNDER: Readonly<Record<GridKind, number>> = { accents: 0.16, 'stroke-grid': 0.12, roles: 0.3, opened: 0.3 };
const UNDER_SHOWN: Readonly<Record<GridKind, number>> = { ...UNDER, 'stroke-grid': 0.46, roles: 0.46, accents: 0.24 };

/** The bar of the groove, two beats a row: each slot is a target that goes through its choices. */
export function Pad(props: PadProps<readonly unknown[]>) {
  const { asking, chosen, closed } = props;
  const kind = asking.kind as GridKind;
  const grid = (asking.grid ?? 'E8') as Grid;
  const [ref, { width, height }] = useBox({ width: 328, height: 440 });
  const slots = slotsOf(kind, grid, chosen);
  const right = props.truth && slotsOf(kind, grid, props.truth.answer as readonly unknown[]);
  const under = (right ? UNDER_SHOWN : UNDER)[kind];
  // Three beats stand one under another: else the last would have half a row.
  const most = grid === 'W6' ? { most: 2 } : {};
  const rows = beatGrid(grid, { x: 1, y: 0, width: width - 2, height }, { under, ...most });
  const cells = rows.flatMap((row) => row.cells);
  const move = (event: KeyboardEvent): void => {
    const targets = Array.from((event.currentTarget as Element).querySelectorAll('button'));
    const at = targets.indexOf(document.activeElement as HTMLButtonElement);
    const to = at < 0 ? at : slotAfterKey(event.key, at, targets.length, rows[0]?.cells.length ?? 1);
    if (to === at) return;
    event.preventDefault();
    targets[to]?.focus();
  };
  return (
    <div class="fill" ref={ref} onKeyDown={move}>
      <svg class="under" width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        <BeatGrid rows={rows} dashed={closed && chosen !== null && props.dashed}>
          {cells.map((cell) => (
            <g key={cell.slot}>
              {right && <Sounded kind={kind} cell={cell} choice={right[cell.slot]} />}
              {chosen ? (
                <Said kind={kind} cell={cell} choice={slots[cell.slot]} shown={right !== undefined} />
              ) : (
                !right && (
                  <circle cx={cell.middle} cy={cell.lane + (cell.base - cell.lane) * 0.62} r={3} class="fill-string" />
                )
              )}
            </g>
          ))}
        </BeatGrid>
      </svg>
      {cells.map((cell) => {
        const { slot } = cell;
        const choice = slots[slot] ?? false;
        const said = chosen || kind === 'opened' ? saidChoice(kind, choice) : slotWords.untouched;
        const label = fill(right ? slotWords.slotShown : slotWords.slot, {
          place: saidSlot(grid, slot),
          choice: said,
          right: right ? saidChoice(kind, right[slot] ?? false) : '',
        });
        return (
          <button
            key={slot}
            type="button"
            class="choice over"
            style={{ left: `${cell.x}px`, top: `${cell.y}px`, width: `${cell.width}px`, height: `${cell.height}px` }}
            aria-label={label}
            disabled={closed}
            onClick={() => props.onChoose(afterTap(kind, slots, slot))}
          />
        );
      })}
    </div>
  );
}

type OnSlot = { readonly kind: GridKind; readonly cell: GridCell; readonly choice: SlotChoice | undefined };

/** Size of a sign on a slot, and the height of its middle. */
function place({ lane, base, width }: GridCell): { readonly size: number; readonly y: number } {
  const room = base - lane;
  return { size: Math.min(room * 0.46, width * 0.42), y: lane + room * 0.54 };
}

/** Smaller words than this, in pixels, nobody reads. */
const LEAST_WORD = 12;

/** Size of the name of a piece under the line. */
const nameSize = ({ y, height, base, width }: GridCell): number =>
  Math.min((y + height - base) * 0.56, width * 0.21, 17);

/** What the student says of a slot, in ink. */
function Said({ kind, cell, choice, shown }: OnSlot & { readonly shown: boolean }) {
  const { size, y } = place(cell);
  switch (kind) {
    case 'accents':
      return <AccentMark cell={cell} weight={Number(choice)} />;
    case 'stroke-grid':
      return <StrokeSign stroke={choice as GridStroke} x={cell.middle} y={y} size={size} />;
    case 'roles': {
      const word = shown ? 0 : nameSize(cell);
      return (
        <>
          <RoleSign role={choice as Role} x={cell.middle} y={y} size={size} />
          {word > 0 && choice !== 'silent' && (
            <text x={cell.middle} y={cell.base + word * 1.12} font-size={word} text-anchor="middle">
              {saidChoice(kind, choice ?? false)}
            </text>
          )}
        </>
      );
    }
    case 'opened':
      return choice ? (
        <circle cx={cell.middle} cy={y} r={size / 2} class="line-ink g5" />
      ) : (
        <circle cx={cell.middle} cy={y} r={3} class="fill-string" />
      );
  }
}

/** What sounded on a slot, in brass, under the line. */
function Sounded({ kind, cell, choice }: OnSlot) {
  const room = cell.y + cell.height - cell.base;
  const sign = {
    x: cell.middle,
    y: cell.base + room * 0.46,
    size: Math.min(room * 0.5, cell.width * 0.28),
    tone: 'brass',
  } as const;
  switch (kind) {
    case 'accents':
      return <AccentRing cell={cell} weight={Number(choice)} />;
    case 'stroke-grid':
      return <StrokeSign stroke={choice as GridStroke} {...sign} />;
    case 'roles': {
      // Where rows are low the sign alone stands, as over the line.
      const word = Math.min(room * 0.36, cell.width * 0.21, 16);
      const named = word >= LEAST_WORD && choice !== 'silent';
      return (
        <>
          <RoleSign role={choice as Role} {...sign} {...(named && { y: cell.base + room * 0.3 })} />
          {named && (
            <text x={cell.middle} y={cell.base + room * 0.88} font-size={word} text-anchor="middle" class="fill-ink2">
              {saidChoice(kind, choice ?? false)}
            </text>
          )}
        </>
      );
    }
    case 'opened':
      return choice ? <SlotLens cell={cell} amplitude={Math.min(cell.width * 0.16, room * 0.6)} /> : null;
  }
}
