import type { Addition, Quality } from '../chords.ts';
import { readNote } from '../pitch.ts';
import type { NoteName } from '../pitch.ts';

/** What a suffix says of a chord, and how it is written in ASCII. */
export type TypedSuffix = { readonly symbol: string; readonly quality: Quality; readonly addition?: Addition };

const MAJOR = ['M', 'maj', 'Maj', 'MAJ', 'ma', 'Ma', 'MA'];
const MINOR = ['m', 'min', 'Min', 'MIN', 'mi', 'Mi', 'MI', '-'];
/** A triangle alone says major seventh, as in jazz, not a major triad. */
const majorSevenths = () => [...after(MAJOR, '7'), 'major7', '7M', 'j7', 'Δ7', 'Δ', '^7', '^'];
const SUSPENDED = ['sus', 'Sus', 'SUS'];
const DIMINISHED = ['dim', 'Dim', 'DIM', '°', 'o'];

const after = (starts: readonly string[], end: string) => starts.map((start) => start + end);

/** A suffix as the program writes it, and all ways in which it is typed besides, brackets and spaces apart. */
type Written = TypedSuffix & { readonly typed: readonly string[] };

const writtenSuffixes = (): readonly Written[] => [
  { symbol: '', quality: 'major', typed: ['', ...MAJOR] },
  { symbol: '7', quality: 'major', addition: 'seventh', typed: ['7', 'dom7', 'Dom7'] },
  { symbol: 'maj7', quality: 'major', addition: 'major-seventh', typed: majorSevenths() },
  { symbol: '6', quality: 'major', addition: 'sixth', typed: ['6', ...after(MAJOR, '6'), 'add6'] },
  { symbol: 'add9', quality: 'major', addition: 'ninth', typed: ['add9', 'Add9', 'add2', 'Add2', '2'] },
  { symbol: 'm', quality: 'minor', typed: MINOR },
  { symbol: 'm7', quality: 'minor', addition: 'seventh', typed: [...after(MINOR, '7'), 'minor7'] },
  {
    symbol: 'm(maj7)',
    quality: 'minor',
    addition: 'major-seventh',
    typed: MINOR.flatMap((minor) => majorSevenths().flatMap((seventh) => [minor + seventh, `${minor}/${seventh}`])),
  },
  { symbol: 'm6', quality: 'minor', addition: 'sixth', typed: after(MINOR, '6') },
  { symbol: '5', quality: 'power', typed: ['5', 'no3'] },
  { symbol: 'sus4', quality: 'suspended-fourth', typed: [...SUSPENDED, ...after(SUSPENDED, '4')] },
  { symbol: 'sus2', quality: 'suspended-second', typed: after(SUSPENDED, '2') },
  { symbol: 'dim', quality: 'diminished', typed: [...DIMINISHED, ...after(MINOR, 'b5')] },
  {
    symbol: 'm7b5',
    quality: 'diminished',
    addition: 'seventh',
    typed: [...after(MINOR, '7b5'), ...after(MINOR, '7-5'), 'ø', 'ø7'],
  },
  { symbol: 'dim7', quality: 'diminished', addition: 'diminished-seventh', typed: after(DIMINISHED, '7') },
  { symbol: 'aug', quality: 'augmented', typed: ['aug', 'Aug', 'AUG', '+', '#5', '+5'] },
];

/** Words for the two modes that are also typed after a root, any case, with or without a dash: `C-Dur`, `a moll`, `Do mayor`. */
const MODE_WORDS: readonly (readonly [word: RegExp, suffix: string])[] = [
  [/^-?(?:major|dur|mayor|maior|majeur|maggiore)$/i, ''],
  [/^-?(?:minor|moll|menor|mineur|minore)$/i, 'm'],
];

/** The words among them that stand apart from their root, for texts that are cut at spaces. */
export const WORDS_APART = 'M|major|minor|dur|moll|mayor|menor|maior|majeur|mineur|maggiore|minore';

const table = new Map<string, TypedSuffix>();

function known(suffix: string): TypedSuffix | undefined {
  if (table.size === 0) {
    for (const { typed, ...said } of writtenSuffixes()) for (const each of typed) table.set(each, said);
  }
  return table.get(suffix);
}

/** A suffix without spaces and brackets; null where brackets do not match or hold nothing. */
function bare(typed: string): string | null {
  const close = typed.replaceAll(/\s+/g, '');
  const opened = close.replaceAll(/\(([^()]+)\)/g, '$1');
  return /[()]/.test(opened) ? null : opened;
}

/** Whether a mode is named by a word, `Dur`, so that it holds whatever case the root has. */
export function isModeWord(typed: string): boolean {
  const suffix = bare(typed);
  return suffix !== null && MODE_WORDS.some(([word]) => word.test(suffix));
}

/** What a typed suffix, its signs plain, says; undefined where it cannot be read. */
export function readSuffix(typed: string): TypedSuffix | undefined {
  const suffix = bare(typed);
  if (suffix === null) return undefined;
  return known(MODE_WORDS.find(([word]) => word.test(suffix))?.[1] ?? suffix);
}

/**
 * Whether a chord's notes have three signs at most: Cbb with a diminished seventh would need four. That seventh and the fifth of
 * an augmented chord lie farthest from the root's own signs; all others are within three on a root with two.
 */
export function canBeWritten(root: NoteName, said: TypedSuffix | undefined): boolean {
  const { letter, alteration } = readNote(root);
  const seventh = said?.addition === 'diminished-seventh' && 'CF'.includes(letter);
  const fifth = said?.quality === 'augmented' && letter === 'B';
  return !(seventh && alteration < -1) && !(fifth && alteration > 1);
}

/** How many characters of a suffix can be read: those of its longest beginning that is a suffix of ours. */
export function readableLength(typed: string): number {
  for (let length = typed.length; length > 0; length -= 1) {
    if (typed[length - 1]?.trim() !== '' && readSuffix(typed.slice(0, length))) return length;
  }
  return 0;
}

/** Whether a suffix that cannot be read is one that musicians write, for a chord that is not among ours. */
export function isElsewhere(typed: string): boolean {
  return /\d|add|alt|omit|[Δø^°+]/i.test(typed);
}

/** The suffix of ours that is nearest to one that cannot be read. */
export function nearestSuffix(typed: string): string {
  const suffix = typed.replaceAll(/[\s()]/g, '');
  const minor = /^(?:m(?!aj|a\d)|-)|^mi(?!x)/.test(suffix) || /^MI/i.test(suffix);
  if (/sus/i.test(suffix)) return /sus[29]/i.test(suffix) && !/4/.test(suffix) ? 'sus2' : 'sus4';
  if (/^(?:dim|°|o)/i.test(suffix)) return /\d/.test(suffix) ? 'dim7' : 'dim';
  if (suffix.startsWith('ø')) return 'm7b5';
  if (minor) return nearestMinor(suffix);
  if (/^(?:\+|aug)|[#+]5/i.test(suffix)) return 'aug';
  if (suffix.startsWith('4')) return 'sus4';
  if (suffix.startsWith('6')) return '6';
  if (/^(?:maj|ma|M|Δ|\^|j)-?(?:7|9|1[13])|^7(?:M|maj)|^[Δ^]/i.test(suffix)) return 'maj7';
  if (/^(?:2|add[29])/i.test(suffix)) return 'add9';
  return /^(?:7|9|1[13]|alt|dom)/i.test(suffix) ? '7' : '';
}

function nearestMinor(suffix: string): string {
  if (/b5|-5/.test(suffix)) return /7|9|1[13]/.test(suffix) ? 'm7b5' : 'dim';
  if (/M\d|maj|Δ|\^/.test(suffix)) return 'm(maj7)';
  if (/6/.test(suffix)) return 'm6';
  return /7|9|1[13]/.test(suffix) && !/add/i.test(suffix) ? 'm7' : 'm';
}
