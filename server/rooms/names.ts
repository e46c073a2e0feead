import type { Reason } from '../protocol/messages.ts';

/** Most characters as a reader counts them (grapheme clusters), and most bytes as UTF-8. */
const NAME_MOST_CHARACTERS = 24;
const NAME_MOST_BYTES = 96;
const MOST_MARKS = 3;
/** What is looked at before anything is counted: a longer text is no name, and cutting clusters of it costs time. */
const READ_MOST_UNITS = 2_000;

const CLUSTERS = new Intl.Segmenter('en', { granularity: 'grapheme' });
/** Joiners that spelling (Persian, Indic scripts) and emoji need; everywhere else they are invisible padding. */
const JOINERS = /^[\u200c\u200d]$/;
/** Letters with no ink: Hangul fillers, the blank Braille cell, the combining grapheme joiner, variation selectors alone. */
const BLANK = /\u034f|[\u115f\u1160\u2800\u3164\uffa0]/gu;
/** Control, format (direction overrides and isolates), lone surrogates, private use, line and paragraph separators. */
const INVISIBLE = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Zl}\p{Zp}]/u;
/** Control signs other than white space, and those that turn the direction of writing: nobody types them into a name. */
const HOSTILE = /[^\P{Cc}\t\n\v\f\r]|[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;
/** The beginning of a tag, comment or entity. */
const MARKUP = /<[a-z!/?]|&#?\w+;/iu;
const INK = /[\p{L}\p{N}\p{P}\p{S}]/u;

/** A name as it is kept, or why it cannot be one. */
export type NameReading =
  | { readonly ok: true; readonly name: string }
  | { readonly ok: false; readonly reason: Reason; readonly detail?: Readonly<Record<string, string | number>> };

/**
 * Reads what a person typed as a name: NFC, spaces collapsed, invisible characters dropped, at most three marks a letter.
 * Control characters, direction overrides and markup are refused: whoever sends them is told, and nothing else happens.
 */
export function readName(typed: string): NameReading {
  if (typed.length > READ_MOST_UNITS) return tooLong();
  if (HOSTILE.test(typed) || MARKUP.test(typed)) return { ok: false, reason: 'name-not-readable' };
  const name = [...CLUSTERS.segment(withoutInvisible(typed))]
    .map(({ segment }) => fewerMarks(segment))
    .join('')
    .replace(/\s+/gu, ' ')
    .trim();
  if (name === '') return { ok: false, reason: /\S/u.test(typed) ? 'name-not-readable' : 'name-empty' };
  if (!INK.test(name)) return { ok: false, reason: 'name-not-readable' };
  if (characters(name) > NAME_MOST_CHARACTERS || utf8Bytes(name) > NAME_MOST_BYTES) return tooLong();
  return { ok: true, name };
}

/** What two names have in common when they look or sound alike: compatibility forms and case folded. */
export function nameKey(name: string): string {
  // Lower, upper, lower: folds ß with ss and final sigma with sigma, which lower case alone does not.
  return name
    .normalize('NFKC')
    .toLowerCase()
    .toUpperCase()
    .toLowerCase()
    .normalize('NFKC')
    .replace(/[\u200c\u200d]/gu, '');
}

/**
 * The name as shown: the first of its kind stays as it is, the next are `Ana (2)`, `Ana (3)`. `taken` maps the keys of names
 * in use to the number to try next, and is written to.
 */
export function distinctName(name: string, taken: Map<string, number>): string {
  const key = nameKey(name);
  let shown = name;
  let number = taken.get(key) ?? 1;
  while (taken.has(nameKey(shown))) {
    number += 1;
    shown = `${name} (${number})`;
  }
  taken.set(key, number);
  if (shown !== name) taken.set(nameKey(shown), 1);
  return shown;
}

function tooLong(): NameReading {
  return { ok: false, reason: 'name-too-long', detail: { most: NAME_MOST_CHARACTERS } };
}

function withoutInvisible(typed: string): string {
  const spaced = typed
    .normalize('NFC')
    .replace(/[\t\n\v\f\r]/gu, ' ')
    .replace(BLANK, '');
  const kept = Array.from(spaced).filter((sign) => JOINERS.test(sign) || !INVISIBLE.test(sign));
  return kept.filter((sign, index) => !JOINERS.test(sign) || joins(kept, index)).join('');
}

/** A joiner has a meaning only between two signs that are neither spaces nor joiners. */
function joins(signs: readonly string[], index: number): boolean {
  const [before, after] = [signs[index - 1], signs[index + 1]];
  const joined = (sign: string | undefined) => sign !== undefined && /[\p{L}\p{M}\p{So}\p{Sk}]/u.test(sign);
  return joined(before) && joined(after);
}

function fewerMarks(cluster: string): string {
  let marks = 0;
  return Array.from(cluster)
    .filter((sign) => {
      if (/\p{M}/u.test(sign)) marks += 1;
      return !/\p{M}/u.test(sign) || marks <= MOST_MARKS;
    })
    .join('');
}

function characters(text: string): number {
  let count = 0;
  for (const _cluster of CLUSTERS.segment(text)) count += 1;
  return count;
}

function utf8Bytes(text: string): number {
  let bytes = 0;
  for (const sign of text) {
    const code = sign.codePointAt(0) ?? 0;
    bytes += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
  }
  return bytes;
}
