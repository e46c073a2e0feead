import { fingersOf } from '../../shared-theory/neck/hand.ts';
import type { Frets } from '../../shared-theory/vamps.ts';
import { cribWords } from '../protocol/words/crib-words.ts';
import { fill } from '../protocol/words/fill.ts';
import type { Html } from './html.ts';
import { html } from './html.ts';

/** Sizes of a box in its own units: strings 10 apart, frets 13. */
const STRING = 10;
const FRET = 13;
const TOP = 14;
const SIDE = 13;
const RADIUS = 3.7;
/** Fewer frets than this are not drawn. */
export const LEAST_FRETS = 4;
/** A finger over so many strings more is drawn as a barre; over fewer, players often take several fingers. */
const LEAST_BARRE = 3;
/** Widths of a string set from the lowest string on; strings beyond six are as thick as the sixth. */
const GAUGES = [1.25, 1.1, 0.95, 0.8, 0.7, 0.6] as const;

/**
 * A chord's fret box: lowest string left, or right for a left-handed player. It starts at the nut, or at its lowest fret where it does
 * not reach the nut's first frets. `spoken` says it to those who hear the page.
 */
export function fretBox(frets: Frets, spoken: string, leftHanded: boolean): Html {
  const { base, rows } = boxRows(frets);
  const last = frets.length - 1;
  const x = (string: number) => SIDE + STRING * (leftHanded ? last - string : string);
  const y = (row: number) => TOP + FRET * row;
  const width = 2 * SIDE + STRING * last;
  const height = y(rows) + 4;
  const [from, to] = [x(leftHanded ? last : 0), x(leftHanded ? 0 : last)];
  return html`<svg class="box" viewBox="0 0 ${width} ${height}" role="img" aria-label="${spoken}">
    ${Array.from(
      { length: rows + 1 },
      (_, row) => html`<line class="box-fret" x1="${from}" x2="${to}" y1="${y(row)}" y2="${y(row)}" />`,
    )}
    ${
      base === 1
        ? html`<line class="box-nut" x1="${from - 0.6}" x2="${to + 0.6}" y1="${y(0) - 0.8}" y2="${y(0) - 0.8}" />`
        : html`<text
            class="box-number"
            x="${leftHanded ? to + 4 : from - 4}"
            y="${y(0.5) + 2.8}"
            text-anchor="${leftHanded ? 'start' : 'end'}"
            >${base}</text
          >`
    }
    ${frets.map((_, string) => {
      const gauge = GAUGES[Math.max(0, string - (frets.length - GAUGES.length))] ?? 1;
      return html`<line
        class="box-string"
        x1="${x(string)}"
        x2="${x(string)}"
        y1="${y(0)}"
        y2="${y(rows)}"
        stroke-width="${gauge}"
      />`;
    })}
    ${fingersOf(frets)
      .filter(({ from: first, to: end }) => end - first >= LEAST_BARRE)
      .map(({ fret, from: first, to: end }) => barre(y(fret - base + 0.5), x(first), x(end)))}
    ${frets.map((fret, string) => mark(fret, x(string), fret === null || fret === 0 ? y(0) - 6.2 : y(fret - base + 0.5)))}
  </svg>`;
}

/** The lowest fret of a box, and how many it has. */
export function boxRows(frets: Frets): { readonly base: number; readonly rows: number } {
  const fretted = frets.filter((fret) => fret !== null && fret > 0) as number[];
  const highest = Math.max(0, ...fretted);
  const base = highest <= LEAST_FRETS ? 1 : Math.min(...fretted);
  return { base, rows: Math.max(LEAST_FRETS, highest - base + 1) };
}

function barre(y: number, from: number, to: number): Html {
  return html`<line class="box-barre" x1="${from}" x2="${to}" y1="${y}" y2="${y}" />`;
}

function mark(fret: number | null, x: number, y: number): Html {
  if (fret === null) return html`<path class="box-silent" d="M${x - 2.3} ${y - 2.3}l4.6 4.6m0-4.6l-4.6 4.6" />`;
  if (fret === 0) return html`<circle class="box-open" cx="${x}" cy="${y}" r="2.5" />`;
  return html`<circle class="box-finger" cx="${x}" cy="${y}" r="${RADIUS}" />`;
}

/** A shape for those who hear it: `E minor: open, 2, 2, open, open, open`. */
export function spokenShape(chord: string, frets: Frets): string {
  const { open, silent } = cribWords.box;
  const said = frets.map((fret) => (fret === null ? silent : fret === 0 ? open : String(fret)));
  return fill(cribWords.boxSpoken, { chord, frets: said.join(', ') });
}

/** A shape as a line of text, lowest string first: `x32010`; with dashes between where a fret has two figures. */
export function fretsText(frets: Frets): string {
  const signs = frets.map((fret) => (fret === null ? 'x' : String(fret)));
  return signs.join(signs.some((sign) => sign.length > 1) ? '-' : '');
}
