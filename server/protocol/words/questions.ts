import { questionWords } from './question-words.ts';
import { rightWords } from './right-words.ts';
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

/** The right answer of a keys question: `Two keys own D and G.`; `chords` as the printer writes them. */
export function keysSentence(policy: 'majors' | 'relatives', count: number, chords: readonly string[]): string {
  const right = rightWords;
  const none = policy === 'majors' ? right.keysNoneMajors : right.keysNoneRelatives;
  const sentence = count === 0 ? none : count === 1 ? right.keysOne : right.keysSome;
  return fill(sentence, { Number: capital(numberWord(count)), chords: listed(chords) });
}

/** Names in a row, each once: `D, E and F#`. */
export function listed(names: readonly string[]): string {
  const each = [...new Set(names)];
  const last = each.pop() ?? '';
  return each.length === 0 ? last : `${each.join(', ')} ${questionWords.and} ${last}`;
}

/** A count in words up to twelve, in figures above. */
export function numberWord(count: number): string {
  return questionWords.numbers[count] ?? String(count);
}

/** Slot of the loop as an ordinal: 0 `first`, 1 `next`, 2 `third`; beyond the words in figures: `21st`. */
function ordinal(slot: number): string {
  const place = slot + 1;
  return questionWords.ordinals[slot] ?? `${place}${questionWords.ordinalEndings[place % 10] ?? 'th'}`;
}

function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}
