import type { CribSheet } from '../../shared-theory/crib/sheet.ts';
import { POLICIES } from '../../shared-theory/truth.ts';
import { MOST_TOLD } from '../../shared-theory/visited-keys.ts';
import { listed } from '../protocol/words/counting.ts';
import { cribWords } from '../protocol/words/crib-words.ts';
import { fill } from '../protocol/words/fill.ts';
import { chordMarkup } from './chord-markup.ts';
import type { Html } from './html.ts';
import { html } from './html.ts';
import type { SheetNames } from './names.ts';
import { policySentence } from '../protocol/words/policy-sentences.ts';
import { safeSentence } from '../protocol/words/safe-sentences.ts';
import { visitedSentence } from '../protocol/words/visited-sentences.ts';
import type { SettlingRow } from './settling.ts';
import { settlingRows } from './settling.ts';

const words = cribWords;

/** More chords to one set of keys than this help nobody. */
const MOST_CHORDS = 6;

/** The keys of the vamp with the numerals, the notes that are safe, and what settles it. */
export function keysPart(sheet: CribSheet, names: SheetNames): Html {
  return html`<section class="keys">
    <div>
      <h2>${words.keysTitle}</h2>
      ${sheet.keys.length === 0 ? noKey(sheet, names) : numeralTable(sheet, names)}
      ${visitedTexts(sheet, names).map((text) => html`<p class="fact">${text}</p>`)}
      ${changesOf(sheet).map((change) => html`<p class="fact">${policySentence(change, names)}</p>`)}
      <p class="fact"><b>${words.otherPolicies}</b> ${otherPolicies(sheet, names).join(' · ')}</p>
    </div>
    ${settlingTable(sheet, names)}
  </section>`;
}

/** The notes to solo on, as printed; where there are none, what to do instead. */
export function safeText({ safeNotes, safeOf }: CribSheet, names: SheetNames): string {
  return safeSentence(safeNotes, safeOf, names);
}

/** What the other policies say of the vamp: `with relative minors: G major, E minor`. */
export function otherPolicies({ policy, policies }: CribSheet, names: SheetNames): readonly string[] {
  return POLICIES.filter((other) => other !== policy).map((other) => {
    const keys = policies[other];
    const same =
      keys.length > 0 && keys.length === policies[policy].length && keys.every((key) => policies[policy].includes(key));
    const said = same ? words.same : keys.length === 0 ? words.none : keys.map(names.key).join(', ');
    return fill(words.policyKeys, { policy: words.policyNames[other], keys: said });
  });
}

/** Why no key owns the vamp, one sentence each. */
export function noKeyTexts(
  { policy, clash }: Pick<CribSheet, 'policy' | 'clash'>,
  names: SheetNames,
): readonly string[] {
  const why = clash ? [fill(words.clash[policy], { low: names.note(clash[0]), high: names.note(clash[1]) })] : [];
  return [words.noKey[policy], ...why];
}

/** Where no key owns the vamp: the likeliest that do but for their visitors, one sentence each. */
export function visitedTexts({ visited }: CribSheet, names: SheetNames): readonly string[] {
  return visited.slice(0, MOST_TOLD).map((key) => visitedSentence(key, names));
}

/** What another policy would change, but for a key with visitors, which is told among those. */
export function changesOf({ policyChanges, visited }: CribSheet): CribSheet['policyChanges'] {
  return policyChanges.filter(({ change }) => visited.length === 0 || change !== 'home-key-with-visitor');
}

function noKey(sheet: CribSheet, names: SheetNames): Html {
  return html`${noKeyTexts(sheet, names).map((text) => html`<p class="fact">${text}</p>`)}`;
}

function numeralTable({ chords, keys }: CribSheet, names: SheetNames): Html {
  return html`<table class="numerals">
    <thead>
      <tr>
        <th scope="col">${words.key}</th>
        ${chords.map((chord) => html`<th scope="col">${chordMarkup(chord, names)}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${keys.map(
        ({ key, numerals }) =>
          html`<tr>
            <th scope="row">${names.key(key)}</th>
            ${numerals.map((numeral) => html`<td class="numeral">${names.numeral(numeral)}</td>`)}
          </tr>`,
      )}
    </tbody>
  </table>`;
}

function settlingTable(sheet: CribSheet, names: SheetNames): Html {
  const rows = settlingRows(sheet);
  if (rows.length === 0) {
    return html`<div>
      <h2>${words.settlesTitle}</h2>
      <p class="fact">${sheet.keys.length === 0 ? words.nothingWithoutKey : words.nothingToSettle}</p>
    </div>`;
  }
  return html`<div>
    <h2>${words.settlesTitle}</h2>
    <table class="settling">
      <thead>
        <tr>
          <th scope="col">${words.leaves}</th>
          <th scope="col">${words.sung}</th>
          <th scope="col">${words.thirdChord}</th>
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          (row) =>
            html`<tr>
              <th scope="row">${listed(row.leaves.map(names.key))}</th>
              <td>${notesText(row, names)}</td>
              <td>${chordsText(row, names)}</td>
            </tr>`,
        )}
        <tr>
          <th scope="row">${words.all}</th>
          <td>${sheet.safeNotes.map(names.note).join(' ')}</td>
          <td>${sheet.open.map(names.chord).join(', ')}</td>
        </tr>
      </tbody>
    </table>
  </div>`;
}

/** Notes that leave the same keys, or two that do together. */
export function notesText({ notes, notePair }: SettlingRow, names: SheetNames): string {
  return notes.length > 0 ? notes.map(names.note).join(', ') : pairText(notePair.map(names.note));
}

/** Chords that leave the same keys, the usual ones; where no plain one does, two that do together. */
export function chordsText({ chords, chordPair }: SettlingRow, names: SheetNames): string {
  const one = chords.slice(0, MOST_CHORDS).map(names.chord).join(', ');
  const pair = pairText(chordPair.map(names.chord));
  return [one, pair].filter((text) => text !== '').join('; ');
}

function pairText([one, other]: readonly string[]): string {
  return one === undefined || other === undefined ? '' : fill(words.both, { one, other });
}
