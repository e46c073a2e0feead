import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import {
  chordPitchClasses,
  chordSuffix,
  chordSymbol,
  QUALITIES,
  SUFFIXES,
  type Chord,
  type Quality,
} from '../../../shared-theory/chords.ts';
import { shapeNotes, shapesFor, usualShape } from '../../../shared-theory/neck.ts';
import { midiPitchClass, modulo, pitchClass } from '../../../shared-theory/pitch.ts';
import type { Frets } from '../../../shared-theory/vamps.ts';

/** One way to play a chord: frets on strings 6 to 1 from `baseFret`, -1 not played, 0 open; MIDI notes from the lowest string. */
type Position = {
  readonly frets: readonly number[];
  readonly fingers: readonly number[];
  readonly baseFret: number;
  readonly midi: readonly number[];
};
type Entry = { readonly key: string; readonly suffix: string; readonly positions: readonly Position[] };
type Data = {
  readonly main: { readonly strings: number; readonly numberOfChords: number };
  readonly chords: Readonly<Record<string, readonly Entry[]>>;
};

const require = createRequire(import.meta.url);

/** @tombatossals/chords-db 0.5.1 (MIT, David Rubert): guitar chords typed in by hand, and the MIDI notes of each. */
const DATA = JSON.parse(readFileSync(require.resolve('@tombatossals/chords-db/lib/guitar.json'), 'utf8')) as Data;
const ENTRIES = Object.values(DATA.chords).flat();
const POSITIONS = ENTRIES.flatMap(({ key, suffix, positions }) => positions.map((at) => ({ key, suffix, at })));

/** Our qualities in the package's suffixes; it has no power chords. */
const PACKAGE_SUFFIXES: Readonly<Partial<Record<Quality, string>>> = {
  major: 'major',
  minor: 'minor',
  diminished: 'dim',
  augmented: 'aug',
  'suspended-second': 'sus2',
  'suspended-fourth': 'sus4',
};

/** Further suffixes in semitones from the root (common practice). */
const FURTHER: Readonly<Record<string, readonly number[]>> = {
  dim7: [0, 3, 6, 9],
  '6': [0, 4, 7, 9],
  m6: [0, 3, 7, 9],
  '7': [0, 4, 7, 10],
  '7b5': [0, 4, 6, 10],
  aug7: [0, 4, 8, 10],
  '7sus4': [0, 5, 7, 10],
  '9': [0, 4, 7, 10, 2],
  maj7: [0, 4, 7, 11],
  m7: [0, 3, 7, 10],
  m7b5: [0, 3, 6, 10],
  mmaj7: [0, 3, 7, 11],
  add9: [0, 4, 7, 2],
  madd9: [0, 3, 7, 2],
};

const ROOTS = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];

function fretsOf({ frets, baseFret }: Position): Frets {
  return frets.map((fret) => (fret < 0 ? null : fret === 0 ? 0 : fret + baseFret - 1));
}
function soundsOf(frets: Frets): number[] {
  return [...new Set(shapeNotes(frets).map(({ midi }) => midiPitchClass(midi)))].toSorted((one, other) => one - other);
}
function spanOf(frets: Frets): number {
  const fretted = frets.filter((fret) => fret !== null && fret > 0) as number[];
  return Math.max(0, ...fretted) - Math.min(...fretted, Math.max(0, ...fretted));
}
/** The package's ways to play a chord, as it lists them. */
function listed(root: string, quality: Quality): readonly Position[] {
  return POSITIONS.filter(({ key, suffix }) => key === root && suffix === PACKAGE_SUFFIXES[quality]).map(
    ({ at }) => at,
  );
}
const named = ({ key, suffix, at }: (typeof POSITIONS)[number]) => `${key} ${suffix} ${at.frets.join()}@${at.baseFret}`;
const sorted = (sounds: readonly number[]) => sounds.toSorted((one, other) => one - other);

describe('a published collection of guitar chords', () => {
  test('holds 2069 positions on six strings', () => {
    expect(DATA.main).toMatchObject({ strings: 6, numberOfChords: 2069 });
    expect([ENTRIES.length, POSITIONS.length]).toEqual([529, 2069]);
  });

  test('our notes of every position are those it lists', () => {
    for (const position of POSITIONS)
      expect([named(position), shapeNotes(fretsOf(position.at)).map(({ midi }) => midi)]).toEqual([
        named(position),
        position.at.midi,
      ]);
  });

  test('of our qualities, four positions are not the chord they are listed under, and no other', () => {
    const wrong = QUALITIES.flatMap((quality) =>
      POSITIONS.filter(({ suffix }) => suffix === PACKAGE_SUFFIXES[quality]).flatMap((position) => {
        const sounds = soundsOf(fretsOf(position.at));
        const wanted = sorted(chordPitchClasses({ root: position.key, quality }));
        return sounds.join() === wanted.join() ? [] : [[named(position), sounds, wanted]];
      }),
    );
    expect(wrong).toEqual([
      ['A dim 3,1,-1,2,1,-1@3', [0, 2, 9, 11], [0, 3, 9]],
      ['C# aug -1,4,4,4,2,2@1', [1, 6, 11], [1, 5, 9]],
      ['C# aug 1,1,3,1,4,1@4', [1, 6, 8, 11], [1, 5, 9]],
      ['B aug -1,3,2,1,1,0@12', [3, 4, 7, 11], [3, 7, 11]],
    ]);
  });

  test('of sixths, sevenths, ninths and added ninths, nine sound a note that is not the chord’s, and no other', () => {
    const wrong = POSITIONS.flatMap((position) => {
      const intervals = FURTHER[position.suffix];
      const root = pitchClass(position.key);
      const sounds = soundsOf(fretsOf(position.at));
      const stray = sounds.some((sound) => intervals && !intervals.includes(modulo(sound - root, 12)));
      return stray ? [[named(position), sounds]] : [];
    });
    expect(wrong).toEqual([
      ['C# 7b5 -1,-1,1,2,2,3@12', [0, 2, 6, 8]],
      ['D mmaj7 -1,4,2,1,1,0@2', [1, 2, 4, 5, 9]],
      ['Eb 7b5 -1,1,2,1,3,1@6', [1, 3, 7, 9, 10]],
      ['E madd9 -1,-1,3,1,1,3@1', [0, 5, 7, 8]],
      ['E madd9 -1,4,2,1,4,-1@5', [0, 5, 7, 8]],
      ['E madd9 -1,3,1,0,1,3@6', [0, 5, 7, 8]],
      ['E madd9 -1,1,3,0,2,1@8', [0, 5, 7, 8]],
      ['G add9 -1,-1,3,2,1,4@1', [0, 5, 8, 9]],
      ['Bb 6 -1,4,2,2,1,-1@10', [1, 6, 9, 10]],
    ]);
    const omitted = (name: string) =>
      POSITIONS.filter(({ suffix }) => suffix === name).filter(
        ({ at }) => soundsOf(fretsOf(at)).length < (FURTHER[name]?.length ?? 0),
      ).length;
    expect(
      ['7', '7sus4', '9', 'maj7', 'm7', 'm6', 'm7b5', 'aug7', 'dim7'].map((name) => [name, omitted(name)]),
    ).toEqual([
      ['7', 6],
      ['7sus4', 12],
      ['9', 12],
      ['maj7', 2],
      ['m7', 2],
      ['m6', 0],
      ['m7b5', 0],
      ['aug7', 0],
      ['dim7', 0],
    ]);
  });

  test('about half of its major and minor positions have another note than the root in the bass', () => {
    const rooted = (suffix: string) =>
      POSITIONS.filter(
        (each) => each.suffix === suffix && midiPitchClass(each.at.midi[0] ?? 0) === pitchClass(each.key),
      );
    expect(['major', 'minor', 'maj7'].map((suffix) => rooted(suffix).length)).toEqual([26, 32, 26]);
  });
});

/** Our symbol's suffix as the package writes it; null where it has no such chord. */
function packageSuffix(chord: Chord): string | null {
  const ours = chordSuffix(chord);
  if (ours === '5') return null;
  return { '': 'major', m: 'minor', 'm(maj7)': 'mmaj7' }[ours] ?? ours;
}

describe('sevenths, sixths and ninths beside it', () => {
  const chords: readonly Chord[] = ROOTS.flatMap((root) =>
    SUFFIXES.map(({ quality, addition }): Chord => ({ root, quality, ...(addition === null ? {} : { addition }) })),
  ).filter((chord) => packageSuffix(chord) !== null);

  test('every shape sounds its chord, and what a listed position with the root in the bass sounds where there is one', () => {
    const without: string[] = [];
    for (const chord of chords) {
      const wanted = sorted(chordPitchClasses(chord));
      const positions = POSITIONS.filter(({ key, suffix }) => key === chord.root && suffix === packageSuffix(chord));
      expect([chordSymbol(chord), positions.length > 0]).toEqual([chordSymbol(chord), true]);
      const rooted = positions.filter(({ at }) => midiPitchClass(at.midi[0] ?? 0) === pitchClass(chord.root));
      const listed = rooted.map(({ at }) => soundsOf(fretsOf(at)).join());
      for (const frets of shapesFor(chord))
        expect([chordSymbol(chord), soundsOf(frets)]).toEqual([chordSymbol(chord), wanted]);
      if (!listed.includes(wanted.join())) without.push(chordSymbol(chord));
    }
    // The one chord that the package plays nowhere whole with its root in the bass.
    expect([chords.length, without]).toEqual([180, ['F6']]);
  });
});

describe('chords over another bass beside it', () => {
  const slashes = POSITIONS.flatMap(({ key, suffix, at }) => {
    const [, minor, bass] = /^(m?)\/(.+)$/.exec(suffix) ?? [];
    if (bass === undefined) return [];
    const chord: Chord = { root: key, quality: minor === 'm' ? 'minor' : 'major', bass };
    return [
      {
        name: named({ key, suffix, at }),
        chord,
        sounds: soundsOf(fretsOf(at)),
        lowest: midiPitchClass(at.midi[0] ?? 0),
      },
    ];
  });

  test('of its 145 positions two are not the chord over its bass, and no other', () => {
    const wrong = slashes.filter(
      ({ chord, sounds, lowest }) =>
        sounds.join() !== sorted(chordPitchClasses(chord)).join() || lowest !== pitchClass(chord.bass ?? ''),
    );
    expect([slashes.length, wrong.map(({ name }) => name)]).toEqual([
      145,
      ['F /A 3,1,1,3,4,0@3', 'A m/G# -1,-1,1,2,2,2@4'],
    ]);
  });

  test('every shape of ours sounds what its right positions sound, over the same bass', () => {
    for (const { chord, name } of slashes)
      for (const frets of shapesFor(chord)) {
        expect([name, soundsOf(frets)]).toEqual([name, sorted(chordPitchClasses(chord))]);
        expect([name, midiPitchClass(shapeNotes(frets)[0]?.midi ?? 0)]).toEqual([name, pitchClass(chord.bass ?? '')]);
      }
  });
});

describe('our shapes beside it', () => {
  const chords: readonly Chord[] = ROOTS.flatMap((root) => QUALITIES.map((quality) => ({ root, quality })));

  test('every shape sounds what a listed position with the root in the bass sounds', () => {
    for (const { root, quality } of chords) {
      if (PACKAGE_SUFFIXES[quality] === undefined) continue;
      const sounds = new Set(
        listed(root, quality)
          .filter(({ midi }) => midiPitchClass(midi[0] ?? 0) === pitchClass(root))
          .map((at) => soundsOf(fretsOf(at)).join()),
      );
      for (const frets of shapesFor({ root, quality })) {
        expect([root, quality, frets.join(), sounds.has(soundsOf(frets).join())]).toEqual([
          root,
          quality,
          frets.join(),
          true,
        ]);
        expect(midiPitchClass(shapeNotes(frets)[0]?.midi ?? 0)).toBe(pitchClass(root));
      }
    }
  });

  test('power chords sound what its major and minor positions share', () => {
    for (const root of ROOTS) {
      const [major = [], minor = []] = (['major', 'minor'] as const).map((quality) =>
        soundsOf(fretsOf(listed(root, quality)[0] ?? { frets: [], fingers: [], baseFret: 1, midi: [] })),
      );
      const shared = major.filter((sound) => minor.includes(sound));
      expect(shared).toHaveLength(2);
      for (const frets of shapesFor({ root, quality: 'power' })) expect(soundsOf(frets)).toEqual(shared);
    }
  });

  test('the usual shape of every major and minor chord is one of those it lists, save that a barre may cover string 6', () => {
    for (const { root, quality } of chords) {
      if (quality !== 'major' && quality !== 'minor') continue;
      const usual = usualShape({ root, quality });
      const same = listed(root, quality).filter((at) => {
        const frets = fretsOf(at);
        return usual.every((fret, index) => fret === frets[index] || (index === 0 && fret === null));
      });
      expect([root, quality, same.length > 0]).toEqual([root, quality, true]);
    }
  });

  test('no shape asks more of the hand than its positions: three frets, four fingers', () => {
    const spans = POSITIONS.map(({ at }) => spanOf(fretsOf(at)));
    expect(Math.max(...spans)).toBe(3);
    expect(Math.max(...POSITIONS.flatMap(({ at }) => at.fingers))).toBe(4);
    for (const chord of chords)
      for (const frets of shapesFor(chord)) expect(spanOf(frets)).toBeLessThanOrEqual(Math.max(...spans));
  });
});
