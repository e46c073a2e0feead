import type { GeneratedVamp } from '../../shared-theory/generate.ts';
import type { Level } from '../../shared-theory/levels.ts';
import { printChord, printKey, printNumeral } from '../../shared-theory/printer.ts';
import { columns } from '../columns.ts';
import { consoleWords } from '../protocol/words/en.ts';
import { fill } from '../protocol/words/fill.ts';

const words = consoleWords.vamps;

/** One line a vamp: chords, where the bass goes, the major keys with their numerals, groove and tempo. */
export function printVamps(level: Level, vamps: readonly GeneratedVamp[]): string {
  const { chords, bass, keys, groove, tempo } = words.columns;
  const rows = vamps.map((vamp) => [
    vamp.chords.map((chord) => printChord(chord).text).join(' '),
    waysOf(vamp).join(', ') || words.alone,
    vamp.readings.map(printReading).join(', ') || words.noKey,
    vamp.groove,
    String(vamp.vamp.tempo),
  ]);
  const heading = fill(words.heading, { level: level.level, name: level.name });
  return [heading, ...columns([[chords, bass, keys, groove, tempo], ...rows])].join('\n');
}

/** Where the bass goes from home to each chord; to one that was heard before is no way to go, but the first where it stays. */
function waysOf({ chords, truth }: GeneratedVamp): readonly string[] {
  return truth.directions
    .map((direction) => words.directions[direction])
    .filter((_, index) => index === 0 || chords.indexOf(chords[index + 1] ?? '') === index + 1);
}

function printReading({ key, numerals }: GeneratedVamp['readings'][number]): string {
  return `${printKey(key).text} ${numerals.map((numeral) => printNumeral(numeral).text).join('–')}`;
}

/**
 * A vamp as one line of JSON, accidentals in ASCII. `key` and `numerals` are those of the only major key that owns it, null
 * where several do or none; `readings` has them all.
 */
export function vampLine({ level, seed, chords, readings, vamp, groove, truth }: GeneratedVamp): string {
  const [only, ...others] = readings;
  const one = others.length === 0 ? only : undefined;
  return JSON.stringify({
    level,
    seed,
    chords,
    home: chords[0],
    key: one?.key ?? null,
    numerals: one?.numerals ?? null,
    readings,
    beats: vamp.slots.map((slot) => slot.beats),
    frets: vamp.slots.map((slot) => slot.frets),
    tempo: vamp.tempo,
    meter: vamp.meter,
    groove,
    truth,
  });
}
