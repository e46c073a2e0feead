import { spreadWords } from '../../../server/protocol/words/spread-words.ts';
import type { WireSpread } from '../../../server/protocol/views.ts';
import { CLOSE, isWithin, tempoError } from '../../../shared-theory/taps/level.ts';
import { Lens } from '../music-marks.tsx';
import { RulerDrawing, Unread } from './ruler-drawing.tsx';
import type { SpreadProps } from './spread-props.ts';
import { standOn, TEMPO_ENDS, tempoRuler } from './tap-rulers.ts';

const words = spreadWords.tempo;

/** Which tempo was tapped: a bead a hand on a ruler of tempi. With the truth the ruler rings at it, and says where it was counted otherwise. */
export function TempoSpread({ spread, truth, size, hands = true }: SpreadProps) {
  const { width, height, scale } = size;
  const label = Math.max(32 * scale, 12.5);
  const [from, to] = [40 * scale, width - 40 * scale];
  const y = height - label * 3.6;
  const ruler = tempoRuler(from, to - from);
  const tempi = tempiOf(spread);
  const stands = hands ? standOn(ruler, tempi, y - 60 * scale, 34 * scale) : [];
  const marks = truth ? marksOf([truth.key, ...(truth.also ?? [])].map(Number)) : [];
  /** Middle of a word under its tempo, as far in as the drawing holds it. */
  const wordAt = (tempo: number, word: string): number => {
    const half = word.length * label * 0.26;
    return Math.min(Math.max(ruler.at(tempo), half), width - half);
  };
  return (
    <>
      {marks.map(({ tempo, right }) =>
        right ? (
          <Lens
            key={tempo}
            from={[ruler.at(tempo * (1 - CLOSE)), y]}
            to={[ruler.at(tempo * (1 + CLOSE)), y]}
            amplitude={20 * scale}
          />
        ) : null,
      )}
      <RulerDrawing ruler={ruler} stands={stands} from={from} to={to} y={y} size={label} />
      {marks.map(({ tempo, right, word }) => (
        <g key={tempo}>
          <text class="spread-label" x={wordAt(tempo, word)} y={y + label * 3} font-size={label} text-anchor="middle">
            {word}
          </text>
          {right ? (
            <path
              class="line-brass g6"
              d={`M${wordAt(tempo, word) - word.length * label * 0.25} ${y + label * 3.35}h${word.length * label * 0.5}`}
            />
          ) : null}
        </g>
      ))}
      {hands && tempi.length === 0 && (spread.taps?.of ?? 0) > 0 ? (
        <Unread width={width} height={y} size={label * 1.2}>
          {spreadWords.unread}
        </Unread>
      ) : null}
    </>
  );
}

/** Each hand's tempo; where they do not travel one by one, by the tempo of each answer. */
function tempiOf({ taps, counts }: WireSpread): readonly number[] {
  if (taps) return taps.tempi;
  return counts.flatMap(({ key, count }) => Array.from({ length: count }, () => Number(key))).filter(Number.isFinite);
}

/** What is marked on the ruler: the right tempi, and twice and half the usual one where those are not right. */
function marksOf(
  tempi: readonly number[],
): readonly { readonly tempo: number; readonly right: boolean; readonly word: string }[] {
  const right = tempi.filter(Number.isFinite);
  const [usual, ...others] = right;
  if (usual === undefined) return [];
  const lawful = (tempo: number): boolean => right.some((each) => isWithin(tempoError(tempo, each), CLOSE));
  const wrong = [
    { tempo: usual * 2, right: false, word: words.double },
    { tempo: usual / 2, right: false, word: words.half },
  ].filter(({ tempo }) => !lawful(tempo) && tempo >= TEMPO_ENDS[0] && tempo <= TEMPO_ENDS[1]);
  return [
    { tempo: usual, right: true, word: words.right },
    ...others.map((tempo) => ({ tempo, right: true, word: words.also })),
    ...wrong,
  ];
}
