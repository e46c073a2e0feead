import { HatchPatterns, RepeatBars, Slash, XHead } from './music-marks.tsx';

/** Marks of what was found out, in the units of the drawing that holds them. */

/**
 * A share and how sure it is, as a string between two posts, never and every time: pulled up at the share found, back on its line
 * where the interval ends; the x is what guessing would give. Its line lies at y 0, posts reach 30 up and down.
 */
export function PluckedString(props: {
  readonly width: number;
  readonly share: number;
  readonly interval: readonly [number, number];
  readonly guessing: number;
}) {
  const { width, share } = props;
  const [low, high] = props.interval.map((each) => each * width) as [number, number];
  const top = -LIFT;
  const peak = share * width;
  return (
    <>
      <path d={`M${low} 0L${peak} ${top}L${high} 0Z`} class="fill-shade" />
      <path d={`M${low} 0H${high}`} class="line-string g1" stroke-dasharray="3 5" />
      <path d={`M0 0H${low}L${peak} ${top}L${high} 0H${width}`} class="line-ink g4" stroke-linejoin="round" />
      <path d="M0 -30V30" class="line-ink g6" />
      <path d={`M${width} -30V30`} class="line-ink g6" />
      <XHead x={props.guessing * width} y={0} size={20} />
    </>
  );
}

/** How far a plucked string is pulled. */
const LIFT = 46;

/**
 * Two readings in repeat signs, one bar each. With `wrong` the first is marked as what did not sound: hatched, its slashes hollow.
 * `sounding` underlines the one that is heard now. Height 92 from y 0.
 */
export function BothBars(props: {
  readonly id: string;
  readonly width: number;
  readonly wrong: boolean;
  readonly sounding: 'first' | 'second' | null;
}) {
  const { id, width, wrong, sounding } = props;
  const bar = width / 2;
  const beats = (start: number) => [0.34, 0.62].map((place) => start + place * bar);
  return (
    <>
      <HatchPatterns id={id} />
      {wrong && <rect x={26} y={0} width={bar - 26} height={HEIGHT} fill={`url(#${id}-wrong)`} />}
      <RepeatBars x={0} y={0} height={HEIGHT} size={22} side="open" />
      <path d={`M${bar} 0v${HEIGHT}`} class="line-ink g3" />
      <RepeatBars x={width} y={0} height={HEIGHT} size={22} side="close" />
      {beats(8).map((x) => (
        <Slash key={x} x={x} y={HEIGHT / 2} height={52} hollow={wrong} />
      ))}
      {beats(bar - 8).map((x) => (
        <Slash key={x} x={x} y={HEIGHT / 2} height={52} />
      ))}
      {sounding && (
        <path d={`M${(sounding === 'first' ? 0 : bar) + 30} ${HEIGHT + 16}h${bar - 60}`} class="line-brass g6" />
      )}
    </>
  );
}

const HEIGHT = 92;
