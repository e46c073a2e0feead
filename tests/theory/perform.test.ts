import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { beatsPerSlot, grooveById, GROOVES, isFingered, slotsPerBar, slotSounds } from '../../shared-theory/grooves.ts';
import { countIn } from '../../shared-theory/live.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { shapesFor, zoneNotes } from '../../shared-theory/neck.ts';
import { perform } from '../../shared-theory/perform.ts';
import { parseVamp } from '../../shared-theory/vamps.ts';
import { voice } from '../../shared-theory/voice.ts';
import { anyVamp } from '../support/theory-arbitraries.ts';

const vampOf = (text: string, groove: string | null, tempo: number, seed = 1) =>
  voice({
    slots: parseVamp(text, groove === null ? 4 : BEATS_PER_BAR[grooveById(groove).meter]),
    groove,
    tempo,
    seed,
    alternatingBass: true,
  });

/** Strokes of a performance as text: time in seconds, direction, strings from first to last. */
const strokes = (notes: ReturnType<typeof perform>['notes'], until = Infinity) => {
  const seen: { time: number; text: string }[] = [];
  for (const note of notes) {
    if (note.time >= until) break;
    const last = seen.at(-1);
    if (last && note.time - last.time < 0.06) last.text += note.string;
    else seen.push({ time: note.time, text: `${note.time.toFixed(3)} ${note.stroke} ${note.touch} ${note.string}` });
  }
  return seen.map(({ text }) => text);
};

/** Those that a pick plays in bars that stand by themselves: pushes and fingers have tests of their own. */
const anyGroove = fc.constantFrom(
  ...GROOVES.filter((groove) => !isFingered(groove) && !groove.slots.some(({ pushes }) => pushes)),
);
const anyPerformance = fc
  .record({ chords: anyVamp, groove: anyGroove, share: fc.double({ min: 0, max: 1, noNaN: true }), seed: fc.nat() })
  .map(({ chords, groove, share, seed }) => {
    const [low, high] = groove.tempo;
    const slots = chords.map((chord) => ({ chord, beats: BEATS_PER_BAR[groove.meter] }));
    const tempo = Math.round(low + share * (high - low));
    return { groove, vamp: voice({ slots, groove: groove.id, tempo, seed, alternatingBass: seed % 2 === 0 }) };
  });

describe('a performance', () => {
  test('relaxed alternate on Em D: full downs on the numbers, high ups on the ands', () => {
    const { notes, seconds, bars } = perform(vampOf('Em D', 'relaxed-alternate', 100));
    expect(seconds).toBeCloseTo(4.8, 9);
    expect(bars).toEqual([
      { time: 0, chord: 0 },
      { time: 2.4, chord: 1 },
    ]);
    expect(strokes(notes, 1.2)).toEqual([
      '0.000 down open 654321',
      '0.300 up open 123',
      '0.600 down open 654321',
      '0.900 up open 123',
    ]);
    expect(notes.filter((note) => note.chord === 1 && note.time < 2.45).map((note) => note.midi)).toEqual([
      50, 57, 62, 66,
    ]);
    expect(notes.filter((note) => note.time < 0.05).map((note) => note.midi)).toEqual([40, 47, 52, 55, 59, 64]);
    expect(new Set(notes.filter((note) => note.stroke === 'up').map((note) => note.accent))).toEqual(new Set([1]));
  });

  test('driving eighths open each chord with one full stroke, then mute the low strings', () => {
    const { notes } = perform(vampOf('| Em | . | D | . |', 'driving-eighths', 120));
    expect(strokes(notes, 4.6)).toEqual([
      '0.000 down open 654321',
      ...[2, 3, 4, 5, 6, 7].map((slot) => `${(slot / 4).toFixed(3)} down palm 654`),
      ...[0, 1, 2, 3, 4, 5, 6, 7].map((slot) => `${(2 + slot / 4).toFixed(3)} down palm 654`),
      '4.000 down open 4321',
      '4.500 down palm 432',
    ]);
    const opening = notes.filter((note) => note.touch === 'open' && note.time < 0.1);
    expect(opening.every((note) => Math.abs(note.time + note.duration - 0.5) < 1e-9)).toBe(true);
  });

  test('the ringing ups of the open hat are closed by the next foot; the closed hat stops by itself', () => {
    const open = perform(vampOf('Em', 'foot-and-open-hat', 120)).notes.filter((note) => note.stroke === 'up');
    expect(open.length).toBeGreaterThan(0);
    for (const note of open) expect(Math.abs(((note.time + note.duration) / 0.5) % 1)).toBeCloseTo(0, 6);
    const closed = perform(vampOf('Em', 'foot-and-closed-hat', 120)).notes.filter((note) => note.touch === 'choke');
    for (const note of closed) expect(note.duration).toBeCloseTo(0.12, 9);
  });

  test('waltz: three beats, bars of three', () => {
    const { bars, notes, seconds } = perform(vampOf('C | F', 'waltz', 120), { loops: 2 });
    expect(seconds).toBe(6);
    expect(bars.map((bar) => bar.time)).toEqual([0, 1.5, 3, 4.5]);
    expect(bars.map((bar) => bar.chord)).toEqual([0, 1, 0, 1]);
    // The bass alone, then the chord open once, so that its third is heard.
    expect(strokes(notes, 1.5)).toEqual(['0.000 down open 5', '0.500 down open 321', '1.000 down choke 321']);
    const third = notes.find((note) => note.time > 0.4 && note.midi === 64);
    expect(third?.duration).toBeCloseTo(0.5, 9);
  });

  test('boom-chick: bass, chord, other bass, chord; the first chord rings, and every chick stops what rings', () => {
    const { notes } = perform(vampOf('| C | . | G . D . |', 'boom-chick', 120));
    expect(strokes(notes)).toEqual([
      '0.000 down open 5',
      '0.500 down open 321',
      '1.000 down open 6',
      '1.500 down choke 321',
      '2.000 down open 5',
      '2.500 down choke 321',
      '3.000 down open 6',
      '3.500 down choke 321',
      '4.000 down open 6',
      '4.500 down open 4321',
      // A chord that opens on the other bass’s beat opens on its root.
      '5.000 down open 4',
      '5.500 down open 321',
    ]);
    expect(notes.filter((note) => note.chord === 0 && note.string >= 5).map((note) => note.midi)).toEqual([
      48, 43, 48, 43,
    ]);
    const chick = notes.find((note) => note.time > 1.45 && note.touch === 'choke');
    expect(chick?.duration).toBeCloseTo(0.12, 9);
    const bass = notes.find((note) => note.time === 1);
    expect((bass?.time ?? 0) + (bass?.duration ?? 0)).toBeCloseTo(1.62, 9);
  });

  test('boom-chicka adds an up after each chick, late where it swings', () => {
    const swung = voice({ slots: parseVamp('Em', 4), groove: 'boom-chicka', tempo: 100, seed: 1, swing: 1.5 });
    expect(strokes(perform(swung).notes)).toEqual([
      '0.000 down open 6',
      '0.600 down open 321',
      '0.960 up open 123',
      '1.200 down open 6',
      '1.800 down choke 321',
      '2.160 up choke 123',
    ]);
  });

  test('low-string shuffle: long and short as a triplet has them (common practice), on muted low strings, the weight on 2 and 4', () => {
    const { notes } = perform(vampOf('| A | . |', 'low-string-shuffle', 120));
    expect(strokes(notes).slice(7)).toEqual([
      '2.000 down palm 543',
      '2.333 up palm 345',
      '2.500 down palm 543',
      '2.833 up palm 345',
      '3.000 down palm 543',
      '3.333 up palm 345',
      '3.500 down palm 543',
      '3.833 up palm 345',
    ]);
    const accents = [2, 2 + 1 / 3, 2.5, 2.5 + 1 / 3].map(
      (time) => notes.find((note) => Math.abs(note.time - time) < 1e-9)?.accent,
    );
    expect(accents).toEqual([2, 1, 3, 1]);
  });

  test('six-eight ballad: two big beats of three slots, counted by the big beats', () => {
    const { notes, bars, seconds } = perform(vampOf('G | D', 'six-eight-ballad', 60));
    expect(seconds).toBeCloseTo(4, 9);
    expect(bars.map((bar) => bar.time)).toEqual([0, 2]);
    expect(strokes(notes, 2 - 1e-6)).toEqual([
      '0.000 down open 6',
      '0.333 down open 4321',
      '0.667 up open 1234',
      '1.000 down open 654321',
      '1.333 down open 4321',
      '1.667 up open 1234',
    ]);
    expect(countIn('6/8', 60).beats.map((beat) => beat.time)).toEqual([0, 1, 2, 3]);
  });

  test('a chord that opens inside a bar gets the bass, also where the pattern misses the beat', () => {
    const campfire = perform(vampOf('| G . D . |', 'campfire-strum', 120));
    expect(strokes(campfire.notes).filter((text) => text.startsWith('1.'))).toEqual([
      '1.000 down open 4321',
      '1.250 up open 123',
      '1.500 down open 4321',
      '1.750 up open 123',
    ]);
    const waltz = perform(vampOf('| C . G | . . . | F D . |', 'waltz', 120));
    expect(strokes(waltz.notes)).toEqual([
      '0.000 down open 5',
      '0.500 down open 321',
      // Nothing but the bass would ring before the bar ends: a full stroke.
      '1.000 down open 654321',
      '1.500 down open 6',
      '2.000 down choke 4321',
      '2.500 down choke 4321',
      '3.000 down open 654321',
      '3.500 down open 4',
      '4.000 down open 321',
    ]);
    const driving = perform(vampOf('| Am . F G |', 'driving-eighths', 120));
    expect(strokes(driving.notes)).toEqual([
      '0.000 down open 54321',
      '0.500 down palm 543',
      '0.750 down palm 543',
      '1.000 down open 654321',
      '1.500 down open 654321',
    ]);
    expect(driving.bars).toEqual([{ time: 0, chord: 0 }]);
  });

  test('a chord may begin in one bar and end in the next; a loop may end inside a bar', () => {
    expect(perform(vampOf('| G . . D | . . C . |', 'quarter-downs', 60)).bars.map((bar) => bar.chord)).toEqual([0, 1]);
    const slots = parseVamp('Em D C', 4).map((slot) => ({ ...slot, beats: 2 }));
    const short = perform(voice({ slots, groove: 'quarter-downs', tempo: 60, seed: 1 }), { loops: 2 });
    expect(short.seconds).toBe(12);
    expect(short.bars).toEqual([
      { time: 0, chord: 0 },
      { time: 4, chord: 2 },
      { time: 6, chord: 0 },
      { time: 10, chord: 2 },
    ]);
  });

  test('without a groove each chord is one open downstroke that rings until the next', () => {
    const { notes } = perform(vampOf('Em D', null, 60));
    expect(strokes(notes)).toEqual(['0.000 down open 654321', '4.000 down open 4321']);
    expect(notes.every((note) => note.touch === 'open' && note.accent === 2)).toBe(true);
    for (const note of notes) expect(note.time + note.duration).toBeCloseTo(note.chord === 0 ? 4 : 8, 9);
  });

  test('swing lengthens the number and shortens the and', () => {
    const swung = voice({ slots: parseVamp('Em', 4), groove: 'campfire-strum', tempo: 100, seed: 1, swing: 1.5 });
    const ands = perform(swung).notes.filter((note) => note.stroke === 'up' && note.string === 1);
    expect(ands.map((note) => Number(note.time.toFixed(6)))).toEqual([0.96, 1.56, 2.16]);
  });

  test('the strum takes 6 to 12 ms where it drives, 12 to 22 relaxed, 25 to 45 in a slow ballad', () => {
    const spread = (groove: string, tempo: number) => {
      const { notes } = perform(vampOf('Em', groove, tempo));
      return Math.round(((notes[5]?.time ?? 0) - (notes[0]?.time ?? 0)) * 1000);
    };
    expect([spread('driving-eighths', 120), spread('driving-eighths', 184)]).toEqual([10, 6]);
    expect([spread('relaxed-alternate', 72), spread('relaxed-alternate', 120)]).toEqual([22, 14]);
    expect(spread('quarter-downs', 60)).toBeGreaterThanOrEqual(25);
    expect(spread('quarter-downs', 60)).toBeLessThanOrEqual(45);
  });

  test('every stroke falls on the grid and moves the right way', () => {
    fc.assert(
      fc.property(anyPerformance, ({ vamp, groove }) => {
        const slot = (beatsPerSlot(groove) * 60) / vamp.tempo;
        // The ands of a shuffle come late: two to one, which every such range of the catalogue holds.
        const ratio = groove.swing[0] > 1 ? 2 : 1;
        const late = (2 * ratio) / (1 + ratio) - 1;
        const cells = groove.opening ?? groove.slots;
        const sounding = cells.filter(slotSounds).length;
        const { notes } = perform(vamp);
        const firsts = notes.filter((note, index) => note.time - (notes[index - 1]?.time ?? -1) > 0.05);
        // One bar a chord: every bar is a chord's first.
        expect(firsts).toHaveLength(sounding * vamp.slots.length);
        for (const first of firsts) {
          const place = Math.floor(first.time / slot + 1e-6);
          expect(first.time / slot - place).toBeCloseTo(place % 2 === 1 ? late : 0, 6);
          const cell = cells[place % slotsPerBar(groove)];
          expect(cell).toMatchObject({ stroke: first.stroke, touch: first.touch, accent: first.accent });
          const stroke = notes.filter((note) => note.time >= first.time && note.time < first.time + 0.05);
          const strings = stroke.map((note) => note.string);
          const order = strings.toSorted((one, other) => (first.stroke === 'down' ? other - one : one - other));
          expect(strings).toEqual(order);
          if (first.stroke === 'up') expect(strings.length).toBeLessThanOrEqual(4);
          // All strings of a stroke are trimmed alike, and few more than many.
          const [trim = 0, ...others] = stroke.map((note) => note.trim);
          for (const other of others) expect(other).toBe(trim);
          if (first.touch === 'open' && strings.length === 6) expect(trim).toBeCloseTo(0, 9);
          if (first.touch === 'open' && strings.length === 1) expect(trim).toBeGreaterThan(5);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('no string sounds twice at once, nothing outlasts its chord, and notes are the shape’s', () => {
    fc.assert(
      fc.property(anyPerformance, fc.boolean(), fc.integer({ min: 1, max: 3 }), ({ vamp }, human, loops) => {
        const { notes, seconds } = perform(vamp, { human, loops });
        const bar = seconds / loops / vamp.slots.length;
        const rings = new Map<number, number>();
        let last = 0;
        for (const note of notes) {
          expect(note.time).toBeGreaterThanOrEqual(last);
          last = note.time;
          expect(note.duration).toBeGreaterThan(0);
          expect(note.time).toBeGreaterThanOrEqual((rings.get(note.string) ?? 0) - 1e-9);
          rings.set(note.string, note.time + note.duration);
          const chordEnd = (Math.floor(note.time / bar + 1e-6) + 1) * bar;
          expect(note.time + note.duration).toBeLessThanOrEqual(chordEnd + 1e-6);
          const frets = vamp.slots[note.chord]?.frets ?? [];
          const other = zoneNotes(frets, 'other-bass').some(({ midi }) => midi === note.midi);
          if (!other) expect(frets[6 - note.string]).toBe(note.fret);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('human timing stays within 8 ms and 1 dB, never before a bar line, and comes from the seed', () => {
    fc.assert(
      fc.property(anyPerformance, ({ vamp }) => {
        const exact = perform(vamp).notes.toSorted((one, other) => one.time - other.time || one.string - other.string);
        const human = perform(vamp, { human: true });
        expect(human).toEqual(perform(vamp, { human: true }));
        const bar = human.seconds / vamp.slots.length;
        expect(human.notes).toHaveLength(exact.length);
        for (const [index, note] of human.notes.entries()) {
          const plan = exact[index];
          expect(note.string).toBe(plan?.string);
          expect(Math.abs(note.time - (plan?.time ?? 0))).toBeLessThanOrEqual(0.008 + 1e-9);
          expect(Math.abs(note.trim - (plan?.trim ?? 0))).toBeLessThanOrEqual(1);
          expect(Math.floor(note.time / bar + 1e-9)).toBe(note.chord);
        }
      }),
      { numRuns: 40 },
    );
    const one = perform(vampOf('Em D', 'campfire-strum', 100, 1), { human: true });
    expect(perform(vampOf('Em D', 'campfire-strum', 100, 2), { human: true }).notes).not.toEqual(one.notes);
  });

  test('loops repeat the first', () => {
    const vamp = vampOf('Em D', 'campfire-strum', 100);
    const once = perform(vamp);
    const thrice = perform(vamp, { loops: 3 });
    expect(thrice.seconds).toBeCloseTo(3 * once.seconds, 9);
    expect(thrice.notes).toHaveLength(3 * once.notes.length);
    for (const [index, note] of thrice.notes.entries()) {
      const first = once.notes[index % once.notes.length];
      const loop = Math.floor(index / once.notes.length);
      expect(note.time - loop * once.seconds).toBeCloseTo(first?.time ?? -1, 9);
      expect(note.duration).toBeCloseTo(first?.duration ?? -1, 9);
      expect(note.midi).toBe(first?.midi);
    }
  });

  test('refuses what cannot be played', () => {
    const vamp = vampOf('Em D', 'quarter-downs', 100);
    expect(() => perform({ ...vamp, slots: [] })).toThrow(/at least one chord/);
    expect(() => perform({ ...vamp, tempo: 0 })).toThrow(/tempo/);
    expect(() => perform({ ...vamp, meter: '3/4' })).toThrow(/in 4\/4/);
    expect(() => perform({ ...vamp, grooveText: 'nonsense' })).toThrow(/Groove, header: "nonsense"/);
    expect(() => perform(vamp, { loops: 0 })).toThrow(/Loops/);
    expect(() => perform({ ...vamp, slots: vamp.slots.map((slot) => ({ ...slot, beats: 0 })) })).toThrow(/lasts/);
    expect(() => perform({ ...vamp, slots: vamp.slots.map((slot) => ({ ...slot, beats: 0.3 })) })).toThrow(/between/);
    expect(shapesFor({ root: 'E', quality: 'minor' })[0]).toEqual(vamp.slots[0]?.frets);
    expect(grooveById('quarter-downs').text).toBe(vamp.grooveText);
  });
});
