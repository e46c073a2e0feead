import type { CribShape } from '../../shared-theory/crib/shapes.ts';
import type { GuitarCrib } from '../../shared-theory/crib/typed.ts';
import { listed } from '../protocol/words/counting.ts';
import { cribWords } from '../protocol/words/crib-words.ts';
import { shapeRefusals } from './shape-refusals.ts';
import { stepWords } from '../protocol/words/step-words.ts';
import { fill } from '../protocol/words/fill.ts';
import { chordMarkup } from './chord-markup.ts';
import { fittedGroups, standInARow } from './density.ts';
import { fretBox, spokenShape } from './box.ts';
import type { Html } from './html.ts';
import { html } from './html.ts';
import { keysPart, safeText } from './keys-part.ts';
import type { SheetNames } from './names.ts';
import type { Slip, SlipGroup } from './slips.ts';

const words = cribWords;

/** How a sheet is printed. */
export type SheetLook = { readonly names: SheetNames; readonly leftHanded: boolean };

/** The sheet as one printable page's markup: shapes, numerals by key, what settles it, and answers with their slips. */
export function sheetMarkup(crib: GuitarCrib, loop: readonly string[], { names, leftHanded }: SheetLook): Html {
  const { groups, density } = fittedGroups(crib, names);
  return html`<article class="sheet" data-density="${density}">
    <header class="sheet-head">
      <h1>${loop.map((chord) => html`${chordMarkup(chord, names)} `)}</h1>
      <p class="wordmark" aria-hidden="true">hear<span></span>say</p>
      <p class="rules">${[words.policies[crib.policy], ...guitarNotes(crib, leftHanded)].join(' · ')}</p>
    </header>
    <section class="play" aria-label="${words.playTitle}">
      <div class="shapes">${crib.shapes.map((shape) => shapeMarkup(shape, names, leftHanded))}</div>
      <dl>
        ${shapeRefusals(crib.shapes, crib.guitar, names).map((sentence) => html`<dd class="refused">${sentence}</dd>`)}
        <dt>${words.safe}</dt>
        <dd>
          ${crib.safeNotes.length === 0 ? words.safeNone : html`<span class="notes">${safeText(crib, names)}</span>`}
        </dd>
        ${decidersMarkup(crib, names)}
      </dl>
    </section>
    ${keysPart(crib, names)}
    <section class="answers">
      <h2>${words.questionsTitle}</h2>
      <div class="groups">${groups.map(groupMarkup)}</div>
    </section>
  </article>`;
}

/** What is said of the guitar under the title; nothing of a standard one. */
function guitarNotes({ guitar: { capo, tuning } }: GuitarCrib, leftHanded: boolean): readonly string[] {
  return [
    ...(tuning === 'standard' ? [] : [words.tunings[tuning]]),
    ...(capo === 0 ? [] : [fill(words.capo, { capo })]),
    ...(leftHanded ? [words.leftHanded] : []),
  ];
}

/** The notes that commit, each with the keys that it says; by themselves where those are many, and stand in the table alone. */
function decidersMarkup({ deciders }: GuitarCrib, names: SheetNames): Html | null {
  if (deciders.length === 0) return null;
  const many = standInARow(deciders);
  const note = (name: string) => html`<span class="notes">${names.note(name)}</span> `;
  return html`<dt>${words.deciders}</dt>
    ${
      many
        ? html`<dd>${deciders.map((each) => note(each.note))}</dd>`
        : deciders.map(
            ({ note: name, leaves }) =>
              html`<dd>${note(name)}${fill(words.commitsTo, { keys: listed(leaves.map(names.key)) })}</dd>`,
          )
    }`;
}

function shapeMarkup({ chord, shape, frets }: CribShape, names: SheetNames, leftHanded: boolean): Html {
  const spoken = names.chordParts(shape).spoken;
  return html`<figure>
    <figcaption>
      ${chordMarkup(chord, names)}${shape === chord ? null : html`<span class="shape-name">${words.shape} ${chordMarkup(shape, names)}</span>`}
    </figcaption>
    ${frets === null ? html`<p class="no-shape">${words.noShape}</p>` : fretBox(frets, spokenShape(spoken, frets), leftHanded)}
  </figure>`;
}

function groupMarkup({ kind, right, slips }: SlipGroup): Html {
  return html`<section class="group">
    <h3>${kind === 'distance' ? words.howFar : stepWords[kind]} <strong>${right}</strong></h3>
    ${slips.map(slipMarkup)}
  </section>`;
}

function slipMarkup({ answers, finding, say, play }: Slip): Html {
  return html`<p class="slip">
    <b>${answers}</b> ${finding}
    ${say === null ? null : html`<span class="hint"><i>${words.say}</i> ${fill(words.quote, { text: say })}</span>`}
    ${play === null ? null : html`<span class="hint"><i>${words.play}</i> ${play}</span>`}
  </p>`;
}
