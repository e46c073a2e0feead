import type { ComponentChildren } from 'preact';
import { lineNumber } from '../../../shared-theory/distance-line.ts';
import { printDistance } from '../../../shared-theory/printer.ts';
import { Lens } from '../music-marks.tsx';
import { point } from '../pencil.ts';
import { isBetween, type DistanceLayout } from './distance-layout.ts';

/** A piece of the distance line: ground, edges, ticks, numbers, the block of home. The right place rings across it. */
export function DistanceLine(props: {
  readonly layout: DistanceLayout;
  /** Sizes of the numbers on the scale, and in between. */
  readonly sizes: readonly [number, number];
  readonly said?: number | null;
  readonly sounded?: number | undefined;
  readonly children?: ComponentChildren;
}) {
  const { layout, said, sounded } = props;
  const { ground, lying, home, places } = layout;
  const [right, low] = [ground.x + ground.width, ground.y + ground.height];
  const edges = lying
    ? `M${ground.x} ${ground.y}H${right}M${ground.x} ${low}H${right}`
    : `M${ground.x} ${ground.y}V${low}M${right} ${ground.y}V${low}`;
  const ringing = sounded !== undefined && places.includes(sounded) ? layout.across(sounded) : null;
  return (
    <>
      <rect {...ground} class="fill-shade" />
      {ringing && <Lens from={ringing[0]} to={ringing[1]} amplitude={layout.pitch * 0.3} gauge={3} />}
      <path d={edges} class="line-ink g3" />
      <rect {...home} class="fill-ink" />
      {places.map((place) => {
        const between = isBetween(place);
        const [from, to] = layout.tick(place);
        const [x, y] = layout.number(place);
        const { text } = printDistance(lineNumber(place));
        const size = props.sizes[between ? 1 : 0];
        // Where home lies across the line, its number stands on the block.
        const onHome = y > home.y && y < home.y + home.height && x > home.x && x < home.x + home.width;
        return (
          <g key={place} class={said === place ? 'said' : ''}>
            {!onHome && (
              <path
                d={`M${point(from)}L${point(to)}`}
                class={`line-ink ${said === place ? 'g6' : between ? 'g2' : 'g4'}`}
              />
            )}
            <text
              x={x}
              y={y + size * 0.36}
              font-size={size}
              text-anchor="middle"
              class={`digit${between ? ' between' : ''}${onHome ? ' text-paper' : ''}`}
            >
              {text}
            </text>
          </g>
        );
      })}
      {props.children}
    </>
  );
}
