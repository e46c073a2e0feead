import type { ComponentChildren } from 'preact';
import type { GridStroke, Role } from '../../../shared-theory/rhythm/rhythm-truth.ts';
import { DoubleBar } from '../marks.tsx';
import { lensPath, slashPath } from '../marks-geometry.ts';
import { Accent, BarLine } from '../music-marks.tsx';
import type { GridCell, GridRow } from './beat-grid-layout.ts';

/** The bar of a groove as columns under their counts, and what stands on its slots: ink for what was said, brass for what sounded. */

type Tone = 'ink' | 'brass';

/** Bar lines, columns, counts and the line that marks stand on; what is drawn on the slots comes as children. */
export function BeatGrid(props: {
  readonly rows: readonly GridRow[];
  /** What stands on it did not count. */
  readonly dashed?: boolean;
  readonly children?: ComponentChildren;
}) {
  return (
    <>
      {props.rows.map((row) => (
        <g key={row.y}>
          {row.cells.slice(1).map(({ x }) => (
            <path key={x} d={`M${x} ${row.lane}V${row.y + row.height}`} class="g2" style={{ stroke: 'var(--faint)' }} />
          ))}
          <path
            d={`M${row.x} ${row.base}h${row.width}`}
            class="line-ink g2"
            {...(props.dashed && { 'stroke-dasharray': '7 8' })}
          />
          <BarLine x={row.x} y={row.lane} height={row.y + row.height - row.lane} />
          {row.last ? (
            <DoubleBar
              x={row.x + row.width}
              y={row.lane}
              height={row.y + row.height - row.lane}
              size={Math.min(14, row.height * 0.16, (row.width / row.cells.length) * 0.2)}
            />
          ) : (
            <BarLine x={row.x + row.width} y={row.lane} height={row.y + row.height - row.lane} />
          )}
          {row.cells.map(({ slot, middle, label, figure, count: { sign, strong } }) => (
            <text
              key={slot}
              x={middle}
              y={label}
              font-size={strong ? figure : figure * 0.86}
              text-anchor="middle"
              class={strong ? 'digit' : 'fill-ink2'}
            >
              {sign}
            </text>
          ))}
        </g>
      ))}
      {props.children}
    </>
  );
}

/**
 * How heavily a slot is struck, 0 silent to 2 heavy and anything between: a slash as high as it is heavy, under a wedge where it is
 * heavy; a short rule where the hand is silent.
 */
export function AccentMark({ cell, weight }: { readonly cell: GridCell; readonly weight: number }) {
  const { middle, base, lane, width } = cell;
  const room = base - lane;
  const wide = Math.min(width * 0.42, room * 0.34);
  if (weight < 0.25) {
    return <path d={`M${middle - wide / 2} ${base - room * 0.2}h${wide}`} class="line-ink g5" />;
  }
  const height = Math.min(room * (0.06 + 0.3 * weight), width * 0.45 * weight);
  return (
    <>
      <path d={slashPath(middle, base - height / 2, height, 0.26)} class="fill-ink" />
      {weight > 1.5 && <Accent x={middle} y={base - height - room * 0.16} size={wide} />}
    </>
  );
}

/** How heavily a slot sounded: the line under it rings, further the heavier it was, and lies still where nothing sounded. */
export function AccentRing({ cell, weight }: { readonly cell: GridCell; readonly weight: number }) {
  if (weight === 0) return null;
  return (
    <SlotLens cell={cell} amplitude={Math.min(cell.width * 0.22, cell.height * 0.13) * (weight > 1 ? 1.5 : 0.5)} />
  );
}

/** A slot's own piece of the line rings. */
export function SlotLens({ cell, amplitude }: { readonly cell: GridCell; readonly amplitude: number }) {
  const inset = cell.width * 0.06;
  const path = lensPath([cell.x + inset, cell.base], [cell.x + cell.width - inset, cell.base], amplitude);
  return (
    <>
      <path d={path} class="lens-body" />
      <path d={path} class="line-brass g4" />
    </>
  );
}

type Sign = {
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly tone?: Tone;
};

/** Down-bow, up-bow, or a dot for a hand that touches nothing. Centred, `size` high. */
export function StrokeSign({ stroke, x, y, size, tone = 'ink' }: Sign & { readonly stroke: GridStroke }) {
  const [wide, tall] = [size * 0.46, size / 2];
  if (stroke === 'silent')
    return <circle cx={x} cy={y} r={size * 0.1} class={tone === 'ink' ? 'fill-string' : 'fill-brass'} />;
  if (stroke === 'up') {
    return (
      <path
        d={`M${x - size * 0.36} ${y - tall}L${x} ${y + tall}L${x + size * 0.36} ${y - tall}`}
        class={`line-${tone} g4`}
      />
    );
  }
  return (
    <>
      <path d={`M${x - wide} ${y + tall}V${y - tall}M${x + wide} ${y - tall}V${y + tall}`} class={`line-${tone} g4`} />
      <rect x={x - wide} y={y - tall} width={wide * 2} height={size * 0.25} class={`fill-${tone}`} />
    </>
  );
}

/**
 * The piece of a kit that a stroke stands for, in the signs of a kit's own notation: a low head for the kick, an x for the slap, the
 * cross of a closed hat and the ring of an open one; a dot where nothing sounds. Centred, `size` high.
 */
export function RoleSign({ role, x, y, size, tone = 'ink' }: Sign & { readonly role: Role }) {
  const half = size / 2;
  const line = `line-${tone} g4`;
  switch (role) {
    case 'kick':
      return (
        <ellipse
          cx={x}
          cy={y}
          rx={half * 0.92}
          ry={half * 0.64}
          transform={`rotate(-24 ${x} ${y})`}
          class={`fill-${tone}`}
        />
      );
    case 'slap': {
      const arm = half * 0.78;
      return (
        <path d={`M${x - arm} ${y - arm}l${arm * 2} ${arm * 2}m0 ${-arm * 2}l${-arm * 2} ${arm * 2}`} class={line} />
      );
    }
    case 'closed':
      return <path d={`M${x - half} ${y}h${size}M${x} ${y - half}v${size}`} class={line} />;
    case 'open':
      return <circle cx={x} cy={y} r={half * 0.86} class={line} />;
    case 'silent':
      return <circle cx={x} cy={y} r={size * 0.1} class={tone === 'ink' ? 'fill-string' : 'fill-brass'} />;
  }
}
