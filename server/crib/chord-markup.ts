import type { Html } from './html.ts';
import { html } from './html.ts';
import type { SheetNames } from './names.ts';

/** A chord as it is set in print: letter large, sign raised, suffix small; read aloud as words. */
export function chordMarkup(symbol: string, names: SheetNames): Html {
  const { letter, sign, suffix, spoken } = names.chordParts(symbol);
  return html`<span class="chord" aria-hidden="true"
      >${letter}${sign === '' ? null : html`<span class="chord-sign">${sign}</span>`}${suffix === '' ? null : html`<span class="chord-suffix">${suffix}</span>`}</span
    ><span class="visually-hidden">${spoken}</span>`;
}
