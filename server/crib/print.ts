import type { Chord } from '../../shared-theory/chords.ts';
import { chartRows, cribOf } from '../../shared-theory/crib.ts';
import type { Crib } from '../../shared-theory/crib.ts';
import { candidateKeys } from '../../shared-theory/candidates.ts';
import type { CandidateKey } from '../../shared-theory/candidates.ts';
import { printChord, printKey, printNote, printNumeral } from '../../shared-theory/printer.ts';
import type { Policy } from '../../shared-theory/truth.ts';
import { columns } from '../columns.ts';
import { consoleWords } from '../protocol/words/en.ts';
import { fill } from '../protocol/words/fill.ts';

const words = consoleWords.crib;

/** The crib as a sheet to print or to read in a terminal, with real signs. */
export function printCrib(chords: readonly Chord[], policy: Policy): string {
  const crib = cribOf(chords, policy);
  const keys = candidateKeys(chords, policy);
  const parts = [
    `${chordNames(crib.chords, '  ')}   (${words.policies[policy]})`,
    keys.length === 0 ? noKey(crib) : keys.map((key) => chart(chords, key)).join('\n\n'),
    section(
      words.deciders,
      crib.deciders.map(({ note, leaves }) => [printNote(note).text, keyNames(leaves)]),
    ),
    section(words.settlers, settlersByKeys(crib)),
    section(words.open, crib.open.length === 0 ? [] : [[chordNames(crib.open)]]),
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

function noKey({ policy, clash, raisedSeventh = [] }: Crib): string {
  const [low = '', high = ''] = (clash ?? []).map((note) => printNote(note).text);
  const why = clash ? ` ${fill(words.clash[policy], { low, high })}` : '';
  const raised = raisedSeventh.map(({ key, numerals }) =>
    fill(words.raisedSeventh, { key: printKey(key).text, numerals: numeralsText(numerals) }),
  );
  return [words.noKey[policy] + why, ...raised].join('\n');
}

function numeralsText(numerals: readonly string[]): string {
  return numerals.map((numeral) => printNumeral(numeral).text).join('–');
}

/** A key with the vamp's numerals, and its seven chords from the vamp's first chord on; the vamp's own stand in brackets. */
function chart(chords: readonly Chord[], key: CandidateKey): string {
  const { row } = chartRows(chords, key);
  const symbols = row.map(({ symbol, inVamp }) => {
    const name = printChord(symbol).text;
    return inVamp ? `[${name}]` : ` ${name}`;
  });
  const numerals = row.map(({ numeral }) => ` ${printNumeral(numeral).text}`);
  const title = `${printKey(key.name).text}   ${numeralsText(key.numerals)}`;
  return [title, ...columns([symbols, numerals])].join('\n');
}

/** Settlers that leave the same keys share a line. */
function settlersByKeys({ settlers }: Crib): string[][] {
  const lines = new Map<string, string[]>();
  for (const { chord, leaves } of settlers) {
    const keys = keyNames(leaves);
    lines.set(keys, [...(lines.get(keys) ?? []), chord]);
  }
  return Array.from(lines, ([keys, symbols]) => [chordNames(symbols), keys]);
}

function section(title: string, rows: readonly (readonly string[])[]): string {
  return rows.length === 0 ? '' : [title, ...columns(rows)].join('\n');
}

function chordNames(symbols: readonly string[], between = ', '): string {
  return symbols.map((symbol) => printChord(symbol).text).join(between);
}

function keyNames(names: readonly string[]): string {
  return names.map((name) => printKey(name).text).join(', ');
}
