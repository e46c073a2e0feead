import type { CribQuestion, CribWrong } from '../../shared-theory/crib/sheet.ts';
import type { GuitarCrib } from '../../shared-theory/crib/typed.ts';
import { errorKinds } from '../protocol/words/errors.ts';

/** A likely wrong answer with what to say and what to play; null where it shows nothing by itself. */
type SaidWrong = CribWrong & { readonly say: string | null; readonly play: string | null };

/** The crib as the command writes it for other programs, names in ASCII. */
export type CribJson = Omit<GuitarCrib, 'questions'> & {
  readonly questions: readonly (Omit<CribQuestion, 'wrong'> & { readonly wrong: readonly SaidWrong[] })[];
};

/** The crib with what to say and to play beside each likely wrong answer. */
export function cribJson(crib: GuitarCrib): CribJson {
  return {
    ...crib,
    questions: crib.questions.map((question) => ({
      ...question,
      wrong: question.wrong.map((wrong) => {
        const words = wrong.error === null ? undefined : errorKinds[wrong.error];
        return { ...wrong, say: words?.say ?? null, play: words?.play ?? null };
      }),
    })),
  };
}
