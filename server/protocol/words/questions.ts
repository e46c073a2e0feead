import { questionWords } from './question-words.ts';
import { fill } from './fill.ts';

/** What a prompt depends on: the pad as it travels. */
type Asked = {
  readonly kind: string;
  readonly target: number;
  readonly options?: readonly string[];
  readonly loop?: string;
};

/** The question as spoken: `Third chord: major or minor?`. Throws RangeError for a kind that has no prompt. */
export function questionPrompt({ kind, target, options = [], loop }: Asked): string {
  const { prompts } = questionWords;
  const which = ordinal(target);
  const blanks = { which, Which: capital(which) };
  switch (kind) {
    case 'direction':
      // In a loop of two there is one other place to go; in a longer one home may come back last.
      return fill(loop === 'two' && target === 1 ? prompts.directionNext : prompts.directionLater, blanks);
    case 'quality': {
      const moods = options.length > 0 && options.every((option) => option === 'major' || option === 'minor');
      return fill(moods ? prompts.qualityTwo : prompts.qualityMore, blanks);
    }
    case 'root':
      return fill(prompts.root, blanks);
    case 'keys':
      return keysPrompt(options.includes('relatives'), loop);
    case 'strokes':
      return prompts.strokes;
    case 'count':
      return prompts.count;
    case 'distance':
      return fill(prompts.distance, blanks);
    case 'numeral':
      return loop === 'one' ? prompts.numeralOne : prompts.numeral;
    case 'one-or-several':
      return options.includes('relatives') ? prompts.oneOrSeveralRelatives : prompts.oneOrSeveralMajors;
    case 'settler':
      return target === 0 ? prompts.settler : prompts.settlerAgain;
    default:
      throw new RangeError(`No prompt for a question of kind ${kind}`);
  }
}

function keysPrompt(relatives: boolean, loop: string | undefined): string {
  const { prompts } = questionWords;
  if (loop === 'one') return relatives ? prompts.keysRelativesOne : prompts.keysMajorsOne;
  if (loop === undefined) return relatives ? prompts.keysRelativesAny : prompts.keysMajorsAny;
  return relatives ? prompts.keysRelatives : prompts.keysMajors;
}

/** Names in a row, each once: `D, E and F#`. */
export function listed(names: readonly string[], last: string = questionWords.and): string {
  const each = [...new Set(names)];
  const end = each.pop() ?? '';
  return each.length === 0 ? end : `${each.join(', ')} ${last} ${end}`;
}

/** A count in words up to twelve, in figures above. */
export function numberWord(count: number): string {
  return questionWords.numbers[count] ?? String(count);
}

/** Slot of the loop as an ordinal: 0 `first`, 1 `next`, 2 `third`; beyond the words in figures: `21st`. */
export function ordinal(slot: number): string {
  const place = slot + 1;
  return questionWords.ordinals[slot] ?? `${place}${questionWords.ordinalEndings[place % 10] ?? 'th'}`;
}

/** With a capital letter, as a sentence begins. */
export function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}
