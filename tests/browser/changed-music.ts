import { START_SECONDS } from '../../client/host/schedule.ts';
import { withBand } from '../../shared-theory/band.ts';
import { grooveById } from '../../shared-theory/grooves.ts';
import { bassForward, countIn, holdSlot, kitOnly, unheard } from '../../shared-theory/live.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { perform, type Performance } from '../../shared-theory/perform.ts';
import { STEEL } from '../../shared-theory/sound/instrument.ts';
import type { VoicedVamp } from '../../shared-theory/vamps.ts';
import { vampOf } from '../client/host/played-vamps.ts';
import { linesOf, type Part } from './expected-sound.ts';
import type { Order } from './offline-page.ts';

/** The vamp that a groove plays. */
export function vampFor(chords: string, groove: string, tempo: number): VoicedVamp {
  return vampOf(chords, groove, tempo, BEATS_PER_BAR[grooveById(groove).meter]);
}

export const barSeconds = ({ meter, tempo }: VoicedVamp): number => (BEATS_PER_BAR[meter] * 60) / tempo;

/** Seconds from the press to the first bar. */
export const counted = ({ meter, tempo }: VoicedVamp): number => START_SECONDS + countIn(meter, tempo).seconds;

/** A vamp as it begins, and at the tempo that it is changed to. */
export const WRITTEN = vampFor('G C', 'relaxed-alternate', 100);
export const FASTER: VoicedVamp = { ...WRITTEN, tempo: 112 };

const NYLON = { voice: 'nylon', pitch: 440, smallSpeaker: false } as const;
const BAND = { kit: true, bass: true };

const human = { loops: 8, human: true };
const full = perform(FASTER, human);
const joined = withBand(FASTER, full, BAND);
const loop = perform(WRITTEN);
const company = { measure: withBand(WRITTEN, loop, BAND) };
const anew = true;

function part(performance: Performance, bars: Part['bars'], more: Partial<Part> = {}): Part {
  return { performance, bars, measure: loop, instrument: STEEL, anew: false, ...more };
}

/** What sounds between the changes. What keeps the place in the loop goes on where the part before it ended. */
export const PARTS: readonly Part[] = [
  part(perform(WRITTEN, human), [0, 2]),
  part(full, [2, 4]),
  part(bassForward(FASTER, full), [4, 6], { measure: bassForward(FASTER, perform(FASTER)), anew }),
  part(perform(holdSlot(FASTER, 1), human), [0, 2], { anew }),
  part(full, [0, 1], { anew }),
  part(joined, [1, 2], company),
  part(kitOnly(FASTER, full), [2, 4], { measure: kitOnly(FASTER, perform(FASTER)), anew }),
  part(unheard(full), [4, 6], { anew }),
  part(joined, [6, 8], { ...company, anew }),
  part(joined, [8, 10], { ...company, instrument: NYLON }),
];
export const [KIT_ALONE, DROPPED_OUT, BACK] = [6, 7, 8];

/** The change on each line behind a part; the loop that dropped out comes back by itself. */
const CHANGES = [
  { kind: 'change', change: { kind: 'tempo', tempo: FASTER.tempo } },
  { kind: 'change', change: { kind: 'bass-forward' } },
  { kind: 'change', change: { kind: 'hold', slot: 1 } },
  { kind: 'change', change: { kind: 'full' } },
  { kind: 'change', change: { kind: 'band', ...BAND } },
  { kind: 'change', change: { kind: 'kit-only' } },
  { kind: 'change', change: { kind: 'drop-out' } },
  null,
  { kind: 'instrument', instrument: NYLON },
] as const;

const lines = linesOf(PARTS, counted(WRITTEN));

/** Each change is pressed in the middle of the bar before its line. */
export const ORDERS: readonly Order[] = CHANGES.flatMap((change, index) =>
  change ? [{ ...change, at: (lines[index + 1] ?? 0) - barSeconds(FASTER) / 2 }] : [],
);

/** From the press to the last line, with a little of what follows. */
export const CHANGED_SECONDS = (lines.at(-1) ?? 0) + 0.1;
