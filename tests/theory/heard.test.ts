import { describe, expect, test } from 'vitest';
import { chordPitchClasses, chordSymbol, QUALITIES, type Chord } from '../../shared-theory/chords.ts';
import {
  grooveById,
  GROOVES,
  parseGroove,
  withOpening,
  withRootBass,
  type Groove,
} from '../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { shapesFor } from '../../shared-theory/neck.ts';
import { perform, type SoundedNote } from '../../shared-theory/perform.ts';
import { pitchClass } from '../../shared-theory/pitch.ts';
import type { Frets } from '../../shared-theory/vamps.ts';

const ROOTS = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
const PLAIN: readonly Chord[] = ROOTS.flatMap((root) => QUALITIES.map((quality) => ({ root, quality })));
const SEVENTHS: readonly Chord[] = ROOTS.flatMap((root): readonly Chord[] => [
  { root, quality: 'major', addition: 'seventh' },
  { root, quality: 'major', addition: 'major-seventh' },
  { root, quality: 'minor', addition: 'seventh' },
]);
const SHAPES = [...PLAIN, ...SEVENTHS].flatMap((chord) => shapesFor(chord).map((frets) => ({ chord, frets })));

/** Shapes taken of all for one groove at one tempo, others for each, so that together every shape is played many times. */
const SAMPLE = 40;

/** What tells the quality: the third, or what stands for it, the fifth of a power chord; and the seventh where there is one. */
const telling = (chord: Chord) => {
  const sounds = chordPitchClasses(chord);
  return [sounds[1] ?? 0, ...(chord.addition ? sounds.slice(3) : [])];
};

/** The longest time in seconds that open strings sound a pitch class without a gap. */
function soundsOpen(notes: readonly SoundedNote[], sound: number): number {
  let longest = 0;
  let from = -1;
  let until = -1;
  for (const note of notes) {
    if ((note.touch !== 'open' && note.touch !== 'ring') || note.midi % 12 !== sound) continue;
    if (note.time > until + 1e-6) from = note.time;
    until = Math.max(until, note.time + note.duration);
    longest = Math.max(longest, until - from);
  }
  return longest;
}

type Played = { readonly groove: Groove; readonly text: string; readonly tempo: number; readonly human: boolean };

/** The chord for two bars after another one; the bars in which its quality must be heard: its first, or each without an opening. */
function play({ groove, text, tempo, human }: Played, chord: Chord, frets: Frets) {
  const beats = BEATS_PER_BAR[groove.meter];
  const before = { chord: { root: 'A', quality: 'power' }, frets: [null, 0, 2, null, null, null], beats } as const;
  const slots = [before, { chord, frets, beats: 2 * beats }];
  const { notes, bars } = perform({ slots, meter: groove.meter, grooveText: text, tempo, seed: tempo }, { human });
  const own = notes.filter((note) => note.chord === 1);
  const second = bars[2]?.time ?? 0;
  const first = own.filter((note) => note.time < second);
  return { first, asked: groove.opening ? [first] : [first, own.filter((note) => note.time >= second)] };
}

/** Why the chord is not heard as it is asked; null where it is. */
function faultOf(played: Played, chord: Chord, frets: Frets): string | null {
  const { first, asked } = play(played, chord, frets);
  const bassStroke = first.find(({ bass }) => bass);
  const opening = first.filter((note) => note.time < (first[0]?.time ?? 0) + 0.06);
  const lowest = Math.min(...opening.map((note) => note.midi));
  const heard = Math.min(...asked.flatMap((notes) => telling(chord).map((sound) => soundsOpen(notes, sound))));
  const right = lowest % 12 === pitchClass(chord.root) && bassStroke?.midi === lowest && heard >= 0.3;
  return right
    ? null
    : `${chordSymbol(chord)} as ${frets.join()} at ${played.tempo}: lowest ${lowest}, heard ${heard} s`;
}

/** Far from each other in the list, so that each sample has many chords. */
const STRIDE = 37;

let turn = 0;

/** The next shapes of all. */
function sample(): readonly (typeof SHAPES)[number][] {
  const from = turn;
  turn += SAMPLE;
  return Array.from({ length: SAMPLE }, (_, index) => SHAPES[((from + index) * STRIDE) % SHAPES.length]).flatMap(
    (shape) => shape ?? [],
  );
}

/** With the bass that takes turns, where there is one, and with the root in its place; at both ends of its swing. */
function textsOf(groove: Groove): readonly string[] {
  const header = (swing: number) => groove.text.replace(/r=[\d.]+/, `r=${swing}`);
  return [...new Set([...groove.swing.map(header), withRootBass(groove.text)])];
}

// Common practice of ear-training: what is asked must have been heard.
describe.each(GROOVES.map((groove) => [groove.id, groove] as const))('%s, shapes of every chord', (_, groove) => {
  test('the root is the lowest note of the first stroke, and what tells the quality sounds open for 300 ms', () => {
    const [low, high] = groove.tempo;
    for (const text of textsOf(groove)) {
      for (const tempo of [low, high]) {
        for (const [index, { chord, frets }] of sample().entries()) {
          const fault = faultOf({ groove, text, tempo, human: index % 2 === 1 }, chord, frets);
          if (fault !== null) expect.fail(fault);
        }
      }
    }
  });
});

test('every shape is played', () => {
  expect(turn).toBeGreaterThan(2 * SHAPES.length);
  expect(SHAPES.length % STRIDE).not.toBe(0);
});

test('an opening bar made for a groove of one’s own is heard too', () => {
  for (const known of GROOVES) {
    const { opening: _, ...bare } = known;
    const groove = withOpening({ ...bare, tempo: [known.tempo[0], Math.min(300, known.tempo[1] + 40)] });
    for (const { chord, frets } of sample().slice(0, 10)) {
      const fault = faultOf({ groove, text: groove.text, tempo: groove.tempo[1], human: true }, chord, frets);
      if (fault !== null) expect.fail(`${known.id}: ${fault}`);
    }
  }
});

test('without their opening bars the muted grooves would hide the third', () => {
  const chord: Chord = { root: 'D', quality: 'major' };
  const frets = shapesFor(chord)[0] ?? [];
  for (const groove of GROOVES) {
    const { opening: _, ...bare } = groove;
    const text = groove.text
      .split('\n')
      .filter((line) => !line.startsWith('open-'))
      .join('\n');
    const played = { groove: bare, text, tempo: groove.tempo[1], human: false };
    expect(parseGroove(text).slots).toEqual(groove.slots);
    expect([groove.id, faultOf(played, chord, frets) !== null]).toEqual([groove.id, groove.opening !== undefined]);
  }
});

test('in half a bar too a chord opens on its root and rings, where the whole bar would let it', () => {
  const slots = [
    { chord: { root: 'E', quality: 'minor' }, frets: [0, 2, 2, 0, 0, 0], beats: 2 },
    { chord: { root: 'D', quality: 'major' }, frets: [null, null, 0, 2, 3, 2], beats: 2 },
  ] as const;
  for (const groove of GROOVES.filter(({ meter }) => meter === '4/4')) {
    const tempo = groove.tempo[1];
    const { notes } = perform({ slots, meter: '4/4', grooveText: groove.text, tempo, seed: 1 });
    for (const [chord, bass, third] of [
      [0, 40, 7],
      [1, 50, 6],
    ] as const) {
      const own = notes.filter((note) => note.chord === chord);
      expect([groove.id, own.find((note) => note.bass)?.midi]).toEqual([groove.id, bass]);
      expect([groove.id, chord, soundsOpen(own, third) > 0.27]).toEqual([groove.id, chord, true]);
    }
  }
  expect(grooveById('half-time').slots[4]?.touch).toBe('dead');
});
