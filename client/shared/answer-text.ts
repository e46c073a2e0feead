import { questionWords } from '../../server/protocol/words/en.ts';
import { listed, numberWord } from '../../server/protocol/words/counting.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import { grooveAnswers } from '../../server/protocol/words/groove-answers.ts';
import { figureOrdinal, ordinal } from '../../server/protocol/words/ordinals.ts';
import { usualKey } from '../../shared-theory/keys.ts';
import { printChord, printNote } from './names.ts';
import { HOME_IDS } from '../../shared-theory/questions/keys/ask.ts';
import { GRID_KINDS, TAPPED_KINDS, type Kind, type NeckPlace } from '../../shared-theory/questions/question.ts';
import { tappedTempo } from '../../shared-theory/taps/taps.ts';
import { gridText } from './answer-grid.ts';
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

/**
 * An answer in a few words, as it stands inside a sentence: `up`, `minor`, `G`, `D and G`, `distance 4, up`, `vi – V`, `A B A C`, `about
 * 96 a minute`, `heavy on 2 and 4`. `grid` is the one that was drawn on.
 */
export function answerText(kind: string, answer: unknown, grid?: string): string {
  if (answer === null || answer === undefined) return '';
  const tempo = tempoOf(kind, answer);
  if (tempo !== null) return fill(grooveAnswers.tempo, { tempo });
  if (isDrawn(kind) && Array.isArray(answer)) return gridText(kind, answer, grid);
  if (isPlace(answer)) return noteText(answer);
  if (Array.isArray(answer)) return listText(kind, answer);
  if (typeof answer === 'number') return numberText(kind, answer);
  return typeof answer === 'string' ? wordText(kind, answer) : '';
}

/** The right answer in the same few words: of how even somebody taps no tempo is the right one. */
export function truthText(kind: string, truth: unknown, grid?: string): string {
  return kind === 'steadiness' && truth !== null ? grooveAnswers.evenTaps : answerText(kind, truth, grid);
}

/** Beats a minute of an answer that was tapped; null of any other. */
function tempoOf(kind: string, answer: unknown): number | null {
  if (!TAPPED_KINDS.has(kind as Kind)) return null;
  const taps = typeof answer === 'object' && answer !== null && 'taps' in answer ? answer.taps : answer;
  return Array.isArray(taps) ? tappedTempo(taps) : null;
}

const isDrawn = (kind: string): kind is 'accents' | 'stroke-grid' | 'roles' | 'opened' => GRID_KINDS.has(kind as Kind);

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
