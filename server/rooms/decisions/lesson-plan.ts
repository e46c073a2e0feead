import { CONTRASTS } from '../../../shared-theory/contrast.ts';
import type { Contrast } from '../../../shared-theory/contrast.ts';
import { LEVELS } from '../../../shared-theory/levels.ts';
import { KINDS, RHYTHM_KINDS } from '../../../shared-theory/questions/question.ts';
import type { LessonItem } from '../../protocol/messages.ts';
import type { CommandOf, Decision, Refusal } from '../commands.ts';
import { already, happens, refuse } from '../commands.ts';
import type { Wanted } from '../host-round.ts';
import { grooveNamed, ownGrooves } from '../own-grooves.ts';
import type { RoomState } from '../state.ts';

/** Plans the lesson: rounds in order. The whole plan takes the place of the one before. */
export function planLesson(state: RoomState, { items }: CommandOf<'PlanLesson'>): Decision {
  const what = faultOf(items);
  if (what !== null) return refuse('plan-not-readable', { what });
  if (JSON.stringify(items) === JSON.stringify(state.plan)) return already();
  return happens([{ type: 'LessonPlanned', items }]);
}

/** What a round that starts is to ask, as its item of the plan says, or as its level does; and the groove that it names. */
export function wantedRound(state: RoomState, command: CommandOf<'StartRound'>): Wanted | Refusal {
  const { level, item } = command;
  const groove = command.groove === null ? null : grooveNamed(command.groove, ownGrooves(state.settings));
  if (groove !== null && 'reason' in groove) return groove;
  const contrast = command.contrast === null ? null : contrastNamed(command.contrast);
  if (contrast !== null && 'reason' in contrast) return contrast;
  if (contrast !== null && groove !== null) {
    return refuse('message-not-readable', { what: 'a groove beside a contrast pair, which brings its own' });
  }
  if (item === null) return { level, item, groove, contrast };
  const found = state.plan.find((each) => each.item === item);
  return found === undefined ? refuse('item-unknown') : { level: found.level, item: found, groove, contrast };
}

/** The contrast pair of that id; where there is none, which there are. */
function contrastNamed(found: string): Contrast | Refusal {
  const contrast = CONTRASTS.find(({ id }) => id === found);
  return contrast ?? refuse('contrast-unknown', { found, known: CONTRASTS.map(({ id }) => id).join(', ') });
}

/** What is wrong with a plan; null where nothing is. */
function faultOf(items: readonly LessonItem[]): string | null {
  const seen = new Set<string>();
  for (const [index, { item, level, kinds }] of items.entries()) {
    const place = `round ${index + 1}`;
    if (seen.has(item)) return `${place} has the name of one before it`;
    seen.add(item);
    const found = LEVELS.find((each) => each.level === level);
    if (found === undefined) return `${place} is of level ${level}, which there is not`;
    const possible = KINDS.filter(
      (kind) => kind === 'count' || RHYTHM_KINDS.has(kind) || found.questions.includes(kind),
    );
    const stray = kinds.find((kind) => !possible.some((each) => each === kind));
    if (stray !== undefined)
      return `${place} asks ${JSON.stringify(stray)}; level ${level} asks ${possible.join(', ')}`;
    if (kinds.length === 0) return `${place} asks nothing`;
    if (new Set(kinds).size !== kinds.length) return `${place} asks one kind twice`;
  }
  return null;
}
