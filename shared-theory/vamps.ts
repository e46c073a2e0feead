import { nothingTyped } from './chord-faults.ts';
import { parseChord } from './chord-reading.ts';
import { WORDS_APART } from './chord-reading/suffixes.ts';
import { chordSymbol } from './chords.ts';
import type { Chord } from './chords.ts';
import { printChord } from './printer.ts';
import type { Names, Naming } from './printer.ts';
import { ReadingError } from './reading-error.ts';

export { ReadingError } from './reading-error.ts';

/** Beats in a bar and the note value that carries one. Tempo counts quarters; in 6/8 and 12/8 dotted quarters. */
export type Meter = '4/4' | '3/4' | '6/8' | '12/8' | '7/8';

/** One chord of the loop and how many beats it lasts (the beats that the tempo counts). */
export type Slot = { readonly chord: Chord; readonly beats: number };

/** Frets on the strings 6 to 1 (low E first), null where a string is not played. */
export type Frets = readonly (number | null)[];

/** A slot with the shape that plays it. */
export type VoicedSlot = Slot & { readonly frets: Frets };

/**
 * A vamp that can sound: chords with their shapes, a groove in full text, a tempo and a seed for all chance.
 * `grooveText` is empty where the teacher plays his own guitar and named no groove.
 */
export type VoicedVamp = {
  readonly slots: readonly VoicedSlot[];
  readonly meter: Meter;
  readonly grooveText: string;
  /** Beats a minute. */
  readonly tempo: number;
  readonly seed: number;
};

/** More chords than this are no loop that a class could hear. */
const MOST_SLOTS = 64;

/** A word of a typed vamp and where it stands. */
type Token = { readonly text: string; readonly place: number };

const WORD = String.raw`[^\s,;|‖]+`;
/** A chord with what may stand apart from it: a word for its mode, its bass behind a slash. Commas between chords are no part. */
const CHORD = new RegExp(
  String.raw`${WORD}(?:\s+(?:${WORDS_APART})(?![^\s,;|‖/]))?(?:\s*/\s*(?!/)${WORD}|\s+over\s+${WORD})?`,
  'gi',
);

/** Places for chords in a bar: its beats, and where a half one is left over, as in 7/8, its eighths. */
function placesIn(beatsPerBar: number): number {
  return Number.isInteger(beatsPerBar) ? beatsPerBar : 2 * beatsPerBar;
}

/**
 * Reads a typed vamp into slots, its chords under a naming. Without bar lines each chord has a bar of its own: `Em D`. With bar
 * lines a bar has one chord or one token a beat (in 7/8 an eighth), and a dot holds: `| G . D . |`, `| Am | . | F . G . |`. ReadingError says where
 * and what would be right.
 */
export function parseVamp(text: string, beatsPerBar: number, naming: Naming = 'english'): Slot[] {
  if (!Number.isInteger(2 * beatsPerBar) || beatsPerBar < 1)
    throw new RangeError(`A bar has whole or half beats, from one, not ${beatsPerBar}.`);
  const repeat = /[|‖]:|:[|‖]/.exec(text);
  if (repeat) throw new ReadingError('repeat-sign', repeat.index, repeat[0]);
  const slots = /[|‖]/.test(text) ? barSlots(text, beatsPerBar, naming) : lineSlots(text, beatsPerBar, naming);
  const last = slots[MOST_SLOTS];
  if (last) throw new ReadingError('too-long', text.length, '', String(MOST_SLOTS));
  return slots;
}

/**
 * A typed vamp with its chords as another naming prints them; bar lines, dots and spaces stay. A word that cannot be read under the
 * naming that it was typed in stays too.
 */
export function reprintedVamp(text: string, typedIn: Naming, names: Names): string {
  return text.replaceAll(CHORD, (word) => {
    try {
      return printChord(chordSymbol(parseChord(word, typedIn)), names).text;
    } catch (error) {
      if (error instanceof ReadingError) return word;
      throw error;
    }
  });
}

/**
 * Draws slots that sound as the one before them into it, which lasts the longer; each with its index before. `joins` tells of a
 * slot's index (from 1) whether it does. A loop that would be one slot stays as it is.
 */
export function mergedSlots(
  slots: readonly Slot[],
  joins: (index: number) => boolean,
): readonly { readonly slot: Slot; readonly index: number }[] {
  const merged: { slot: Slot; index: number }[] = [];
  for (const [index, slot] of slots.entries()) {
    const last = merged.at(-1);
    if (last && joins(index)) last.slot = { ...last.slot, beats: last.slot.beats + slot.beats };
    else merged.push({ slot, index });
  }
  return merged.length === 1 ? slots.map((slot, index) => ({ slot, index })) : merged;
}

function lineSlots(text: string, beats: number, naming: Naming): Slot[] {
  // Lone dashes between chords are how people write a list of them.
  const tokens = tokensOf(text, 0).filter((token) => !/^[-–—→]+$/.test(token.text));
  if (tokens.length === 0) throw nothingTyped(text.trim(), naming);
  return tokens.map((token) => {
    if (isDot(token))
      throw new ReadingError('dot-outside-bar', token.place, token.text, filledBar(tokens, placesIn(beats)));
    return { chord: chordOf(token, naming), beats };
  });
}

function barSlots(text: string, beatsPerBar: number, naming: Naming): Slot[] {
  const slots: Slot[] = [];
  const places = placesIn(beatsPerBar);
  for (const bar of barsOf(text, naming)) {
    const tokens = tokensOf(bar.text, bar.place);
    if (tokens.length === 0) throw new ReadingError('bar-empty', bar.place, '|');
    if (tokens.length !== 1 && tokens.length !== places) {
      throw new ReadingError('bar-beats', tokens[0]?.place ?? bar.place, bar.text.trim(), filledBar(tokens, places));
    }
    const beats = beatsPerBar / tokens.length;
    for (const token of tokens) {
      const held = slots.at(-1);
      if (!isDot(token)) slots.push({ chord: chordOf(token, naming), beats });
      else if (held) slots[slots.length - 1] = { ...held, beats: held.beats + beats };
      else throw new ReadingError('nothing-to-hold', token.place, token.text);
    }
  }
  return slots;
}

/** The text between bar lines (a double bar is one line); before the first and after the last only what is not blank. */
function barsOf(text: string, naming: Naming): readonly Token[] {
  const lines = [...text.matchAll(/[|‖]+/g)];
  const starts = [0, ...lines.map((line) => line.index + line[0].length)];
  const ends = [...lines.map((line) => line.index), text.length];
  const bars = starts.map((place, index) => ({ text: text.slice(place, ends[index]), place }));
  const counted = bars.filter((bar, index) => bar.text.trim() !== '' || (index > 0 && index < bars.length - 1));
  if (counted.every((bar) => bar.text.trim() === '')) throw nothingTyped(text.trim(), naming);
  return counted;
}

function tokensOf(text: string, start: number): Token[] {
  const tokens = Array.from(text.matchAll(CHORD), (found) => ({ text: found[0], place: start + found.index }));
  const beat = tokens.find((token) => /^\/+$/.test(token.text));
  if (beat) throw new ReadingError('beat-slash', beat.place, beat.text);
  return tokens;
}

function isDot({ text }: Token): boolean {
  return text === '.' || text === '·';
}

function chordOf({ text, place }: Token, naming: Naming): Chord {
  try {
    return parseChord(text, naming);
  } catch (error) {
    throw error instanceof ReadingError ? error.movedBy(place) : error;
  }
}

/** A bar with the right number of beats from the chords of a wrong one, as an example of what would be right. */
function filledBar(tokens: readonly Token[], beatsPerBar: number): string {
  const chords = tokens.filter((token) => !isDot(token)).map(({ text }) => text);
  const shown = chords.slice(0, beatsPerBar);
  const each = Math.max(1, Math.floor(beatsPerBar / Math.max(1, shown.length)));
  const beats = shown.flatMap((chord) => [chord, ...Array.from({ length: each - 1 }, () => '.')]).slice(0, beatsPerBar);
  while (beats.length < beatsPerBar) beats.push('.');
  return `| ${beats.join(' ')} |`;
}
