import { VOICES } from '../../shared-theory/sound/instrument.ts';
import { columns } from '../columns.ts';
import { fill } from '../protocol/words/fill.ts';
import { listenWords as words } from '../protocol/words/listen-words.ts';
import { heardAs } from './hearing.ts';
import type { Heard } from './listening.ts';

/** Percent of all strums whose bass note, and whose quality, must be heard right. */
const LEAST_PERCENT = 95;

const NAMES = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];

/** Whether the bass note and the quality were heard right often enough. */
export function passes(heard: readonly Heard[]): boolean {
  return [heard.filter(({ bassRight }) => bassRight), heard.filter(({ qualityRight }) => qualityRight)].every(
    (right) => percent(right.length, heard.length) >= LEAST_PERCENT,
  );
}

/** The table of what was heard, and the shares that are right: of all, by quality and by voice. */
export function printTable(heard: readonly Heard[]): readonly string[] {
  const { head } = words;
  const rows = heard.map(({ strum, heard: found, bassRight, qualityRight }) => [
    strum.symbol,
    strum.frets.map((fret) => fret ?? 'x').join(' '),
    strum.voice,
    `${strum.groove.id} ${strum.tempo}`,
    noteName(found.bass),
    found.quality ?? words.nothing,
    bassRight && qualityRight
      ? words.right
      : fill(words.wrong, { bass: noteName(strum.bass), quality: heardAs(strum.quality) }),
  ]);
  return [
    ...columns([[head.chord, head.shape, head.voice, head.groove, head.bass, head.quality], ...rows]),
    fill(words.bass, shares(heard, 'bassRight')),
    fill(words.bassName, shares(heard, 'bassNameRight')),
    fill(words.quality, shares(heard, 'qualityRight')),
    ...[...new Set(heard.map(({ strum }) => heardAs(strum.quality)))].map((quality) =>
      part(
        quality,
        heard.filter(({ strum }) => heardAs(strum.quality) === quality),
      ),
    ),
    ...VOICES.map((voice) =>
      part(
        voice,
        heard.filter(({ strum }) => strum.voice === voice),
      ),
    ),
    fill(words.bar, { percent: LEAST_PERCENT }),
  ];
}

function part(what: string, some: readonly Heard[]): string {
  const bass = some.filter(({ bassRight }) => bassRight).length;
  const quality = some.filter(({ qualityRight }) => qualityRight).length;
  return fill(words.by, { what: what.padEnd(12), bass, quality, of: some.length });
}

function shares(heard: readonly Heard[], which: 'bassRight' | 'bassNameRight' | 'qualityRight') {
  const right = heard.filter((each) => each[which]).length;
  return { right, of: heard.length, percent: percent(right, heard.length).toFixed(1) };
}

function percent(right: number, of: number): number {
  return of === 0 ? 0 : (100 * right) / of;
}

/** A MIDI note as a name with its octave (60 is C4). */
function noteName(midi: number | null): string {
  return midi === null ? words.nothing : `${NAMES[midi % 12] ?? ''}${Math.floor(midi / 12) - 1}`;
}
