import { DoubleBar, type Place } from './marks.tsx';
import { lensPath, plectrumPath, slashPath, tallyLayout } from './marks-geometry.ts';
import { point, type Point } from './pencil.ts';

/** Marks of written music, of hands and of sound, in the units of the drawing that holds them. */

/** A beat that sounds, or (hollow) one that has not been heard yet. Centred on its place. */
export function Slash(props: Place & { readonly height: number; readonly width?: number; readonly hollow?: boolean }) {
  const path = slashPath(props.x, props.y, props.height, props.width);
  return <path d={path} class={props.hollow ? 'line-string g2' : 'fill-ink'} />;
}

/** One hand. A halo in the ground's colour keeps it clear of the string it sits on. */
export function Bead(props: Place & { readonly r: number; readonly halo?: 'paper' | 'shade' }) {
  return (
    <>
      {props.halo && <circle cx={props.x} cy={props.y} r={props.r * 1.19} class={`fill-${props.halo}`} />}
      <circle cx={props.x} cy={props.y} r={props.r} class="fill-ink" />
    </>
  );
}

/** Hands in: gates of five, missing hands as dots. Above sixty hands one stroke stands for ten. */
export function Tally(
  props: Place & { readonly hands: number; readonly of: number; readonly gap: number; readonly height: number },
) {
  const scale = Math.max(props.hands, props.of) > 60 ? 10 : 1;
  const hands = Math.floor(props.hands / scale);
  const { strokes, dots } = tallyLayout(hands, Math.ceil(props.of / scale), props.gap, props.height);
  return (
    <g transform={`translate(${props.x} ${props.y})`}>
      {strokes.map(([from, to], index) => (
        <path key={index} d={`M${point(from)}L${point(to)}`} class="line-ink g5 round" />
      ))}
      {dots.map(([x, y]) => (
        <circle key={x} cx={x} cy={y} r={props.gap * 0.16} class="fill-string" />
      ))}
    </g>
  );
}

/** A bar line, top at its place. */
export function BarLine(props: Place & { readonly height: number }) {
  return <path d={`M${props.x} ${props.y}v${props.height}`} class="line-ink g3" />;
}

/** Repeat sign, `open` or `close`; its outer edge stands at x. Dots lie at the given heights. */
export function RepeatBars(
  props: Place & {
    readonly side: 'open' | 'close';
    readonly height: number;
    readonly size: number;
    readonly dots?: readonly [number, number];
  },
) {
  const { x, y, height, size } = props;
  const inward = props.side === 'open' ? 1 : -1;
  const thick = 0.36 * size;
  const [first, second] = props.dots ?? [y + height * 0.38, y + height * 0.62];
  return (
    <>
      <rect x={inward > 0 ? x : x - thick} y={y} width={thick} height={height} class="fill-ink" />
      <path d={`M${x + inward * (thick + 0.36 * size)} ${y}v${height}`} class="line-ink g3" />
      <circle cx={x + inward * 1.12 * size} cy={first} r={0.17 * size} class="fill-ink" />
      <circle cx={x + inward * 1.12 * size} cy={second} r={0.17 * size} class="fill-ink" />
    </>
  );
}

/** A string that rings between two nodes: what sounded. */
export function Lens(props: {
  readonly from: Point;
  readonly to: Point;
  readonly amplitude: number;
  readonly gauge?: 2 | 3 | 4 | 5;
}) {
  const path = lensPath(props.from, props.to, props.amplitude);
  return (
    <>
      <path d={path} class="lens-body" />
      <path d={path} class={`line-brass g${props.gauge ?? 4}`} />
    </>
  );
}

/** The plectrum, its tip at its place. */
function Plectrum(props: Place & { readonly height: number }) {
  return <path d={plectrumPath(props.x, props.y, props.height)} class="fill-brass" />;
}

/** Where the sound is now: a line from `y` down over `height`, a plectrum on top of it. */
export function Sweep(props: Place & { readonly height: number; readonly plectrum: number }) {
  return (
    <>
      <path d={`M${props.x} ${props.y}v${props.height}`} class="line-brass g5" />
      <Plectrum x={props.x} y={props.y} height={props.plectrum} />
    </>
  );
}

/** Past bars slashed, bars still to come empty, the double bar at the end. */
export function BarsToClose(
  props: Place & { readonly bars: number; readonly past: number; readonly cell: number; readonly height: number },
) {
  const { x, y, bars, cell, height } = props;
  const end = x + bars * cell;
  return (
    <>
      <path d={`M${x} ${y + height}H${end}`} class="line-string g1" />
      {Array.from({ length: bars }, (_, bar) => (
        <g key={bar}>
          <path d={`M${x + bar * cell} ${y}v${height}`} class="line-ink g2" />
          {bar < props.past && <Slash x={x + (bar + 0.5) * cell} y={y + height / 2} height={height * 0.62} />}
        </g>
      ))}
      <DoubleBar x={end + cell * 0.2} y={y} height={height} size={cell * 0.42} />
    </>
  );
}

/** Down-bow: a downstroke. Centred, `size` high. */
export function DownBow(props: Place & { readonly size: number }) {
  const { x, y, size } = props;
  const half = size * 0.48;
  return (
    <>
      <path
        d={`M${x - half} ${y + size / 2}V${y - size / 2}M${x + half} ${y - size / 2}V${y + size / 2}`}
        class="line-ink g4"
      />
      <rect x={x - half} y={y - size / 2} width={half * 2} height={size * 0.25} class="fill-ink" />
    </>
  );
}

/** Up-bow: an upstroke. Centred, `size` high. */
export function UpBow(props: Place & { readonly size: number }) {
  const { x, y, size } = props;
  return (
    <path
      d={`M${x - size * 0.36} ${y - size / 2}L${x} ${y + size / 2}L${x + size * 0.36} ${y - size / 2}`}
      class="line-ink g4"
    />
  );
}

/** The x of a dead stroke. */
export function XHead(props: Place & { readonly size: number }) {
  const half = props.size / 2;
  const [left, right, top, low] = [props.x - half, props.x + half, props.y - half, props.y + half];
  return <path d={`M${left} ${top}L${right} ${low}M${left} ${low}L${right} ${top}`} class="line-ink g4" />;
}

/** Accent: a wedge that opens to the left. */
export function Accent(props: Place & { readonly size: number }) {
  const { x, y, size } = props;
  return (
    <path
      d={`M${x - size / 2} ${y - size * 0.27}L${x + size / 2} ${y}L${x - size / 2} ${y + size * 0.27}`}
      class="line-ink g4"
    />
  );
}

const HATCHES = [
  { pitch: 14, line: 2 },
  { pitch: 9, line: 2.4 },
  { pitch: 6, line: 2.6 },
  { pitch: 4, line: 2.6 },
] as const;

/** Hatch patterns, thin to dense, for maps and tables: `fill="url(#ID-1)"` to `-4`; `ID-wrong` is the light one of a wrong answer. */
export function HatchPatterns(props: { readonly id: string; readonly scale?: number }) {
  const scale = props.scale ?? 1;
  const pattern = (name: string, pitch: number, line: number, opacity: number) => (
    <pattern
      key={name}
      id={`${props.id}-${name}`}
      width={pitch * scale}
      height={pitch * scale}
      patternUnits="userSpaceOnUse"
      patternTransform="rotate(45)"
    >
      <rect width={line * scale} height={pitch * scale} class="fill-ink" opacity={opacity} />
    </pattern>
  );
  return (
    <defs>
      {HATCHES.map(({ pitch, line }, step) => pattern(String(step + 1), pitch, line * 0.62, 1))}
      {pattern('wrong', 7, 1.6, 0.28)}
    </defs>
  );
}
