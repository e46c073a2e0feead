import { contrastVamp } from '../../shared-theory/contrast.ts';
import type { Contrast } from '../../shared-theory/contrast.ts';
import { generate } from '../../shared-theory/generate.ts';
import type { GeneratedVamp, GenerateRequest } from '../../shared-theory/generate.ts';
import type { Groove } from '../../shared-theory/grooves.ts';
import { FORMS } from '../../shared-theory/level.ts';
import type { Level } from '../../shared-theory/level.ts';
import { LEVELS } from '../../shared-theory/levels.ts';
import { askableQuestions } from '../../shared-theory/questions/judges.ts';
import { levelQuestions } from '../../shared-theory/questions/level-questions.ts';
import { KINDS, RHYTHM_KINDS } from '../../shared-theory/questions/question.ts';
import type { Kind } from '../../shared-theory/questions/question.ts';
import { seededRandom } from '../../shared-theory/random.ts';
import type { VoicedVamp } from '../../shared-theory/vamps.ts';
import type { LessonItem } from '../protocol/messages.ts';
import { beatKinds } from './beat-level.ts';
import type { Refusal } from './commands.ts';
import { refuse } from './commands.ts';
import type { HeardRound } from './events.ts';
import { heardSlot, listed, questionSettings, settlerSlots, vampOf } from './heard-round.ts';
import type { RoomState } from './state.ts';

/** What a round that Hearsay plays is to ask. */
export type Wanted = {
  readonly level: number;
  /** Item of the planned lesson that it plays; null for one that asks what its level asks. */
  readonly item: LessonItem | null;
  /** The groove that it is played in; null for one that the level draws. */
  readonly groove: Groove | null;
  /** The contrast pair of which it plays one; null for a round beside all pairs. */
  readonly contrast: Contrast | null;
};

/** A round that Hearsay plays, made for a level from a seed; none of the vamps heard last comes again. */
export function hostRound(
  state: RoomState,
  number: number,
  { level, item, groove, contrast }: Wanted,
  seed: number,
): HeardRound | Refusal {
  const found = LEVELS.find((each) => each.level === level);
  if (found === undefined) {
    const numbers = LEVELS.map((each) => each.level);
    return refuse('level-unknown', { found: level, low: Math.min(...numbers), high: Math.max(...numbers) });
  }
  const beat = state.settings.beatLevel;
  // Of a pair's groove nothing is asked but what tells its two sides apart.
  const ofGroove = contrast === null ? beatKinds(beat) : [];
  const wanted: readonly string[] = item === null ? [...ofChords(found.questions), ...ofGroove] : item.kinds;
  const kinds = KINDS.filter((kind) => wanted.includes(kind) || kind === contrast?.kind);
  const made =
    contrast === null
      ? generated({ level, seed, recent: vampsOf(state.rounds), beat, counting: kinds.includes('count') }, groove)
      : contrasted(state, level, contrast, seed);
  if ('reason' in made) return made;
  const { vamp, truth } = made;
  // The pad has the class's qualities and the level's, whatever sounds: it may not tell.
  const settings = questionSettings(state.settings, found.qualities);
  const asked = listed(askableQuestions(truth, settings), kinds, item === null && contrast === null ? beat : null);
  return {
    id: `r${number}`,
    number,
    source: 'host',
    level,
    seed: made.seed,
    meter: vamp.meter,
    tempo: vamp.tempo,
    grooveText: vamp.grooveText,
    slots: vamp.slots.map(heardSlot),
    settlers: settlerSlots(truth, vamp.meter),
    truth,
    questions: levelQuestions(truth, settings, asked),
    kinds,
    loops: loopsOf(found, kinds),
    settings,
    entered: null,
    item: item?.item ?? null,
    beat,
    contrast: contrast?.id ?? null,
  };
}

function ofChords(kinds: readonly Kind[]): readonly Kind[] {
  return kinds.filter((kind) => !RHYTHM_KINDS.has(kind));
}

function vampsOf(rounds: RoomState['rounds']): readonly VoicedVamp[] {
  return rounds.filter(({ heard }) => heard.source === 'host').map(({ heard }) => vampOf(heard));
}

/**
 * One of a pair, whichever the seed draws. After a round of the same pair and level it is the same loop at the same tempo: made by that
 * round's own seed, from what had been heard before it.
 */
function contrasted({ rounds }: RoomState, level: number, { id }: Contrast, seed: number): GeneratedVamp | Refusal {
  const others = rounds.findLastIndex(({ heard }) => heard.contrast !== id || heard.level !== level);
  const before = rounds.slice(0, others + 1);
  const first = rounds[others + 1]?.heard.seed ?? seed;
  const side = seededRandom(seed, 'side of a pair')() < 0.5 ? 0 : 1;
  return unlessUnheard(() => contrastVamp({ contrast: id, side, level, seed: first, recent: vampsOf(before) }));
}

/** A vamp in a groove, or where its chords could not be heard in it, why. */
function generated(request: Omit<GenerateRequest, 'groove'>, groove: Groove | null): GeneratedVamp | Refusal {
  // A groove that the level draws lets its chords be heard: where it does not, that is no one's choice to make anew.
  return groove === null ? generate(request) : unlessUnheard(() => generate({ ...request, groove }));
}

function unlessUnheard(make: () => GeneratedVamp): GeneratedVamp | Refusal {
  try {
    return make();
  } catch (error) {
    if (error instanceof RangeError) return refuse('groove-unheard', { what: error.message });
    throw error;
  }
}

/** Which numbers of chords loops of a level have; where chords are counted, a level has others as well. */
function loopsOf({ balance }: Level, kinds: readonly Kind[]): HeardRound['loops'] {
  const { forms } = kinds.includes('count') ? balance.counting : balance;
  const drawn = FORMS.filter((form) => (forms[form] ?? 0) > 0);
  if (drawn.every((form) => form === 'pair')) return 'two';
  return drawn.every((form) => form === 'pair' || form === 'held') ? 'one-or-two' : 'any';
}
