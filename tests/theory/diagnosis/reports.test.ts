import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { creditsOf, studentReports } from '../../../shared-theory/diagnosis/reports.ts';
import { guitarTruth } from '../../../shared-theory/truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { question, round } from './lesson.ts';

describe('reports of single students', () => {
  test('the strict ledger by first sheets, the friendly one beside it', () => {
    const reports = studentReports([
      round(
        question('direction-1', ['up', 'down', 'not-sure', undefined]),
        question('quality-0', ['minor', 'major', 'minor', 'minor']),
        question('root-0', [{ string: 5, fret: 2 }, { string: 6, fret: 0 }, 'not-sure', { string: 6, fret: 12 }]),
      ),
    ]);
    expect(reports.get('s1')).toEqual({
      right: 2,
      part: 0,
      wrong: 1,
      notSure: 0,
      silent: 0,
      of: 3,
      points: 24,
      errors: [{ error: 'hears-the-fifth', times: 1 }],
      habits: [],
      memory: { right: 0, of: 0 },
    });
    expect(reports.get('s2')).toMatchObject({ right: 1, wrong: 2, points: 10 });
    expect(reports.get('s3')).toMatchObject({ right: 1, notSure: 2, wrong: 0, points: 10 });
    expect(reports.get('s4')).toMatchObject({ right: 2, silent: 1, of: 3, points: 20 });
  });

  test('after the talk half of what is better counts, and nothing is lost', () => {
    const talked = question('quality-0', ['major', 'minor', 'major'], ['minor', 'major', undefined]);
    expect([...creditsOf(round(talked), talked)]).toEqual([
      ['s1', 0.5],
      ['s2', 1],
    ]);
  });

  test('a struck question gives everybody who was there its points, and is evidence of nothing', () => {
    const struck = { ...question('quality-0', ['major', 'minor', undefined]), struck: true };
    expect([...creditsOf(round(struck), struck).values()]).toEqual([1, 1, 1]);
    expect(studentReports([round(struck)]).get('s1')).toMatchObject({ of: 0, right: 0, wrong: 0, points: 10 });
  });

  test('a corrected truth is the evidence; points are the higher of those under each truth that was shown', () => {
    const shown = guitarTruth(parseVamp('E A', 4));
    const asked = {
      ...question('quality-0', ['minor', 'major']),
      shownUnder: [{ truth: shown, letStand: new Set<string>() }],
    };
    const reports = studentReports([round(asked)]);
    expect(reports.get('s1')).toMatchObject({ right: 1, wrong: 0, points: 10 });
    expect(reports.get('s2')).toMatchObject({ right: 0, wrong: 1, points: 10 });
    const confirmed = { ...asked, shownUnder: [] };
    expect(studentReports([round(confirmed)]).get('s2')).toMatchObject({ wrong: 1, points: 0 });
  });

  test('no correction takes points while what was shown stands', () => {
    const vamps = ['Em D', 'E A', 'C Am', 'G', 'D Em', 'Am F C G'].map((text) => guitarTruth(parseVamp(text, 4)));
    fc.assert(
      fc.property(
        fc.constantFrom(...vamps),
        fc.constantFrom(...vamps),
        fc.array(fc.constantFrom('major' as const, 'minor' as const), { minLength: 1, maxLength: 8 }),
        (before, after, answers) => {
          const asked = question('quality-0', answers);
          const first = creditsOf({ ...round(asked), truth: before }, asked);
          const corrected = { ...asked, shownUnder: [{ truth: before, letStand: new Set<string>() }] };
          const then = creditsOf({ ...round(corrected), truth: after }, corrected);
          for (const [student, credit] of first) expect(then.get(student) ?? 0).toBeGreaterThanOrEqual(credit);
        },
      ),
    );
  });
});
