import { beatsPerSlot, swingRatio } from '../grooves.ts';
import { grooveOf, type SoundedNote } from '../perform.ts';
import { meterFacts } from '../sound/midi.ts';
import type { VoicedVamp } from '../vamps.ts';
import type { Attack } from './bars.ts';
import type { Placed } from './measures.ts';
import { element, elementWith, type Element } from './xml.ts';

/** Long to short of a swung pair in small whole numbers, and the value of its notes. */
export type Swing = { readonly long: number; readonly short: number; readonly value: 'eighth' | '16th' };

/** The largest number that a swing is written with. */
const MOST_PARTS = 10;

/** How a vamp swings; null where it is straight. */
export function swingOf(vamp: VoicedVamp): Swing | null {
  const groove = grooveOf(vamp);
  const ratio = groove ? swingRatio(groove, vamp.tempo) : 1;
  if (groove === null || ratio <= 1) return null;
  const shorts = Array.from({ length: MOST_PARTS }, (_, index) => index + 1);
  const off = (short: number) => Math.abs(Math.round(ratio * short) / short - ratio);
  const short = shorts.reduce((best, next) => (off(next) < off(best) - 1e-9 ? next : best), 1);
  return { long: Math.round(ratio * short), short, value: beatsPerSlot(groove) === 0.5 ? 'eighth' : '16th' };
}

function direction(types: readonly Element[], sound: Element | false): Element {
  const shown = types.map((type) => element('direction-type', type));
  return elementWith('direction', { placement: 'above' }, ...shown, sound);
}

/** The tempo by the note that it counts, for programs in quarters. */
export function tempoMark({ meter, tempo }: VoicedVamp): Element {
  const { quarters } = meterFacts(meter);
  const beat = element(
    'metronome',
    element('beat-unit', 'quarter'),
    quarters === 1.5 && element('beat-unit-dot'),
    element('per-minute', tempo),
  );
  return direction([beat], elementWith('sound', { tempo: tempo * quarters }));
}

/** The swing in words, and for programs that play. */
export function swingMark({ long, short, value }: Swing, words: string): Element {
  const swing = element('swing', element('first', long), element('second', short), element('swing-type', value));
  return direction([element('words', words)], element('sound', swing));
}

/** Words over each run of strokes under the palm, with dashes up to its last stroke where it has more than one. */
export function palmMarks(
  attacks: readonly (Attack & { readonly sounds: readonly SoundedNote[] })[],
  words: { readonly palm: string; readonly half: string },
): readonly Placed[] {
  const marked = attacks.map(({ at, sounds }) => ({ at, touch: sounds[0]?.touch }));
  return marked.flatMap(({ at, touch }, index) => {
    if (touch !== 'palm' && touch !== 'half') return [];
    const begins = marked[index - 1]?.touch !== touch;
    const goesOn = marked[index + 1]?.touch === touch;
    const dashes = (type: 'start' | 'stop') => elementWith('dashes', { type, number: 1 });
    if (begins) {
      const shown = element('words', touch === 'palm' ? words.palm : words.half);
      return [{ at, element: direction(goesOn ? [shown, dashes('start')] : [shown], false) }];
    }
    return goesOn ? [] : [{ at, element: direction([dashes('stop')], false) }];
  });
}
