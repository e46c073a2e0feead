import type { Ruler, Stand } from './tap-rulers.ts';
import { BeadPile } from './bead-row.tsx';

/** A ruler with its ticks written under it, and the hands that stand on it. */
export function RulerDrawing({
  ruler,
  stands,
  from,
  to,
  y,
  size,
  written = String,
}: {
  readonly ruler: Ruler;
  readonly stands: readonly Stand[];
  readonly from: number;
  readonly to: number;
  readonly y: number;
  /** Of the figures. */
  readonly size: number;
  readonly written?: (tick: number) => string;
}) {
  return (
    <>
      <path class="line-ink g4" d={`M${from} ${y}H${to}`} />
      {ruler.ticks.map((tick) => (
        <g key={tick}>
          <path class="line-ink g2" d={`M${ruler.at(tick)} ${y}v${size * 0.42}`} />
          <text class="spread-label" x={ruler.at(tick)} y={y + size * 1.45} font-size={size} text-anchor="middle">
            {written(tick)}
          </text>
        </g>
      ))}
      {stands.map(({ x, pile }) => (
        <BeadPile key={x} pile={pile} from={[x, y - size * 0.75 - pile.radius]} toward="up" />
      ))}
    </>
  );
}

/** What is said in a drawing where nobody's taps could be read. */
export function Unread({
  width,
  height,
  size,
  children,
}: {
  readonly width: number;
  readonly height: number;
  readonly size: number;
  readonly children: string;
}) {
  return (
    <text class="spread-label fill-ink2" x={width / 2} y={height / 2} font-size={size} text-anchor="middle">
      {children}
    </text>
  );
}
