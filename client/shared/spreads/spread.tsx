import type { Kind } from '../../../shared-theory/questions/question.ts';
import { CountSpread } from './count-spread.tsx';
import { DirectionSpread } from './direction-spread.tsx';
import { DistanceSpread } from './distance-spread.tsx';
import { HomeSpread } from './home-spread.tsx';
import { KeysSpread } from './keys-spread.tsx';
import { NeckSpread } from './neck-spread.tsx';
import { NumeralSpread } from './numeral-spread.tsx';
import { OneOrSeveralSpread } from './one-or-several-spread.tsx';
import { OrderSpread } from './order-spread.tsx';
import { QualitySpread } from './quality-spread.tsx';
import { SeventhSpread } from './seventh-spread.tsx';
import type { SpreadProps } from './spread-props.ts';
import { StrokesSpread } from './strokes-spread.tsx';
import './spreads.css';

const DRAWINGS: Readonly<Record<Kind, (props: SpreadProps) => preact.JSX.Element>> = {
  strokes: StrokesSpread,
  count: CountSpread,
  direction: DirectionSpread,
  quality: QualitySpread,
  root: NeckSpread,
  bass: NeckSpread,
  seventh: SeventhSpread,
  order: OrderSpread,
  distance: DistanceSpread,
  numeral: NumeralSpread,
  'one-or-several': OneOrSeveralSpread,
  keys: KeysSpread,
  settler: KeysSpread,
  home: HomeSpread,
};

/**
 * How the answers to one question fell, on the drawing they were given on: ink, one bead or stroke a hand. With `truth` the
 * right answer is brass on the same drawing. `label` says for screen readers what a person sees.
 */
export function Spread({ label, ...props }: SpreadProps & { readonly label: string }) {
  const { width, height, scale } = props.size;
  const Drawing = DRAWINGS[props.spread.kind as Kind];
  return (
    <svg
      class="spread"
      role="img"
      aria-label={label}
      viewBox={`0 0 ${width} ${height}`}
      {...(scale === 1 ? { width: `${width / 16}rem`, height: `${height / 16}rem` } : { width, height })}
    >
      <Drawing {...props} />
    </svg>
  );
}
