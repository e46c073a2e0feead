import type { WireAsking, WireTruth } from '../../../server/protocol/views.ts';

/** What every pad gets. A pad draws an answer and reports taps; it sends nothing. */
export type PadProps<Answer> = {
  readonly asking: WireAsking;
  /** What is chosen on the pad; null where nothing is. */
  readonly chosen: Answer | null;
  /** Closed: nothing can be tapped. */
  readonly closed: boolean;
  /** What is chosen did not count. */
  readonly dashed: boolean;
  /** The right answer, once shown. */
  readonly truth?: WireTruth | undefined;
  readonly leftHanded: boolean;
  readonly onChoose: (answer: Answer | null) => void;
};
