import type { GrooveSlot } from '../../../shared-theory/groove-grid.ts';
import { Mark } from '../../shared/marks.tsx';
import { Slash } from '../../shared/music-marks.tsx';

const HEIGHTS = [0, 9, 15, 22] as const;
const FOOT = 26;
const WIDTH = 112;

/** A groove at a glance: its slashes by height on one line. */
export function GrooveStrip({ slots }: { readonly slots: readonly GrooveSlot[] }) {
  const pitch = WIDTH / slots.length;
  return (
    <Mark width={WIDTH} height={30} class="groove-strip">
      <path d={`M0 ${FOOT}H${WIDTH}`} class="line-string g1" />
      {slots.map(({ accent }, place) =>
        accent === 0 ? null : (
          <Slash key={place} x={(place + 0.5) * pitch} y={FOOT - HEIGHTS[accent] / 2} height={HEIGHTS[accent]} />
        ),
      )}
    </Mark>
  );
}
