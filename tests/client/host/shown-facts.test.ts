import { describe, expect, test } from 'vitest';
import { barsUntold, bracketsAllowed, shownFacts } from '../../../client/host/shown-facts.ts';
import type { WireStep } from '../../../server/protocol/views.ts';
import { chordSymbol } from '../../../shared-theory/chords.ts';
import { EM_D, stepsAt } from './fixtures.ts';

const em = { kind: 'chord', chord: { root: 'E', quality: 'minor' } };

describe('what stands over the bars', () => {
  test.each([
    ['nothing while nothing is shown', stepsAt(0, 'ready'), [null, null]],
    ['nothing while the quality is open', stepsAt(2, 'open'), [null, null]],
    ['nothing while it is closed', stepsAt(2, 'closed'), [null, null]],
    ['the quality once shown', stepsAt(2, 'shown'), [{ kind: 'quality', quality: 'minor' }, null]],
    ['the letter with quality and root', stepsAt(3, 'shown'), [em, null]],
    ['the next one’s quality alone', stepsAt(4, 'shown'), [em, { kind: 'quality', quality: 'major' }]],
    [
      'every letter once the keys have named them',
      stepsAt(5, 'shown'),
      [em, { kind: 'chord', chord: { root: 'D', quality: 'major' } }],
    ],
  ])('%s', (_, steps, facts) => {
    expect(shownFacts(EM_D, steps)).toEqual(facts);
  });

  test('a root alone is written as a root: its letter by itself would read as a major chord', () => {
    const steps = stepsAt(0, 'ready').map((step) =>
      step.kind === 'root' ? { ...step, status: 'shown' as const } : step,
    );
    expect(shownFacts(EM_D, steps)[0]).toEqual({ kind: 'root', root: 'E' });
  });

  test.each([
    [
      'quality',
      0,
      [
        { kind: 'root', root: 'E' },
        { kind: 'chord', chord: { root: 'D', quality: 'major' } },
      ],
    ],
    [
      'root',
      0,
      [
        { kind: 'quality', quality: 'minor' },
        { kind: 'chord', chord: { root: 'D', quality: 'major' } },
      ],
    ],
  ])('a %s that is asked after the keys were shown does not stand there', (kind, target, facts) => {
    for (const status of ['open', 'closed'] as const) {
      const steps = stepsAt(6, 'shown').map((step) =>
        step.kind === kind && step.target === target ? { ...step, status } : step,
      );
      expect(shownFacts(EM_D, steps)).toEqual(facts);
    }
  });

  test('a seventh and a bass that are still to be asked do not stand there; told, or never asked, they do', () => {
    const vamp = { slots: [{ ...EM_D.slots[0]!, chord: 'Em7/G' }] };
    const facts = (more: Readonly<Record<string, WireStep['status']>>) => {
      const asked = { 'quality 0': 'shown', 'root 0': 'shown', ...more } as const;
      const steps = Object.entries(asked).map(([id, status]) => {
        const [kind = '', target] = id.split(' ');
        return { ...stepsAt(0, 'ready')[0]!, kind, target: Number(target), status };
      });
      const [fact] = shownFacts(vamp, steps);
      return fact?.kind === 'chord' ? chordSymbol(fact.chord) : fact;
    };
    expect(facts({})).toBe('Em7/G');
    expect(facts({ 'seventh 0': 'ready' })).toBe('Em/G');
    expect(facts({ 'seventh 0': 'open', 'bass 0': 'shown' })).toBe('Em/G');
    expect(facts({ 'seventh 0': 'shown', 'bass 0': 'ready' })).toBe('Em7');
    expect(facts({ 'seventh 0': 'ready', 'bass 0': 'ready', 'keys 0': 'shown' })).toBe('Em7/G');
    expect(facts({ 'bass 0': 'closed', 'keys 0': 'shown' })).toBe('Em7');
    expect(facts({ 'order 0': 'open' })).toBeNull();
  });

  test('nor do they where the row has no step for this chord but one for another: what was not opened has none', () => {
    const slots = ['Cadd9', 'Gmaj7', 'Bm7/D'].map((chord) => ({ ...EM_D.slots[0]!, chord }));
    const told = (kind: string, target: number, status: WireStep['status'] = 'shown') =>
      ({ ...stepsAt(0, 'ready')[0]!, kind, target, status }) as const;
    const facts = (...more: readonly WireStep[]) => {
      const steps = [told('quality', 2), told('root', 2), ...more];
      const fact = shownFacts({ slots }, steps)[2];
      return fact?.kind === 'chord' ? chordSymbol(fact.chord) : fact;
    };
    expect(facts(told('seventh', 0), told('bass', 0, 'ready'))).toBe('Bm');
    expect(facts(told('seventh', 0, 'ready'), told('bass', 1, 'closed'))).toBe('Bm');
    expect(facts(told('seventh', 2), told('bass', 0))).toBe('Bm7');
    expect(facts(told('seventh', 0), told('bass', 2))).toBe('Bm/D');
  });

  test('a chord that comes back is not filled from its first place: that it does has not been asked', () => {
    const back = { ...EM_D, slots: [...EM_D.slots, ...EM_D.slots.slice(0, 1)] };
    expect(shownFacts(back, stepsAt(3, 'shown'))).toEqual([em, null, null]);
  });
});

describe('brackets', () => {
  test.each([
    ['not before the first question', stepsAt(0, 'ready'), false],
    ['not with the strokes: they name no chord', stepsAt(0, 'open'), false],
    ['from the first question that names home and next', stepsAt(1, 'open'), true],
    ['and from then on', stepsAt(5, 'closed'), true],
  ])('%s', (_, steps, allowed) => {
    expect(bracketsAllowed(EM_D, steps)).toBe(allowed);
  });

  test('never over a single chord', () => {
    expect(bracketsAllowed({ slots: EM_D.slots.slice(0, 1) }, stepsAt(2, 'open'))).toBe(false);
  });
});

describe('whether the bars may be told', () => {
  const steps = (row: readonly (readonly [string, WireStep['status']])[]): readonly WireStep[] =>
    row.map(([kind, status], index) => {
      const [step] = stepsAt(0, status);
      if (!step) throw new Error('there are steps');
      return { ...step, kind, question: `${kind}-${index}`, status };
    });
  test.each<[string, readonly (readonly [string, WireStep['status']])[], boolean]>([
    [
      'not before tempo is asked',
      [
        ['tempo', 'ready'],
        ['quality', 'ready'],
      ],
      true,
    ],
    [
      'not while it is open',
      [
        ['tempo', 'open'],
        ['quality', 'ready'],
      ],
      true,
    ],
    [
      'nor while it is closed',
      [
        ['tempo', 'closed'],
        ['quality', 'ready'],
      ],
      true,
    ],
    [
      'once it is shown',
      [
        ['tempo', 'shown'],
        ['quality', 'ready'],
      ],
      false,
    ],
    [
      'not while the count of the bar is still to come',
      [
        ['tempo', 'shown'],
        ['bar-count', 'ready'],
      ],
      true,
    ],
    [
      'not while threes are still to come, whatever feel is asked',
      [
        ['swing', 'open'],
        ['threes', 'ready'],
      ],
      true,
    ],
    [
      'with a beat grid, which tells them',
      [
        ['accents', 'open'],
        ['bar-count', 'ready'],
      ],
      false,
    ],
    [
      'with a question about chords',
      [
        ['tempo', 'ready'],
        ['quality', 'open'],
      ],
      false,
    ],
    [
      'not for a tempo that is asked after it',
      [
        ['quality', 'shown'],
        ['tempo', 'open'],
      ],
      true,
    ],
    [
      'where nothing of the kind is asked',
      [
        ['strokes', 'ready'],
        ['quality', 'ready'],
      ],
      false,
    ],
  ])('%s', (_, row, untold) => {
    const all = steps(row);
    const current = all.find(({ status }) => status === 'open' || status === 'closed') ?? null;
    expect(barsUntold(all, current)).toBe(untold);
  });
});
