import type { ComponentChildren } from 'preact';
import { lensAmplitude } from '../../shared/marks-geometry.ts';
import { Lens, RepeatBars, Slash } from '../../shared/music-marks.tsx';
import { MARGIN, type Frame } from '../frame.ts';
import type { BarPlace, SlotPlace, StaveLayout } from '../stave-layout.ts';

/** Heights in the drawing of the bars, in drawing units from its upper edge. */
export const STAVE = { bracket: 4, first: 100, gap: 34, last: 100 + 5 * 34, height: 308 } as const;
const STRINGS = [1, 2, 3, 4, 5, 6] as const;

/** y of a string, 1 is the thinnest; fractions lie between strings. */
function stringY(string: number): number {
  return STAVE.first + (string - 1) * STAVE.gap;
}

/** The six strings of one bar as they ring; the strings at rest vanish behind them. */
function Ringing({ bar }: { readonly bar: BarPlace }) {
  return (
    <>
      {STRINGS.map((string) => {
        const y = stringY(string);
        const gauge = string < 5 ? 2 : 3;
        return (
          <g key={string}>
            <path class={`string-covered g${string}`} d={`M${bar.x} ${y}h${bar.width}`} />
            <Lens
              from={[bar.x, y]}
              to={[bar.x + bar.width, y]}
              amplitude={lensAmplitude(string - 1, STAVE.gap)}
              gauge={gauge}
            />
          </g>
        );
      })}
    </>
  );
}

/** A volta bracket over one slot; only the last closes on the right, as in print. */
function Bracket({ x, width, last }: SlotPlace & { readonly last: boolean }) {
  const end = x + width - (last ? 0 : 16);
  const [top, foot] = [STAVE.bracket, STAVE.bracket + 40];
  return <path class="line-ink g4" d={`M${x} ${foot}V${top}H${end}${last ? `V${foot}` : ''}`} />;
}

type StaveProps = {
  readonly layout: StaveLayout;
  readonly frame: Frame;
  readonly label: string;
  /** Slashes are hollow: nothing of this vamp has sounded yet. */
  readonly hollow: boolean;
  /** Brackets over the slots may be drawn. */
  readonly brackets: boolean;
  /** How the bar is made may not be told yet: the strings alone, ringing from end to end where anything sounds. */
  readonly untold: boolean;
  /** Bar whose strings ring; null for silence. */
  readonly ringing: number | null;
  /** The sweep, drawn over everything. */
  readonly children?: ComponentChildren;
};

/** The vamp as a line of bars on six strings that run off both edges of the picture. Draws nothing that has to be heard. */
export function Stave({ layout, frame, label, hollow, brackets, untold, ringing, children }: StaveProps) {
  const right = frame.width - MARGIN;
  const signs = { y: STAVE.first, height: 5 * STAVE.gap, size: 26, dots: [stringY(3), stringY(4)] as const };
  const slashHeight = Math.min(3 * STAVE.gap, layout.pitch * 1.45);
  const whole: BarPlace = { x: MARGIN, width: right - MARGIN, from: MARGIN, to: right, beats: 1 };
  const rings = ringing === null ? undefined : untold ? whole : layout.bars[ringing];
  return (
    <svg
      class="stave"
      role="img"
      aria-label={label}
      viewBox={`0 0 ${frame.width} ${STAVE.height}`}
      width={`${frame.width / 16}rem`}
      height={`${STAVE.height / 16}rem`}
    >
      {STRINGS.map((string) => (
        <path key={string} class={`line-string g${string}`} d={`M-200 ${stringY(string)}H${frame.width + 200}`} />
      ))}
      {rings ? <Ringing bar={rings} /> : null}
      {untold ? null : (
        <>
          <RepeatBars side="open" x={MARGIN} {...signs} />
          <RepeatBars side="close" x={right} {...signs} />
          {layout.bars.slice(1).map((bar) => (
            <path key={bar.x} class="line-ink g3" d={`M${bar.x} ${STAVE.first}v${5 * STAVE.gap}`} />
          ))}
          {layout.slashes.map((x) => (
            <Slash key={x} x={x} y={stringY(3.5)} height={slashHeight} width={0.2} hollow={hollow} />
          ))}
          {brackets
            ? layout.slots.map((slot, index) => (
                <Bracket key={slot.x} {...slot} last={index === layout.slots.length - 1} />
              ))
            : null}
        </>
      )}
      {untold ? null : children}
    </svg>
  );
}
