import { describe, expect, test } from 'vitest';
import { GROOVES } from '../../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { perform } from '../../../shared-theory/perform.ts';
import { rhythmOf } from '../../../shared-theory/rhythm/rhythm-of.ts';
import type { RhythmTruth } from '../../../shared-theory/rhythm/rhythm-truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';

/** A groove as its two chords, two bars each, let it be heard: with opening bars, where it has some. */
function rhythmIn(id: string, options: { chords?: string; bars?: number; opening?: boolean; tempo?: number } = {}) {
  const groove = GROOVES.find((each) => each.id === id);
  if (!groove) throw new RangeError(`No groove ${id}.`);
  const { chords = 'Em D', bars = 2, opening = true, tempo = groove.tempo[0] } = options;
  const slots = parseVamp(chords, BEATS_PER_BAR[groove.meter]).map((slot) => ({ ...slot, beats: slot.beats * bars }));
  const vamp = voice({ slots, groove, tempo, seed: 1, opening });
  const rhythm = rhythmOf(vamp, perform(vamp));
  if (!rhythm) throw new RangeError(`${id} has no rhythm.`);
  return rhythm;
}

const letters = { down: 'D', up: 'U', silent: '.', kick: 'k', slap: 's', closed: 'c', open: 'o' } as const;
const slot = (heard: readonly (keyof typeof letters | number)[]) =>
  heard.map((each) => (typeof each === 'number' ? String(each) : letters[each])).join('/');
const line = (slots: RhythmTruth['accents'] | RhythmTruth['strokes'] | RhythmTruth['roles']) =>
  slots?.map((each) => slot(each)).join(' ') ?? null;

/** What a teacher would say of each groove: bar counts, tempo counts, accents, strokes, roles, opened slots, and the pairs. */
type Row = readonly [
  id: string,
  bars: string,
  counts: string,
  accents: string,
  strokes: string | null,
  roles: string | null,
  opened: string | null,
  pairs: string,
];

// Written by hand, all common practice. The first bar of a chord is told beside the usual one, after a slash.
const EXPECTED: readonly Row[] = [
  ['quarter-downs', '4', '1', '3 0 2 0 2 0 2 0', 'D . D . D . D .', null, null, 'keeps'],
  ['relaxed-alternate', '4 2', '1', '3 1 2 1 3 1 2 1', 'D U D U D U D U', null, null, 'keeps relaxed straight'],
  ['driving-eighths', '4 2', '1', '3 1/0 2 1 3 1 2 1', 'D D/. D D D D D D', null, null, 'breaks driving straight'],
  [
    'foot-and-closed-hat',
    '4 2',
    '1',
    '3 1/0 3 1 3 1 3 1',
    'D D/. D D D D D D',
    'k c/. k c k c k c',
    null,
    'breaks driving straight',
  ],
  [
    'foot-and-open-hat',
    '4 2',
    '1',
    '3 2/0 3 2 3 2 3 2',
    'D U/. D U D U D U',
    'k o/. k o k o k o',
    '1 3 5 7',
    'keeps straight',
  ],
  [
    'foot-slap-hat',
    '4',
    '1',
    '3 1/0 3 1 2 1 3 1',
    'D U/. D U D U D U',
    'k c/. s c k c s c',
    null,
    'keeps straight full-time',
  ],
  ['campfire-strum', '4', '1', '3 0 2 1 0 2 2 1', 'D . D U . U D U', null, null, 'keeps relaxed straight'],
  ['boom-chick', '4 2', '1 0.5', '2 0 3 0 2 0 3 0', 'D . D . D . D .', null, '0 4', 'keeps full-time'],
  ['boom-chicka', '4 2', '1 0.5', '2 0 3 1 2 0 3 1', 'D . D U D . D U', null, '0 4', 'keeps straight full-time'],
  [
    'train-beat',
    '4 2',
    '1 2',
    '2/3 0 3/0 1/0 2 0 3 1 2 0 3 1 2 0 3 1',
    'D . D/. U/. D . D U D . D U D . D U',
    'k . c/. c/. k . c c k . c c k . c c',
    null,
    'keeps straight',
  ],
  ['offbeat-skank', '4 2', '1 2', '0/3 3/0 0 3 0 3 0 3', './D D/. . D . D . D', null, null, ''],
  ['quick-up-chop', '4 2', '1', '0/3 3/0 0 3 0 3 0 3', './D U/. . U . U . U', null, null, 'keeps'],
  ['low-string-shuffle', '4 2', '1', '2/3 1/0 3 1 2 1 3 1', 'D U/. D U D U D U', null, null, 'keeps swung full-time'],
  ['slow-twelve-eight', '4 2 6', '1 3', '2 1 1 3 1 1 2 1 1 3 1 1', 'D D D D D D D D D D D D', null, null, 'full-time'],
  ['six-eight-ballad', '2 6', '1 3', '3 1 1 2 1 1', 'D D U D D U', null, null, 'relaxed two-threes'],
  ['waltz', '3', '1', '3 0 1 0 1 0', 'D . D . D .', null, '0', 'keeps three-twos'],
  ['bossa-like', '4 2', '1 0.5', '2 0 0 2 2 0 2 0 2 0 2 0 2 2 0 0', null, null, '0 4 8 12', 'straight'],
  [
    'funk-sixteenths',
    '4',
    '1',
    '3 1/0 1/0 2/0 1 1 2 1 1 2 1 1 3 1 1 1',
    'D U/. D/. U/. D U D U D U D U D U D U',
    null,
    null,
    'keeps straight',
  ],
  ['half-time', '4 2', '1 0.5', '3 0 0 0 3 0 0 1', 'D . . . D . . U', null, '0 7', 'keeps half-time'],
  ['pushed-change', '4', '1', '0 0 2 1 0 2 0 3', '. . D U . U . U', null, null, 'keeps straight pushed'],
  ['mute-and-open', '4', '1', '2 1 2 1 2 1 3 2', 'D D D D D D D D', null, '6 7', 'breaks driving straight'],
  [
    'eighth-downs-backbeat',
    '4 2',
    '1',
    '2/3 1/0 3 1 2 1 3 1',
    'D D/. D D D D D D',
    null,
    null,
    'breaks driving straight full-time',
  ],
  [
    'sixteenth-ballad',
    '4',
    '1 2',
    '3 0 0 0 2 0 1 1 0 1 2 1 2 0 1 1',
    'D . . . D . D U . U D U D . D U',
    null,
    null,
    'keeps relaxed straight',
  ],
  [
    'gallop',
    '4 2',
    '1',
    '3 0 1/0 1/0 2 0 1 1 3 0 1 1 2 0 1 1',
    'D . D/. U/. D . D U D . D U D . D U',
    null,
    null,
    'keeps straight',
  ],
  ['four-to-the-bar-chop', '4 2', '1', '2/3 0 3/0 0 2 0 3 0', 'D . D/. . D . D .', null, null, 'keeps full-time'],
  ['three-three-two', '4', '1', '3 1 1 3 1 1 3 1', 'D U D U D U D U', null, null, 'keeps straight'],
  ['seven-in-two-two-three', '7 3', '1 2', '3 1 2 1 2 1 1', 'D U D U D D U', null, null, 'relaxed'],
];

const pairsOf = ({ pendulum, drive, swing, halfTime, threes, changePlace }: RhythmTruth) =>
  [pendulum, drive, swing, halfTime, threes, changePlace === 'on-one' ? null : changePlace].filter(Boolean).join(' ');

test('every groove of the catalogue stands in the table', () => {
  expect(EXPECTED.map(([id]) => id)).toEqual(GROOVES.map(({ id }) => id));
});

describe.each(EXPECTED)('%s', (id, bars, counts, accents, strokes, roles, opened, pairs) => {
  test('is what a teacher says of it', () => {
    const heard = rhythmIn(id);
    expect(heard.barCounts.join(' ')).toBe(bars);
    expect(heard.counts.join(' ')).toBe(counts);
    expect(line(heard.accents)).toBe(accents);
    expect(line(heard.strokes)).toBe(strokes);
    expect(line(heard.roles)).toBe(roles);
    expect(heard.opened?.join(' ') ?? null).toBe(opened);
    expect(pairsOf(heard)).toBe(pairs);
    expect(heard.changePlace).toBe(id === 'pushed-change' ? 'pushed' : 'on-one');
  });

  test('without opening bars every bar is the usual one', () => {
    const heard = rhythmIn(id, { opening: false });
    const usual = (text: string | null) => text?.replaceAll(/\/\S/g, '') ?? null;
    expect(line(heard.accents)).toBe(usual(accents));
    expect(line(heard.strokes)).toBe(usual(strokes));
    expect(line(heard.roles)).toBe(usual(roles));
    // Chops on the ands alone leave a change no one to fall on.
    const onOne = id === 'offbeat-skank' || id === 'quick-up-chop' ? null : 'on-one';
    expect(heard.changePlace).toBe(id === 'pushed-change' ? 'pushed' : onOne);
  });

  test.each(['C G Am F', 'Dm A', 'G', 'E5 A5', 'Bb F#m'])('is the same over %s', (chords) => {
    const heard = rhythmIn(id, { chords });
    const { changePlace, roles: played, ...others } = heard;
    const { changePlace: usual, roles: usualRoles, ...usually } = rhythmIn(id);
    expect(others).toEqual(usually);
    // A power chord has too few strings for a foot and a hat apart.
    if (!chords.includes('5')) expect(played).toEqual(usualRoles);
    expect(changePlace).toBe(chords === 'G' ? null : usual);
  });
});

test('where each bar opens a chord, that bar is the only one', () => {
  const heard = rhythmIn('driving-eighths', { bars: 1 });
  expect(line(heard.accents)).toBe('3 0 2 1 3 1 2 1');
  expect(heard.drive).toBe('driving');
  expect(rhythmIn('foot-and-closed-hat', { bars: 1 }).roles).toBeNull();
});

test('where each bar opens a chord, chops on the ands may still be counted twice as fast, and no half is like the other', () => {
  const heard = rhythmIn('offbeat-skank', { bars: 1 });
  expect(line(heard.accents)).toBe('3 0 0 3 0 3 0 3');
  expect([heard.counts, heard.barCounts, heard.pendulum]).toEqual([[1, 2], [4], null]);
  expect(rhythmIn('train-beat', { bars: 1 }).counts).toEqual([1, 2]);
});

// Slow beats are subdivided, fast bars of three taken in one; chops on the ands are counted twice only as fast as anybody counts.
test.each([
  ['six-eight-ballad', 66, [1, 3]],
  ['waltz', 120, [1]],
  ['waltz', 160, [1, 1 / 3]],
  ['offbeat-skank', 92, [1, 2]],
  ['quick-up-chop', 120, [1]],
  ['train-beat', 126, [1]],
  ['sixteenth-ballad', 84, [1]],
])('%s at %d is counted by %j', (id, tempo, counts) => {
  expect(rhythmIn(id, { tempo }).counts).toEqual(counts);
});
