import { describe, expect, test } from 'vitest';
import type { AskedRound } from '../../../shared-theory/diagnosis/asked.ts';
import { masteryEvidence } from '../../../shared-theory/diagnosis/mastery-evidence.ts';
import { generate } from '../../../shared-theory/generate.ts';
import { mastery } from '../../../shared-theory/mastery.ts';
import { askableQuestions, judgeOf } from '../../../shared-theory/questions/judges.ts';
import type { Kind, QuestionSettings } from '../../../shared-theory/questions/question.ts';
import { NOT_SURE } from '../../../shared-theory/questions/question.ts';
import type { Truth } from '../../../shared-theory/truth.ts';
import { EM_D, SETTINGS } from '../questions/given.ts';
import { question, round } from './lesson.ts';

const on = (day: string, ...rounds: readonly AskedRound[]) => rounds.map((each) => ({ round: each, day }));
const withTruth = (truth: Partial<Truth>, ...ids: readonly string[]): AskedRound => {
  const changed = { ...EM_D, ...truth };
  const asked = ids.map((id) => {
    const { kind, target } = question(id);
    const right = judgeOf<Kind>(kind).truth({ truth: changed, target, settings: SETTINGS });
    return question(id, [right]);
  });
  return { number: 1, truth: changed, settings: SETTINGS, questions: asked };
};
const traits = (truth: Partial<Truth>, id: string) => masteryEvidence(on('day', withTruth(truth, id)), 's1')[0]?.traits;

/** Every question of a vamp of a level, answered right by one student; of its settlers one, which leaves all keys in if any does. */
function allRight(level: number, seed: number, settings: QuestionSettings): AskedRound {
  const { truth } = generate({ level, seed });
  const leavesAll = truth.settlers.findIndex(({ keys }) => keys.majors.length === truth.keys.majors.length);
  const questions = askableQuestions(truth, settings).flatMap(({ id, kind, target }) => {
    if (kind === 'settler' && target !== Math.max(0, leavesAll)) return [];
    const right = judgeOf<Kind>(kind).truth({ truth, target, settings });
    return right === null ? [] : [question(id, [right])];
  });
  return { number: seed, truth, settings, questions };
}

describe('evidence of mastery', () => {
  test('right, wrong with what it shows, by day and vamp, oldest first', () => {
    const rounds = [
      ...on('monday', round(question('quality-0', ['minor', 'major']), question('quality-1', ['minor', 'major']))),
      ...on('tuesday', round(question('direction-1', ['up', 'same']))),
    ];
    expect(
      masteryEvidence(rounds, 's1').map(({ kind, target, vamp, day, right, truth }) => [
        kind,
        target,
        vamp,
        day,
        right,
        truth,
      ]),
    ).toEqual([
      ['quality', 0, '0', 'monday', true, 'minor'],
      ['quality', 1, '0', 'monday', false, 'major'],
      ['direction', 1, '1', 'tuesday', true, 'up'],
    ]);
    const [first, second, third] = masteryEvidence(rounds, 's2');
    expect([first?.right, second?.right, third?.right]).toEqual([false, true, false]);
    expect([first?.credit, second?.credit]).toEqual([0, 1]);
    expect(second?.error).toBeNull();
    expect(third?.error).toBe('says-stays');
    expect(masteryEvidence(rounds, 's3')).toEqual([]);
  });

  test('only the first sheet: what was answered after talk shows nothing', () => {
    const rounds = on('monday', round(question('quality-0', ['major', undefined], ['minor', 'minor'])));
    expect(masteryEvidence(rounds, 's1').map(({ right }) => right)).toEqual([false]);
    expect(masteryEvidence(rounds, 's2')).toEqual([]);
  });

  test('struck questions, silence, not sure and opinions are no evidence', () => {
    const struck = { ...question('quality-0', ['minor']), struck: true };
    const rounds = on(
      'monday',
      round(struck, question('quality-1', [NOT_SURE]), question('direction-1', [null]), question('home-0', [0])),
    );
    expect(masteryEvidence(rounds, 's1')).toEqual([]);
  });

  test('what the teacher let stand is right', () => {
    const stands = { ...question('quality-0', ['major']), letStand: new Set(['major']) };
    expect(masteryEvidence(on('monday', round(stands)), 's1')[0]?.right).toBe(true);
  });
});

describe('traits', () => {
  test('Em D: two chords; the top goes with the bass, or against it, or holds', () => {
    expect(traits({}, 'direction-1')).toEqual(['two-chords']);
    expect(traits({ top: [66, 64] }, 'direction-1')).toContain('top-against-bass');
    expect(traits({ top: [64, 64] }, 'direction-1')).toContain('top-against-bass');
    expect(traits({ top: [] }, 'direction-1')).toEqual(['two-chords']);
    expect(traits({ top: [66, 64] }, 'quality-0')).toEqual(['two-chords']);
  });

  test('one key, none, several; under a policy with minors a pair of relatives is one', () => {
    const one = {
      majors: ['G major'],
      relatives: ['G major', 'E minor'],
      'raised-seventh': ['G major', 'E minor'],
      modes: [],
    };
    const none = { majors: [], relatives: [], 'raised-seventh': [], modes: [] };
    expect(traits({}, 'keys-0')).toEqual(['two-chords']);
    expect(traits({ keys: one }, 'keys-0')).toEqual(['two-chords', 'one-key']);
    expect(traits({ keys: none }, 'keys-0')).toEqual(['two-chords', 'no-key']);
    const relatives: AskedRound = {
      ...withTruth({ keys: one }, 'keys-0'),
      settings: { ...SETTINGS, policy: 'relatives' },
    };
    expect(masteryEvidence(on('day', relatives), 's1')[0]?.traits).toContain('one-key');
  });

  test('a settler that leaves every key in', () => {
    expect(traits({}, 'settler-0')).toEqual(['two-chords']);
    const settlers = [{ chord: 'Am', note: null, keys: EM_D.keys }];
    expect(traits({ settlers }, 'settler-0')).toEqual(['two-chords', 'settles-nothing']);
  });

  test('C Fm: the Fm visits; in Am D, that G major owns, nobody does', () => {
    const none = { majors: [], relatives: [], 'raised-seventh': [], modes: [] };
    const fm: Partial<Truth> = {
      chords: ['C', 'Fm'],
      qualities: ['major', 'minor'],
      roots: ['C', 'F'],
      distances: ['4'],
      keys: none,
      settlers: [],
    };
    expect(traits(fm, 'quality-1')).toContain('visitor');
    expect(traits(fm, 'quality-0')).not.toContain('visitor');
    expect(traits({ ...fm, chords: ['Am', 'D'], keys: EM_D.keys }, 'quality-1')).not.toContain('visitor');
  });

  test('four slots of three chords or four; a chord over another bass', () => {
    const four: Partial<Truth> = {
      count: 3,
      chords: ['C', 'G/B', 'C', 'F'],
      qualities: ['major', 'major', 'major', 'major'],
      roots: ['C', 'G', 'C', 'F'],
    };
    expect(traits(four, 'quality-1')).toEqual(['four-slots', 'off-root']);
    expect(traits(four, 'quality-0')).toEqual(['four-slots']);
    expect(traits({ ...four, count: 2 }, 'quality-0')).toEqual([]);
  });
});

test.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])(
  'who hears all of level %d masters it in time, on two days',
  (level) => {
    const rounds = Array.from({ length: 60 }, (_, seed) => ({
      round: allRight(level, seed, SETTINGS),
      day: String(seed % 2),
    }));
    const evidence = masteryEvidence(rounds, 's1');
    const after = (vamps: number) =>
      mastery(
        level,
        evidence.filter(({ vamp }) => Number(vamp) < vamps),
      ).met;
    expect(after(1)).toBe(false);
    // The special cases of a level must be among the last trials: they are, sooner or later.
    expect(rounds.some((_, index) => after(index + 1))).toBe(true);
  },
);
