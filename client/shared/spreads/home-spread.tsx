import { questionWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { ordinal } from '../../../server/protocol/words/ordinals.ts';
import { MOST_HOMES } from '../../../shared-theory/questions/home/ask.ts';
import { homesAsked } from '../homes-asked.ts';
import { Stop } from '../drawings/stop.tsx';
import { layPiles } from './bead-layout.ts';
import { BeadPile } from './bead-row.tsx';
import { handsOn, type SpreadProps } from './spread-props.ts';

/** Where the room would stop: one row of beads for each chord, all of one ink. No row is right. */
export function HomeSpread({ spread, size, hands = true }: SpreadProps) {
  const { width, height, scale } = size;
  const chosen = spread.counts.map(({ key }) => Number(key));
  const { loop, chords: known } = spread.asking;
  // Where nobody knows how many there are, no more rows stand there than were marked.
  const rows =
    loop === 'two' || known !== undefined ? homesAsked(spread.asking) : Math.max(2, ...chosen.map((at) => at + 1));
  const chords = Math.min(MOST_HOMES, rows);
  const row = Math.min(height / chords, 200 * scale);
  const top = (height - row * chords) / 2;
  const [stop, word] = [Math.min(width * 0.16, 210 * scale), 54 * scale];
  const start = stop + Math.min(width * 0.3, 460 * scale);
  const piles = layPiles(
    Array.from({ length: chords }, (_, chord) => handsOn(spread, String(chord))),
    width - start - 30 * scale,
    47 * scale,
  );
  return (
    <>
      {piles.map((pile, chord) => {
        const y = top + row * (chord + 0.5);
        return (
          <g key={chord}>
            {chord > 0 ? <path class="line-string g1" d={`M0 ${y - row / 2}H${width}`} /> : null}
            <Stop x={stop / 2} y={y} width={stop * 0.8} height={Math.min(row * 0.66, 120 * scale)} />
            <text
              class="spread-word"
              x={stop + 20 * scale}
              y={y + word * 0.33}
              font-size={Math.min(word, (start - stop - 66 * scale) / 7.2)}
            >
              {fill(questionWords.homes.chord, { which: ordinal(chord) })}
            </text>
            {hands ? <BeadPile pile={pile} from={[start, y]} toward="right" /> : null}
          </g>
        );
      })}
    </>
  );
}
