import { questionWords } from '../../server/protocol/words/en.ts';
import { listed, numberWord } from '../../server/protocol/words/questions.ts';
import { usualKey } from '../../shared-theory/keys.ts';
import { printChord, printNote } from '../../shared-theory/printer.ts';
import type { NeckPlace } from '../../shared-theory/questions/question.ts';
import { distanceText, numeralsText } from './answer-names.ts';

/** Sharp and flat spelling of each pitch class: without a key nobody knows which is meant, so both are named. */
const SPELLINGS: readonly (readonly string[])[] = [
  ['C'],
  ['C#', 'Db'],
  ['D'],
  ['D#', 'Eb'],
  ['E'],
  ['F'],
  ['F#', 'Gb'],
  ['G'],
  ['G#', 'Ab'],
  ['A'],
  ['A#', 'Bb'],
  ['B'],
];

const OPEN_STRING = { 5: 9, 6: 4 } as const;

/** An answer in a few words, as it stands inside a sentence: `up`, `minor`, `G`, `D and G`, `distance 4, up`, `vi – V`. */
export function answerText(kind: string, answer: unknown): string {
  const options: Readonly<Record<string, string>> = questionWords.options;
  if (answer === null || answer === undefined) return '';
  if (kind === 'root' && isPlace(answer)) return noteText(answer);
  if (Array.isArray(answer)) return listText(kind, answer.map(String));
  if (typeof answer === 'number') return kind === 'distance' ? distanceText(answer) : numberWord(answer);
  return typeof answer === 'string' ? (options[answer] ?? answer) : '';
}

/** The note of a place on the low strings, in both spellings where there are two: `G`, `F♯ or G♭`. */
function noteText({ string, fret }: NeckPlace): string {
  const names = SPELLINGS[(OPEN_STRING[string] + fret) % 12] ?? [];
  return names.map((name) => printNote(name).text).join(` ${questionWords.or} `);
}

function listText(kind: string, answer: readonly string[]): string {
  if (kind === 'numeral') return numeralsText(answer);
  if (answer.length > 0) return listed(answer.map(keyText));
  return questionWords.options[kind === 'settler' ? 'none-left' : 'none'];
}

/** `7M` is `G`, `4m` is `Em`. */
function keyText(id: string): string {
  const { tonic, mode } = usualKey(id);
  return printChord(mode === 'minor' ? `${tonic}m` : tonic).text;
}

function isPlace(answer: unknown): answer is NeckPlace {
  return typeof answer === 'object' && answer !== null && 'string' in answer && 'fret' in answer;
}
