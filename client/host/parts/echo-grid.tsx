import { useCallback, useMemo, useRef } from 'preact/hooks';
import { hostWords } from '../../../server/protocol/words/en.ts';
import { gridText } from '../../shared/answer-grid.ts';
import { AccentMark, BeatGrid } from '../../shared/drawings/beat-grid.tsx';
import { Sweep } from '../../shared/music-marks.tsx';
import { layGrid } from '../../shared/spreads/grid-hands.ts';
import { drawnGrid, echoSweep } from '../echo-layout.ts';
import type { Heard } from '../sound-view.ts';
import { useHeard } from './sweep.tsx';

/** Room over the grid for the plectrum. */
const HEAD = 70;

/** A grid that somebody drew, while it sounds: its slashes, and the sweep over them. Whose it is nobody is told. */
export function EchoGrid({
  groove,
  width,
  height,
  still,
  position,
}: {
  readonly groove: string;
  readonly width: number;
  readonly height: number;
  /** Reduced motion: nothing travels. */
  readonly still: boolean;
  readonly position: () => Heard | null;
}) {
  const { grid, weights } = useMemo(() => drawnGrid(groove), [groove]);
  const rows = useMemo(() => layGrid(grid, { width, height: height - HEAD, scale: 1 }), [grid, width, height]);
  const mark = useRef<SVGGElement>(null);
  const onFrame = useCallback(
    (heard: Heard | null) => {
      const element = mark.current;
      if (!element) return;
      const at = echoSweep(grid, rows, heard, still);
      element.style.visibility = at ? 'visible' : 'hidden';
      if (at) element.style.transform = `translate(${at.x}px, ${still ? at.row.base : at.row.y}px)`;
    },
    [grid, rows, still],
  );
  useHeard(true, position, onFrame);
  const reach = rows[0] ? rows[0].base - rows[0].y : 0;
  const said = gridText(
    'accents',
    weights.map((weight) => Math.round(weight)),
    grid,
  );
  return (
    <svg
      class="echo-grid"
      role="img"
      aria-label={`${hostWords.round.changes.echo}: ${said}`}
      viewBox={`0 ${-HEAD} ${width} ${height}`}
      width={`${width / 16}rem`}
      height={`${height / 16}rem`}
    >
      <BeatGrid rows={rows}>
        {rows
          .flatMap(({ cells }) => cells)
          .map((cell) => (
            <AccentMark key={cell.slot} cell={cell} weight={weights[cell.slot] ?? 0} />
          ))}
      </BeatGrid>
      <g class="sweep" visibility="hidden" ref={mark}>
        {still ? (
          <path class="line-brass step-mark" d="M-30 16h60" />
        ) : (
          <Sweep x={0} y={-8} height={reach + 24} plectrum={52} />
        )}
      </g>
    </svg>
  );
}
