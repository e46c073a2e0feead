import { fill } from '../../../server/protocol/words/fill.ts';
import { spreadWords } from '../../../server/protocol/words/spread-words.ts';
import type { WireTaps } from '../../../server/protocol/views.ts';
import { HatchPatterns } from '../music-marks.tsx';
import { driftSentence } from './taps-sentences.ts';
import { Unread } from './ruler-drawing.tsx';
import type { SpreadProps } from './spread-props.ts';

const words = spreadWords.together;

/** Milliseconds at the edge of the drawing, either way. */
const EDGE_MS = 120;
/** Percent of tempo over eight beats at the edge of the drawing. */
const EDGE_PERCENT = 4;

/**
 * How together the room clapped: how far its taps lie around each hand's own middle, and whether the room gets faster or slower. No
 * hand stands out, and nothing is right or wrong.
 */
export function TogetherSpread({ spread, size, hands = true }: SpreadProps) {
  const { width, height, scale } = size;
  const label = Math.max(32 * scale, 12.5);
  const taps = spread.taps;
  if (!hands) return <></>;
  if (!taps || taps.spread === null) {
    return (
      <Unread width={width} height={height} size={label * 1.2}>
        {spreadWords.unread}
      </Unread>
    );
  }
  const pattern = `together-${spread.ask}`;
  const half = height / 2;
  return (
    <>
      <HatchPatterns id={pattern} scale={Math.max(0.6, scale)} />
      <Width spread={taps.spread} width={width} y={0} height={half} label={label} fill={`url(#${pattern}-2)`} />
      <path class="line-string g1" d={`M0 ${half}H${width}`} />
      <Drift drift={taps.drift} width={width} y={half} height={half} label={label} fill={`url(#${pattern}-2)`} />
    </>
  );
}

type Part = {
  readonly width: number;
  readonly y: number;
  readonly height: number;
  readonly label: number;
  readonly fill: string;
};

/** A hill over the beat, as wide as the room's taps lie around it. */
function Width({ spread, width, y, height, label, fill: hatch }: Part & { readonly spread: number }) {
  const base = y + height - label * 1.8;
  const top = y + label * 3.2;
  const middle = width / 2;
  const deviation = (Math.min(spread, EDGE_MS) / EDGE_MS) * (width / 2) * 0.9;
  const hill = Array.from({ length: 49 }, (_, index) => {
    const z = (index - 24) / 8;
    const x = Math.max(0, Math.min(width, middle + z * deviation));
    return `${Math.round(x)} ${Math.round(base - (base - top) * Math.exp(-(z * z) / 2))}`;
  });
  return (
    <>
      <text class="spread-word" x={0} y={y + label * 1.3} font-size={label * 1.25}>
        {words.width}
      </text>
      <Said width={width} y={y + label * 1.3} size={label}>
        {fill(words.around, { n: Math.round(spread) })}
      </Said>
      <path d={`M${hill.join('L')}z`} fill={hatch} />
      <path d={`M${hill.join('L')}`} class="line-ink g5" />
      <path class="line-ink g3" d={`M0 ${base}H${width}M${middle} ${base + label * 0.4}V${top - label * 0.3}`} />
      <text class="spread-label fill-ink2" x={middle} y={base + label * 1.4} font-size={label} text-anchor="middle">
        {words.beat}
      </text>
    </>
  );
}

/** A line that climbs where the room gets faster, in the fan of its standard error. */
function Drift({ drift, width, y, height, label, fill: hatch }: Part & { readonly drift: WireTaps['drift'] }) {
  const [from, to] = [y + label * 3, y + height - label * 0.4];
  const zero = (from + to) / 2;
  const at = (percent: number): number =>
    zero - (Math.max(-EDGE_PERCENT, Math.min(EDGE_PERCENT, percent)) / EDGE_PERCENT) * ((to - from) / 2);
  return (
    <>
      <text class="spread-word" x={0} y={y + label * 1.5} font-size={label * 1.25}>
        {words.drift}
      </text>
      <Said width={width} y={y + label * 1.5} size={label}>
        {driftSentence(drift)}
      </Said>
      <path class="line-string g1" d={`M0 ${zero}H${width}`} />
      {drift ? (
        <>
          <path
            d={`M0 ${zero}L${width} ${at(drift.percent + drift.error)}V${at(drift.percent - drift.error)}z`}
            fill={hatch}
          />
          <path class="line-ink g5 round" d={`M0 ${zero}L${width} ${at(drift.percent)}`} />
        </>
      ) : null}
    </>
  );
}

/** A sentence beside its heading, or under it where the drawing is narrow. */
function Said({
  width,
  y,
  size,
  children,
}: {
  readonly width: number;
  readonly y: number;
  readonly size: number;
  readonly children: string;
}) {
  const beside = width > size * 36;
  return (
    <text
      class="spread-label"
      x={beside ? width : 0}
      y={beside ? y : y + size * 1.35}
      font-size={size}
      text-anchor={beside ? 'end' : 'start'}
    >
      {children}
    </text>
  );
}
