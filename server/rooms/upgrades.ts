/** An event as it stands in the log. */
export type Plain = Readonly<Record<string, unknown>>;

/** How each event that has changed is brought from one version to the next: from 1 to 2, from 2 to 3, and so on. */
export const UPGRADES = {
  /** Opening a question brought no sound of its own; a room that goes on takes what rooms begin with. */
  RoomOpened: [(event: Plain): Plain => ({ ...event, settings: { ...part(event, 'settings'), soundFollows: true } })],
  /** Nobody asked for settlers, kept what was typed, or planned. */
  RoundStarted: [
    (event: Plain): Plain => {
      const round = part(event, 'round');
      const truth = { ...part(round, 'truth'), settlers: [] };
      const { level } = round;
      // Two levels had single chords among their loops of two; only the teacher's own guitar had longer ones.
      const loops = typeof level !== 'number' ? 'any' : [3, 4].includes(level) ? 'one-or-two' : 'two';
      return { ...event, round: { ...round, truth, settlers: [], entered: null, item: null, loops } };
    },
  ],
  QuestionOpened: [(event: Plain): Plain => ({ ...event, how: 'phones' })],
} as const;

function part(whole: Plain, name: string): Plain {
  const value = whole[name];
  return typeof value === 'object' && value !== null ? (value as Plain) : {};
}
