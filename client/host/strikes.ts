import { countInTick } from '../../shared-theory/sound/clicks.ts';
import { countInVoice } from '../../shared-theory/sound/count-voice.ts';
import { BASS_STOP_SECONDS, HAT_STOP_SECONDS, stopSeconds, trimGain } from '../../shared-theory/sound/note-shelf.ts';
import type { AudioOut, Bus } from './audio.ts';
import type { Rig } from './rig.ts';
import type { Stage, Struck } from './stage.ts';

/** How a page strikes what a player plays: on the rig of now, by the way out of now. */
export function strikesOn(
  audio: Pick<AudioOut, 'sampleRate'>,
  way: () => Bus,
  rig: () => Rig,
): Pick<Stage, 'strike' | 'strikeKit' | 'strikeBass' | 'count'> {
  return {
    strike: (note, at, of) => {
      const { shelf, gain } = rig();
      const own = gain(of.program) * trimGain(note);
      return way().sound(shelf.take(asPerformed(note, of)), at, {
        gain: own,
        stop: note.duration,
        ramp: stopSeconds(note),
      });
    },
    strikeKit: (strike, at, of) => {
      const { shelf, gain } = rig();
      const closed = strike.duration === undefined ? {} : { stop: strike.duration, ramp: HAT_STOP_SECONDS };
      return way().sound(shelf.takeKit(asPerformed(strike, of)), at, {
        gain: gain(of.program) * trimGain(strike),
        ...closed,
      });
    },
    strikeBass: (note, at, of) => {
      const { shelf, gain } = rig();
      const own = gain(of.program) * trimGain(note);
      return way().sound(shelf.takeBass(note), at, { gain: own, stop: note.duration, ramp: BASS_STOP_SECONDS });
    },
    count: ({ number, accented }, at) => [
      way().sound(countInTick(accented, audio.sampleRate()), at),
      way().sound(countInVoice(number, accented, audio.sampleRate()), at),
    ],
  };
}

/** A sound at its time in the whole performance: which of its variants is struck goes by that, in files too. */
function asPerformed<Sounded extends { readonly time: number }>(sound: Sounded, { performed }: Struck): Sounded {
  return { ...sound, time: performed.time + sound.time };
}
