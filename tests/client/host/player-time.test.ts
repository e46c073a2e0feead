import { describe, expect, test } from 'vitest';
import type { PerformedBar } from '../../../shared-theory/live.ts';
import { vampOf } from './played-vamps.ts';
import { bench, type Struck } from './stage.ts';

const FIRST_BAR = 10.15 + 2.4;
const BAR = 2.4;

/** Where the bars of guitar notes begin, each once, in order. */
function barStarts(struck: readonly Struck[]): readonly number[] {
  const starts: number[] = [];
  for (const { note, at, by, dropped } of struck) {
    if (by !== 'guitar' || dropped || typeof note === 'string') continue;
    const start = at - note.time;
    if (Math.abs(start - (starts.at(-1) ?? -1)) > 1e-4) starts.push(start);
  }
  return starts;
}

describe('hours', () => {
  test('an hour of looping: no bar drifts by a microsecond, and nothing grows', () => {
    // A bar of 240/97 s is no sum of round numbers.
    const { player, struck, run, forget } = bench();
    player.play('r1', { ...vampOf('Em D', 'quarter-downs', 97), band: { kit: true, bass: true } });
    const bar = 240 / 97;
    const first = 10.15 + bar;
    let counted = 0;
    let most = 0;
    for (let second = 0; second < 3600; second += 10) {
      const before = struck.length;
      run(10, 0.5);
      most = Math.max(most, struck.length);
      for (const start of barStarts(struck.slice(before))) {
        const number = Math.round((start - first) / bar);
        expect(Math.abs(start - (first + number * bar))).toBeLessThan(1e-6);
        counted += 1;
      }
      forget();
    }
    expect(counted).toBeGreaterThan(3600 / bar - 2);
    // What is struck in ten seconds and what is scheduled ahead, and no more after an hour than after a minute.
    expect(most).toBeLessThan(400);
  });

  test('an hour of changes: lines stay lines', () => {
    const { player, struck, run, forget } = bench();
    player.play('r1', vampOf('Em D', 'quarter-downs', 97));
    const bar = 240 / 97;
    const first = 10.15 + bar;
    for (let minute = 0; minute < 60; minute += 1) {
      player.change(minute % 2 === 0 ? { kind: 'muted' } : { kind: 'full' });
      if (minute % 7 === 0) player.renew();
      const before = struck.length;
      run(60, 1);
      for (const start of barStarts(struck.slice(before))) {
        const number = Math.round((start - first) / bar);
        expect(Math.abs(start - (first + number * bar))).toBeLessThan(1e-6);
      }
      forget();
    }
  });
});

describe('a clock that stalls', () => {
  test.each([5, 60])('for %i s: the music goes on from a bar line, never late and never two bars at once', (stall) => {
    const { player, struck, run, jump, now, told } = bench();
    player.play('r1', vampOf('Em D', 'pushed-change'));
    run(8);
    const before = struck.length;
    jump(stall);
    player.advance();
    const woken = now();
    const asked = told.length;
    run(10, 1);
    const later = struck.slice(before);
    for (const { at } of later) expect(at).toBeGreaterThan(woken);
    const starts = barStarts(later);
    expect(starts[0]).toBeCloseTo(woken + 0.15, 6);
    starts.slice(1).forEach((start, index) => expect(start - (starts[index] ?? 0)).toBeCloseTo(BAR, 6));
    // Where a pushed stroke was lost, its chord is struck on the line.
    expect(later.filter(({ by }) => by === 'guitar')[0]?.at).toBeLessThan(woken + 0.17);
    expect(told.slice(asked)).toEqual([]);
  });

  test('a position is never in two bars, nor behind the music', () => {
    const { player, run, jump, now } = bench();
    player.play('r1', vampOf('Em D'));
    run(8);
    jump(5);
    player.advance();
    run(0.2, 0.05);
    expect(player.position(now())).toMatchObject({ phase: 'vamp' });
  });
});

describe('bars that are not ready', () => {
  const notYet = () => {
    const side = bench((_, bar) => allowed(bar));
    let allowed: (bar: PerformedBar) => boolean = () => false;
    return { ...side, allow: (next: typeof allowed) => (allowed = next) };
  };

  test('the first tick waits for none of them', () => {
    const { player, struck } = notYet();
    player.play('r1', vampOf('Em D'));
    expect(struck.map(({ by, at }) => [by, Number((at - 10).toFixed(3))])).toEqual([
      ['count', 0.15],
      ['count', 0.75],
      ['count', 1.35],
      ['count', 1.95],
    ]);
  });

  test('the count-in goes on for another bar, told once, and the first bar comes whole', () => {
    const { player, struck, run, allow, told, notes } = notYet();
    player.play('r1', vampOf('Em D'));
    run(3);
    expect(struck.filter(({ by }) => by === 'count')).toHaveLength(8);
    expect(notes()).toEqual([]);
    expect(player.position(10.15 + BAR + 0.1)).toEqual({ phase: 'count-in', beat: 0, of: 4 });
    allow(() => true);
    run(4);
    expect(notes()[0]?.at).toBeCloseTo(FIRST_BAR + BAR, 1);
    expect(told).toEqual(['started r1 100']);
  });

  test('ready in good time, nothing is counted on', () => {
    const { player, struck, run, allow, notes } = notYet();
    player.play('r1', vampOf('Em D'));
    run(2.2);
    allow(() => true);
    run(3);
    expect(struck.filter(({ by }) => by === 'count')).toHaveLength(4);
    expect(notes()[0]?.at).toBeCloseTo(FIRST_BAR, 1);
  });

  test('a later bar that is not ready is put off whole, and begins a line of its own', () => {
    const { player, struck, run, allow, now } = notYet();
    player.play('r1', vampOf('Em D'));
    allow(({ chord }) => chord === 0);
    run(8);
    expect(barStarts(struck)).toHaveLength(1);
    allow(() => true);
    const from = now();
    run(6);
    const starts = barStarts(struck).slice(1);
    expect(starts[0]).toBeGreaterThan(from);
    starts.slice(1).forEach((start, index) => expect(start - (starts[index] ?? 0)).toBeCloseTo(BAR, 6));
    for (const { at } of struck.filter(({ program }) => program?.controls.tempo === 100))
      expect(at).toBeGreaterThanOrEqual(FIRST_BAR - 1e-6);
  });
});

test('struck anew from the next line on, the music goes on as it is', () => {
  const plain = bench();
  plain.player.play('r1', vampOf('Em D', 'pushed-change'));
  plain.run(30);
  const side = bench();
  side.player.play('r1', vampOf('Em D', 'pushed-change'));
  side.run(13.3);
  side.player.renew();
  side.run(16.7);
  const heard = (each: typeof plain) =>
    each.notes().map(({ at, end, note }) => `${at.toFixed(6)} ${end.toFixed(6)} ${note.midi}`);
  expect(heard(side)).toEqual(heard(plain));
  expect(side.struck.some(({ dropped }) => dropped)).toBe(true);
  expect(side.told).toEqual(plain.told);
});
