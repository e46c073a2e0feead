import { describe, expect, test } from 'vitest';
import { generate } from '../../../shared-theory/generate.ts';
import { askableQuestions } from '../../../shared-theory/questions/judges.ts';
import { levelQuestions, levelSettlers } from '../../../shared-theory/questions/level-questions.ts';
import type { Truth } from '../../../shared-theory/truth.ts';
import { EM_D, owners, played, SETTINGS } from './given.ts';

const G = owners(['G major'], []);
const D = owners(['D major'], []);
const BOTH = owners(['G major', 'D major'], []);
const chord = (name: string, keys: Truth['keys']) => ({ chord: name, note: null, keys });
const note = (name: string, keys: Truth['keys']) => ({ chord: null, note: name, keys });

describe('the settlers of a level’s round', () => {
  const NOTES = [note('C', G), note('C#', D)];
  test.each<[string, Truth['settlers'], number[]]>([
    ['a chord to each side and a note', [chord('C', G), chord('A', D), ...NOTES], [0, 1, 3]],
    ['the idle one first', [chord('Bm', BOTH), chord('C', G), chord('A', D), ...NOTES], [0, 1, 4]],
    ['the idle one between', [chord('C', G), chord('Bm', BOTH), chord('A', D), ...NOTES], [0, 1, 4]],
    ['the idle one last', [chord('C', G), chord('A', D), chord('Bm', BOTH), ...NOTES], [0, 2, 4]],
    ['notes alone', NOTES, [1]],
    ['one note', [chord('C', G), note('C', G)], [0, 1]],
    ['none', [], []],
  ])('%s', (_case, settlers, places) => {
    // G stands one fifth from C: the second note.
    expect(levelSettlers({ ...EM_D, settlers })).toEqual(places);
  });

  test('which note it is hangs on the key: of C and G the first', () => {
    const keys = owners(['C major', 'G major'], []);
    expect(levelSettlers({ ...EM_D, keys, settlers: NOTES })).toEqual([0]);
  });

  test.each([7, 8])('three at most in vamps of level %d, all of them on one’s own guitar', (level) => {
    for (let seed = 0; seed < 60; seed += 1) {
      const { truth } = generate({ level, seed });
      const asked = levelQuestions(truth, SETTINGS, ['settler', 'keys']);
      expect(asked.filter(({ kind }) => kind === 'settler').length).toBe(Math.min(3, levelSettlers(truth).length));
      expect(asked.some(({ kind }) => kind === 'quality')).toBe(false);
    }
    const own = played('Em D');
    const all = askableQuestions(own, SETTINGS).filter(({ kind }) => kind === 'settler');
    expect(all).toHaveLength(own.settlers.length);
    expect(all.length).toBeGreaterThan(3);
  });
});
