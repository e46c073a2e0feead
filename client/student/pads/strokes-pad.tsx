import { strokesAnswers, strokesSpoken } from '../../../server/protocol/words/asked/strokes.ts';
import type { StrokeFeel } from '../../../shared-theory/truth.ts';
import { StrokesBar } from '../../shared/drawings/strokes.tsx';
import type { PadModule, PadProps } from './pad.ts';
import { TwoBars } from './two-bars.tsx';

const ROWS: readonly StrokeFeel[] = ['all-downs', 'down-up'];

export const spoken = { strokes: strokesSpoken };
export const said: PadModule<StrokeFeel>['said'] = (_asking, feel) => strokesAnswers[feel];

/** Two bars under their bow signs: all down-bows, or down-bow and up-bow in turn. */
export function Pad(props: PadProps<StrokeFeel>) {
  return (
    <TwoBars
      {...props}
      answers={ROWS}
      textOf={(feel) => strokesAnswers[feel]}
      bar={(feel, place) => <StrokesBar feel={feel} {...place} />}
    />
  );
}
