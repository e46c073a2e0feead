import { fill } from '../../../server/protocol/words/fill.ts';
import { spreadWords } from '../../../server/protocol/words/spread-words.ts';
import { EVEN } from '../../../shared-theory/taps/even.ts';
import { Lens } from '../music-marks.tsx';
import { RulerDrawing, Unread } from './ruler-drawing.tsx';
import type { SpreadProps } from './spread-props.ts';
import { MOST_UNEVEN, standOn, unevenRuler } from './tap-rulers.ts';

const words = spreadWords.steadiness;

/** How evenly it was tapped: a bead a hand on a ruler from even to uneven. With the truth its even end rings. */
export function SteadinessSpread({ spread, truth, size, hands = true }: SpreadProps) {
  const { width, height, scale } = size;
  const label = Math.max(32 * scale, 12.5);
  const [from, to] = [60 * scale, width - 90 * scale];
  const y = height - label * 3.6;
  const ruler = unevenRuler(from, to - from);
  const uneven = spread.taps?.unevenness ?? [];
  const stands = hands ? standOn(ruler, uneven, y - 60 * scale, 34 * scale) : [];
  const written = (tick: number): string => fill(tick === MOST_UNEVEN ? words.more : words.percent, { n: tick });
  return (
    <>
      {truth ? <Lens from={[ruler.at(0), y]} to={[ruler.at(100 * EVEN), y]} amplitude={20 * scale} /> : null}
      <RulerDrawing ruler={ruler} stands={stands} from={from} to={to} y={y} size={label} written={written} />
      <text class="spread-word" x={from - 20 * scale} y={y + label * 3.2} font-size={label * 1.3}>
        {words.even}
      </text>
      <text class="spread-word" x={width} y={y + label * 3.2} font-size={label * 1.3} text-anchor="end">
        {words.uneven}
      </text>
      {hands && uneven.length === 0 && (spread.taps?.of ?? 0) > 0 ? (
        <Unread width={width} height={y} size={label * 1.2}>
          {spreadWords.unread}
        </Unread>
      ) : null}
    </>
  );
}
