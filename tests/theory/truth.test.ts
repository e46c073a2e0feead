import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { GROOVES, grooveById, strokesOf } from '../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { perform } from '../../shared-theory/perform.ts';
import { directionOf, distanceOf, guitarTruth, truthOf } from '../../shared-theory/truth.ts';
import { parseVamp } from '../../shared-theory/vamps.ts';
import { voice } from '../../shared-theory/voice.ts';
import { anyVamp } from '../support/theory-arbitraries.ts';

const heard = (text: string, groove: string | null, tempo: number) => {
  const beats = groove === null ? 4 : BEATS_PER_BAR[grooveById(groove).meter];
  const vamp = voice({ slots: parseVamp(text, beats), groove, tempo, seed: 1 });
  return { vamp, performance: perform(vamp, { loops: 2 }), truth: truthOf(vamp, perform(vamp, { loops: 2 })) };
};

describe('the truth of what sounded', () => {
  test('Em D, relaxed: the bass goes up to the ♭7', () => {
    const left = (majors: readonly string[], minors: readonly string[], modes: readonly string[]) => {
      const relatives = majors.flatMap((major, place) => [major, minors[place]]);
      return { majors, relatives, 'raised-seventh': relatives, modes };
    };
    const toD = left(['D major'], ['B minor'], ['E dorian', 'D ionian']);
    const toG = left(['G major'], ['E minor'], ['E aeolian', 'D mixolydian']);
    expect(heard('Em D', 'relaxed-alternate', 100).truth).toEqual({
      count: 2,
      directions: ['up'],
      chords: ['Em', 'D'],
      qualities: ['minor', 'major'],
      sevenths: ['none', 'none'],
      roots: ['E', 'D'],
      distances: ['b7'],
      bass: [40, 50],
      top: [64, 66],
      keys: left(['G major', 'D major'], ['E minor', 'B minor'], ['E aeolian', 'D mixolydian', 'E dorian', 'D ionian']),
      tempo: 100,
      strokes: 'down-up',
      rhythm: {
        grid: 'E8',
        counts: [1],
        barCounts: [4, 2],
        accents: [[3], [1], [2], [1], [3], [1], [2], [1]],
        strokes: [['down'], ['up'], ['down'], ['up'], ['down'], ['up'], ['down'], ['up']],
        roles: null,
        opened: null,
        pendulum: 'keeps',
        drive: 'relaxed',
        swing: 'straight',
        halfTime: null,
        threes: null,
        changePlace: 'on-one',
      },
      settlers: [
        { chord: 'A', note: null, keys: toD },
        { chord: 'C', note: null, keys: toG },
        { chord: null, note: 'C#', keys: toD },
        { chord: null, note: 'C', keys: toG },
      ],
    });
  });

  // Open-position basses: E2 40, F2 41, G2 43, A2 45, B2 47, C3 48, D3 50 (standard tuning, ISO 16).
  test.each([
    ['A D', ['up'], ['4'], [45, 50]],
    ['D A', ['down'], ['5'], [50, 45]],
    ['G C', ['up'], ['4'], [43, 48]],
    ['C G', ['down'], ['5'], [48, 43]],
    ['Am F', ['down'], ['b6'], [45, 41]],
    ['Em Em', ['same'], ['1'], [40, 40]],
    ['C Cm', ['same'], ['1'], [48, 48]],
    ['G D Em C', ['up', 'down', 'up'], ['5', '6', '4'], [43, 50, 40, 48]],
    ['Am F Am G', ['down', 'same', 'down'], ['b6', '1', 'b7'], [45, 41, 45, 43]],
    ['E Bb', ['up'], ['#4'], [40, 46]],
  ])('%s', (text, directions, distances, bass) => {
    const { truth } = heard(text, 'quarter-downs', 80);
    expect(truth.bass).toEqual(bass);
    expect(truth.directions).toEqual(directions);
    expect(truth.distances).toEqual(distances);
  });

  test('a chord that comes again is counted once', () => {
    expect(heard('Am F Am G', 'quarter-downs', 80).truth.count).toBe(3);
    expect(heard('F# Gb', 'quarter-downs', 80).truth.count).toBe(1);
    expect(heard('C C5 Csus4', 'quarter-downs', 80).truth.count).toBe(3);
  });

  test('strokes are those that sounded', () => {
    const feel = (groove: string) => heard('Em D', groove, grooveById(groove).tempo[0]).truth.strokes;
    expect(GROOVES.map((groove) => [groove.id, strokesOf(groove)])).toEqual(
      GROOVES.map((groove) => [groove.id, feel(groove.id)]),
    );
    expect(GROOVES.map((groove) => [groove.id, feel(groove.id)])).toEqual([
      ['quarter-downs', 'all-downs'],
      ['relaxed-alternate', 'down-up'],
      ['driving-eighths', 'all-downs'],
      ['foot-and-closed-hat', 'all-downs'],
      ['foot-and-open-hat', 'down-up'],
      ['foot-slap-hat', 'down-up'],
      ['campfire-strum', 'down-up'],
      ['boom-chick', 'all-downs'],
      ['boom-chicka', 'down-up'],
      ['train-beat', 'down-up'],
      ['offbeat-skank', 'all-downs'],
      ['quick-up-chop', 'down-up'],
      ['low-string-shuffle', 'down-up'],
      ['slow-twelve-eight', 'all-downs'],
      // Two downs and an up are neither.
      ['six-eight-ballad', null],
      ['waltz', 'all-downs'],
      // Fingers have no strokes down and up.
      ['bossa-like', null],
      ['funk-sixteenths', 'down-up'],
      ['half-time', 'down-up'],
      ['pushed-change', 'down-up'],
      ['mute-and-open', 'all-downs'],
      ['eighth-downs-backbeat', 'all-downs'],
      ['sixteenth-ballad', 'down-up'],
      ['gallop', 'down-up'],
      ['four-to-the-bar-chop', 'all-downs'],
      ['three-three-two', 'down-up'],
      // Two downs in a row, where the three begins.
      ['seven-in-two-two-three', null],
    ]);
    expect(heard('Em D', null, 100).truth).toMatchObject({ strokes: null, tempo: null });
  });

  test('with an alternating bass the bass is still the first bass stroke’s lowest note', () => {
    for (const groove of ['boom-chick', 'boom-chicka']) {
      // The fifth below the D and the C of open shapes, above the Em.
      const vamp = voice({ slots: parseVamp('Em D C', 4), groove, tempo: 100, seed: 1, alternatingBass: true });
      const performance = perform(vamp);
      const lowest = [0, 1, 2].map((slot) =>
        Math.min(...performance.notes.filter((note) => note.chord === slot).map((note) => note.midi)),
      );
      expect(lowest).toEqual([40, 45, 43]);
      expect(truthOf(vamp, performance).bass).toEqual([40, 50, 48]);
      expect(truthOf(vamp, performance)).toEqual({ ...heard('Em D C', groove, 100).truth, bassAlternates: true });
    }
  });

  test('no key owns chords with a visitor', () => {
    expect(heard('Am E', 'quarter-downs', 80).truth.keys).toEqual({
      majors: [],
      relatives: [],
      'raised-seventh': ['A minor'],
      modes: [],
    });
  });

  test('every vamp in every groove tells its own chords', () => {
    fc.assert(
      fc.property(anyVamp, fc.constantFrom(...GROOVES), (chords, groove) => {
        const slots = chords.map((chord) => ({ chord, beats: BEATS_PER_BAR[groove.meter] }));
        const vamp = voice({ slots, groove: groove.id, tempo: groove.tempo[1], seed: 1 });
        const truth = truthOf(vamp, perform(vamp));
        expect(truth.qualities).toEqual(chords.map((chord) => chord.quality));
        expect(truth.roots).toEqual(chords.map((chord) => chord.root));
        expect(truth.distances).toEqual(chords.slice(1).map((chord) => distanceOf(chords[0]?.root ?? '', chord.root)));
        expect(truth.directions).toEqual(truth.bass.slice(1).map((bass) => directionOf(truth.bass[0] ?? 0, bass)));
        expect(truthOf(vamp, perform(vamp, { human: true, loops: 2 }))).toEqual(truth);
      }),
      { numRuns: 60 },
    );
  });

  test('refuses a performance that contradicts the chords', () => {
    const { vamp, performance } = heard('Em D', 'relaxed-alternate', 100);
    const notes = (change: (midi: number) => number | null) =>
      performance.notes.flatMap((note) => {
        const midi = change(note.midi);
        return midi === null ? [] : [{ ...note, midi }];
      });
    const without = (midi: number) => ({
      ...performance,
      notes: notes((sounded) => (sounded === midi ? null : sounded)),
    });
    expect(() => truthOf(vamp, { ...performance, notes: notes((midi) => (midi === 66 ? 65 : midi)) })).toThrow(
      /65 sounded in D/,
    );
    expect(() => truthOf(vamp, without(66))).toThrow(/Pitch class 6 of D never sounded/);
    expect(() => truthOf(vamp, without(40))).toThrow(/bass of Em.*not its bass note/);
    expect(() =>
      truthOf(vamp, { ...performance, notes: performance.notes.filter((note) => note.chord === 0) }),
    ).toThrow(/plays 1 chords, the vamp has 2/);
  });

  test('refuses a groove that leaves out the third', () => {
    const { vamp } = heard('D A', 'driving-eighths', 140);
    const muted = vamp.grooveText
      .split('\n')
      .filter((line) => !line.startsWith('open-'))
      .join('\n');
    expect(() => truthOf({ ...vamp, grooveText: muted }, perform({ ...vamp, grooveText: muted }))).toThrow(
      /never sounded/,
    );
  });
});

describe('the teacher’s own guitar', () => {
  const slots = parseVamp('Em D', 4);

  test('chords alone: usual shapes, no strokes, no tempo', () => {
    expect(guitarTruth(slots)).toMatchObject({
      bass: [40, 50],
      top: [],
      directions: ['up'],
      strokes: null,
      tempo: null,
    });
    expect(guitarTruth(slots, { directions: ['usual'] }).directions).toEqual(['up']);
  });

  test('a groove gives strokes; a tempo only if it was named', () => {
    expect(guitarTruth(slots, { groove: 'driving-eighths' })).toMatchObject({ strokes: 'all-downs', tempo: null });
    expect(guitarTruth(slots, { groove: 'campfire-strum', tempo: 96 })).toMatchObject({
      strokes: 'down-up',
      tempo: 96,
    });
    expect(guitarTruth(slots, { tempo: 220 }).tempo).toBe(220);
    expect(guitarTruth(parseVamp('C F', 3), { groove: 'waltz' })).toMatchObject({ strokes: 'all-downs' });
  });

  test.each([
    ['Em D', ['down'], [52, 50]],
    ['Em D', ['up'], [40, 50]],
    // D below an open A lies under the low E: both go up an octave.
    ['A D', ['down'], [57, 50]],
    ['G D Em', ['down', 'usual'], [55, 50, 52]],
    ['C C', ['up'], [48, 60]],
    ['C Am C', ['usual', 'same'], [48, 45, 48]],
  ])('%s %j', (text, directions, bass) => {
    const truth = guitarTruth(parseVamp(text, 4), { directions: directions as ('up' | 'down' | 'same' | 'usual')[] });
    expect(truth.bass).toEqual(bass);
  });

  test('stated directions become the truth, wherever that can be', () => {
    const stated = fc.constantFrom('up' as const, 'down' as const, 'usual' as const);
    fc.assert(
      fc.property(anyVamp, fc.array(stated, { minLength: 3, maxLength: 3 }), (chords, all) => {
        const directions = all.slice(0, chords.length - 1);
        const given = chords.map((chord) => ({ chord, beats: 4 }));
        const usual = guitarTruth(given);
        const truth = guitarTruth(given, { directions });
        expect(truth.directions).toEqual(
          directions.map((one, index) => (one === 'usual' ? usual.directions[index] : one)),
        );
        expect(Math.min(...truth.bass)).toBeGreaterThanOrEqual(40);
        expect(truth.bass.map((bass) => bass % 12)).toEqual(usual.bass.map((bass) => bass % 12));
      }),
    );
  });

  test('refuses what no octave gives', () => {
    expect(() => guitarTruth(slots, { directions: ['same'] })).toThrow(/cannot stay/);
    expect(() => guitarTruth(slots, { directions: [] })).toThrow(/1, not 0/);
    expect(() => guitarTruth(slots, { groove: 'polka' })).toThrow(/polka/);
  });
});
