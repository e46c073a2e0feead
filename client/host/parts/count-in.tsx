import { hostWords, questionWords } from '../../../server/protocol/words/en.ts';

/** The count before the vamp, in words; the beat that sounds is underlined brass. */
export function CountIn({ beat, of }: { readonly beat: number; readonly of: number }) {
  const names = questionWords.numbers.slice(1, of + 1);
  return (
    <p class="count-in" aria-label={hostWords.round.countIn}>
      {names.map((name, index) => (
        <span key={name} class={index === beat ? 'count now' : 'count'}>
          {name}
        </span>
      ))}
    </p>
  );
}
