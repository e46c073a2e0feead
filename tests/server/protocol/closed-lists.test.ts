import { expect, test } from 'vitest';
import { FEELS, HIGHEST_CAPO, NAMINGS, PITCH_RANGE, POLICIES, VOICES } from '../../../server/protocol/messages.ts';
import type { Feel } from '../../../shared-theory/feels.ts';
import { MOST_PARTS } from '../../../server/protocol/parsers.ts';
import { HIGHEST_CAPO as HIGHEST_OF_NECK } from '../../../shared-theory/neck/capo.ts';
import { NAMINGS as PRINTED } from '../../../shared-theory/printer.ts';
import { PITCH_RANGE as PITCHES, VOICES as GUITARS } from '../../../shared-theory/sound/instrument.ts';
import { MOST_TAPS } from '../../../shared-theory/taps/taps.ts';
import { POLICIES as COUNTED } from '../../../shared-theory/truth.ts';

// What travels knows nothing of the theory, so each list stands on both sides.
test('settings offer what the theory knows, no more and no less, in its order', () => {
  expect(NAMINGS).toEqual(PRINTED);
  expect(POLICIES).toEqual(COUNTED);
  expect(MOST_PARTS).toBe(MOST_TAPS);
  expect(HIGHEST_CAPO).toBe(HIGHEST_OF_NECK);
  expect(VOICES).toEqual(GUITARS);
  expect(PITCH_RANGE).toEqual(PITCHES);
  const feels: Readonly<Record<Feel, true>> = { written: true, driving: true, relaxed: true };
  expect(FEELS).toEqual(Object.keys(feels));
});
