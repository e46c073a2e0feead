import { describe, expect, test } from 'vitest';
import { parseChord } from '../../../shared-theory/chord-reading.ts';
import { grooveById, GROOVES, type Groove } from '../../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { usualShape } from '../../../shared-theory/neck.ts';
import { perform, type SoundedNote } from '../../../shared-theory/perform.ts';
import { STEEL, VOICES } from '../../../shared-theory/sound/instrument.ts';
import { kWeighted, meanSquare } from '../../../shared-theory/sound/loudness.ts';
import { noteShelf, trimGain, type NoteShelf } from '../../../shared-theory/sound/note-shelf.ts';

const SAMPLE_RATE = 22_050;
/** The ear's first glance at a stroke, as a sound level meter's fast time weighting has it (IEC 61672-1). */
const SECONDS = 0.125;

type Mark = { readonly name: string; readonly like: string; readonly accent: number; readonly decibels: number };

/** The notes of a performance by the strokes that sounded them. */
function strokesOf(notes: readonly SoundedNote[]): readonly (readonly SoundedNote[])[] {
  const strokes: SoundedNote[][] = [];
  for (const note of notes) {
    const last = strokes.at(-1);
    if (last?.[0] && note.time - last[0].time < 0.05) last.push(note);
    else strokes.push([note]);
  }
  return strokes;
}

/** What a small speaker leaves of a sound: a Butterworth high-pass of the second order at 150 Hz, twice. */
function throughSmallSpeaker(samples: Float64Array): Float64Array {
  const k = Math.tan((Math.PI * 150) / SAMPLE_RATE);
  const scale = 1 / (1 + Math.SQRT2 * k + k * k);
  let passed = samples;
  for (let times = 0; times < 2; times++) {
    const from = passed;
    const out = new Float64Array(from.length);
    for (let n = 0; n < out.length; n++) {
      const input = (from[n] ?? 0) - 2 * (from[n - 1] ?? 0) + (from[n - 2] ?? 0);
      const fed = 2 * (k * k - 1) * (out[n - 1] ?? 0) + (1 - Math.SQRT2 * k + k * k) * (out[n - 2] ?? 0);
      out[n] = scale * (input - fed);
    }
    passed = out;
  }
  return passed;
}

/** K-weighted level of a stroke by itself, in decibels, heard through what it is meant for. */
function levelOf(stroke: readonly SoundedNote[], shelf: NoteShelf): number {
  const out = new Float64Array(Math.round(SECONDS * SAMPLE_RATE));
  const start = stroke[0]?.time ?? 0;
  for (const note of stroke) {
    const samples = shelf.take(note);
    const gain = trimGain(note);
    const from = Math.round((note.time - start) * SAMPLE_RATE);
    const stop = Math.round(note.duration * SAMPLE_RATE);
    const until = Math.min(out.length - from, stop);
    for (let n = 0; n < until; n++) out[from + n] = (out[from + n] ?? 0) + (samples[n] ?? 0) * gain;
  }
  const heard = shelf.instrument.smallSpeaker ? throughSmallSpeaker(out) : out;
  return 10 * Math.log10(meanSquare(kWeighted(heard, SAMPLE_RATE), 0, out.length));
}

/** Each different stroke of a groove on chords that take six strings and four, with its level. */
function marksOf(groove: Groove, shelf: NoteShelf, chords: readonly string[]): readonly Mark[] {
  const beats = 2 * BEATS_PER_BAR[groove.meter];
  const slots = chords.map((text) => ({ chord: parseChord(text), frets: usualShape(parseChord(text)), beats }));
  const vamp = { slots, meter: groove.meter, grooveText: groove.text, tempo: groove.tempo[1], seed: 1 };
  const marks = new Map<string, Mark>();
  for (const stroke of strokesOf(perform(vamp).notes)) {
    const [first] = stroke;
    if (!first) continue;
    const like = `${first.stroke} ${first.touch} on ${stroke.map(({ string }) => string).join('')} of ${first.chord}`;
    const name = `${first.accent} ${like}`;
    if (!marks.has(name)) marks.set(name, { name, like, accent: first.accent, decibels: levelOf(stroke, shelf) });
  }
  return [...marks.values()];
}

/** Pairs of a heavier and a lighter mark whose levels lie less than so far apart. */
function tooNear(marks: readonly Mark[], decibels: number, counts: (one: Mark, other: Mark) => boolean): string[] {
  return marks.flatMap((one) =>
    marks.flatMap((other) => {
      const near = one.accent > other.accent && counts(one, other) && one.decibels - other.decibels < decibels;
      return near ? [`${one.name} ${one.decibels.toFixed(1)}, ${other.name} ${other.decibels.toFixed(1)}`] : [];
    }),
  );
}

describe('a heavier mark is a louder stroke', () => {
  const shelf = noteShelf(SAMPLE_RATE);

  test.each(GROOVES.map((groove) => [groove.id, groove] as const))('%s', (_, groove) => {
    const marks = marksOf(groove, shelf, ['Em', 'D']);
    expect(tooNear(marks, 4, (one, other) => one.like === other.like)).toEqual([]);
    expect(tooNear(marks, 1, () => true)).toEqual([]);
  });

  // Foot and hat, bass and chord, slaps and short chords, fingers.
  test.each(['foot-and-open-hat', 'boom-chicka', 'foot-slap-hat', 'eighth-downs-backbeat', 'bossa-like', 'train-beat'])(
    '%s in the other voices and through a small speaker',
    (id) => {
      for (const voice of VOICES) {
        for (const smallSpeaker of [false, true]) {
          if (voice === 'steel' && !smallSpeaker) continue;
          const marks = marksOf(grooveById(id), noteShelf(SAMPLE_RATE, { ...STEEL, voice, smallSpeaker }), ['Am']);
          expect([voice, smallSpeaker, tooNear(marks, 4, (one, other) => one.like === other.like)]).toEqual([
            voice,
            smallSpeaker,
            [],
          ]);
          expect([voice, smallSpeaker, tooNear(marks, 0.5, () => true)]).toEqual([voice, smallSpeaker, []]);
        }
      }
    },
  );
});
