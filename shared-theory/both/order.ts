import { newChord } from './count.ts';
import type { SlashRule } from '../different-chords.ts';
import { differentOf, shortened, type BothReadings } from './readings.ts';
import type { VoicedSlot, VoicedVamp } from '../vamps.ts';

/** The loop with its chords in the answered order, then as it is; one that it has not stands for each that was heard too many. */
export function orderReadings(vamp: VoicedVamp, order: readonly number[], rule: SlashRule): BothReadings | null {
  const right = shortened(vamp);
  if (order.length !== right.length) return null;
  const heard: Omit<VoicedSlot, 'beats'>[] = [...differentOf(right, rule)];
  const missing = Math.max(...order) + 1 - heard.length;
  for (let more = 0; more < missing; more += 1) {
    const [near] = right;
    const fresh = near && newChord([...right, ...heard.map((each) => ({ ...each, beats: near.beats }))], near);
    if (!fresh) return null;
    heard.push(fresh);
  }
  const wrong = right.map(({ beats }, slot): VoicedSlot | null => {
    const chord = heard[order[slot] ?? 0];
    return chord ? { chord: chord.chord, frets: chord.frets, beats } : null;
  });
  const whole = wrong.filter((slot) => slot !== null);
  return whole.length === right.length ? { wrong: whole, right } : null;
}
