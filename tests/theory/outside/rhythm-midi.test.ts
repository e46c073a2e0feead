import { parseMidi } from 'midi-file';
import { Chord } from 'tonal';
import { describe, expect, test } from 'vitest';
import { GRIDS, GROOVES, slotsPerBar, type Groove } from '../../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { perform } from '../../../shared-theory/perform.ts';
import { rhythmOf } from '../../../shared-theory/rhythm/rhythm-of.ts';
import { writeMidi } from '../../../shared-theory/sound/midi.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';

/**
 * The performance as a Standard MIDI File (RP-001), read by a parser from outside (midi-file), its chords spelled by another library
 * (tonal): from ticks, notes and velocities alone the rhythm is read again, by rules written for that.
 */

const NAMES = { name: 'Groove', guitar: 'Guitar', bass: 'Bass', kit: 'Kit' };

/** Notes this near each other belong to one stroke, in seconds. */
const ONE_STROKE = 0.05;
/** The longest that a touch sounds, in seconds: under loose fingers, choked, under the palm. */
const LENGTHS = { dead: 0.065, choke: 0.13, palm: 0.19 };

type Note = { readonly start: number; end: number; readonly key: number; readonly velocity: number };
type Stroke = { readonly slot: number; readonly offset: number; readonly notes: readonly Note[] };

/** A slot never lasts less than a quarter of a second, so that a palm-muted note ends before the next stroke ends it. */
function slowEnough({ grid }: Groove): number {
  return (BEATS_PER_BAR[GRIDS[grid].meter] / slotsPerBar({ grid })) * 240;
}

function written(groove: Groove) {
  const slots = parseVamp('Em D', BEATS_PER_BAR[groove.meter]).map((slot) => ({ ...slot, beats: 2 * slot.beats }));
  const tempo = slowEnough(groove);
  const vamp = { ...voice({ slots, groove, tempo: groove.tempo[0], seed: 3 }), tempo };
  const performance = perform(vamp, { loops: 2 });
  return { tempo, truth: rhythmOf(vamp, performance), bytes: writeMidi(vamp, performance, NAMES) };
}

/** All that the file says: the meter, quarter notes a minute, the chords as they are marked, and the second loop's notes, in seconds. */
function readBack(bytes: Uint8Array) {
  const { header, tracks } = parseMidi(bytes);
  const ticks = header.ticksPerBeat ?? 0;
  const [conductor = [], guitar = []] = tracks;
  let meter = '';
  let quarters = 0;
  const marked: { at: number; chord: string }[] = [];
  let tick = 0;
  for (const event of conductor) {
    tick += event.deltaTime;
    if (event.type === 'timeSignature') meter = `${event.numerator}/${event.denominator}`;
    if (event.type === 'setTempo') quarters = 60_000_000 / event.microsecondsPerBeat;
    if (event.type === 'marker') marked.push({ at: tick, chord: event.text });
  }
  const seconds = (at: number) => (at * 60) / (ticks * quarters);
  const notes: Note[] = [];
  const held = new Map<number, Note>();
  tick = 0;
  for (const event of guitar) {
    tick += event.deltaTime;
    if (event.type === 'noteOn') {
      const note = { start: seconds(tick), end: Infinity, key: event.noteNumber, velocity: event.velocity };
      held.set(note.key, note);
      notes.push(note);
    } else if (event.type === 'noteOff') {
      const note = held.get(event.noteNumber);
      if (note) note.end = seconds(tick);
    }
  }
  const half = marked.length / 2;
  const loop = seconds(marked[half]?.at ?? 0);
  return {
    meter,
    quarters,
    loop,
    chords: marked.slice(half).map(({ at, chord }) => ({ chord, at: seconds(at) - loop })),
    notes: notes
      .filter(({ start }) => start >= loop - 0.001)
      .map((note) => ({ ...note, start: note.start - loop, end: note.end - loop })),
  };
}

function strokesOf(notes: readonly Note[], slotSeconds: number): readonly Stroke[] {
  const groups: Note[][] = [];
  for (const note of notes) {
    const first = groups.at(-1)?.[0];
    if (first && note.start - first.start < ONE_STROKE) groups.at(-1)?.push(note);
    else groups.push([note]);
  }
  return groups.map((group) => {
    const start = group[0]?.start ?? 0;
    const slot = Math.floor(start / slotSeconds + 0.05);
    return { slot, offset: start - slot * slotSeconds, notes: group };
  });
}

const keys = (stroke: Stroke) => stroke.notes.map(({ key }) => key);
const lasting = ({ notes }: Stroke) => Math.max(...notes.map(({ start, end }) => end - start));
/** From the low strings to the high ones; a bass note alone is struck down. */
const goesDown = (stroke: Stroke) => (keys(stroke)[0] ?? 0) <= (keys(stroke).at(-1) ?? 0);

function touchOf(stroke: Stroke): 'dead' | 'choke' | 'palm' | 'open' {
  const seconds = lasting(stroke);
  if (seconds <= LENGTHS.dead) return 'dead';
  if (seconds <= LENGTHS.choke) return 'choke';
  return seconds <= LENGTHS.palm ? 'palm' : 'open';
}

/** By slot of the pattern each thing heard with how often; most often first cannot be told where two are as often. */
function bySlot<T>(pattern: number, slots: number, read: (slot: number) => T): readonly Map<T, number>[] {
  return Array.from({ length: pattern }, (_, place) => {
    const counted = new Map<T, number>();
    for (let slot = place; slot < slots; slot += pattern) counted.set(read(slot), (counted.get(read(slot)) ?? 0) + 1);
    return counted;
  });
}

function agrees<T>(heard: readonly Map<T, number>[], told: readonly (readonly T[])[] | null): boolean {
  return heard.every((counted, place) => {
    const known = told?.[place] ?? [];
    const counts = known.map((each) => counted.get(each) ?? 0);
    return (
      counted.size === known.length &&
      counts.every((count, index) => count > 0 && count <= (counts[index - 1] ?? count))
    );
  });
}

describe.each(GROOVES.map((groove) => [groove.id, groove] as const))('%s, read from its MIDI file', (id, groove) => {
  const { tempo, truth, bytes } = written(groove);
  const { meter, quarters, chords, notes, loop } = readBack(bytes);
  const { bars, slots: pattern } = GRIDS[groove.grid];
  const [upper = 4, lower = 4] = meter.split('/').map(Number);
  const barSeconds = (upper * 4 * 60) / (lower * quarters);
  const perBar = pattern / bars;
  const slotSeconds = barSeconds / perBar;
  const slots = Math.round(loop / slotSeconds);
  const strokes = strokesOf(notes, slotSeconds);
  const at = new Map(strokes.map((stroke) => [stroke.slot, stroke]));
  const accentAt = (slot: number) => {
    const velocity = at.get(slot)?.notes[0]?.velocity ?? 0;
    // Loudness goes with the square of the velocity: 4.5 decibels below the heavy mark is medium, 9 light.
    const decibels = 40 * Math.log10(velocity / 112);
    return velocity === 0 ? 0 : decibels > -2 ? 3 : decibels > -6.5 ? 2 : 1;
  };
  const soundsOf = (symbol: string) =>
    new Set(
      Chord.get(symbol).notes.map((note) => 'C D EF G A B'.indexOf(note[0] ?? '') + (note.endsWith('#') ? 1 : 0)),
    );
  const fits = (stroke: Stroke, chord: string) => keys(stroke).every((key) => soundsOf(chord).has(key % 12));

  test('meter, tempo and chords', () => {
    expect(meter).toBe(groove.meter);
    expect(barSeconds).toBeCloseTo((BEATS_PER_BAR[groove.meter] * 60) / tempo, 4);
    expect(chords.map(({ chord }) => chord)).toEqual(['Em', 'D']);
    expect(Math.max(...strokes.map(({ slot }) => slot))).toBeLessThan(slots);
  });

  test('accents by velocity', () => {
    expect(agrees(bySlot(pattern, slots, accentAt), truth?.accents ?? null)).toBe(true);
  });

  test('strokes by the order of the strings', () => {
    // Fingers pluck: their order is no stroke.
    if (truth?.strokes == null) {
      expect(id).toBe('bossa-like');
      return;
    }
    const strokeAt = (slot: number) => {
      const stroke = at.get(slot);
      return stroke === undefined ? 'silent' : goesDown(stroke) ? 'down' : 'up';
    };
    expect(agrees(bySlot(pattern, slots, strokeAt), truth.strokes)).toBe(true);
    const byTurns = strokes.every((stroke) => goesDown(stroke) === ((stroke.slot % perBar) % 2 === 0));
    const turns = perBar % 2 === 0 && (perBar / (upper === 3 ? 3 : upper % 4 === 0 && lower === 4 ? 4 : 1)) % 2 === 0;
    // Downs between the numbers alone, every one of them: who counts twice as fast has them on the numbers.
    const between = strokes.filter(({ slot }) => slot % perBar !== 0);
    const counted = strokes.every(goesDown) && between.every(({ slot }) => slot % 2 === 1);
    expect(truth.pendulum).toBe(turns && lower === 4 && !counted ? (byTurns ? 'keeps' : 'breaks') : null);
  });

  test('touches by their length: what opens, and the kit that is imitated', () => {
    const usual = (read: (slot: number) => string) =>
      bySlot(pattern, slots, read).map((counted, place) => {
        const most = Math.max(...counted.values());
        const last = slots - pattern + place;
        // The bar that does not open a chord is the usual one.
        return (counted.get(read(last)) ?? 0) === most
          ? read(last)
          : [...counted].find(([, count]) => count === most)?.[0];
      });
    const touches = usual((slot) => (at.has(slot) ? touchOf(at.get(slot) as Stroke) : 'silent'));
    const opened = touches.flatMap((touch, slot) => (touch === 'open' ? [slot] : []));
    const others = touches.some((touch) => touch !== 'open' && touch !== 'silent');
    expect(truth?.opened).toEqual(opened.length > 0 && others ? opened : null);

    const floor = (stroke: Stroke) => {
      const own = chords.find(({ chord }) => fits(stroke, chord))?.chord ?? '';
      const lowest = Math.min(...strokes.filter((other) => fits(other, own)).flatMap(keys));
      return keys(stroke).includes(lowest);
    };
    const roles = usual((slot) => {
      const stroke = at.get(slot);
      if (stroke === undefined) return 'silent';
      const touch = touchOf(stroke);
      const many = stroke.notes.length > 3;
      if (touch === 'palm' && floor(stroke) && !many) return 'kick';
      if (touch === 'dead' && floor(stroke)) return 'slap';
      if (touch === 'choke' && !floor(stroke) && Math.max(...keys(stroke)) >= 62) return 'closed';
      return touch === 'open' && !floor(stroke) && !goesDown(stroke) ? 'open' : 'none';
    });
    const kit = new Set(roles.filter((role) => role !== 'silent'));
    expect(truth?.roles?.map(([role]) => role) ?? null).toEqual(kit.size > 1 && !kit.has('none') ? roles : null);
  });

  test('where it is heavy in a bar: the backbeat, and how six are grouped', () => {
    // The second bar of the last chord is a usual one.
    const bar = (slots / perBar - 1) * perBar;
    const weight = (place: number) => accentAt(bar + place);
    const [one = 0, two = 0, three = 0, four = 0] = [0, 1, 2, 3].map((beat) => weight((beat * perBar) / 4));
    const deadAt = (beat: number) => {
      const stroke = at.get(bar + (beat * perBar) / 4);
      return stroke !== undefined && touchOf(stroke) === 'dead' && stroke.notes.length > 3;
    };
    const inFour = perBar % 4 === 0 && upper % 4 === 0;
    const onThree = deadAt(2) && !deadAt(1) && !deadAt(3);
    const full = two > one && two > three && four > one && four > three;
    const slapped = deadAt(1) && deadAt(3) && !deadAt(0) && !deadAt(2);
    const backbeat = onThree ? 'half-time' : slapped || full ? 'full-time' : null;
    expect(truth?.halfTime).toBe(inFour ? backbeat : null);
    const middle = weight(3) - Math.max(weight(2), weight(4));
    const outer = Math.min(weight(2), weight(4)) - weight(3);
    const grouped = middle > 0 ? 'two-threes' : outer > 0 ? 'three-twos' : null;
    expect(truth?.threes).toBe(perBar === 6 ? grouped : null);
  });

  test('swing by the onsets between', () => {
    const between = strokes.filter(({ slot }) => {
      const alone = !at.has(slot - 1) && (!at.has(slot + 1) || (slot + 1) % perBar === 0);
      return (slot % perBar) % 2 === 1 && !alone && !(slot % perBar === 0);
    });
    const late = between.reduce((sum, { offset }) => sum + offset, 0) / between.length;
    const ratio = (slotSeconds + late) / (slotSeconds - late);
    const swings = lower === 4 && between.length > 0;
    expect(truth?.swing).toBe(swings ? (ratio > 1.2 ? 'swung' : 'straight') : null);
  });

  test('where the change comes in, by the notes of the chords', () => {
    const places = chords.map(({ chord, at: start }) => {
      const slot = Math.round(start / slotSeconds);
      const before = strokes.findLast((stroke) => stroke.slot < (slot || slots));
      return before && fits(before, chord) ? 'pushed' : at.has(slot) ? 'on-one' : null;
    });
    expect(new Set(places)).toEqual(new Set([truth?.changePlace]));
  });
});
