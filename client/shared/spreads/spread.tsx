import type { Kind } from '../../../shared-theory/questions/question.ts';
import { AccentsSpread } from './accents-spread.tsx';
import { CountSpread } from './count-spread.tsx';
import { DirectionSpread } from './direction-spread.tsx';
import { DistanceSpread } from './distance-spread.tsx';
import { DropOutSpread } from './drop-out-spread.tsx';
import { HomeSpread } from './home-spread.tsx';
import { KeysSpread } from './keys-spread.tsx';
import { NeckSpread } from './neck-spread.tsx';
import { NumeralSpread } from './numeral-spread.tsx';
import { OneOrSeveralSpread } from './one-or-several-spread.tsx';
import { OpenedSpread } from './opened-spread.tsx';
import { OrderSpread } from './order-spread.tsx';
import { PairSpread } from './pair-spread.tsx';
import { QualitySpread } from './quality-spread.tsx';
import { SeventhSpread } from './seventh-spread.tsx';
import { RolesSpread, StrokeGridSpread } from './slot-table-spread.tsx';
import type { SpreadProps } from './spread-props.ts';
import { SteadinessSpread } from './steadiness-spread.tsx';
import { StrokesSpread } from './strokes-spread.tsx';
import { TempoSpread } from './tempo-spread.tsx';
import { TogetherSpread } from './together-spread.tsx';
import './spreads.css';

const DRAWINGS: Readonly<Record<Kind, (props: SpreadProps) => preact.JSX.Element>> = {
  tempo: TempoSpread,
  steadiness: SteadinessSpread,
  'drop-out': DropOutSpread,
  together: TogetherSpread,
  'bar-count': PairSpread,
  threes: PairSpread,
  'half-time': PairSpread,
  swing: PairSpread,
  drive: PairSpread,
  strokes: StrokesSpread,
  pendulum: PairSpread,
  'change-place': PairSpread,
  accents: AccentsSpread,
  'stroke-grid': StrokeGridSpread,
  roles: RolesSpread,
  opened: OpenedSpread,
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
