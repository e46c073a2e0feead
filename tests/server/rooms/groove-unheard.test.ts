import { expect, test, vi } from 'vitest';
import * as generating from '../../../shared-theory/generate.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { refusals } from '../../../server/protocol/words/refusals.ts';
import { DESK, given, opened } from '../../support/given.ts';

vi.mock('../../../shared-theory/generate.ts', { spy: true });

const start = (groove: string | null) =>
  ({ type: 'StartRound', id: 'c', after: 0, level: 7, item: null, groove, contrast: null }) as const;

test('R91 what cannot be heard in the groove that was named is refused with the reason; any other fault is a fault', () => {
  const sentence =
    'The chords of level 7 cannot be heard in Waltz: no third rings. Choose a groove that lets a chord ring.';
  const fault = vi.mocked(generating.generate);
  fault.mockImplementation(() => {
    throw new RangeError(sentence);
  });
  given(opened).when(DESK, start('waltz')).refused('groove-unheard', { what: sentence });
  expect(fill(refusals['groove-unheard'], { what: sentence })).toBe(sentence);
  expect(() => given(opened).when(DESK, start(null))).toThrow(sentence);
  fault.mockImplementation(() => {
    throw new TypeError('a slip');
  });
  expect(() => given(opened).when(DESK, start('waltz'))).toThrow('a slip');
});
