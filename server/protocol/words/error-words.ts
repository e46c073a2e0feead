/** What is said of a mishearing: the finding, a sentence to say, a thing to play. */
export type ErrorWords = { readonly finding: string; readonly say: string; readonly play: string };
