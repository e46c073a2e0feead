import type { ComponentChildren } from 'preact';
import { printChord } from '../names.ts';
import { SvgChord } from '../chord-text.tsx';
import { joinPath, keyLabel, neighbourRuns, pegPath, postPath, type CircleLayout } from './circle-layout.ts';

/**
 * Size of a key's name, as a share of the radius: the usual one, or smaller where so long a name would burst its peg, which is narrow
 * on the left and right. A name's width is told by its length alone: a phone does not fetch those of the letters for it.
 */
export function nameSize(id: string): number {
  const ems = 0.3 + 0.6 * printChord(keyLabel(id)).text.length;
  return id.endsWith('m') ? Math.min(0.12, 0.24 / ems) : Math.min(0.2, 0.28 / ems);
}

/** The circle of fifths: posts, pegs, letters, and arcs that join neighbours. What was said is ink, what sounded brass. */
export function Circle(props: {
  readonly layout: CircleLayout;
  readonly said: readonly string[];
  /** Keys that own the chords, once shown: brass pegs with an ink rim. */
  readonly sounded?: readonly string[];
  /** Keys that can be meant; the others step back. Absent: all. */
  readonly among?: readonly string[] | undefined;
  readonly children?: ComponentChildren;
}) {
  const { layout, said, sounded = [], among } = props;
  const places = (ids: readonly string[]): number[] =>
    [...layout.majors, ...layout.minors].filter((peg) => ids.includes(peg.id)).map((peg) => peg.place);
  const shown = props.sounded !== undefined;
  return (
    <>
      <circle cx={layout.cx} cy={layout.cy} r={layout.inner} class="line-string g2" />
      {layout.majors.map((peg) => (
        <path key={peg.place} d={postPath(layout, peg.place)} class="line-ink g4" />
      ))}
      {neighbourRuns(places(shown ? sounded : said)).map((run) => (
        <path
          key={run.from}
          d={joinPath(layout, run)}
          class={`${shown ? 'line-brass' : 'line-ink'} join round`}
          stroke-width={layout.radius * 0.062}
        />
      ))}
      {[...layout.majors, ...layout.minors].map((peg) => {
        const [isSaid, isRight] = [said.includes(peg.id), sounded.includes(peg.id)];
        const fill = isRight ? 'fill-brass' : isSaid ? 'fill-ink' : 'fill-paper';
        const out = among !== undefined && !among.includes(peg.id);
        const letter = isRight ? 'fill-onbrass' : isSaid ? 'text-paper' : out ? 'fill-string' : '';
        const size = layout.radius * nameSize(peg.id);
        return (
          <g key={peg.id}>
            <path d={pegPath(layout, peg)} class={fill} />
            <path d={pegPath(layout, peg)} class={out ? 'line-string g1' : `line-ink ${isRight ? 'g4' : 'g2'}`} />
            <SvgChord symbol={keyLabel(peg.id)} x={peg.at[0]} y={peg.at[1]} size={size} class={letter} />
          </g>
        );
      })}
      {props.children}
    </>
  );
}
