import type { HostActions } from '../../../client/host/sound-view.ts';

const nothing = (): void => undefined;

/** Presses that do nothing. */
export const NO_PRESS: HostActions = {
  pressForSound: nothing,
  acceptCaution: nothing,
  testNote: nothing,
  takeOver: nothing,
  setDelay: nothing,
  compare: nothing,
};
