import type { Names } from '../printer.ts';
import { withEnding } from './endings.ts';

/** Dutch: the German endings, but B and its flat Bes. */
export const dutch: Names = ({ letter, alteration }) => withEnding(letter, alteration);
