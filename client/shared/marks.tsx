import type { ComponentChildren } from 'preact';
import { pencilRingPath } from './pencil.ts';

/** Marks are SVG fragments in the units of the drawing that holds them; `Mark` sets one in a line of text. */

export type Place = { readonly x: number; readonly y: number };

/** A drawing of its own, hidden from screen readers unless labelled. */
export function Mark(props: {
  readonly width: number;
  readonly height: number;
  readonly label?: string;
  readonly class?: string;
  readonly children: ComponentChildren;
}) {
  const { width, height, label } = props;
  return (
    <svg
      class={props.class}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      focusable="false"
      {...(label ? { role: 'img', 'aria-label': label } : { 'aria-hidden': 'true' as const })}
    >
      {props.children}
    </svg>
  );
}

/** What was chosen, drawn once by a pencil. `line` is the line's width in the drawing's units. */
export function PencilRing(
  props: Place & { readonly rx: number; readonly ry: number; readonly line?: number; readonly still?: boolean },
) {
  const path = pencilRingPath(props.x, props.y, props.rx, props.ry, props.line);
  return (
    <path d={path} class={`line-ink g5 round${props.still ? '' : ' drawn'}`} pathLength={props.still ? undefined : 1} />
  );
}

/** An answer that did not count. */
export function DashedRing(props: Place & { readonly rx: number; readonly ry: number; readonly line?: number }) {
  const path = pencilRingPath(props.x, props.y, props.rx, props.ry, props.line);
  return <path d={path} class="line-ink g5 round" stroke-dasharray="7 8" />;
}

/** Final double bar: closed. Its right edge stands at x; `size` sets the thick bar (0.36 of it) and the gap. */
export function DoubleBar(props: Place & { readonly height: number; readonly size: number }) {
  const thick = 0.36 * props.size;
  return (
    <>
      <path d={`M${props.x - thick - 0.42 * props.size} ${props.y}v${props.height}`} class="line-ink g3" />
      <rect x={props.x - thick} y={props.y} width={thick} height={props.height} class="fill-ink" />
    </>
  );
}

/** Dashes of a palm-mute sign with their end hook: kept on this phone. */
export function PalmMuteDashes(props: Place & { readonly width: number }) {
  const { x, y, width } = props;
  return (
    <>
      <path d={`M${x} ${y}h${width}`} class="line-ink g4" stroke-dasharray="14 9" />
      <path d={`M${x + width} ${y - 7}v14`} class="line-ink g4" />
    </>
  );
}

/** Revealed. */
export function BrassRule() {
  return <div class="brass-rule" aria-hidden="true" />;
}

/** The name of the house: two words and a rule. */
export function Wordmark() {
  return (
    <span class="wordmark" role="img" aria-label="Hearsay">
      <span aria-hidden="true">hear</span>
      <i aria-hidden="true" />
      <span aria-hidden="true">say</span>
    </span>
  );
}
