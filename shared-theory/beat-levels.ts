import type { Kind } from './questions/question.ts';
import type { RhythmTruth } from './rhythm/rhythm-truth.ts';

/** Grooves that are drawn for one side of what a beat level asks. */
type BeatDraw = {
  /** Ids of the catalogue and of the grooves beside it. */
  readonly grooves: readonly string[];
  /** How often they are drawn beside the level's other ones. */
  readonly share: number;
  /** What the groove must have turned out to be as it is played. */
  readonly is: Partial<Pick<RhythmTruth, 'drive' | 'pendulum' | 'swing' | 'halfTime' | 'threes' | 'changePlace'>>;
  /** What must be askable of it. */
  readonly has?: 'roles' | 'opened';
};

/** A step of what is heard and played of the beat; it runs beside the levels of the chords. */
export type BeatLevel = {
  readonly level: number;
  readonly name: string;
  /** What it adds, in the order of a round; taps on the numbers are asked on every level. */
  readonly kinds: readonly Kind[];
  readonly draws: readonly BeatDraw[];
  /** Ids of all that it draws. */
  readonly grooves: readonly string[];
};

const level = (number: number, name: string, kinds: readonly Kind[], draws: readonly BeatDraw[]): BeatLevel => ({
  level: number,
  name,
  kinds,
  draws,
  grooves: [...new Set(draws.flatMap(({ grooves }) => grooves))],
});

const draw = (share: number, grooves: readonly string[], is: BeatDraw['is'] = {}): BeatDraw => ({ grooves, share, is });

/**
 * From tapping the numbers to sixteenths with dead strokes. The shares let both sides of each pair come equally often, and no lazy
 * answer win: a bar is counted in four, in three or in two in a third of the rounds each, and no one filling of the grid is right in more
 * than a quarter.
 */
export const BEAT_LEVELS: readonly BeatLevel[] = [
  level(
    1,
    'Tap the numbers',
    ['tempo', 'steadiness'],
    [
      draw(2, ['quarter-downs', 'four-to-the-bar-chop', 'boom-chick', 'relaxed-alternate', 'straight-alternate']),
      draw(1, ['foot-and-closed-hat', 'driving-eighths', 'campfire-strum', 'heavy-numbers']),
      draw(1, ['waltz', 'three-alternate']),
    ],
  ),
  level(
    2,
    'Find the one',
    ['bar-count'],
    [
      // No half of these bars is like the other one: then nobody could tell four from two.
      draw(1, ['quarter-downs', 'mute-and-open', 'campfire-strum', 'three-three-two', 'heavy-one']),
      draw(1, ['waltz', 'three-alternate', 'six-in-three']),
      draw(1, ['six-eight-ballad', 'six-in-two']),
    ],
  ),
  level(
    3,
    'Heavy and light',
    ['accents'],
    [
      draw(3, ['relaxed-alternate', 'straight-alternate', 'heavy-numbers', 'mute-and-open']),
      draw(3, ['quarter-downs', 'boom-chick', 'four-to-the-bar-chop']),
      draw(2, ['backbeat-strum', 'backbeat-quarters']),
      draw(1, ['low-string-shuffle', 'eighth-downs-backbeat']),
      draw(4, ['heavy-one-and-three', 'heavy-one', 'heavy-four', 'waltz', 'three-alternate']),
      draw(2, ['heavy-ands', 'offbeat-skank']),
      draw(2, ['heavy-one-and-two-and', 'three-three-two', 'campfire-strum']),
    ],
  ),
  level(
    4,
    'Foot, slap and hat',
    ['roles', 'opened'],
    [
      { ...draw(4, ['foot-and-closed-hat', 'foot-and-short-hat']), has: 'roles' },
      { ...draw(4, ['foot-and-open-hat']), has: 'roles' },
      { ...draw(10, ['foot-slap-hat', 'slap-on-three', 'slap-on-two-and-four']), has: 'roles' },
      { ...draw(10, ['hat-opens-on-four-and', 'hat-opens-twice', 'slap-and-open-hat']), has: 'roles' },
      { ...draw(7, ['mute-and-open', 'first-beat-opens', 'backbeats-open', 'two-and-opens']), has: 'opened' },
      { ...draw(4, ['bass-and-strum', 'bass-and-slap']), has: 'opened' },
    ],
  ),
  // Strokes that are all down are as many as those that go down and up, a hand that stops as one that does not.
  level(
    5,
    'Downs and ups',
    ['drive', 'strokes', 'pendulum', 'stroke-grid'],
    [
      draw(2, ['driving-eighths', 'foot-and-closed-hat', 'mute-and-open', 'eighth-downs-backbeat', 'chugging-downs'], {
        drive: 'driving',
        pendulum: 'breaks',
      }),
      draw(2, ['relaxed-alternate', 'straight-alternate', 'campfire-strum', 'six-in-three', 'three-alternate'], {
        drive: 'relaxed',
        pendulum: 'keeps',
      }),
      draw(1, ['quarter-downs', 'boom-chick', 'four-to-the-bar-chop'], { drive: null, pendulum: 'keeps' }),
      draw(1, ['boom-chicka', 'pushed-last-up', 'half-time'], { drive: null, pendulum: 'keeps' }),
      draw(2, ['three-three-two-downs', 'seconds-doubled'], { drive: null, pendulum: 'breaks' }),
    ],
  ),
  level(
    6,
    'Straight or swung, full or half',
    ['threes', 'half-time', 'swing'],
    [
      draw(4, ['campfire-strum', 'swung-alternate'], { swing: 'swung', halfTime: null }),
      draw(2, ['straight-alternate', 'campfire-strum', 'three-three-two'], { swing: 'straight', halfTime: null }),
      draw(1, ['low-string-shuffle', 'boom-chicka'], { swing: 'swung', halfTime: 'full-time' }),
      draw(2, ['foot-slap-hat', 'slap-on-two-and-four'], { swing: 'straight', halfTime: 'full-time' }),
      draw(1, ['swung-slap-on-three'], { swing: 'swung', halfTime: 'half-time' }),
      draw(2, ['slap-on-three'], { swing: 'straight', halfTime: 'half-time' }),
      draw(1, ['half-time'], { swing: null, halfTime: 'half-time' }),
      draw(1, ['boom-chick', 'four-to-the-bar-chop'], { swing: null, halfTime: 'full-time' }),
      draw(2, ['six-in-two', 'six-eight-ballad'], { swing: null, threes: 'two-threes' }),
      draw(2, ['waltz'], { swing: null, threes: 'three-twos' }),
    ],
  ),
  level(
    7,
    'Backbeat and push',
    ['change-place', 'accents'],
    [
      draw(3, ['pushed-change', 'pushed-alternate', 'pushed-quarters'], { changePlace: 'pushed' }),
      draw(1, ['three-three-two', 'three-three-two-downs'], { changePlace: 'on-one' }),
      draw(1, ['eighth-downs-backbeat', 'low-string-shuffle', 'slap-on-two-and-four', 'boom-chick'], {
        changePlace: 'on-one',
      }),
      draw(1, ['heavy-ands', 'offbeat-skank', 'quick-up-chop', 'ringing-last-up'], { changePlace: 'on-one' }),
    ],
  ),
  level(
    8,
    'Sixteenths and dead strokes',
    ['accents', 'stroke-grid'],
    [
      draw(2, ['funk-sixteenths', 'hits-and-dead-strokes']),
      draw(3, ['hits-alone', 'scratch-with-gaps', 'sixteenth-slap']),
      draw(3, ['gallop', 'train-beat', 'sixteenth-ballad']),
    ],
  ),
];

/** The beat level of that number. Throws `RangeError` naming the levels there are. */
export function beatLevelOf(number: number): BeatLevel {
  const found = BEAT_LEVELS.find((known) => known.level === number);
  if (!found) throw new RangeError(`There is no beat level ${number}: they go from 1 to ${BEAT_LEVELS.length}.`);
  return found;
}

/** Every kind that a beat level or one below it asks, in no order. */
export function kindsToBeat(number: number): readonly Kind[] {
  beatLevelOf(number);
  return [...new Set(BEAT_LEVELS.slice(0, number).flatMap(({ kinds }) => kinds))];
}
