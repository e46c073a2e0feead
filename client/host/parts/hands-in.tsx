import type { HostView } from '../../../server/protocol/views.ts';
import { hostWords } from '../../../server/protocol/words/en.ts';
import { tallyLayout } from '../../shared/marks-geometry.ts';
import { DoubleBar } from '../../shared/marks.tsx';
import { Tally } from '../../shared/music-marks.tsx';
import { handsOf } from '../words.ts';

const HEIGHT = 78;

function label(closed: boolean, scale: number): string {
  const { handsIn, closed: shut, tens } = hostWords.round;
  return [closed ? shut : handsIn, ...(scale > 1 ? [tens] : [])].join(', ');
}

/** How many hands are in, never which: gates of five, and the count; the double bar once closed. */
export function HandsIn({
  handsIn,
  handsOf: of,
  closed,
  most,
}: Pick<HostView, 'handsIn' | 'handsOf'> & {
  readonly closed: boolean;
  /** Widest the tally may grow, in drawing units. */
  readonly most: number;
}) {
  // Above sixty hands one stroke is ten, as the mark itself draws it.
  const scale = Math.max(handsIn, of) > 60 ? 10 : 1;
  const strokes = Math.max(1, Math.ceil(Math.max(handsIn, of) / scale));
  const gap = Math.min(20.5, most / tallyLayout(0, strokes, 1, 1).width || 20.5);
  const width = tallyLayout(0, strokes, gap, HEIGHT).width + 2 * gap;
  return (
    <div class="hands-in">
      <span class="label">{label(closed, scale)}</span>
      <div class="hands-row">
        <svg
          aria-hidden="true"
          viewBox={`${-0.6 * gap} -4 ${width} ${HEIGHT + 8}`}
          width={`${width / 16}rem`}
          height={`${(HEIGHT + 8) / 16}rem`}
        >
          <Tally x={0} y={0} hands={handsIn} of={of} gap={gap} height={HEIGHT} />
        </svg>
        <output class="hands-count">{handsOf(handsIn, of)}</output>
        {closed ? (
          <svg class="closed" aria-hidden="true" viewBox="0 0 26 84" width="1.625rem" height="5.25rem">
            <DoubleBar x={26} y={0} height={84} size={26} />
          </svg>
        ) : null}
      </div>
    </div>
  );
}
