import { distanceSpoken, lineWords } from '../../../server/protocol/words/asked/distance.ts';
import { OCTAVE } from '../../../shared-theory/questions/distance/ask.ts';
import { useBox, type Box } from '../../shared/box.ts';
import { distanceAloud, distanceText } from '../../shared/answer-names.ts';
import { isBetween, layDistance, type DistanceLayout } from '../../shared/drawings/distance-layout.ts';
import { DistanceLine } from '../../shared/drawings/distance-line.tsx';
import { Choice } from './choice.tsx';
import type { PadModule, PadProps } from './pad.ts';
import { Ring } from './ring.tsx';

/** Below this height of the screen a standing line's zones would be too low for a thumb: the line lies down. */
const LEAST_STANDING = 660;
/** Row of words over a piece, and length of the block of home. */
const WORDS = 22;
const HOME = 24;
const WAYS = ['down', 'up'] as const;

export const spoken = { distance: distanceSpoken };
export const said: PadModule<number>['said'] = (_asking, semitones) => distanceText(semitones);

/** The distance line sawn at home: one half climbs from it, the other hangs down from it. */
export function Pad(props: PadProps<number>) {
  const [ref, box] = useBox({ width: 328, height: 460 });
  const { width, height } = box;
  // By the screen and not by the pad, which gives way to the foot once an answer is shown: the line stays as it was tapped.
  const lying = innerHeight < LEAST_STANDING;
  const halves = WAYS.map((way) => ({ way, ...halfOf(way, box, lying) }));
  return (
    <div class="fill" ref={ref}>
      <svg class="under" width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        {halves.map(({ way, layout, word }) => (
          <g key={way}>
            <text x={word.x} y={word.y} font-size="16" text-anchor={word.anchor} class="fill-ink2">
              {lineWords[way]}
            </text>
            <DistanceLine
              layout={layout}
              sizes={sizesOf(layout)}
              said={props.chosen}
              sounded={props.truth?.answer as number | undefined}
            >
              <HomeWord layout={layout} />
              {props.chosen !== null && layout.places.includes(props.chosen) && (
                <Chosen layout={layout} place={props.chosen} dashed={props.dashed} />
              )}
            </DistanceLine>
          </g>
        ))}
      </svg>
      {halves.flatMap(({ way, layout }) =>
        layout.places.flatMap((place) => {
          const pressed = props.chosen === place;
          const choice = {
            label: distanceAloud(place),
            pressed,
            closed: props.closed,
            onTap: () => props.onChoose(pressed ? null : place),
          };
          // Home is on both pieces, and its block is a target over its whole breadth.
          return [
            <Choice key={`${way} ${place}`} {...choice} at={layout.zone(place)} twin={place === 0 && way === 'down'} />,
            place === 0 && <Choice key={way} {...choice} at={layout.home} twin />,
          ];
        }),
      )}
    </div>
  );
}

/** One half of the line in the pad, and where its words stand. Standing, equal numbers of both halves lie side by side. */
function halfOf(way: 'up' | 'down', { width, height }: Box, lying: boolean) {
  const up = way === 'up';
  const line = { lying, from: up ? 0 : -OCTAVE, to: up ? OCTAVE : 0, home: HOME };
  if (lying) {
    const row = height / 2;
    const top = (up ? 0 : row) + WORDS;
    const ground = { x: up ? 0 : HOME, y: top, width: width - HOME, height: Math.min(row - WORDS - 4, 140) };
    const word = { x: up ? 0 : width, y: top - 6, anchor: up ? 'start' : 'end' } as const;
    return { layout: layDistance({ ...line, ground }), word };
  }
  const breadth = Math.min(width * 0.46, 200);
  const ground = {
    x: up ? width - breadth : 0,
    y: WORDS + (up ? HOME : 0),
    width: breadth,
    height: height - WORDS - HOME,
  };
  const word = { x: up ? width : 0, y: WORDS - 6, anchor: up ? 'end' : 'start' } as const;
  return { layout: layDistance({ ...line, ground }), word };
}

/** As large as the spacing allows. */
function sizesOf({ lying, pitch }: DistanceLayout): readonly [number, number] {
  return lying
    ? [Math.min(27, pitch), Math.min(19, pitch * 0.8)]
    : [Math.min(27, pitch * 0.83), Math.min(19, pitch * 0.58)];
}

/** The word on the block of home: along it. */
function HomeWord({ layout: { home, lying } }: { readonly layout: DistanceLayout }) {
  const [x, y] = [home.x + home.width / 2, home.y + home.height / 2];
  return (
    <text
      x={x}
      y={y}
      dy="0.34em"
      font-size="16"
      font-weight="600"
      text-anchor="middle"
      class="text-paper"
      {...(lying && { transform: `rotate(-90 ${x} ${y})` })}
    >
      {lineWords.home}
    </text>
  );
}

/** The ring of one's own answer round its number. */
function Chosen(props: { readonly layout: DistanceLayout; readonly place: number; readonly dashed: boolean }) {
  const { layout, place } = props;
  const [x, y] = layout.number(place);
  const size = sizesOf(layout)[isBetween(place) ? 1 : 0];
  return <Ring x={x} y={y} rx={size * (isBetween(place) ? 1.05 : 0.82)} ry={size * 0.68} dashed={props.dashed} />;
}
