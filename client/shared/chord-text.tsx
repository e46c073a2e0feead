import { serifWidth } from './serif-width.ts';
import { printNumeral } from '../../shared-theory/printer.ts';
import { printChord } from './names.ts';

/** Chords and numerals set as in print. Input in ASCII: `F#m`, `Bb`, `viio`. */

/** A chord in a line of text: letter large, sign raised, suffix small; read aloud as words. */
export function ChordText(props: { readonly symbol: string }) {
  const { letter, sign, suffix, spoken } = printChord(props.symbol);
  return (
    <>
      <span class="chord" aria-hidden="true">
        {letter}
        {sign && <span class="chord-sign">{sign}</span>}
        {suffix && <span class="chord-suffix">{suffix}</span>}
      </span>
      <span class="visually-hidden">{spoken}</span>
    </>
  );
}

/** About how wide a chord symbol is set, in sizes of its letter. */
export function chordEms(symbol: string): number {
  const { letter, sign, suffix } = printChord(symbol);
  return serifWidth(letter, 1) + serifWidth(sign + suffix, 0.74);
}

/** A place in a drawing; `size` in its units, `anchor` as in SVG. */
type Placed = {
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly class?: string;
};

/** A chord symbol or a note in a drawing, its letter's middle on the place. */
export function SvgChord(props: Placed & { readonly symbol: string }) {
  const { letter, sign, suffix } = printChord(props.symbol);
  const { size } = props;
  // Each shift holds for the text after it, so the suffix has to come down again.
  const raise = 0.12 * size;
  return (
    <text {...attributes(props)} class={`chord ${props.class ?? ''}`}>
      {letter}
      {sign && (
        <tspan font-size={0.74 * size} dy={-raise}>
          {sign}
        </tspan>
      )}
      {suffix && (
        <tspan font-size={0.74 * size} dy={sign ? raise : 0}>
          {suffix}
        </tspan>
      )}
    </text>
  );
}

export function SvgNumeral(props: Placed & { readonly numeral: string }) {
  return (
    <text {...attributes(props)} class={`numeral ${props.class ?? ''}`}>
      {printNumeral(props.numeral).text}
    </text>
  );
}

function attributes({ x, y, size, anchor = 'middle' }: Placed) {
  return { x, y: y + 0.35 * size, 'font-size': size, 'text-anchor': anchor };
}
