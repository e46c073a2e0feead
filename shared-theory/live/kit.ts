import { withBand } from '../band.ts';
import type { Performance } from '../perform.ts';
import type { VoicedVamp } from '../vamps.ts';
import { unheard } from './levels.ts';

/** The groove of a vamp's performance on the kit alone: no string sounds. */
export function kitOnly(vamp: VoicedVamp, performance: Performance): Performance {
  const { kit = [] } = withBand(vamp, performance, { kit: true, bass: false });
  return { ...unheard(performance), kit };
}
