import { questionWords } from '../../server/protocol/words/en.ts';
import { listed, numberWord } from '../../server/protocol/words/counting.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import { figureOrdinal, ordinal } from '../../server/protocol/words/ordinals.ts';
import { usualKey } from '../../shared-theory/keys.ts';
import { printChord, printNote } from './names.ts';
import { HOME_IDS } from '../../shared-theory/questions/keys/ask.ts';
import type { NeckPlace } from '../../shared-theory/questions/question.ts';
import { distanceText } from './answer-names.ts';
import { orderText } from './order-text.ts';
import { numeralsText } from './right-readings.ts';

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

/** An answer in a few words, as it stands inside a sentence: `up`, `minor`, `G`, `D and G`, `distance 4, up`, `vi – V`, `A B A C`. */
export function answerText(kind: string, answer: unknown): string {
  if (answer === null || answer === undefined) return '';
  if (isPlace(answer)) return noteText(answer);
  if (Array.isArray(answer)) return listText(kind, answer);
  if (typeof answer === 'number') return numberText(kind, answer);
  return typeof answer === 'string' ? wordText(kind, answer) : '';
}

function wordText(kind: string, answer: string): string {
  const words: Readonly<Record<string, string>> = kind === 'seventh' ? questionWords.sevenths : questionWords.options;
  return words[answer] ?? answer;
}

function numberText(kind: string, answer: number): string {
  if (kind === 'distance') return distanceText(answer);
  return kind === 'home' ? fill(questionWords.homes.chord, { which: ordinal(answer) }) : numberWord(answer);
}

/** The note of a place on the low strings, in both spellings where there are two: `G`, `F♯ or G♭`. */
function noteText({ string, fret }: NeckPlace): string {
  const names = SPELLINGS[(OPEN_STRING[string] + fret) % 12] ?? [];
  return names.map((name) => printNote(name).text).join(` ${questionWords.or} `);
}

function listText(kind: string, answer: readonly unknown[]): string {
  if (kind === 'order') return orderText(answer.map(Number));
  if (kind === 'numeral') return numeralsText(answer.map(String));
  if (answer.length > 0) return listed(answer.map((id) => keyText(String(id))));
  return questionWords.options[kind === 'settler' ? 'none-left' : 'no-key'];
}

/** `7M` is `G`, `4m` is `Em`, `h1` the home of a scale: `home: 2nd chord`. */
function keyText(id: string): string {
  const home = HOME_IDS.indexOf(id);
  if (home >= 0) return fill(questionWords.keysHome.is, { which: figureOrdinal(home) });
  const { tonic, mode } = usualKey(id);
  return printChord(mode === 'minor' ? `${tonic}m` : tonic).text;
}

function isPlace(answer: unknown): answer is NeckPlace {
  return typeof answer === 'object' && answer !== null && 'string' in answer && 'fret' in answer;
}
