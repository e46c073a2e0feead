import { policySentence } from '../../../server/protocol/words/policy-sentences.ts';
import { policyWords } from '../../../server/protocol/words/policy-words.ts';
import type { DeskView, WireStep } from '../../../server/protocol/views.ts';
import { printNumeral } from '../../../shared-theory/printer.ts';
import { printChord, printKey, printNote } from '../../shared/names.ts';

const NAMES = {
  note: (name: string) => printNote(name).text,
  chord: (symbol: string) => printChord(symbol).text,
  key: (name: string) => printKey(name).text,
  numeral: (numeral: string) => printNumeral(numeral).text,
};

/** Questions whose right answers follow the class's choice of keys. */
const OF_KEYS: ReadonlySet<string> = new Set(['numeral', 'one-or-several', 'keys', 'settler', 'home']);

/** Beside a question of keys: what another choice of the keys that count would change. */
export function PolicyWarning({ view, step }: { readonly view: DeskView; readonly step: WireStep }) {
  if (view.policyChanges.length === 0 || !OF_KEYS.has(step.kind)) return null;
  return (
    <div class="advice policy-warning">
      <p>{policyWords.title}</p>
      {view.policyChanges.map((change) => (
        <p key={change.change}>{policySentence(change, NAMES)}</p>
      ))}
    </div>
  );
}
