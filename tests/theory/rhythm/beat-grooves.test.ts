import { expect, test } from 'vitest';
import { BEAT_GROOVES } from '../../../shared-theory/beat-grooves.ts';
import { grooveById } from '../../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { perform } from '../../../shared-theory/perform.ts';
import { rhythmOf } from '../../../shared-theory/rhythm/rhythm-of.ts';
import type { RhythmTruth, Role } from '../../../shared-theory/rhythm/rhythm-truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';

/** Two chords of two bars each, without opening bars. */
function heard(id: string, tempo?: number): RhythmTruth {
  const groove = grooveById(id, BEAT_GROOVES);
  const slots = parseVamp('Em D', 2 * BEATS_PER_BAR[groove.meter]);
  const vamp = voice({ slots, groove, tempo: tempo ?? groove.tempo[0], seed: 1, opening: false });
  const rhythm = rhythmOf(vamp, perform(vamp));
  if (!rhythm) throw new RangeError(`${id} has no rhythm.`);
  return rhythm;
}

const SIGNS: Readonly<Record<Role, string>> = { kick: 'k', slap: 's', closed: 'c', open: 'o', silent: '-' };

// Written by hand, all common practice: how heavy each slot is, how the bar may be counted, and which tempi are as lawful.
test.each([
  ['backbeat-strum', '21311131', '4', '1'],
  ['backbeat-quarters', '20301030', '4', '1'],
  ['heavy-one-and-three', '31113111', '4 2', '1'],
  ['heavy-one', '31111111', '4', '1'],
  ['heavy-four', '21111131', '4', '1'],
  ['heavy-one-and-two-and', '31131111', '4', '1'],
  ['heavy-ands', '13131313', '4 2', '1 2'],
  ['heavy-numbers', '31313131', '4 2', '1'],
  ['six-in-two', '311211', '2 6', '1 3'],
  ['six-in-three', '312121', '3', '1'],
])('%s: accents %s, a bar of %s', (id, accents, bars, counts) => {
  const rhythm = heard(id);
  expect(rhythm.accents.map((slot) => slot.join('/')).join('')).toBe(accents);
  expect([rhythm.barCounts.join(' '), rhythm.counts.join(' ')]).toEqual([bars, counts]);
});

test.each([
  ['hat-opens-on-four-and', 'kckckcko', [7]],
  ['hat-opens-twice', 'kckokcko', [3, 7]],
  ['slap-and-open-hat', 'kcsokcsc', [3]],
  ['foot-and-short-hat', 'kckckckc', null],
])('%s is the kit %s', (id, kit, opened) => {
  const rhythm = heard(id);
  expect(rhythm.roles?.map(([role]) => SIGNS[role]).join('')).toBe(kit);
  expect(rhythm.opened).toEqual(opened);
});

test.each([
  ['first-beat-opens', [0, 1], 'driving'],
  ['backbeats-open', [2, 3, 6, 7], null],
  ['two-and-opens', [3, 7], 'driving'],
])('%s: muted downs, of which %j ring', (id, opened, drive) => {
  const rhythm = heard(id);
  expect([rhythm.opened, rhythm.drive, rhythm.roles]).toEqual([opened, drive, null]);
  expect(rhythm.strokes?.every(([stroke]) => stroke === 'down')).toBe(true);
  expect(rhythm.pendulum).toBe('breaks');
});

test('muted downs with a breath drive and break the pendulum; sixteenths with gaps and with a slap keep it', () => {
  expect(heard('chugging-downs')).toMatchObject({ drive: 'driving', pendulum: 'breaks', roles: null });
  const signs = { down: 'D', up: 'U', silent: '-' } as const;
  const hand = (id: string) =>
    heard(id)
      .strokes?.map(([stroke]) => signs[stroke])
      .join('');
  expect(hand('scratch-with-gaps')).toBe('D-DU-UDUD-DU-UDU');
  expect(hand('sixteenth-slap')).toBe('D-DUD-DUD-DUD-DU');
  expect([heard('scratch-with-gaps').pendulum, heard('sixteenth-slap').pendulum]).toEqual(['keeps', 'keeps']);
  // The slap falls on 2 and 4.
  expect(heard('sixteenth-slap', 100)).toMatchObject({ halfTime: 'full-time', counts: [1], barCounts: [4, 2] });
});
