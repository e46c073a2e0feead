import { parseMidi } from 'midi-file';
import { Key } from 'tonal';
import { describe, expect, test } from 'vitest';
import { generate, type GeneratedVamp } from '../../shared-theory/generate.ts';
import { LEVELS } from '../../shared-theory/levels.ts';
import { perform } from '../../shared-theory/perform.ts';
import { writeMidi } from '../../shared-theory/sound/midi.ts';
import type { VoicedVamp } from '../../shared-theory/vamps.ts';

// A second way to the truth: from the notes of the written MIDI file alone, read by a general-purpose library, with tables of its
// own. Of the vamp it takes nothing but where each chord begins.

/** Notes above the root of each chord that vamps use, as semitones (the sets of mir_eval's chord module, and their names there). */
const TEMPLATES: Readonly<Record<string, readonly number[]>> = {
  maj: [0, 4, 7],
  min: [0, 3, 7],
  dim: [0, 3, 6],
  aug: [0, 4, 8],
  '5': [0, 7],
  sus2: [0, 2, 7],
  sus4: [0, 5, 7],
  maj6: [0, 4, 7, 9],
  min6: [0, 3, 7, 9],
  '7': [0, 4, 7, 10],
  maj7: [0, 4, 7, 11],
  min7: [0, 3, 7, 10],
  hdim7: [0, 3, 6, 10],
  dim7: [0, 3, 6, 9],
  minmaj7: [0, 3, 7, 11],
  add9: [0, 2, 4, 7],
};

/** What a template is called in the truth: its quality and its seventh. */
const NAMED: Readonly<Record<string, readonly [quality: string, seventh: string]>> = {
  maj: ['major', 'none'],
  min: ['minor', 'none'],
  dim: ['diminished', 'none'],
  aug: ['augmented', 'none'],
  '5': ['power', 'none'],
  sus2: ['suspended-second', 'none'],
  sus4: ['suspended-fourth', 'none'],
  maj6: ['major', 'none'],
  min6: ['minor', 'none'],
  '7': ['major', 'seventh'],
  maj7: ['major', 'major-seventh'],
  min7: ['minor', 'seventh'],
  hdim7: ['diminished', 'seventh'],
  dim7: ['diminished', 'diminished-seventh'],
  minmaj7: ['minor', 'major-seventh'],
  add9: ['major', 'none'],
};

const NOTES = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
const DISTANCES = ['1', 'b2', '2', 'b3', '3', '4', '#4', '5', 'b6', '6', 'b7', '7'];
const MAJOR_SCALE = [0, 2, 4, 5, 7, 9, 11];

type HeardNote = { readonly seconds: number; readonly midi: number };
type Heard = { readonly bass: number; readonly sounds: ReadonlySet<number> };
type Reading = { readonly root: number; readonly type: string };

const bits = (sounds: Iterable<number>) => [...sounds].reduce((mask, sound) => mask | (1 << (sound % 12)), 0);

/** Every note of a MIDI file with the second it starts at, and the tempo that the file states, in quarters a minute. */
function notesOf(file: Uint8Array): { readonly notes: readonly HeardNote[]; readonly quartersAMinute: number } {
  const { header, tracks } = parseMidi(file);
  const tempos = tracks.flat().flatMap((event) => (event.type === 'setTempo' ? [event.microsecondsPerBeat] : []));
  expect(tempos).toHaveLength(1);
  const [microseconds = 0] = tempos;
  const secondsATick = microseconds / 1e6 / (header.ticksPerBeat ?? 1);
  const notes = tracks.flatMap((track) => {
    let tick = 0;
    return track.flatMap((event): HeardNote[] => {
      tick += event.deltaTime;
      const starts = event.type === 'noteOn' && event.velocity > 0;
      return starts ? [{ seconds: tick * secondsATick, midi: event.noteNumber }] : [];
    });
  });
  return { notes, quartersAMinute: 6e7 / microseconds };
}

/**
 * What sounds in each slot: its first note is its bass. A stroke spreads over up to 50 ms and may begin just before its beat. Where the
 * groove pushes, each chord but the first begins half a beat early, and the loop's last stroke is the first chord's again.
 */
function heardOf(vamp: VoicedVamp, notes: readonly HeardNote[]): readonly Heard[] {
  const beatSeconds = 60 / vamp.tempo;
  const early = /^chg .*>/m.test(vamp.grooveText) ? beatSeconds / 2 : 0;
  let start = 0;
  return vamp.slots.map(({ beats }, slot) => {
    const end = start + beats * beatSeconds;
    const from = start - (slot === 0 ? 0 : early);
    const inSlot = notes.filter(({ seconds }) => seconds >= from - 0.02 && seconds < end - early - 0.02);
    const first = Math.min(...inSlot.map(({ seconds }) => seconds));
    const opening = inSlot.filter(({ seconds }) => seconds < first + 0.05);
    start = end;
    return {
      bass: Math.min(...opening.map(({ midi }) => midi)),
      sounds: new Set(inSlot.map(({ midi }) => midi % 12)),
    };
  });
}

/** Every chord that sounds so: with its root in the bass where there is one, else over a bass of its own or a foreign one. */
function readingsOf({ bass, sounds }: Heard): readonly Reading[] {
  const heard = bits(sounds);
  const all = NOTES.flatMap((_, root) =>
    Object.entries(TEMPLATES).map(([type, above]) => ({
      root,
      type,
      mask: bits(above.map((semitones) => root + semitones)),
    })),
  );
  const rooted = all.filter(({ root, mask }) => mask === heard && root === bass % 12);
  if (rooted.length > 0) return rooted;
  return all.filter(({ mask }) => mask === heard || (mask | (1 << (bass % 12))) === heard);
}

/** Tonics 0 to 11 of the majors whose scale holds all that sounds. */
function majorsOf(heard: readonly Heard[]): readonly number[] {
  const all = heard.reduce((mask, { sounds }) => mask | bits(sounds), 0);
  return NOTES.flatMap((_, tonic) => {
    const scale = bits(MAJOR_SCALE.map((semitones) => tonic + semitones));
    return (all & ~scale) === 0 ? [tonic] : [];
  });
}

const pitchClassOf = (name: string) => {
  const letter = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 }[name[0] ?? ''] ?? NaN;
  return (letter + name.split('#').length - name.split('b').length + 12) % 12;
};
const tonicsOf = (keys: readonly string[], mode: string) =>
  keys
    .filter((key) => key.endsWith(` ${mode}`))
    .map((key) => pitchClassOf(key.split(' ')[0] ?? ''))
    .toSorted((one, other) => one - other);

/** Minor tonics that own all of these triads and sevenths by the chords that the library builds on their degrees. */
function minorsByDegree(readings: readonly Reading[]): readonly number[] {
  const SUFFIX: Readonly<Record<string, string>> = {
    '': 'maj',
    m: 'min',
    o: 'dim',
    dim: 'dim',
    '+': 'aug',
    aug: 'aug',
  };
  const SEVENTH: Readonly<Record<string, string>> = {
    m7: 'min7',
    maj7: 'maj7',
    '7': '7',
    m7b5: 'hdim7',
    o7: 'dim7',
    mMaj7: 'minmaj7',
  };
  return NOTES.flatMap((tonic, place) => {
    const { natural, harmonic } = Key.minorKey(tonic);
    const named = [natural, harmonic].flatMap(({ triads, chords }) => [
      ...triads.map((chord) => [chord, SUFFIX] as const),
      ...chords.map((chord) => [chord, SEVENTH] as const),
    ]);
    const owned = new Set(
      named.flatMap(([chord, types]) => {
        const [, root = '', suffix = ''] = /^([A-G][#b]*)(.*)$/.exec(chord) ?? [];
        const type = types[suffix];
        return type === undefined ? [] : [`${pitchClassOf(root)} ${type}`];
      }),
    );
    return readings.every(({ root, type }) => owned.has(`${root} ${type}`)) ? [place] : [];
  });
}

const SEEDS = 150;
/** Types that stand on a degree of a key by thirds, which is what the library builds. */
const BY_THIRDS: ReadonlySet<string> = new Set(['maj', 'min', 'dim', '7', 'maj7', 'min7', 'hdim7', 'minmaj7']);

describe('the truth of a vamp is the one that its MIDI notes give', () => {
  test.each(LEVELS.map(({ level }) => level))('level %i', (level) => {
    for (let seed = 0; seed < SEEDS; seed += 1) compare(generate({ level, seed: seed * 7919 + level }));
  });
});

function compare({ vamp, truth, seed }: GeneratedVamp): void {
  const { notes, quartersAMinute } = notesOf(
    writeMidi(vamp, perform(vamp), { name: 'vamp', guitar: 'guitar', bass: 'bass', kit: 'kit' }),
  );
  const heard = heardOf(vamp, notes);

  expect(
    heard.map(({ bass }) => bass),
    `seed ${seed}`,
  ).toEqual(truth.bass);
  const home = heard[0]?.bass ?? NaN;
  const ways = heard.slice(1).map(({ bass }) => (bass > home ? 'up' : bass < home ? 'down' : 'same'));
  expect(ways).toEqual(truth.directions);

  const readings = heard.map((slot, index) => {
    const possible = readingsOf(slot);
    const root = pitchClassOf(truth.roots[index] ?? '');
    const told = possible.filter(({ root: read, type }) => {
      const [quality, seventh] = NAMED[type] ?? [];
      // Am/G sounds as Am7 over its seventh does.
      const overForeign = slot.bass % 12 !== root && possible.length > 1;
      return read === root && quality === truth.qualities[index] && (overForeign || seventh === truth.sevenths[index]);
    });
    expect(told.length, `${truth.chords[index]} reads as ${JSON.stringify(possible)}`).toBeGreaterThan(0);
    // With its root in the bass a chord is one chord only.
    if (slot.bass % 12 === root) expect(possible).toHaveLength(1);
    return told[0] ?? { root: NaN, type: '' };
  });
  const first = readings[0]?.root ?? NaN;
  expect(readings.slice(1).map(({ root }) => DISTANCES[(root - first + 12) % 12])).toEqual(truth.distances);
  expect(new Set(readings.map(({ root, type }) => `${root} ${type}`)).size).toBe(truth.count);

  const majors = majorsOf(heard);
  expect(tonicsOf(truth.keys.majors, 'major')).toEqual(majors);
  expect(tonicsOf(truth.keys.relatives, 'major')).toEqual(majors);
  const minors = majors.map((tonic) => (tonic + 9) % 12).toSorted((one, other) => one - other);
  expect(tonicsOf(truth.keys.relatives, 'minor')).toEqual(minors);
  const rooted = heard.every(({ bass }, slot) => bass % 12 === readings[slot]?.root);
  if (rooted && readings.every(({ type }) => BY_THIRDS.has(type)))
    expect(tonicsOf(truth.keys['raised-seventh'], 'minor')).toEqual(minorsByDegree(readings));
  const homes = new Set(readings.filter(({ type }) => !/dim/.test(type)).map(({ root }) => root));
  expect(truth.keys.modes).toHaveLength(majors.length * homes.size);
  expect(new Set(truth.keys.modes.map((key) => pitchClassOf(key.split(' ')[0] ?? '')))).toEqual(
    majors.length === 0 ? new Set() : homes,
  );

  // Tempo counts quarters, in six-eight and twelve-eight dotted ones.
  expect(truth.tempo).toBeCloseTo(
    vamp.meter === '6/8' || vamp.meter === '12/8' ? quartersAMinute / 1.5 : quartersAMinute,
    2,
  );
}
