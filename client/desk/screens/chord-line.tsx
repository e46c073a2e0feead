import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import type { Meter } from '../../../shared-theory/vamps.ts';
import type { WireVamp } from '../../../server/protocol/views.ts';
import { capoNames } from '../../../server/protocol/words/capo-names.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { ChordText } from '../../shared/chord-text.tsx';
import { shapeName } from '../../shared/shape-name.ts';
import { Mark } from '../../shared/marks.tsx';
import { BarLine, RepeatBars, Slash } from '../../shared/music-marks.tsx';

const WIDTH = 350;
const HEIGHT = 40;
/** Above this many slashes a line grows too dense to read; bar lines and letters then stand alone. */
const MOST_SLASHES = 16;
/** Letters shrink where a chord has less room than this, in pixels. */
const LETTER_ROOM = 58;

/** The vamp as one line: letters where a chord begins, bar lines by the meter, slashes for beats, between repeat signs. */
export function ChordLine({ vamp }: { readonly vamp: WireVamp }) {
  const { slots } = vamp;
  const beats = slots.reduce((sum, slot) => sum + slot.beats, 0);
  const unit = (WIDTH - 32) / beats;
  const at = (beat: number): number => 16 + beat * unit;
  const starts = slots.map((_, index) => slots.slice(0, index).reduce((sum, slot) => sum + slot.beats, 0));
  const bar = BEATS_PER_BAR[vamp.meter as Meter];
  const barLines = Array.from({ length: Math.ceil(beats / bar) - 1 }, (_, index) => at((index + 1) * bar));
  const shortest = Math.min(...slots.map((slot) => slot.beats)) * unit;
  const size = Math.max(13, Math.min(26, (26 * shortest) / LETTER_ROOM));
  const { capo = 0 } = vamp;
  const letters = (chords: readonly string[]) => (
    <div class="chord-letters" style={{ fontSize: `${size}px` }}>
      {chords.map((chord, index) => (
        <span key={index} style={{ left: `${(at(starts[index] ?? 0) / WIDTH) * 100}%` }}>
          <ChordText symbol={chord} />
        </span>
      ))}
    </div>
  );
  const sounding = slots.map(({ chord }) => chord);
  return (
    <div class="chord-line">
      {capo > 0 && <p class="chord-names">{capoNames.sounding}</p>}
      {letters(sounding)}
      <Mark width={WIDTH} height={HEIGHT} class="chord-slashes">
        <path d={`M0 ${HEIGHT / 2}H${WIDTH}`} class="line-string g2" />
        <RepeatBars side="open" x={0} y={2} height={HEIGHT - 4} size={9} />
        {barLines.map((x) => (
          <BarLine key={x} x={x} y={2} height={HEIGHT - 4} />
        ))}
        {beats <= MOST_SLASHES &&
          Array.from({ length: beats }, (_, beat) => (
            <Slash key={beat} x={at(beat + 0.5)} y={HEIGHT / 2} height={Math.min(20, unit * 1.2)} />
          ))}
        <RepeatBars side="close" x={WIDTH} y={2} height={HEIGHT - 4} size={9} />
      </Mark>
      {capo > 0 && (
        <>
          <p class="chord-names">{fill(capoNames.shape, { capo })}</p>
          {letters(sounding.map((chord) => shapeName(chord, capo)))}
        </>
      )}
    </div>
  );
}
