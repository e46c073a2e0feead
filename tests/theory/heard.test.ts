import { describe, expect, test } from 'vitest';
import { chordPitchClasses, chordSymbol, QUALITIES, type Chord } from '../../shared-theory/chords.ts';
import { GROOVES, withRootBass, type Groove } from '../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { shapesFor } from '../../shared-theory/neck.ts';
import { perform, type SoundedNote } from '../../shared-theory/perform.ts';
import { pitchClass } from '../../shared-theory/pitch.ts';
import type { Frets } from '../../shared-theory/vamps.ts';

const ROOTS = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
const CHORDS: readonly Chord[] = ROOTS.flatMap((root) => QUALITIES.map((quality) => ({ root, quality })));
const SHAPES = CHORDS.flatMap((chord) => shapesFor(chord).map((frets) => ({ chord, frets })));

/** The note that tells the quality: the third, or what stands for it; the fifth of a power chord. */
const telling = (chord: Chord) => chordPitchClasses(chord)[1] ?? 0;

/** The longest time in seconds that open strings sound a pitch class without a gap. */
function soundsOpen(notes: readonly SoundedNote[], sound: number): number {
  let longest = 0;
  let from = -1;
  let until = -1;
  for (const note of notes) {
    if (note.touch !== 'open' || note.midi % 12 !== sound) continue;
    if (note.time > until + 1e-6) from = note.time;
    until = Math.max(until, note.time + note.duration);
    longest = Math.max(longest, until - from);
  }
  return longest;
}

/** Two bars of a chord; the bars in which its telling note must be heard: the opening one, or each where there is none. */
function play(groove: Groove, grooveText: string, chord: Chord, frets: Frets, tempo: number, human: boolean) {
  const beats = BEATS_PER_BAR[groove.meter];
  const slots = [{ chord, frets, beats: 2 * beats }];
  const { notes, bars } = perform({ slots, meter: groove.meter, grooveText, tempo, seed: tempo }, { human });
  const second = bars[1]?.time ?? 0;
  const first = notes.filter((note) => note.time < second);
  return { first, asked: groove.opening ? [first] : [first, notes.filter((note) => note.time >= second)] };
}

// Common practice of ear-training: what is asked must have been heard.
describe.each(GROOVES.map((groove) => [groove.id, groove] as const))(
  '%s, every shape of every chord at every tempo',
  (_, groove) => {
    const [low, high] = groove.tempo;
    const tempos = Array.from({ length: (high - low) / 2 + 1 }, (_, step) => low + 2 * step);
    // With the bass that takes turns, where there is one, and with the root in its place; at both ends of its swing.
    const header = (swing: number) => groove.text.replace(/r=[\d.]+/, `r=${swing}`);
    const texts = [...new Set([...groove.swing.map(header), withRootBass(groove.text)])];

    test('the root is the lowest note of the first stroke, and the note that tells the quality sounds open for 300 ms', () => {
      for (const { chord, frets } of SHAPES) {
        for (const tempo of tempos) {
          for (const [text, human] of texts.flatMap((each) => [[each, false] as const, [each, true] as const])) {
            const { first, asked } = play(groove, text, chord, frets, tempo, human);
            const stroke = first.filter((note) => note.time < (first[0]?.time ?? 0) + 0.06);
            const lowest = Math.min(...stroke.map((note) => note.midi));
            const heard = Math.min(...asked.map((notes) => soundsOpen(notes, telling(chord))));
            if (lowest % 12 !== pitchClass(chord.root) || heard < 0.3)
              expect.fail(`${chordSymbol(chord)} as ${frets.join()} at ${tempo}: lowest ${lowest}, heard ${heard} s`);
          }
        }
      }
    });
  },
);

test('without their opening bars the muted grooves would hide the third', () => {
  const chord: Chord = { root: 'D', quality: 'major' };
  const frets = shapesFor(chord)[0] ?? [];
  for (const groove of GROOVES) {
    const text = groove.text
      .split('\n')
      .filter((line) => !line.startsWith('open-'))
      .join('\n');
    const vamp = {
      slots: [{ chord, frets, beats: BEATS_PER_BAR[groove.meter] }],
      meter: groove.meter,
      grooveText: text,
      seed: 1,
    };
    const heard = soundsOpen(perform({ ...vamp, tempo: groove.tempo[1] }).notes, telling(chord));
    expect([groove.id, heard < 0.3]).toEqual([groove.id, groove.opening !== undefined]);
  }
});
