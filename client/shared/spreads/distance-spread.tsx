import { questionWords } from '../../../server/protocol/words/en.ts';
import { OCTAVE } from '../../../shared-theory/questions/distance/ask.ts';
import { layDistance, type DistanceLayout } from '../drawings/distance-layout.ts';
import { DistanceLine } from '../drawings/distance-line.tsx';
import { layPiles } from './bead-layout.ts';
import { BeadPile } from './bead-row.tsx';
import { handsOn, type SpreadProps } from './spread-props.ts';

/** Below this length of a semitone the line is sawn at home, its halves one above the other. */
const LEAST_SEMITONE = 24;
const WHOLE = [[-OCTAVE, OCTAVE]] as const;
const HALVES = [
  [0, OCTAVE],
  [-OCTAVE, 0],
] as const;

/** Where the chord was heard to lie: beads stand on the upper edge of the line, one a hand; home lies across its middle. */
export function DistanceSpread({ spread, truth, size, hands = true }: SpreadProps) {
  const { width, height, scale } = size;
  const whole = width / (2 * OCTAVE + 1.5) >= LEAST_SEMITONE;
  const lines = whole ? WHOLE : HALVES;
  const word = Math.max(34 * scale, 15);
  const row = height / lines.length;
  const breadth = Math.min(170 * scale, row * 0.45);
  // Half of home is at either end where the line is sawn.
  const home = whole ? (width / (2 * OCTAVE + 1.5)) * 0.96 : 22 * (scale / 0.45);
  const semitone = whole ? home / 0.96 : (width - home) / (OCTAVE + 1.5);
  const room = row - breadth - 1.5 * word;
  const pitch = Math.min(47 * scale, semitone * 0.94);
  const places = Array.from({ length: 2 * OCTAVE + 1 }, (_, index) => index - OCTAVE);
  const piles = new Map(
    layPiles(
      places.map((place) => handsOn(spread, String(place))),
      room - pitch,
      pitch,
    ).map((pile, index) => [places[index], pile]),
  );
  const numbers = [Math.min(44 * scale, semitone * 0.9), Math.min(30 * scale, semitone * 0.72)] as const;
  return (
    <>
      {lines.map(([from, to], index) => {
        const ground = { x: 0, y: row * index + room, width, height: breadth };
        const layout = layDistance({ ground, lying: true, from, to, home });
        // Home is on both halves; its hands stand on one.
        const held = layout.places.filter((place) => index === 0 || place !== 0);
        return (
          <g key={from}>
            <DistanceLine layout={layout} sizes={numbers} sounded={truth ? Number(truth.key) : undefined}>
              {hands
                ? held.map((place) => {
                    const pile = piles.get(place);
                    const [[x, y]] = layout.across(place);
                    return pile ? (
                      <BeadPile key={place} pile={pile} from={[x, y - pile.radius * 1.15]} toward="up" />
                    ) : null;
                  })
                : null}
            </DistanceLine>
            <LineWords layout={layout} size={word} whole={whole} />
          </g>
        );
      })}
    </>
  );
}

/** Which way is which, under the line. */
function LineWords({
  layout: { ground, home, places },
  size,
  whole,
}: {
  readonly layout: DistanceLayout;
  readonly size: number;
  readonly whole: boolean;
}) {
  const names = whole
    ? (['down', 'home', 'up'] as const)
    : places.includes(OCTAVE)
      ? (['up'] as const)
      : (['down'] as const);
  const y = ground.y + ground.height + 1.1 * size;
  return (
    <>
      {names.map((name) => {
        const atEnd = (name === 'up') === whole;
        const x = name === 'home' ? home.x + home.width / 2 : atEnd ? ground.x + ground.width : ground.x;
        return (
          <text
            key={name}
            class="spread-label fill-ink2"
            x={x}
            y={y}
            font-size={size}
            text-anchor={name === 'home' ? 'middle' : atEnd ? 'end' : 'start'}
          >
            {questionWords.line[name]}
          </text>
        );
      })}
    </>
  );
}
