import { describe, expect, test } from 'vitest';
import { withBand } from '../../../shared-theory/band.ts';
import { perform, type Performance, type SoundedNote } from '../../../shared-theory/perform.ts';
import { STEEL } from '../../../shared-theory/sound/instrument.ts';
import { noteShelf } from '../../../shared-theory/sound/note-shelf.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';

const RATE = 22050;

const MUTED: SoundedNote = {
  time: 0,
  duration: 0.15,
  string: 6,
  fret: 0,
  midi: 40,
  stroke: 'down',
  touch: 'palm',
  accent: 2,
  trim: 0,
  chord: 0,
};

function played(): Performance {
  const vamp = voice({ slots: parseVamp('Em D', 4), groove: 'foot-and-open-hat', tempo: 120, seed: 3 });
  return withBand(vamp, perform(vamp), { kit: true, bass: true });
}

function only(part: Partial<Performance>): Performance {
  return { seconds: 1, loops: 1, bars: [], notes: [], ...part };
}

describe('shelf of rendered sounds', () => {
  test('makes ready everything that a band needs, once', () => {
    const shelf = noteShelf(RATE);
    const performance = played();
    const missing = shelf.missing(performance);
    for (const render of missing) render();
    expect(shelf.missing(performance)).toEqual([]);
    for (const strike of performance.kit ?? []) expect(shelf.takeKit(strike)).toBe(shelf.takeKit(strike));
    for (const note of performance.bass ?? []) expect(shelf.takeBass(note)).toBe(shelf.takeBass(note));
    expect(shelf.missing(performance)).toEqual([]);
  });

  test('a string struck again is not always the same samples, and there are few variants', () => {
    const shelf = noteShelf(RATE);
    const times = Array.from({ length: 48 }, (_, index) => index * 0.25);
    const taken = times.map((time) => shelf.take({ ...MUTED, time }));
    expect(new Set(taken).size).toBe(3);
    let longest = 1;
    let run = 1;
    for (const [index, samples] of taken.entries()) {
      run = samples === taken[index - 1] ? run + 1 : 1;
      longest = Math.max(longest, run);
    }
    expect(longest).toBeLessThan(5);
    const again = noteShelf(RATE);
    expect(
      times.every((time, index) => again.take({ ...MUTED, time }).every((sample, n) => sample === taken[index]?.[n])),
    ).toBe(true);
  });

  test('what was not taken for the longest time goes first, and no more is kept than asked', () => {
    // Each muted sound is a quarter of a second: four find room.
    const shelf = noteShelf(RATE, STEEL, { keptSeconds: 1.1 });
    const note = (midi: number): SoundedNote => ({ ...MUTED, midi, fret: midi - 40 });
    const [first, second] = [shelf.take(note(40)), shelf.take(note(41))];
    shelf.take(note(42));
    shelf.take(note(43));
    expect(shelf.take(note(40))).toBe(first);
    shelf.take(note(44));
    expect(shelf.take(note(40))).toBe(first);
    expect(shelf.take(note(41))).not.toBe(second);
    let kept = 0;
    for (let midi = 40; midi < 64; midi += 1) shelf.take(note(midi));
    for (let midi = 40; midi < 64; midi += 1) {
      // Two more variants of each are missing in any case.
      if (shelf.missing(only({ notes: [note(midi)] })).length === 2) kept += 1;
    }
    expect(kept).toBe(4);
  });

  test('a sound larger than the shelf is rendered all the same', () => {
    const shelf = noteShelf(RATE, STEEL, { keptSeconds: 0.1 });
    expect(shelf.take(MUTED).length).toBeGreaterThan(0.1 * RATE);
  });

  test('an open string is rendered longer where a longer note asks, and the longer one serves both', () => {
    const shelf = noteShelf(RATE);
    const short: SoundedNote = { ...MUTED, touch: 'open', duration: 0.4 };
    const long: SoundedNote = { ...short, duration: 2 };
    const first = shelf.take(short);
    const second = shelf.take(long);
    expect(second.length).toBeGreaterThan(first.length);
    expect(shelf.take(short)).toBe(second);
  });

  test('plays its own instrument', () => {
    const nylon = noteShelf(RATE, { ...STEEL, voice: 'nylon' });
    expect(nylon.instrument.voice).toBe('nylon');
    const [one, other] = [nylon.take(MUTED), noteShelf(RATE).take(MUTED)];
    expect(one.every((sample, n) => sample === other[n])).toBe(false);
  });
});
