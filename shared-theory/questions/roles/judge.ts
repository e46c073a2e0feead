import type { RhythmTruth, Role } from '../../rhythm/rhythm-truth.ts';
import type { Grid } from '../../groove-grid.ts';
import { filledJudge } from '../filled-judge.ts';
import { allRight, mostlyRests, shareKept, standingFor, stretched } from '../grid-choices.ts';
import type { RightSlots } from '../grid-choices.ts';
import { andSlots, numberSlots } from '../grid-places.ts';
import { firstShown, notRight } from '../marks.ts';
import { ROLES, rolesAsk } from './ask.ts';

/** What is lost where an open hat on an up is heard as closed: the hat is right. */
const CLOSED_FOR_OPEN = 1 / 2;

/** What a kit plays on 1 and 3, on 2 and 4 and on the ands when nobody listens (common practice). */
const BY_ROTE: readonly (readonly [Role, Role, Role])[] = [
  ['kick', 'kick', 'closed'],
  ['kick', 'kick', 'open'],
  ['kick', 'slap', 'closed'],
  ['kick', 'slap', 'open'],
];

/**
 * Which piece of a kit each stroke stands for. Credit is the share of those that sound which is right, each piece weighing alike: one
 * open hat among many closed ones is what there is to hear. It is stretched so that the nearest
 * kit by rote earns nothing. It is asked where two pieces at least are to be told apart.
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
    const weigh = weightsOf(standingFor(right));
    const share = (kit: readonly Role[]) =>
      shareKept(kit, right, {
        sounds: (role) => role !== 'silent',
        lost: (given, slot) => weigh(slot) * (closes(given, slot) && isUp(rhythm, slot) ? CLOSED_FOR_OPEN : 1),
      });
    const unheard = kitsByRote(rhythm.grid, right.length).filter((kit) => !allRight(kit, right));
    return notRight(
      stretched(share(answer), Math.max(0, ...unheard.map(share))),
      firstShown([
        ['foot-and-hat-swapped', swapsFootAndHat(answer, right)],
        ['open-hat-missed', answer.some(closes)],
        [
          'mute-heard-as-rest',
          mostlyRests<Role>(answer, right, { silent: 'silent', muted: (slot) => isMutedPiece(right[slot]) }),
        ],
      ]),
    );
  },
});

/** What each slot weighs, so that all pieces together weigh alike and those that sound one on the mean; silence weighs one. */
function weightsOf(truth: readonly Role[]): (slot: number) => number {
  const sounding = truth.filter((role) => role !== 'silent');
  const pieces = new Set(sounding).size;
  return (slot) => {
    const alike = sounding.filter((role) => role === truth[slot]).length;
    return alike === 0 ? 1 : sounding.length / (pieces * alike);
  };
}

function kitsByRote(grid: Grid, slots: number): readonly (readonly Role[])[] {
  const [numbers, ands] = [numberSlots(grid), andSlots(grid)];
  return BY_ROTE.map(([strong, back, and]) =>
    Array.from({ length: slots }, (_, slot): Role => {
      const number = numbers.indexOf(slot);
      if (number >= 0) return number % 2 === 0 ? strong : back;
      return ands.includes(slot) ? and : 'silent';
    }),
  );
}

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
