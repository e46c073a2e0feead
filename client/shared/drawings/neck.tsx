import type { ComponentChildren } from 'preact';
import { capoWords } from '../../../server/protocol/words/asked/neck.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { point } from '../pencil.ts';
import type { CapoLayout, NeckLayout } from './neck-layout.ts';

/** The neck itself: ground, frets, inlays, nut, strings, capo. Beads and lenses go on top as children. */
export function Neck(props: {
  readonly layout: NeckLayout;
  /** Radius of the ringed string numbers; 0 leaves them out. */
  readonly names?: number;
  /** Numbers of the dotted frets beside the neck. */
  readonly numbers?: boolean;
  /** On a flat neck: numbers of this size in the inlays' places, clear of the beads on the strings. */
  readonly inlayNumbers?: number;
  readonly children?: ComponentChildren;
}) {
  const { layout, names = 13 } = props;
  const { ground, nut } = layout;
  return (
    <>
      <rect x={ground.x} y={ground.y} width={ground.width} height={ground.height} class="fill-shade" />
      {layout.frets.map(([from, to]) => (
        <path key={point(from)} d={`M${point(from)}L${point(to)}`} class="line-string g3" />
      ))}
      {props.inlayNumbers === undefined
        ? layout.inlays.map(({ at, r }) => <circle key={point(at)} cx={at[0]} cy={at[1]} r={r} class="fill-faint" />)
        : layout.numbers.map(({ fret, at }) => (
            <text
              key={fret}
              x={at[0]}
              y={ground.y + ground.height / 2}
              dy="0.35em"
              font-size={props.inlayNumbers}
              text-anchor="middle"
              class="fill-ink2"
            >
              {fret}
            </text>
          ))}
      {nut && <rect x={nut.x} y={nut.y} width={nut.width} height={nut.height} class="fill-ink" />}
      {layout.strings.map(({ string, from, to }) => (
        <path key={string} d={`M${point(from)}L${point(to)}`} class={`line-ink ${string === 6 ? 'g6' : 'g4'}`} />
      ))}
      {props.numbers &&
        layout.numbers.map(({ fret, at }) => (
          <text key={fret} x={at[0]} y={at[1]} dy="0.35em" font-size="16" text-anchor="middle" class="fill-ink2">
            {fret}
          </text>
        ))}
      {layout.capo && <rect {...layout.capo.behind} class="fill-paper" fill-opacity="0.66" />}
      {names > 0 &&
        layout.names.map(({ string, at }) => (
          <g key={string}>
            <circle cx={at[0]} cy={at[1]} r={names} class="fill-paper" />
            <circle cx={at[0]} cy={at[1]} r={names} class="line-ink g2" />
            <text x={at[0]} y={at[1]} dy="0.35em" font-size={names * 1.15} font-weight="650" text-anchor="middle">
              {string}
            </text>
          </g>
        ))}
      {layout.capo && <Capo capo={layout.capo} />}
      {props.children}
    </>
  );
}

/** A bar across the strings with its word and number. */
function Capo({ capo: { bar, words, anchor, fret } }: { readonly capo: CapoLayout }) {
  const flat = anchor !== 'middle';
  return (
    <>
      <rect {...bar} rx="5" class="fill-ink" />
      <text
        x={words[0]}
        y={words[1]}
        dy="0.35em"
        font-size={flat ? 0.15 * bar.height : Math.min(0.72 * bar.height, 0.075 * bar.width)}
        font-weight="650"
        text-anchor={anchor}
        class={flat ? '' : 'text-paper'}
      >
        {fill(capoWords.bar, { fret })}
      </text>
    </>
  );
}
