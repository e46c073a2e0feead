import { afterEach, expect, test, vi } from 'vitest';
import { pairBy } from '../../../client/desk/requests.ts';

afterEach(() => vi.unstubAllGlobals());

test.each([
  [200, 'paired'],
  [403, 'pairing-code-wrong'],
  [400, 'pairing-code-wrong'],
  [429, 'too-many-codes'],
])('R63 an answer of %i to a pairing code is %s', async (status, outcome) => {
  const fetched = vi.fn(async () => new Response('{}', { status }));
  vi.stubGlobal('fetch', fetched);
  expect(await pairBy('ABCDEF')).toBe(outcome);
  expect(fetched).toHaveBeenCalledWith('/api/pair', expect.objectContaining({ method: 'POST' }));
});
