import type { WireVamp } from '../../../server/protocol/views.ts';
import { ChordText } from '../../shared/chord-text.tsx';
import { Mark } from '../../shared/marks.tsx';
import { BarLine, RepeatBars, Slash } from '../../shared/music-marks.tsx';

const WIDTH = 350;
const HEIGHT = 40;
/** Above this many slashes a line grows too dense to read; letters then stand alone. */
const MOST_SLASHES = 16;

/** The vamp as one line: letters over slashes, bar lines where the chord changes, between repeat signs. */
export function ChordLine({ vamp }: { readonly vamp: WireVamp }) {
  const beats = vamp.slots.reduce((sum, slot) => sum + slot.beats, 0);
  const unit = (WIDTH - 32) / beats;
  let at = 0;
  const starts = vamp.slots.map((slot) => {
    const start = at;
    at += slot.beats;
    return 16 + start * unit;
  });
  return (
    <div class="chord-line">
      <div class="chord-letters" aria-hidden="false">
        {vamp.slots.map((slot, index) => (
          <span key={index} style={{ left: `${((starts[index] ?? 0) / WIDTH) * 100}%` }}>
            <ChordText symbol={slot.chord} />
          </span>
        ))}
      </div>
      <Mark width={WIDTH} height={HEIGHT} class="chord-slashes">
        <path d={`M0 ${HEIGHT / 2}H${WIDTH}`} class="line-string g2" />
        <RepeatBars side="open" x={0} y={2} height={HEIGHT - 4} size={9} />
        {starts.slice(1).map((x) => (
          <BarLine key={x} x={x - 4} y={4} height={HEIGHT - 8} />
        ))}
        {beats <= MOST_SLASHES &&
          Array.from({ length: beats }, (_, beat) => (
            <Slash key={beat} x={16 + (beat + 0.5) * unit} y={HEIGHT / 2} height={20} />
          ))}
        <RepeatBars side="close" x={WIDTH} y={2} height={HEIGHT - 4} size={9} />
      </Mark>
    </div>
  );
}
