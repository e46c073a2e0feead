import { questionWords } from '../../../server/protocol/words/en.ts';
import { chordSymbol, type Quality } from '../../../shared-theory/chords.ts';
import { SvgChord } from '../chord-text.tsx';
import { HandTally } from './hand-tally.tsx';
import { serifWidth } from '../serif-width.ts';
import { handsOn, isRight, type SpreadProps } from './spread-props.ts';

/** Above this many qualities the pad's two columns are kept. */
const ONE_COLUMN = 3;

/** What quality was heard: a tally beside each letter of the pad, or beside its word before the root is known. */
export function QualitySpread({ spread, truth, size, hands = true }: SpreadProps) {
  const { width, height, scale } = size;
  const options = (spread.asking.options ?? []) as readonly Quality[];
  const letter = spread.asking.letter;
  const columns = options.length > ONE_COLUMN ? 2 : 1;
  const rows = Math.ceil(options.length / columns);
  const [cellWidth, row] = [width / columns, height / Math.max(1, rows)];
  const name = (letter ? 0.3 : 0.42) * cellWidth;
  // One size for all, so that no answer looks more likely.
  const widest = Math.max(
    1,
    ...options.map((quality) => (letter ? 3.2 : serifWidth(questionWords.options[quality], 1))),
  );
  const type = Math.min((letter ? 92 : 60) * scale, (name - 20 * scale) / widest, row * 0.6);
  const rules = Array.from({ length: rows - 1 }, (_, index) => (index + 1) * row);
  const most = Math.max(1, ...spread.counts.map(({ count }) => count));
  return (
    <>
      {rules.map((y) => (
        <path key={y} class="line-string g1" d={`M0 ${y}H${width}`} />
      ))}
      {columns === 2 ? <path class="line-ink g3" d={`M${width / 2} 0V${height}`} /> : null}
      {options.map((quality, index) => {
        const x = (index % columns) * cellWidth + (index % columns === 1 ? 48 * scale : 0);
        const y = (Math.floor(index / columns) + 0.5) * row;
        const word = questionWords.options[quality];
        return (
          <g key={quality}>
            {letter ? (
              <SvgChord symbol={chordSymbol({ root: letter, quality })} x={x} y={y} size={type} anchor="start" />
            ) : (
              <text class="spread-word" x={x} y={y + 0.33 * type} font-size={type}>
                {word}
              </text>
            )}
            {isRight(truth, quality) ? (
              <path
                class="line-brass g6"
                d={`M${x} ${y + 0.62 * type}h${letter ? type * 1.2 : serifWidth(word, type)}`}
              />
            ) : null}
            {hands ? (
              <HandTally
                hands={handsOn(spread, quality)}
                of={spread.of}
                most={most}
                x={x + name + 20 * scale}
                y={y}
                width={cellWidth - name - 80 * scale}
                scale={scale}
              />
            ) : null}
          </g>
        );
      })}
    </>
  );
}
