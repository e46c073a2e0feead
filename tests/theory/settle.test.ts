import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Chord } from '../../shared-theory/chords.ts';
import { chordPitchClasses, chordSymbol, parseChord, soundsAs } from '../../shared-theory/chords.ts';
import { generate } from '../../shared-theory/generate.ts';
import { GROOVES } from '../../shared-theory/grooves.ts';
import { parseKeyName } from '../../shared-theory/keys.ts';
import { LEVELS_THAT_STAND } from '../../shared-theory/levels.ts';
import { sungOver } from '../../shared-theory/live.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { bassOf, shapeNotes, usualShape } from '../../shared-theory/neck.ts';
import { perform } from '../../shared-theory/perform.ts';
import { pitchClass } from '../../shared-theory/pitch.ts';
import { settlersOf, sungNote } from '../../shared-theory/settle.ts';
import type { VoicedSettler } from '../../shared-theory/settle.ts';
import { guitarTruth, POLICIES } from '../../shared-theory/truth.ts';
import type { VoicedSlot, VoicedVamp } from '../../shared-theory/vamps.ts';
import { parseVamp } from '../../shared-theory/vamps.ts';
import { voice } from '../../shared-theory/voice.ts';
import { anyVamp } from '../support/theory-arbitraries.ts';

/** A loop of a bar for each chord, each stroke plain, as a teacher's own guitar is taken to sound. */
const plain = (chords: readonly Chord[]): VoicedVamp => ({
  slots: chords.map((chord) => ({ chord, beats: 4, frets: usualShape(chord) })),
  meter: '4/4',
  grooveText: '',
  tempo: 90,
  seed: 1,
});
const chordsIn = (text: string) => text.split(' ').map((symbol) => parseChord(symbol));
const told = (settlers: readonly VoicedSettler[]) =>
  settlers
    .map(({ slot, note, keys }) => `${slot ? chordSymbol(slot.chord) : note.name} ${keys.majors.join(' ')}`)
    .join(', ');
/** The chords that leave one key, and the notes that do. */
const settled = (vamp: VoicedVamp) =>
  told(settlersOf(vamp).filter(({ slot, keys }) => slot !== null && keys.majors.length === 1));
const sung = (vamp: VoicedVamp) => told(settlersOf(vamp).filter(({ note }) => note !== null));

/** What settles to either side, whichever comes first. */
const sides = (text: string) => text.split(', ').toSorted();

const MAJOR_SCALE = [0, 2, 4, 5, 7, 9, 11];
/** Tonics of the major scales that hold all pitch classes, by arithmetic. */
const tonicsHolding = (sounds: readonly number[]) =>
  Array.from({ length: 12 }, (_, tonic) => tonic).filter((tonic) =>
    sounds.every((sound) => MAJOR_SCALE.includes((sound - tonic + 12) % 12)),
  );
const tonicOf = (name: string) => pitchClass(parseKeyName(name).tonic);

describe('the settlers of a loop', () => {
  // Two neighbours on the circle differ in one letter: what holds the flat side's fourth, or the sharp side's seventh, settles
  // (common practice). Of those, the chord that a guitarist meets first.
  test.each([
    ['A Bm', 'G D major, E A major'],
    ['Em D', 'C G major, A D major'],
    ['Em Am', 'Dm C major, D G major'],
    ['F Dm', 'Cm Bb major, G C major'],
    ['D Bm G', 'C G major, A D major'],
    ['C', 'Bb F major, D G major'],
    ['Am', 'Bb F major, D G major'],
    ['C5', 'Db Ab major, D G major'],
    ['C C5', 'Bb F major, D G major'],
    ['G#m E', 'A E major, F# B major'],
    ['Ebm Gb', 'Fb Cb major, Ab Db major'],
    // Spelled as the key that is left spells it.
    ['Gb Cb', 'Fb Cb major, Db Gb major'],
    ['F# B', 'E B major, C# F# major'],
  ])('%s: %s', (text, expected) => {
    expect(sides(settled(plain(chordsIn(text))))).toEqual(sides(expected));
  });

  // The flat side's fourth degree and the sharp side's seventh, sung (common practice).
  test.each([
    ['A Bm', 'G D major, G# A major'],
    ['Em D', 'C G major, C# D major'],
    ['Em Am', 'F C major, F# G major'],
    ['F Dm', 'Eb Bb major, B C major'],
    ['D Bm G', 'C G major, C# D major'],
    ['Gb Cb', 'Fb Cb major, F Gb major'],
  ])('%s: sung %s', (text, expected) => {
    expect(sides(sung(plain(chordsIn(text))))).toEqual(sides(expected));
  });

  test.each([
    // Em tops out on the open E string, D on F#: the note lies above what sounds beneath it.
    ['Em D', [72, 73]],
    ['D A', [67, 68]],
    ['G C', [77, 78]],
  ])('%s is sung on MIDI notes %j', (text, midi) => {
    const notes = settlersOf(plain(chordsIn(text))).flatMap(({ note }) => (note ? [note.midi] : []));
    expect(notes.toSorted((one, other) => one - other)).toEqual(midi);
  });

  test('a loop of no chord has nothing to be sung over, and no note below the open strings is sung', () => {
    expect(() => sungNote('C', [])).toThrow(RangeError);
    const vamp = plain(chordsIn('Em D'));
    for (const midi of [63, 64.5]) expect(() => sungOver(vamp, perform(vamp), midi)).toThrow(/from 64 up/);
  });

  test('now and then a chord settles nothing: all the keys own it, and it may stand anywhere among the chords', () => {
    const idle = (text: string) => settlersOf(plain(chordsIn(text))).filter(({ keys }) => keys.majors.length > 1);
    expect(told(idle('Em D'))).toBe('');
    expect(told(idle('A Bm'))).toBe('D D major A major');
    // The same wherever the loop starts.
    expect(told(settlersOf(plain(chordsIn('D Bm G'))))).toBe(told(settlersOf(plain(chordsIn('G D Bm')))));
    const found = 'C Am,C Em,C G,C F,Em G,A D,A E,F C,Eb Bb,F# B,Bb Eb,F Dm,D Em,Ab Db,B E,Db Gb'
      .split(',')
      .flatMap((text) => {
        const settlers = settlersOf(plain(chordsIn(text))).filter(({ slot }) => slot !== null);
        const { majors } = guitarTruth(plain(chordsIn(text)).slots).keys;
        return settlers.flatMap(({ keys }, place) => {
          if (keys.majors.length < majors.length) return [];
          expect(keys.majors).toEqual(majors);
          return [place];
        });
      });
    expect(new Set(found)).toEqual(new Set([0, 1, 2]));
    expect(found.length).toBeLessThan(10);
  });

  test.each(['Bb C', 'F#m B', 'G F', 'C G Am F', 'Bdim', 'Dsus4 A', 'Am E', 'C Fm', 'B C', 'Caug'])(
    '%s has none: one key owns it, or no key does',
    (text) => {
      expect(settlersOf(plain(chordsIn(text)))).toEqual([]);
    },
  );

  test('lasts a bar of the meter, in the most usual shape', () => {
    const vamp = voice({ slots: parseVamp('Em D', 3), groove: 'waltz', tempo: 100, seed: 1 });
    const [one, other] = settlersOf(vamp)
      .flatMap(({ slot }) => slot ?? [])
      .toSorted((a, b) => a.chord.root.localeCompare(b.chord.root));
    expect(one).toEqual({ chord: parseChord('A'), beats: 3, frets: [null, 0, 2, 2, 2, 0] });
    expect(other).toEqual({ chord: parseChord('C'), beats: 3, frets: [null, 3, 2, 0, 1, 0] });
  });

  test('the chord that a groove does not sound in full gives way to one that it does, or to none', () => {
    const driving = (opening: boolean) =>
      voice({ slots: parseVamp('E5 A5', 4), groove: 'driving-eighths', tempo: 140, seed: 1, opening });
    // Muted eighths on the three low strings sound no third, unless each chord opens with a full stroke.
    expect(settled(driving(false))).toBe('');
    expect(sides(sung(driving(false)))).toEqual(sides('F C major, D# E major'));
    expect(sides(settled(driving(true)))).toEqual(sides('Dm C major, B E major'));
  });

  test('a long loop of the teacher settles as its different chords do', () => {
    const long = Array.from({ length: 32 }, () => 'Em D').join(' ');
    expect(guitarTruth(parseVamp(long, 4)).settlers).toEqual(guitarTruth(parseVamp('Em D', 4)).settlers);
    expect(guitarTruth(parseVamp('D Bm G D Bm G A', 4)).settlers).toEqual([]);
    expect(settled(plain(chordsIn('F# B Gb Cb')))).toBe(settled(plain(chordsIn('F# B'))));
    const sounds = (text: string) =>
      settlersOf(plain(chordsIn(text))).map(({ slot, note }) =>
        slot ? chordPitchClasses(slot.chord) : [pitchClass(note.name)],
      );
    expect(sounds('Gb Cb')).toEqual(sounds('F# B'));
  });

  test('what was asked before changes nothing', () => {
    const first = settlersOf(plain(chordsIn('Em D')));
    settlersOf(plain(chordsIn('A Bm')));
    expect(settlersOf(plain(chordsIn('Em D')))).toEqual(first);
  });
});

/** Holds all that a settler promises, by arithmetic on what sounds. */
function checkSettlers(vamp: VoicedVamp, owners: readonly string[]): void {
  const chords = vamp.slots.map(({ chord }) => chord);
  const loop = chords.flatMap(chordPitchClasses);
  const settlers = settlersOf(vamp);
  const places = (some: readonly VoicedSettler[]) => some.map(({ keys }) => owners.indexOf(keys.majors[0] ?? ''));
  if (owners.length < 2) expect(settlers).toEqual([]);
  for (const { slot, note, keys } of settlers) {
    const heard = slot ? heardBehind(vamp, slot) : heardAbove(vamp, note);
    const holding = tonicsHolding([...loop, ...heard]);
    expect(new Set(keys.majors.map(tonicOf))).toEqual(new Set(holding));
    expect(keys.majors).toHaveLength(holding.length);
    expect(keys.relatives.map(tonicOf)).toEqual(keys.majors.map(tonicOf).flatMap((tonic) => [tonic, (tonic + 9) % 12]));
    // Named as the keys of the loop are named: one of them, or all of them.
    for (const name of keys.majors) expect(owners).toContain(name);
    expect([1, owners.length]).toContain(keys.majors.length);
  }
  const settling = settlers.filter(({ keys }) => keys.majors.length === 1);
  expect(settlers.length - settling.length).toBeLessThanOrEqual(1);
  const outermost = (place: number) => place === 0 || place === owners.length - 1;
  for (const kind of [settling.filter(({ slot }) => slot), settling.filter(({ note }) => note)]) {
    expect(places(kind).every(outermost)).toBe(true);
    expect(new Set(places(kind)).size).toBe(kind.length);
  }
  expect(settling.filter(({ note }) => note)).toHaveLength(owners.length < 2 ? 0 : 2);
}

/** What sounds of a chord behind the loop: all of it, in its most usual shape, and nothing else. */
function heardBehind(vamp: VoicedVamp, slot: VoicedSlot): readonly number[] {
  const chords = vamp.slots.map(({ chord }) => chord);
  expect(slot.chord.quality).not.toBe('diminished');
  expect(chords.some((chord) => soundsAs(chord, slot.chord))).toBe(false);
  expect(slot.beats).toBe(BEATS_PER_BAR[vamp.meter]);
  expect(new Set(shapeNotes(slot.frets).map(({ midi }) => midi % 12))).toEqual(new Set(chordPitchClasses(slot.chord)));
  expect(bassOf(slot.frets) % 12).toBe(pitchClass(slot.chord.root));
  return perform({ ...vamp, slots: [...vamp.slots, slot] })
    .notes.filter(({ chord, touch }) => chord === vamp.slots.length && touch !== 'dead')
    .map(({ midi }) => midi % 12);
}

/** What is sung over the loop: one note, above all that the first chord sounds, for two beats. */
function heardAbove(vamp: VoicedVamp, { name, midi }: { readonly name: string; readonly midi: number }) {
  expect(midi % 12).toBe(pitchClass(name));
  const loop = perform(vamp, { loops: 2 });
  const all = sungOver(vamp, loop, midi).notes;
  const added = all.filter((note) => !loop.notes.includes(note));
  const seconds = Math.min(loop.seconds / 2, 120 / vamp.tempo);
  expect(added.map(({ time, duration }) => [time, duration])).toEqual([
    [0, seconds],
    [loop.seconds / 2, seconds],
  ]);
  const beneath = loop.notes.filter(({ chord, touch }) => chord === 0 && touch !== 'dead');
  for (const note of beneath) expect(note.midi).toBeLessThan(midi);
  expect(all.map(({ time }) => time)).toEqual(all.map(({ time }) => time).toSorted((one, other) => one - other));
  return added.map((note) => note.midi % 12);
}

describe('every settler', () => {
  test('of any chords leaves the outermost key on its side, by all that sounds', () => {
    fc.assert(
      fc.property(anyVamp, (chords) => {
        const vamp = plain(chords);
        const { keys, settlers } = guitarTruth(vamp.slots);
        checkSettlers(vamp, keys.majors);
        // Strummed plainly, every chord is heard: no side is missing.
        const alone = settlers.filter(({ chord, keys: left }) => chord !== null && left.majors.length === 1);
        expect(alone).toHaveLength(keys.majors.length < 2 ? 0 : 2);
      }),
    );
  });

  test('of a generated vamp is heard in its groove; the truth names it', () => {
    fc.assert(
      fc.property(fc.constantFrom(...LEVELS_THAT_STAND), fc.nat(), (level, seed) => {
        const { vamp, truth } = generate({ level, seed });
        checkSettlers(vamp, truth.keys.majors);
        expect(truth.settlers).toEqual(
          settlersOf(vamp).map(({ slot, note, keys }) => ({
            chord: slot && chordSymbol(slot.chord),
            note: note && note.name,
            keys,
          })),
        );
        for (const { keys } of truth.settlers) {
          for (const policy of POLICIES) for (const name of keys[policy]) expect(truth.keys[policy]).toContain(name);
        }
      }),
      { numRuns: 200 },
    );
  });

  test('in every groove of the catalogue, with its opening bar, both sides are there', () => {
    for (const groove of GROOVES) {
      const slots = parseVamp('Em D', 4).map((slot) => ({
        ...slot,
        beats: BEATS_PER_BAR[groove.meter],
      }));
      const vamp = voice({ slots, groove: groove.id, tempo: groove.tempo[0], seed: 1 });
      expect([groove.id, sides(settled(vamp))]).toEqual([groove.id, sides('C G major, A D major')]);
    }
  });

  test('which side comes first goes about evenly over loops, and is the same for a loop each time', () => {
    const roots = 'C Db D Eb E F F# G Ab A Bb B'.split(' ');
    const pairs = roots.flatMap((root) => ['', 'm'].flatMap((mode) => roots.map((other) => `${root}${mode} ${other}`)));
    const first = pairs.flatMap((text) => {
      const { keys, settlers } = guitarTruth(plain(chordsIn(text)).slots);
      const [one, other] = settlers.filter(({ chord, keys: left }) => chord !== null && left.majors.length === 1);
      return one && other ? [one.keys.majors[0] === keys.majors[0]] : [];
    });
    expect(first.length).toBeGreaterThan(60);
    expect(Math.abs(first.filter(Boolean).length / first.length - 0.5)).toBeLessThan(0.15);
    const again = () => settled(plain(chordsIn('Em D')));
    expect(again()).toBe(again());
  });
});
