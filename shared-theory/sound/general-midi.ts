import type { KitPiece } from '../perform.ts';
import type { Voice } from './instrument.ts';

/** Programs of the General MIDI sound set, counted from 0: acoustic guitar (steel, nylon), electric guitar (clean). */
export const GUITAR_PROGRAM: Readonly<Record<Voice, number>> = { steel: 25, nylon: 24, clean: 27 };

/** Electric bass (finger) of the General MIDI sound set, counted from 0. */
export const BASS_PROGRAM = 33;

/** The General MIDI percussion key map: bass drum 1, acoustic snare, closed and open hi-hat. */
export const KIT_KEY: Readonly<Record<KitPiece, number>> = {
  kick: 36,
  snare: 38,
  'closed-hat': 42,
  'open-hat': 46,
};

/** Channels of the parts, counted from 0; General MIDI keeps the tenth for percussion. */
export const CHANNEL = { guitar: 0, bass: 1, kit: 9 } as const;
