import { expect, test } from 'vitest';
import { HIGHEST_CAPO, NAMINGS, POLICIES } from '../../../server/protocol/messages.ts';
import { HIGHEST_CAPO as HIGHEST_OF_NECK } from '../../../shared-theory/neck/capo.ts';
import { NAMINGS as PRINTED } from '../../../shared-theory/printer.ts';
import { POLICIES as COUNTED } from '../../../shared-theory/truth.ts';

// What travels knows nothing of the theory, so each list stands on both sides.
test('settings offer what the theory knows, no more and no less, in its order', () => {
  expect(NAMINGS).toEqual(PRINTED);
  expect(POLICIES).toEqual(COUNTED);
  expect(HIGHEST_CAPO).toBe(HIGHEST_OF_NECK);
});
