import { useSignal } from '@preact/signals';
import { grooveWords } from '../../../server/protocol/words/groove-words.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { slotsPerBar, type Grid, type GrooveSlot } from '../../../shared-theory/groove-grid.ts';
import { DashedRing, Mark } from '../../shared/marks.tsx';
import { canPress, DRAWN_LANES, type Cell, type DrawnLane, type Side } from '../groove-draft.ts';
import { rowsOf } from '../../shared/drawings/beat-grid-layout.ts';
import { countOf } from '../../../shared-theory/slot-count.ts';
import { saidCount } from '../groove-layout.ts';
import { CellMark, saidSlots, saidValue } from './groove-marks.tsx';

const words = grooveWords.editor;

type GridProps = { readonly grid: Grid; readonly slots: readonly GrooveSlot[] };

/** A groove to look at: counts, slashes by height, bow signs, strings, touches; a beat or two a row. */
export function GrooveDrawing({ grid, slots }: GridProps) {
  return (
    <div class="groove-grid" role="img" aria-label={saidSlots(grid, slots)}>
      <Rows grid={grid} slots={slots} cell={(lane, place) => <CellMark slots={slots} place={place} lane={lane} />} />
    </div>
  );
}

type EditProps = GridProps & {
  readonly side: Side;
  /** What the grid is called. */
  readonly label: string;
  /** The cell at fault in a line that could not be read; null where there is none on this side. */
  readonly fault: Pick<Cell, 'lane' | 'slot'> | null;
  readonly onPress: (cell: Cell) => void;
  /** A sign was typed on a cell; true where it was taken. */
  readonly onType: (cell: Cell, sign: string) => boolean;
};

/** The same to draw on: each cell is pressed, or typed on; arrows go from cell to cell. */
export function GrooveEditGrid({ grid, slots, side, label, fault, onPress, onType }: EditProps) {
  /** The one cell that Tab comes to. */
  const at = useSignal<{ readonly lane: DrawnLane; readonly slot: number }>({ lane: 'acc', slot: 0 });
  const stop = slots[at.value.slot] ? at.value : { lane: 'acc', slot: 0 };
  const keyed = (event: KeyboardEvent, lane: DrawnLane, slot: number) => {
    const to = neighbour(grid, slots.length, lane, slot, event.key);
    if (to) {
      event.preventDefault();
      const parts = `[data-lane="${to.lane}"][data-slot="${to.slot}"]`;
      const grids = (event.currentTarget as HTMLElement).closest('.groove-grid');
      grids?.querySelector<HTMLElement>(parts)?.focus();
    } else if (!event.ctrlKey && !event.metaKey && !event.altKey && onType({ side, lane, slot }, event.key))
      event.preventDefault();
  };
  const cell = (lane: DrawnLane, place: number) => {
    const slot = slots[place];
    if (!slot) return null;
    const off = !canPress(slot, lane);
    const faulty = fault?.lane === lane && fault.slot === place;
    const cellName = fill(words.cell, {
      lane: grooveWords.lanes[lane],
      count: saidCount(grid, place),
      value: saidValue(slot, lane),
    });
    const said = side === 'opening' ? fill(words.inFirst, { cell: cellName }) : cellName;
    return (
      <button
        type="button"
        data-lane={lane}
        data-slot={place}
        aria-label={faulty ? fill(words.faulty, { cell: said }) : said}
        aria-disabled={off}
        tabIndex={stop.lane === lane && stop.slot === place ? 0 : -1}
        onFocus={() => {
          at.value = { lane, slot: place };
        }}
        onClick={() => {
          if (!off) onPress({ side, lane, slot: place });
        }}
        onKeyDown={(event) => keyed(event, lane, place)}
      >
        <CellMark slots={slots} place={place} lane={lane} />
        {faulty && (
          <Mark width={48} height={40} class="ring">
            <DashedRing x={24} y={20} rx={20} ry={15} />
          </Mark>
        )}
      </button>
    );
  };
  return (
    <div class="groove-grid editing" role="group" aria-label={label}>
      <Rows grid={grid} slots={slots} cell={cell} />
    </div>
  );
}

type RowsProps = GridProps & { readonly cell: (lane: DrawnLane, place: number) => preact.ComponentChildren };

function Rows({ grid, slots, cell }: RowsProps) {
  const rows = rowsOf(grid, slots.length);
  const perBar = slotsPerBar({ grid });
  const bars = slots.length / perBar;
  const most = Math.max(...rows.map(({ count }) => count));
  return rows.map(({ from, count }) => (
    <div
      key={from}
      class={from + count === slots.length ? 'groove-row last' : 'groove-row'}
      style={{ '--slots': String(most) }}
    >
      <div class="groove-lane counts" aria-hidden="true">
        <span class="groove-lane-name">
          {bars > 1 && from % perBar === 0 && fill(words.bar, { bar: from / perBar + 1 })}
        </span>
        {places(from, count).map((place) => {
          const { sign, strong } = countOf(grid, place);
          return (
            <span key={place} class={strong ? 'groove-count strong' : 'groove-count'}>
              {sign}
            </span>
          );
        })}
      </div>
      {DRAWN_LANES.map((lane) => (
        <div key={lane} class={`groove-lane ${lane}`}>
          <span class="groove-lane-name" aria-hidden="true">
            {grooveWords.lanes[lane]}
          </span>
          {places(from, count).map((place) => (
            <span key={place} class="groove-cell">
              {cell(lane, place)}
            </span>
          ))}
        </div>
      ))}
    </div>
  ));
}

const places = (from: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, index) => from + index);

/** The cell that an arrow goes to: along the slots, or down the lanes and on to the row below; null for other keys and at the ends. */
function neighbour(
  grid: Grid,
  slots: number,
  lane: DrawnLane,
  slot: number,
  key: string,
): { readonly lane: DrawnLane; readonly slot: number } | null {
  if (key === 'ArrowRight' || key === 'ArrowLeft') {
    const to = slot + (key === 'ArrowRight' ? 1 : -1);
    return to >= 0 && to < slots ? { lane, slot: to } : null;
  }
  if (key !== 'ArrowDown' && key !== 'ArrowUp') return null;
  const by = key === 'ArrowDown' ? 1 : -1;
  const next = DRAWN_LANES[DRAWN_LANES.indexOf(lane) + by];
  if (next) return { lane: next, slot };
  const rows = rowsOf(grid, slots);
  const here = rows.findIndex(({ from, count }) => slot >= from && slot < from + count);
  const row = rows[here + by];
  const first = DRAWN_LANES[by > 0 ? 0 : DRAWN_LANES.length - 1];
  if (!row || !first) return null;
  const column = Math.min(slot - (rows[here]?.from ?? 0), row.count - 1);
  return { lane: first, slot: row.from + column };
}
