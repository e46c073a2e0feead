import MusicTempo from 'music-tempo';
import { expect, test } from 'vitest';
import { GROOVES, type Groove } from '../../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { perform } from '../../../shared-theory/perform.ts';
import { mixPerformance } from '../../../shared-theory/sound/mix.ts';
import { noteShelf } from '../../../shared-theory/sound/note-shelf.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';

/**
 * A beat tracker from outside (S. Dixon, "Automatic extraction of tempo and beat from expressive performances", Journal of New
 * Music Research 30, 2001) listens to the guitar alone.
 */

const RATE = 22_050;
/** A frame every hundredth of a second over a twentieth, as the tracker has at 44.1 kHz. */
const FRAMES = { bufferSize: 1024, hopSize: 220, timeStep: 220 / RATE };
const SECONDS = 14;

/** The rule that the field calls Accuracy 2: within 4 % of the tempo, its double, treble, half or third. */
const WITHIN = 0.04;
const MULTIPLES = [1, 2, 3, 1 / 2, 1 / 3];

const LEAST_FOUND = GROOVES.length - 3;

const shelf = noteShelf(RATE);

function heardTempo(groove: Groove, tempo: number): number {
  const slots = parseVamp('Em D', BEATS_PER_BAR[groove.meter]);
  const vamp = voice({ slots, groove: groove.id, tempo, seed: 1 });
  const loops = Math.ceil(SECONDS / perform(vamp).seconds);
  const samples = mixPerformance(perform(vamp, { loops }), { sampleRate: RATE, shelf });
  return Number(new MusicTempo(samples, FRAMES).tempo);
}

function lawful(heard: number, tempo: number): boolean {
  return MULTIPLES.some((multiple) => Math.abs(heard / (tempo * multiple) - 1) <= WITHIN);
}

test('the rule takes the tempo and its multiples, and nothing between', () => {
  expect([100, 103.9, 96.1, 200, 300, 50, 33.4].map((heard) => lawful(heard, 100))).toEqual(Array(7).fill(true));
  expect([95.9, 104.1, 75, 133, 150, 67, 400].map((heard) => lawful(heard, 100))).toEqual(Array(7).fill(false));
});

// Long sounds take long where a machine is busy with more than this.
test('the tracker hears the tempo of a groove, or a lawful multiple, in all but three', { timeout: 240_000 }, () => {
  const missed = GROOVES.flatMap((groove) => {
    const tempo = Math.round((groove.tempo[0] + groove.tempo[1]) / 2);
    const heard = heardTempo(groove, tempo);
    return lawful(heard, tempo) ? [] : [`${groove.id} at ${tempo}: heard ${heard}`];
  });
  expect(GROOVES.length - missed.length, missed.join('; ')).toBeGreaterThanOrEqual(LEAST_FOUND);
});
