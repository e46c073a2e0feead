import { readSymbol } from '../../shared-theory/chords.ts';
import { chartRows } from '../../shared-theory/crib.ts';
import type { GuitarCrib } from '../../shared-theory/crib/typed.ts';
import { parseKeyName } from '../../shared-theory/keys.ts';
import { columns } from '../columns.ts';
import { listed } from '../protocol/words/counting.ts';
import { cribWords } from '../protocol/words/crib-words.ts';
import { fill } from '../protocol/words/fill.ts';
import { shapeRefusals } from './shape-refusals.ts';
import { stepWords } from '../protocol/words/step-words.ts';
import { fretsText } from './box.ts';
import { changesOf, chordsText, noKeyTexts, notesText, otherPolicies, safeText, visitedTexts } from './keys-part.ts';
import type { SheetNames } from './names.ts';
import { policySentence } from '../protocol/words/policy-sentences.ts';
import { settlingRows } from './settling.ts';
import type { SlipGroup } from './slips.ts';
import { MOST_OF_A_KIND, slipGroups } from './slips.ts';

const words = cribWords;

/** The crib as a sheet to read in a terminal, with real signs. */
export function printCrib(crib: GuitarCrib, names: SheetNames): string {
  const chords = crib.chords.map(names.chord).join('  ');
  const parts = [
    `${chords}   (${[words.policies[crib.policy], ...guitarNotes(crib)].join(', ')})`,
    crib.keys.length === 0 ? noKeyTexts(crib, names).join(' ') : charts(crib, names),
    section(
      words.visited.title,
      visitedTexts(crib, names).map((text) => [text]),
    ),
    changesOf(crib)
      .map((change) => policySentence(change, names))
      .join('\n'),
    section(crib.guitar.capo === 0 ? words.fretsTitle : words.fretsUnderCapo, shapes(crib, names)),
    shapeRefusals(crib.shapes, crib.guitar, names).join('\n'),
    `${words.safe}: ${safeText(crib, names)}`,
    section(words.settlesTitle, settling(crib, names)),
    section(
      words.otherPolicies,
      otherPolicies(crib, names).map((text) => [text]),
    ),
    words.questionsTitle,
    ...slipGroups(crib, names, MOST_OF_A_KIND).map(answers),
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

function guitarNotes({ guitar: { capo, tuning } }: GuitarCrib): readonly string[] {
  return [
    ...(tuning === 'standard' ? [] : [words.tunings[tuning]]),
    ...(capo === 0 ? [] : [fill(words.capoShort, { capo })]),
  ];
}

function numeralsText(numerals: readonly string[], names: SheetNames): string {
  return numerals.map(names.numeral).join('–');
}

/** Each key with the vamp's numerals; of majors and natural minors also their seven chords from the vamp's first one on. */
function charts({ chords, keys, policy }: GuitarCrib, names: SheetNames): string {
  if (policy !== 'majors' && policy !== 'relatives') {
    return columns(keys.map(({ key, numerals }) => [names.key(key), numeralsText(numerals, names)])).join('\n');
  }
  return keys.map(({ key, numerals }) => chart(chords, key, numerals, names)).join('\n\n');
}

/** The vamp's own chords stand in brackets. */
function chart(chords: readonly string[], key: string, numerals: readonly string[], names: SheetNames): string {
  const { row } = chartRows(chords.map(readSymbol), parseKeyName(key));
  const symbols = row.map(({ symbol, inVamp }) => (inVamp ? `[${names.chord(symbol)}]` : ` ${names.chord(symbol)}`));
  const under = row.map(({ numeral }) => ` ${names.numeral(numeral)}`);
  return [`${names.key(key)}   ${numeralsText(numerals, names)}`, ...columns([symbols, under])].join('\n');
}

function shapes({ shapes: all }: GuitarCrib, names: SheetNames): string[][] {
  return all.map(({ chord, shape, frets }) => [
    names.chord(chord),
    frets === null ? words.noShape : fretsText(frets),
    ...(all.some((each) => each.shape !== each.chord) ? [`${words.shape} ${names.chord(shape)}`] : []),
  ]);
}

function settling(crib: GuitarCrib, names: SheetNames): string[][] {
  const rows = settlingRows(crib);
  if (rows.length === 0) return [];
  return [
    [words.leaves, words.sung, words.thirdChord],
    ...rows.map((row) => [listed(row.leaves.map(names.key)), notesText(row, names), chordsText(row, names)]),
    [words.all, safeText(crib, names), crib.open.map(names.chord).join(', ')],
  ];
}

/** The right answers of a kind, and under them what will be heard instead. */
function answers({ kind, right, slips }: SlipGroup): string {
  const lines = slips.flatMap(({ answers: wrong, finding, say, play }) => [
    `  ${wrong}  ${finding}`,
    ...(say === null ? [] : [`    ${words.say} ${fill(words.quote, { text: say })}`]),
    ...(play === null ? [] : [`    ${words.play} ${play}`]),
  ]);
  return [`${kind === 'distance' ? words.howFar : stepWords[kind]}: ${right}`, ...lines].join('\n');
}

function section(title: string, rows: readonly (readonly string[])[]): string {
  return rows.length === 0 ? '' : [title, ...columns(rows)].join('\n');
}
