import { BEAT_GROOVES } from './beat-grooves.ts';
import { beatLevelOf, type BeatLevel } from './beat-levels.ts';
import type { Draw } from './draws.ts';
import { grooveById } from './grooves.ts';
import { itemAt } from './items.ts';
import type { Level } from './level.ts';
import { barsOf, drawSwing, drawTempo, playAsAsked, type PlayedLoop, type Sounding } from './played-loop.ts';
import { pickOne, seededRandom, type Random } from './random.ts';
import type { Truth } from './truth.ts';

/** Who taps without listening settles near 120 (common practice); beats a minute. */
const USUAL_TEMPO = [112, 128] as const;
/** Vamps of which the usual tempo is kept away, at least. */
const AWAY = 0.5;

/** Enough draws of a groove, tempo and swing that one fits wherever one can. */
const TRIES = 60;

/** Most bars that a chord lasts, so that a bar that does not open one is heard too. */
const LONGEST = 2;

type BeatRequest = {
  readonly beat: number;
  readonly level: Level;
  readonly counting: boolean;
  readonly seed: number;
  readonly lastTempo: number | undefined;
};

function drawByShare(random: Random, draws: BeatLevel['draws']): BeatLevel['draws'][number] {
  let rest = random() * draws.reduce((sum, { share }) => sum + share, 0);
  return draws.find(({ share }) => (rest -= share) < 0) ?? itemAt(draws, draws.length - 1);
}

/** Whether some lawful count of the groove lies near the usual tempo. */
export function hasUsualTempo({ tempo, rhythm }: Truth): boolean {
  const [low, high] = USUAL_TEMPO;
  return (rhythm?.counts ?? [1]).some((factor) => tempo !== null && tempo * factor >= low && tempo * factor <= high);
}

/** Whether the groove, as it is played, is what it was drawn for. Where one chord sounds alone, none changes. */
function isWanted({ is, has }: BeatLevel['draws'][number], { count, rhythm }: Truth): boolean {
  if (!rhythm || (has !== undefined && rhythm[has] === null)) return false;
  const { changePlace, ...others } = is;
  const { drive = rhythm.drive, pendulum = rhythm.pendulum, swing = rhythm.swing } = others;
  const { halfTime = rhythm.halfTime, threes = rhythm.threes } = others;
  return (
    (changePlace === undefined || count === 1 || changePlace === rhythm.changePlace) &&
    drive === rhythm.drive &&
    pendulum === rhythm.pendulum &&
    swing === rhythm.swing &&
    halfTime === rhythm.halfTime &&
    threes === rhythm.threes
  );
}

/** The loop in a groove, or null where its chords cannot be heard in it. */
function heardIn(...played: Parameters<typeof playAsAsked>): PlayedLoop | null {
  try {
    return playAsAsked(...played);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/**
 * A loop in a groove of a beat level: one that is what it is drawn for, as it is heard under these chords; half of the vamps at least
 * away from the usual tempo, however they may be counted. Throws `RangeError` for a beat level that there is not.
 */
export function drawBeat({ beat, level, counting, seed, lastTempo }: BeatRequest, drawn: Draw): Sounding {
  const random = seededRandom(seed, 'beat');
  const wanted = drawByShare(random, beatLevelOf(beat).draws);
  const away = random() < AWAY;
  let spare: Sounding | null = null;
  for (let attempt = 0; attempt < TRIES; attempt += 1) {
    const groove = grooveById(pickOne(random, wanted.grooves), BEAT_GROOVES);
    const tempo = drawTempo(level, groove, random, lastTempo);
    const swing = drawSwing(groove, tempo, random);
    for (const bars of new Set([barsOf(level, counting, groove, tempo), LONGEST])) {
      const played = heardIn(drawn, groove, level, { seed, bars, tempo, swing });
      if (played === null || !isWanted(wanted, played.truth)) continue;
      if (!away || !hasUsualTempo(played.truth)) return { groove, played };
      spare ??= { groove, played };
    }
  }
  if (spare !== null) return spare;
  throw new RangeError(`No groove of beat level ${beat} lets the chords of level ${level.level} be heard.`);
}
