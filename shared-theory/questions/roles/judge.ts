import type { RhythmTruth, Role } from '../../rhythm/rhythm-truth.ts';
import { filledJudge } from '../filled-judge.ts';
import { shareKept, standingFor } from '../grid-choices.ts';
import type { RightSlots } from '../grid-choices.ts';
import { firstShown, notRight } from '../marks.ts';
import { ROLES, rolesAsk } from './ask.ts';

/** What is lost where an open hat on an up is heard as closed: the hat is right. */
const CLOSED_FOR_OPEN = 1 / 2;

/**
 * Which piece of a kit each stroke stands for. Credit is the share of those that sound which is right. It is asked where two pieces
 * at least are to be told apart.
 */
export const rolesJudge = filledJudge({
  ask: rolesAsk,
  choices: ROLES.length,
  right: ({ roles }) => {
    const pieces = new Set(roles?.map(([usual]) => usual));
    pieces.delete('silent');
    return pieces.size > 1 ? roles : null;
  },
  wrong: (answer, right, rhythm) => {
    const closes = (given: Role | undefined, slot: number) => given === 'closed' && misses('open', given, right[slot]);
    const credit = shareKept(answer, right, {
      sounds: (role) => role !== 'silent',
      lost: (given, slot) => (closes(given, slot) && isUp(rhythm, slot) ? CLOSED_FOR_OPEN : 1),
    });
    return notRight(
      credit,
      firstShown([
        ['foot-and-hat-swapped', swapsFootAndHat(answer, right)],
        ['open-hat-missed', answer.some(closes)],
        ['mute-heard-as-rest', answer.some((given, slot) => given === 'silent' && isMutedPiece(right[slot]))],
      ]),
    );
  },
});

/** Whether a piece sounds on a slot that something else was heard on, which never sounds there. */
function misses(piece: Role, given: Role, right: readonly Role[] = []): boolean {
  return right[0] === piece && !right.includes(given);
}

function isUp({ strokes }: RhythmTruth, slot: number): boolean {
  return strokes?.[slot]?.[0] === 'up';
}

const isHat = (role: Role | undefined): boolean => role === 'open' || role === 'closed';

/** Every foot is heard as a hat and every hat as a foot, where there are both. */
function swapsFootAndHat(answer: readonly Role[], right: RightSlots<Role>): boolean {
  const truth = standingFor(right);
  const crossed = truth.every((role, slot) => {
    if (role === 'kick') return isHat(answer[slot]);
    return !isHat(role) || answer[slot] === 'kick';
  });
  return crossed && truth.includes('kick') && truth.some(isHat);
}

/** Something short or muted sounds there in every bar. */
function isMutedPiece(right: readonly Role[] = []): boolean {
  const [usual] = right;
  return usual !== 'silent' && usual !== 'open' && !right.includes('silent');
}
