import { capoNames } from '../../../server/protocol/words/capo-names.ts';
import { hostWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { isModal, parseKeyName } from '../../../shared-theory/keys.ts';
import { printNumeral } from '../../../shared-theory/printer.ts';
import { printKey } from '../../shared/names.ts';
import { chordEms, SvgChord, SvgNumeral } from '../../shared/chord-text.tsx';
import { shapeName } from '../../shared/shape-name.ts';
import { serifWidth } from '../../shared/serif-width.ts';
import type { Family } from '../key-rows.ts';
import { keySaid } from '../sentences.ts';

/** Columns of the seven chords. */
export type Columns = {
  readonly label: number;
  /** Size at which every name before a row has room. */
  readonly labelSize: number;
  readonly first: number;
  readonly pitch: number;
};

/** Before its row a key alone is named as in a class, one of several in full, and so is a home: `key of G`, `E minor`, `A dorian`. */
export function nameOf(key: string, { keys }: Family): string {
  const inFull = keys.length > 1 || isModal(parseKeyName(key).mode);
  return inFull ? printKey(key).text : fill(hostWords.reveal.keyOf, { key: keySaid(key) });
}

/** A family's chart row: letters, a rule with a notch under each chord that holds the deciding note, numerals of each key. */
export function KeyRow({
  family,
  columns,
  capo,
  y,
  scale,
}: {
  readonly family: Family;
  readonly columns: Columns;
  /** Fret of the capo on the guitars of the class, 0 for none. */
  readonly capo: number;
  readonly y: number;
  readonly scale: number;
}) {
  const { label, first, pitch } = columns;
  const at = (column: number): number => first + column * pitch;
  const widest = Math.max(2, ...family.row.map(({ symbol }) => chordEms(symbol)));
  const letter = Math.min(54 * scale, (pitch * 0.94) / widest);
  const numeral = Math.min(42 * scale, pitch * 0.4);
  const [start, end, notch] = [first - pitch * 0.58, at(6) + pitch * 0.5, 16 * Math.max(0.7, scale)];
  const lineAt = (line: number): number => y + (48 + line * 58) * scale;
  const rule = family.row.reduce(
    (path, chord, column) =>
      chord.holdsDecider ? `${path}H${at(column) - notch}l${notch} ${notch}l${notch} ${-notch}` : path,
    `M${start} ${y}`,
  );
  return (
    <g>
      <path class="line-ink g2" d={`${rule}H${end}`} />
      {family.row.map((chord, column) => (
        <g key={chord.symbol}>
          {chord.inVamp ? (
            <path class="line-brass truth-rule" d={`M${at(column) - 0.375 * pitch} ${y}h${0.75 * pitch}`} />
          ) : null}
          <SvgChord symbol={chord.symbol} x={at(column)} y={y - 44 * scale} size={letter} />
        </g>
      ))}
      {capo > 0 ? (
        <Shapes row={family.row} columns={columns} capo={capo} y={lineAt(family.keys.length)} size={0.8 * letter} />
      ) : null}
      {family.keys.map(({ key, row }, line) => {
        const middle = lineAt(line);
        return (
          <g key={key}>
            <text
              class="spread-label fill-ink2"
              x={label}
              y={family.keys.length === 1 ? y - 32 * scale : middle + 0.33 * 34 * scale}
              font-size={Math.min(Math.max(26, 34 * scale), columns.labelSize)}
            >
              {nameOf(key, family)}
            </text>
            {row.map((chord, column) => (
              <SvgNumeral
                key={chord.numeral}
                numeral={chord.numeral}
                x={at(column)}
                y={middle}
                size={Math.min(numeral, (pitch * 0.92) / serifWidth(printNumeral(chord.numeral).text, 1))}
              />
            ))}
          </g>
        );
      })}
    </g>
  );
}

type ShapesProps = {
  readonly row: Family['row'];
  readonly columns: Columns;
  readonly capo: number;
  /** Middle of the line. */
  readonly y: number;
  readonly size: number;
};

/** Under the sounding chords what the hand plays, and that it is that. */
function Shapes({ row, columns: { label, first, pitch }, capo, y, size }: ShapesProps) {
  const shapes = row.map(({ symbol }) => shapeName(symbol, capo));
  const widest = Math.max(...shapes.map(chordEms));
  const said = fill(capoNames.shape, { capo });
  // Chord letters begin half a column before their place.
  const room = first - 0.5 * pitch - label;
  return (
    <g class="shapes">
      <text class="spread-label fill-ink2" x={label} y={y + 10} font-size={Math.min(30, room / (0.52 * said.length))}>
        {said}
      </text>
      {shapes.map((shape, column) => (
        <SvgChord
          key={column}
          symbol={shape}
          x={first + column * pitch}
          y={y}
          size={Math.min(size, (pitch * 0.94) / widest)}
          class="fill-ink2"
        />
      ))}
    </g>
  );
}
