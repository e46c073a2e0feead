import { describe, expect, test } from 'vitest';
import { withBand } from '../../../shared-theory/band.ts';
import { contactsOf } from '../../../shared-theory/contacts.ts';
import { slotSounds, slotsPerBar } from '../../../shared-theory/groove-grid.ts';
import { GROOVES, type Groove } from '../../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { bassOf } from '../../../shared-theory/neck.ts';
import { perform, type KitPiece, type Performance } from '../../../shared-theory/perform.ts';
import type { VoicedVamp } from '../../../shared-theory/vamps.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';

const BOTH = { kit: true, bass: true };
const VAMPS = ['Em D', 'C Am', 'F Bm G A', 'G D/F# Em', 'Bb Eb', 'F# B'] as const;

function vampOf(groove: Groove, chords: string, seed = 3): VoicedVamp {
  const slots = parseVamp(chords, 4).map(({ chord }) => ({ chord, beats: BEATS_PER_BAR[groove.meter] * 2 }));
  return voice({ slots, groove: groove.id, tempo: Math.round((groove.tempo[0] + groove.tempo[1]) / 2), seed });
}

function played(vamp: VoicedVamp, options: { loops?: number; human?: boolean } = {}): Required<Performance> {
  const performance = withBand(vamp, perform(vamp, options), BOTH);
  return { kit: [], bass: [], ...performance };
}

/** Seconds of each contact of a performance with nothing human in it. */
function gridOf(vamp: VoicedVamp, loops: number): readonly { time: number; sounds: boolean; accent: number }[] {
  const beat = 60 / vamp.tempo;
  const loopBeats = vamp.slots.reduce((sum, { beats }) => sum + beats, 0);
  return Array.from({ length: loops }, (_, loop) =>
    contactsOf(vamp).map((contact) => {
      const cell = loop > 0 ? (contact.again ?? contact.cell) : contact.cell;
      return { time: (loop * loopBeats + contact.beats) * beat, sounds: slotSounds(cell), accent: cell.accent };
    }),
  ).flat();
}

/** Grooves that sound no number: the kit's foot gives those that the chops answer. */
const OFF_BEAT = new Set(['offbeat-skank', 'quick-up-chop']);

describe.each(GROOVES.map((groove) => [groove.id, groove] as const))('%s', (id, groove) => {
  test('the kit keeps the grid: its places, its accents, its rests, at most one stroke a slot', () => {
    const vamp = vampOf(groove, 'Em D');
    const { kit } = played(vamp, { loops: 2 });
    const grid = gridOf(vamp, 2);
    let before = -1;
    for (const strike of kit) {
      const slot = grid.find(({ time }) => Math.abs(time - strike.time) < 1e-6);
      expect(slot, `${strike.piece} at ${strike.time} s`).toBeDefined();
      if (!OFF_BEAT.has(id)) expect(slot).toMatchObject({ sounds: true, accent: strike.accent });
      expect(strike.time).toBeGreaterThan(before);
      before = strike.time;
    }
    const struck = grid.filter(({ sounds }) => sounds);
    expect(kit.length).toBeGreaterThanOrEqual(struck.length);
    expect(kit.length).toBeLessThanOrEqual(struck.length + (OFF_BEAT.has(id) ? kit.length / 2 : 0));
  });

  test('the bass lies an octave under the guitar’s, begins every chord with it or before it, and moves as it does', () => {
    for (const chords of VAMPS) {
      const vamp = vampOf(groove, chords);
      const { bass, seconds } = played(vamp, { loops: 2 });
      for (const { midi, chord, duration, time } of bass) {
        expect(midi).toBe(bassOf(vamp.slots[chord]?.frets ?? []) - 12);
        expect(midi).toBeGreaterThanOrEqual(28);
        expect(midi).toBeLessThanOrEqual(55);
        expect(duration).toBeGreaterThan(0.05);
        expect(time + duration).toBeLessThanOrEqual(seconds + 1e-6);
      }
      const beat = 60 / vamp.tempo;
      const round = seconds / 2;
      let beats = 0;
      for (const [chord, slot] of vamp.slots.entries()) {
        for (const loop of [0, 1]) {
          const start = loop * round + beats * beat;
          const first = bass.find(
            (note) => note.chord === chord && note.time > start - beat && note.time < start + beat,
          );
          if (!first) throw new Error(`${chords}: no bass where chord ${chord + 1} begins`);
          const pushed = groove.slots.some(({ pushes }) => pushes) && start > 0;
          expect(first.time - start).toBeLessThan(1e-6);
          if (!pushed) expect(first.time - start).toBeGreaterThan(-1e-6);
        }
        beats += slot.beats;
      }
    }
  });

  test('one bass note at a time', () => {
    const { bass } = played(vampOf(groove, 'C Am'), { loops: 2 });
    for (const [index, { time, duration }] of bass.entries())
      expect(time + duration).toBeLessThanOrEqual((bass[index + 1]?.time ?? Infinity) + 1e-9);
  });

  test('with a human hand the parts stay within 8 ms and 1 dB of the grid, and go with the guitar', () => {
    const vamp = vampOf(groove, 'Em D', 11);
    const { kit, bass, notes } = played(vamp, { loops: 2, human: true });
    const grid = gridOf(vamp, 2);
    for (const part of [...kit, ...bass]) {
      const slot = grid.find(({ time }) => Math.abs(time - part.time) <= 0.008 + 1e-6);
      expect(slot).toBeDefined();
      expect(Math.abs(part.trim)).toBeLessThanOrEqual(1);
      if (slot?.sounds) expect(notes.some(({ time }) => Math.abs(time - part.time) < 1e-9)).toBe(true);
    }
    expect(kit.some(({ trim }) => trim !== 0)).toBe(true);
  });

  test('the same every time, and the guitar is left as it is', () => {
    const vamp = vampOf(groove, 'G C');
    const performance = perform(vamp);
    const one = withBand(vamp, performance, BOTH);
    expect(withBand(vamp, performance, BOTH)).toEqual(one);
    expect(one.notes).toBe(performance.notes);
    expect(withBand(vamp, performance, { kit: false, bass: false })).toEqual(performance);
    expect(withBand(vamp, performance, { kit: true, bass: false }).bass).toBeUndefined();
  });

  test('an open hat is closed by the next foot or hat', () => {
    const { kit, seconds } = played(vampOf(groove, 'Em D'), { loops: 2 });
    for (const [index, { piece, time, duration }] of kit.entries()) {
      if (piece !== 'open-hat') {
        expect(duration).toBeUndefined();
        continue;
      }
      const closing = kit.slice(index + 1).find((strike) => strike.piece !== 'snare')?.time ?? seconds;
      expect(time + (duration ?? 0)).toBeCloseTo(closing, 6);
    }
  });
});

describe('what the hand imitates (common practice)', () => {
  const LETTERS: Readonly<Record<KitPiece, string>> = { kick: 'K', snare: 'S', 'closed-hat': 'h', 'open-hat': 'O' };

  /** The kit of the second bar of a chord, one letter a slot, where the pattern goes on as it is. */
  function bar(id: string): string {
    const groove = GROOVES.find((known) => known.id === id);
    if (!groove) throw new Error(`no groove ${id}`);
    const vamp = vampOf(groove, 'Em');
    const { kit, seconds } = played(vamp);
    const start = seconds / 2;
    const grid = gridOf(vamp, 1).filter(({ time }) => time >= start - 1e-6);
    expect(grid).toHaveLength(slotsPerBar(groove));
    return grid
      .map(({ time }) => {
        const strike = kit.find((each) => Math.abs(each.time - time) < 1e-6);
        return strike ? LETTERS[strike.piece] : '.';
      })
      .join('');
  }

  test.each([
    ['foot-and-closed-hat', 'KhKhKhKh'],
    ['foot-and-open-hat', 'KOKOKOKO'],
    ['foot-slap-hat', 'KhShKhSh'],
    ['quarter-downs', 'K.S.K.S.'],
    ['relaxed-alternate', 'KhShKhSh'],
    ['driving-eighths', 'KhShKhSh'],
    ['campfire-strum', 'K.Sh.KSh'],
    ['boom-chick', 'K.S.K.S.'],
    ['boom-chicka', 'K.ShK.Sh'],
    // The heavy ands are the snare of a train beat.
    ['train-beat', 'K.ShK.ShK.ShK.Sh'],
    ['offbeat-skank', 'Kh.hKh.h'],
    ['quick-up-chop', 'Kh.hKh.h'],
    ['low-string-shuffle', 'KhShKhSh'],
    ['slow-twelve-eight', 'KhhShhKhhShh'],
    ['six-eight-ballad', 'KhhShh'],
    ['waltz', 'K.h.h.'],
    ['funk-sixteenths', 'KhhKhhKhhKhhShhh'],
    ['half-time', 'K...S..O'],
    ['mute-and-open', 'KhShKhSO'],
    ['eighth-downs-backbeat', 'KhShKhSh'],
    ['gallop', 'K.hhS.hhK.hhS.hh'],
    ['four-to-the-bar-chop', 'K.S.K.S.'],
    ['three-three-two', 'KhhKhhSh'],
    ['seven-in-two-two-three', 'KhKhShh'],
  ])('%s: %s', (id, expected) => {
    expect(bar(id)).toBe(expected);
  });

  test('bossa-like: the foot with the thumb, and the fingers’ chords all on one piece, as a stick on the rim', () => {
    const groove = GROOVES.find(({ id }) => id === 'bossa-like');
    if (!groove) throw new Error('bossa-like');
    const vamp = vampOf(groove, 'Em D');
    const { kit } = played(vamp);
    const eighth = 30 / vamp.tempo;
    const first = kit.filter(({ time }) => time < 16 * eighth - 1e-6);
    const letters = Array.from({ length: 16 }, (_, slot) => {
      const strike = first.find(({ time }) => Math.abs(time - slot * eighth) < 1e-6);
      return strike ? LETTERS[strike.piece] : '.';
    });
    expect(letters.join('')).toBe('K..SK.S.K.S.KS..');
  });

  test.each(['train-beat', 'offbeat-skank', 'bossa-like', 'boom-chick', 'campfire-strum'])(
    '%s: the foot gives a chord that begins on three',
    (id) => {
      const groove = GROOVES.find((known) => known.id === id);
      if (!groove) throw new Error(`no groove ${id}`);
      const vamp = voice({ slots: parseVamp('G C', 2), groove, tempo: groove.tempo[0], seed: 1 });
      const three = 120 / vamp.tempo;
      expect(played(vamp).kit.find(({ time }) => Math.abs(time - three) < 1e-6)?.piece).toBe('kick');
    },
  );

  test.each([
    ['train-beat', 0.5],
    ['gallop', 0.5],
    ['driving-eighths', 0.5],
    ['four-to-the-bar-chop', 1],
  ])('%s: a short bass lasts %f beats, to the next contact of the hand', (id, beats) => {
    const groove = GROOVES.find((known) => known.id === id);
    if (!groove) throw new Error(`no groove ${id}`);
    const vamp = vampOf(groove, 'Em');
    const { bass, seconds } = played(vamp);
    // The second bar, where the pattern goes on as it is.
    const short = bass.filter(({ time }) => time > seconds / 2 - 1e-6);
    expect(short.length).toBeGreaterThan(1);
    for (const { duration } of short) expect((duration * vamp.tempo) / 60).toBeCloseTo(beats, 6);
  });

  test('a pushed change: the foot goes with the push, and rests where the hand passes', () => {
    const groove = GROOVES.find(({ id }) => id === 'pushed-change');
    if (!groove) throw new Error('pushed-change');
    const vamp = vampOf(groove, 'Em D');
    const { kit, bass } = played(vamp);
    const [push] = bass.filter(({ chord }) => chord === 1);
    const bars = (2 * BEATS_PER_BAR['4/4'] * 60) / vamp.tempo;
    expect(push?.time).toBeCloseTo(bars - 30 / vamp.tempo, 6);
    expect(bass.some(({ time }) => Math.abs(time - bars) < 1e-6)).toBe(false);
    expect(kit.some(({ time }) => Math.abs(time - bars) < 1e-6)).toBe(false);
    expect(kit.find(({ time }) => Math.abs(time - (push?.time ?? 0)) < 1e-6)?.piece).toBe('kick');
  });

  test('a vamp without a groove: the foot and the bass give each chord', () => {
    const slots = parseVamp('C F', 4);
    const vamp = { ...voice({ slots, groove: 'quarter-downs', tempo: 80, seed: 1 }), grooveText: '' };
    const { kit, bass } = played(vamp);
    expect(kit.map(({ piece, time }) => [piece, time])).toEqual([
      ['kick', 0],
      ['kick', 3],
    ]);
    expect(bass.map(({ time, duration }) => [time, duration])).toEqual([
      [0, 3],
      [3, 3],
    ]);
  });
});
