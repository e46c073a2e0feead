import { describe, expect, test } from 'vitest';
import { besideShown } from '../../../shared-theory/questions/beside.ts';
import { bassJudge } from '../../../shared-theory/questions/bass/judge.ts';
import type { ErrorKind } from '../../../shared-theory/questions/error-kinds.ts';
import type { NeckPlace } from '../../../shared-theory/questions/question.ts';
import { neckPlaces } from '../../../shared-theory/questions/root/ask.ts';
import { pitchClassAt } from '../../../shared-theory/questions/root/places.ts';
import { pitchClass } from '../../../shared-theory/pitch.ts';
import { context, played } from './given.ts';

/** A place of a note on the pad. */
function at(note: string): NeckPlace {
  const place = neckPlaces().find((each) => pitchClassAt(each) === pitchClass(note));
  if (!place) throw new Error(`${note} is on the pad`);
  return place;
}

describe('the bass', () => {
  test.each([
    ['C', 0, 'C'],
    ['C/E F', 0, 'E'],
    ['G D/F#', 1, 'F#'],
    ['Am/G F', 0, 'G'],
    ['Am7 D', 0, 'A'],
  ])('of %s, slot %i, is %s, wherever it is marked', (text, target, note) => {
    const given = context(target, played(text));
    const right = [bassJudge.truth(given), ...bassJudge.also(given)];
    expect(right.every((place) => place !== null && pitchClassAt(place) === pitchClass(note))).toBe(true);
    expect(right).toHaveLength(neckPlaces().filter((place) => pitchClassAt(place) === pitchClass(note)).length);
    for (const place of right) if (place) expect(bassJudge.mark(place, given).exact).toBe(true);
  });

  test('of no chord is none', () => {
    expect(bassJudge.truth(context(3, played('C')))).toBeNull();
    expect(() => bassJudge.mark(at('C'), context(3, played('C')))).toThrow(/bass-3 cannot be asked/);
  });
});

describe('the mark of a bass', () => {
  test.each<[string, string, number, ErrorKind | null]>([
    ['C/E', 'E', 1, null],
    ['C/E', 'C', 0.6, 'names-the-root-over-a-slash'],
    ['C/E', 'B', 0.4, 'fifth-over-the-bass'],
    ['C/E', 'G', 0.25, 'third-over-the-bass'],
    ['C/E', 'F', 0.25, 'one-fret-off'],
    ['C/E', 'Eb', 0.25, 'one-fret-off'],
    ['C/E', 'D', 0, null],
    // The root lies a fifth above: that it is the root says more.
    ['F/Bb', 'F', 0.6, 'names-the-root-over-a-slash'],
    ['G', 'D', 0.4, 'fifth-over-the-bass'],
    ['G', 'B', 0.25, 'third-over-the-bass'],
  ])('%s, answered %s: %f', (text, note, credit, error) => {
    expect(bassJudge.mark(at(note), context(0, { ...played('C'), ...slot(text) }))).toEqual({
      credit,
      exact: credit === 1,
      errors: error === null ? [] : [error],
    });
  });

  test('the top note where nothing else fits', () => {
    const given = context(0, { ...played('C/E'), top: [62] });
    expect(bassJudge.mark(at('D'), given).errors).toEqual(['names-the-top-note']);
  });

  test('until the root may be told nobody is said to have named it', () => {
    const given = context(0, played('C/E'));
    const shown = { ...given, beside: besideShown(given.truth, [{ kind: 'bass', target: 0 }]) };
    expect(bassJudge.mark(at('C'), shown)).toEqual({ credit: 0, exact: false, errors: [] });
  });
});

/** What a chord is by its symbol alone, also where no hand would play it so. */
function slot(symbol: string) {
  const [, root = ''] = /^([A-G][#b]?)/.exec(symbol) ?? [];
  return { chords: [symbol], roots: [root], qualities: ['major'] as const };
}
