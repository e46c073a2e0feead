import { liveBenches } from './live.ts';
import { neckBenches } from './neck.ts';
import type { Bench } from './row.ts';
import { soundBenches } from './sound.ts';
import { tuningBenches } from './tuning.ts';

/** Every measurement of `npm run bench`, in the order of its table. */
export const BENCHES: readonly Bench[] = [...soundBenches, ...liveBenches, ...tuningBenches, ...neckBenches];
