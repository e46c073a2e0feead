import { spreadWords } from '../../../server/protocol/words/spread-words.ts';
import { Bead, HatchPatterns } from '../music-marks.tsx';
import { layCurve } from './curve-layout.ts';
import { Unread } from './ruler-drawing.tsx';
import type { SpreadProps } from './spread-props.ts';

const words = spreadWords.dropOut;

/**
 * How the room went on through the silence: one curve of all hands by beat, ahead of the groove upward, its middle half hatched. Every
 * beat of the silence has a rest; then the groove is back. With the truth the groove's own line is brass.
 */
export function DropOutSpread({ spread, truth, size, hands = true }: SpreadProps) {
  const { width, height, scale } = size;
  const label = Math.max(32 * scale, 12.5);
  const left = label * 9;
  const curve = hands ? (spread.taps?.curve ?? []) : [];
  const box = { x: left, y: label * 2.4, width: width - left - 20 * scale, height: height - label * 4 };
  const layout = layCurve(curve, box);
  const zero = layout.y(0);
  // The last one is the beat on which the groove is back.
  const back = layout.beats.at(-1)?.x;
  const pattern = `drift-${spread.ask}`;
  return (
    <>
      <HatchPatterns id={pattern} scale={Math.max(0.6, scale)} />
      <path class="line-string g1" d={`M${box.x} ${box.y}V${box.y + box.height}`} />
      <path class={truth ? 'line-brass g6' : 'line-ink g3'} d={`M${box.x} ${zero}H${box.x + box.width}`} />
      {(
        [
          [words.ahead, box.y + label],
          [words.groove, zero + label * 0.35],
          [words.behind, box.y + box.height],
        ] as const
      ).map(([word, y]) => (
        <text key={word} class="spread-label" x={0} y={y} font-size={label}>
          {word}
        </text>
      ))}
      {layout.beats.length > 0 ? (
        <text class="spread-label" x={0} y={label * 1.4} font-size={label}>
          {words.silent}
        </text>
      ) : null}
      {layout.beats.map(({ beat, x }) => (
        <g key={beat}>
          {x === back ? (
            <>
              <path class="line-ink g3" d={`M${x} ${label * 1.8}V${box.y + box.height}`} />
              <text class="spread-label" x={x} y={label * 1.4} font-size={label} text-anchor="middle">
                {words.back}
              </text>
            </>
          ) : (
            <Rest x={x} y={label * 1.1} size={label * 1.7} />
          )}
          <path class="line-string g1" d={`M${x} ${zero - label * 0.3}v${label * 0.6}`} />
        </g>
      ))}
      {layout.beats.length > 0 ? (
        <>
          <path d={layout.band} fill={`url(#${pattern}-2)`} />
          <path d={layout.band} class="line-ink g1" />
          <path d={layout.middle} class="line-ink g6 round" />
          {curve.map(({ beat, middle }, index) => (
            <Bead key={beat} x={layout.beats[index]?.x ?? 0} y={layout.y(middle)} r={label * 0.24} halo="paper" />
          ))}
        </>
      ) : hands ? (
        <Unread width={width} height={height * 0.7} size={label * 1.2}>
          {(spread.taps?.read ?? 0) > 0 ? words.noneBefore : spreadWords.unread}
        </Unread>
      ) : null}
    </>
  );
}

/** A beat's rest, drawn with a pen of our own: three strokes and a hook. Centred. */
function Rest({ x, y, size }: { readonly x: number; readonly y: number; readonly size: number }) {
  const [w, h] = [size * 0.2, size / 2];
  return (
    <path
      class="line-ink g5 round"
      d={`M${x - w} ${y - h}l${2 * w} ${0.62 * h}l${-1.7 * w} ${0.5 * h}l${1.9 * w} ${0.56 * h}q${-2 * w} ${-0.3 * h} ${-1.3 * w} ${0.32 * h}`}
    />
  );
}
