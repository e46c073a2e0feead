import { feelAnswers, feelSpoken } from '../../../server/protocol/words/asked/feel.ts';
import { PairBar } from '../../shared/drawings/pair-marks.tsx';
import { PAIR_BARS, pairBar, type PairKind } from '../../shared/drawings/pair-marks-layout.ts';
import type { PadModule, PadProps } from './pad.ts';
import { TwoBars } from './two-bars.tsx';

type Feel = keyof typeof feelAnswers;

export const spoken = feelSpoken;
export const said: PadModule<Feel>['said'] = (_asking, feel) => feelAnswers[feel];

/** Two bars that differ in what is asked and in nothing else. */
export function Pad(props: PadProps<Feel>) {
  const kind = props.asking.kind as PairKind;
  return (
    <TwoBars
      {...props}
      answers={Object.keys(PAIR_BARS[kind]) as readonly Feel[]}
      textOf={(feel) => feelAnswers[feel]}
      bar={(feel, place) => <PairBar bar={pairBar(kind, feel)} {...place} />}
    />
  );
}
