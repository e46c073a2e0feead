import { part, type Plain } from './plain.ts';
import { presentRound } from './present-round.ts';

/** A round stored in an event as it stands now. */
const withPresentRound = (event: Plain): Plain => ({ ...event, round: presentRound(part(event, 'round')) });

/** No round was one of a pair of grooves, and none was asked by a beat level. */
const ofOneGroove = (event: Plain): Plain => ({
  ...event,
  round: { ...part(event, 'round'), beat: null, contrast: null },
});

/** How each event that has changed is brought from one version to the next: from 1 to 2, from 2 to 3, and so on. */
export const UPGRADES = {
  RoomOpened: [
    /** Opening a question brought no sound of its own; a room that goes on takes what rooms begin with. */
    (event: Plain): Plain => ({ ...event, settings: { ...part(event, 'settings'), soundFollows: true } }),
    /** Notes had English names, nobody had a capo, and there were no slash chords. */
    (event: Plain): Plain => ({
      ...event,
      settings: { ...part(event, 'settings'), naming: 'english', capo: 0, slashIsNew: false },
    }),
    /** There was one guitar at one pitch, nobody played along, and the grooves were those of the catalogue. */
    (event: Plain): Plain => ({
      ...event,
      settings: {
        ...part(event, 'settings'),
        voice: 'steel',
        pitch: 440,
        smallSpeaker: false,
        band: { kit: false, bass: false },
        grooves: [],
      },
    }),
    /** Of the groove nothing was asked but its strokes. */
    (event: Plain): Plain => ({ ...event, settings: { ...part(event, 'settings'), beatLevel: 1 } }),
  ],
  RoundStarted: [
    /** Nobody asked for settlers, kept what was typed, or planned. */
    (event: Plain): Plain => {
      const round = part(event, 'round');
      const truth = { ...part(round, 'truth'), settlers: [] };
      const { level } = round;
      // Two levels had single chords among their loops of two; only the teacher's own guitar had longer ones.
      const loops = typeof level !== 'number' ? 'any' : [3, 4].includes(level) ? 'one-or-two' : 'two';
      return { ...event, round: { ...round, truth, settlers: [], entered: null, item: null, loops } };
    },
    withPresentRound,
    ofOneGroove,
  ],
  TruthCorrected: [withPresentRound, ofOneGroove],
  QuestionOpened: [
    (event: Plain): Plain => ({ ...event, how: 'phones' }),
    /** Nobody tapped. */
    (event: Plain): Plain => ({ ...event, tempo: null }),
  ],
} as const;
