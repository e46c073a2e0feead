/** What a prompt depends on: the pad as it travels. */
export type Asked = {
  readonly kind: string;
  readonly target: number;
  readonly options?: readonly string[];
  readonly loop?: string;
  /** settler: a note is sung over the loop; without it, a chord joins it. */
  readonly sung?: true;
};

/** What a question says of itself. Kept apart by pad: a phone fetches the words of the question that it is asked. */
export type Spoken = {
  /** The question as spoken: `Third chord: major or minor?`. */
  readonly prompt: (asked: Asked) => string;
  /** The line under the prompt. */
  readonly instruction: (asked: Asked) => string;
};
