import { describe, expect, test } from 'vitest';
import { generate } from '../../shared-theory/generate.ts';
import { grooveById, GROOVES, parseGroove } from '../../shared-theory/grooves.ts';
import { levelOf } from '../../shared-theory/levels.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { grooveOf, perform } from '../../shared-theory/perform.ts';
import { truthOf } from '../../shared-theory/truth.ts';

/** One chord or two, directions alone, sevenths, basses off the root. */
const ASKED = [1, 2, 10, 11];

/** A groove in four quarters at 60 to 120, all its lanes given. */
const own = (...lanes: readonly string[]) => ['our-own, Our own | E8 | 4/4 | 60-120 | r=1', ...lanes].join(' / ');

const MUTED = own('strk DDDDDDDD', 'zone LLLLLLLL', 'tch pppppppp', 'acc 31213121');
const HATS = own('strk -U-U-U-U', 'zone .H.H.H.H', 'tch .c.c.c.c', 'acc 01010101');
const SLAPS = own('strk DDDDDDDD', 'zone AAAAAAAA', 'tch xxxxxxxx', 'acc 31213121');
const PUSHED = own('strk DUDUDUDU', 'zone LLLLLLLA', 'tch pppppppo', 'acc 31213123', 'chg .......>');

describe('a level in a groove asked for', () => {
  test('every groove in levels of few chords and of many: the chords of the seed, the groove’s meter and tempo, a truth', () => {
    for (const [at, level] of ASKED.entries()) {
      for (const [index, groove] of GROOVES.entries()) {
        // Each groove in two of the levels: more tell nothing new.
        if ((at + index) % 2 !== 0) continue;
        const seed = 100 * level + index;
        const made = generate({ level, seed, groove: groove.id });
        const drawn = generate({ level, seed });
        expect([groove.id, made.groove, made.vamp.meter]).toEqual([groove.id, groove.id, groove.meter]);
        expect(made.chords).toEqual(drawn.chords);
        expect(made.vamp.tempo >= groove.tempo[0] && made.vamp.tempo <= groove.tempo[1]).toBe(true);
        const bar = BEATS_PER_BAR[groove.meter];
        expect(made.vamp.slots.every(({ beats }) => Number.isInteger(beats / bar))).toBe(true);
        expect(truthOf(made.vamp, perform(made.vamp, { loops: 2 }))).toEqual(made.truth);
        expect(made.truth.bass).toEqual(drawn.truth.bass);
        expect(made.truth.bassAlternates).toBeUndefined();
      }
    }
  });

  test('bars are kept: two a chord where the level has two, one where chords are counted at leisure', () => {
    const bars = (level: number, groove: string) =>
      generate({ level, seed: 5, groove, counting: false }).vamp.slots.map(
        ({ beats }) => beats / BEATS_PER_BAR[grooveById(groove).meter],
      );
    expect(new Set(bars(2, 'slow-twelve-eight'))).toEqual(new Set([2]));
    expect(new Set(bars(10, 'seven-in-two-two-three'))).toEqual(new Set([1]));
  });

  test('the tempo keeps to the level’s range where the groove reaches it', () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      expect(generate({ level: 1, seed, groove: 'relaxed-alternate' }).vamp.tempo).toBeLessThanOrEqual(90);
      expect(generate({ level: 1, seed, groove: 'quick-up-chop' }).vamp.tempo).toBeGreaterThanOrEqual(120);
    }
    const narrow = MUTED.replace('60-120', '100-100');
    const recent = [generate({ level: 1, seed: 1, groove: narrow }).vamp];
    expect(recent[0]?.tempo).toBe(100);
    expect(generate({ level: 1, seed: 2, groove: narrow, recent }).vamp.tempo).toBe(100);
  });

  test('a groove of one’s own opens each chord so that it is heard', () => {
    for (const text of [MUTED, HATS, SLAPS, PUSHED]) {
      for (const level of ASKED.filter((each) => levelOf(each).opening)) {
        const made = generate({ level, seed: level, groove: text });
        expect(made.groove).toBe('our-own');
        expect(grooveOf(made.vamp)?.slots).toEqual(parseGroove(text).slots);
        expect(grooveOf(made.vamp)?.opening?.[0]).toEqual({ stroke: 'down', zone: 'all', touch: 'open', accent: 3 });
        expect(generate({ level, seed: level, groove: parseGroove(text) })).toEqual(made);
      }
    }
  });

  test('where the level has no opening bars it has one only where nothing would be heard without', () => {
    expect(levelOf(2).opening).toBe(false);
    expect(grooveOf(generate({ level: 2, seed: 1, groove: 'waltz' }).vamp)?.opening).toBeUndefined();
    expect(grooveOf(generate({ level: 2, seed: 1, groove: 'quick-up-chop' }).vamp)?.opening).toBeDefined();
    expect(grooveOf(generate({ level: 2, seed: 1, groove: HATS }).vamp)?.opening).toBeDefined();
  });

  test('unknown ids and faulty texts are refused', () => {
    expect(() => generate({ level: 1, seed: 1, groove: 'polka' })).toThrow(/No groove "polka"/);
    expect(() => generate({ level: 1, seed: 1, groove: SLAPS.replace('xxxxxxxx', 'xxxxxxx') })).toThrow(
      /lane tch, slot 8: tch has 7 slots, not 8/,
    );
  });
});
