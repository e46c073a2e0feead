/** What a phone needs only after it has answered, or when something went wrong: fetched behind the pads. */
export { truthSentence } from './answer-text.ts';
export { MarkPanel } from './screens/mark-panel.tsx';
export { sentenceOf } from './sentences.ts';
