import type { FunctionComponent } from 'preact';
import type { WireAsking, WireTruth } from '../../../server/protocol/views.ts';
import type { Spoken } from '../../../server/protocol/words/asked/asked.ts';

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
  /** The groove has fallen silent just now, and is not back. */
  readonly droppedOut: boolean;
  readonly onChoose: (answer: Answer | null) => void;
  /** Writes an answer without being asked to, where what is written is the last of what goes on. */
  readonly onWrite: (answer: Answer) => void;
};

/** What comes with a pad: all of a question that the other questions can do without. */
export type PadModule<Answer = unknown> = {
  readonly Pad: FunctionComponent<PadProps<Answer>>;
  /** By kind: what the questions that are answered on it say. */
  readonly spoken: Readonly<Record<string, Spoken>>;
  /** An answer in words, as in "You wrote: up."; absent where the words come with the mark. */
  readonly said?: (asking: WireAsking, answer: Answer) => string;
};
