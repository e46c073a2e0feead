import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { DeskView, WireVamp } from '../../server/protocol/views.ts';
import { readSymbol } from '../../shared-theory/chords.ts';
import { countIn } from '../../shared-theory/live.ts';
import { STEEL } from '../../shared-theory/sound/instrument.ts';
import type { Meter, VoicedVamp } from '../../shared-theory/vamps.ts';
import { connectWatcher, teacherCookie, until, type WatcherClient } from '../support/socket-client.ts';
import { openClassRoom, type ClassRoom } from './class-room.ts';
import { firstMatch, firstOver, lastOver, longestSilence, smoothed } from './matching.ts';
import { onWholeTape, recordedSeconds, recording, recordSound, TapeFault, type Recording } from './sound-recorder.ts';
import { FADER, findStrokes, inNode, louder, misplaced, peakOf, SILENT, strokesOf } from './strokes.ts';

/**
 * What leaves the host page in a real browser, beside what the same round gives in Node. It is recorded while it plays, which asks for
 * a machine that is never late: it runs only where `HEARSAY_REAL_TIME` is set.
 */
const asked = process.env['HEARSAY_REAL_TIME'] !== undefined;
const realTime = test.skipIf(!asked);

const GROOVE = 'relaxed-alternate';

let room: ClassRoom;
let host: Page;
let desk: WatcherClient<DeskView>;

beforeAll(async () => {
  if (!asked) return;
  room = await openClassRoom();
  // At this machine's own address, which a browser trusts with a recorder beside its sound.
  const { url, key } = room.server;
  const context = await room.browser.newContext({ viewport: { width: 1280, height: 720 }, bypassCSP: true });
  await recordSound(context);
  host = await context.newPage();
  host.on('pageerror', (error) => room.faults.push(`host: ${error.message}`));
  await host.goto(`${url}/teacher?key=${key}`);
  await host.goto(`${url}/host/${room.room}`);
  const cookie = await teacherCookie(url, key);
  desk = await connectWatcher(url, room.room, 'desk', { cookie });
  await host.getByRole('button', { name: 'Press for sound', exact: true }).click();
  await host.getByRole('button', { name: 'Start quietly', exact: true }).click();
  await host.getByText('Sound is on.').waitFor();
  while ((await recordedSeconds(host)) === 0) await new Promise((resolve) => void setTimeout(resolve, 50));
});

afterAll(async () => {
  if (!asked) return;
  desk.close();
  await room.end();
});

/** Waits until so many more seconds stand on the tape. */
async function record(seconds: number): Promise<void> {
  const until = (await recordedSeconds(host)) + seconds;
  await expect.poll(() => recordedSeconds(host), { timeout: 120_000, interval: 100 }).toBeGreaterThan(until);
}

async function order(command: Parameters<typeof desk.send>[0]): Promise<void> {
  const reply = await desk.send(command);
  if (!reply.ok) throw new Error(`${command.type}: ${reply.reason}`);
}

/** Starts the next round once nothing sounds; gives its vamp, when it was asked for, and the tape's seconds then. */
async function startRound(groove: string | null): Promise<{ vamp: WireVamp; pressed: number; from: number }> {
  await order({ type: 'RequestStop' });
  await until(() => !desk.view().sound.playing, 'the sound to stop');
  // What rang before has left the tape.
  await record(1);
  const after = desk.view().vamp?.number ?? 0;
  const from = await recordedSeconds(host);
  const pressed = Date.now();
  await order({ type: 'StartRound', after, level: 6, item: null, groove, contrast: null });
  const vamp = await until(() => (desk.view().vamp?.number === after + 1 ? desk.view().vamp : null), 'the next round');
  await order({ type: 'RequestPlay', round: vamp.round });
  await until(() => desk.view().sound.playing, 'the round to sound', 30_000);
  return { vamp, pressed, from };
}

/** The vamp that can sound, made of the one that travels. */
function voiced(vamp: WireVamp): VoicedVamp {
  return {
    slots: vamp.slots.map(({ chord, beats, frets }) => ({ chord: readSymbol(chord), beats, frets })),
    meter: vamp.meter as Meter,
    grooveText: vamp.grooveText,
    tempo: vamp.tempo ?? 0,
    seed: vamp.seed,
  };
}

/** What the round is played like, and its sound made in Node. */
function roundInNode(vamp: WireVamp, bars: number, sampleRate: number): ReturnType<typeof inNode> {
  const { settings, sound } = desk.view();
  const { voice, pitch, smallSpeaker } = settings;
  return inNode(voiced(vamp), bars, {
    sampleRate,
    instrument: { ...STEEL, voice, pitch, smallSpeaker },
    band: sound.band,
  });
}

const wallClock = ({ beganAt, sampleRate }: Recording, sample: number): number =>
  beganAt + (sample / sampleRate) * 1000;

realTime('the first sound comes within a second of the press, and a stop is silent within a tenth of one', async () => {
  const starts: number[] = [];
  const stops: number[] = [];
  for (let round = 0; round < 3; round++) {
    const { pressed, from } = await startRound(null);
    await record(2);
    const before = await recordedSeconds(host);
    const stopped = Date.now();
    await order({ type: 'RequestStop' });
    await record(1);
    const begun = await recording(host, from, before);
    starts.push(wallClock(begun, firstOver(begun.samples, SILENT)) - pressed);
    const ended = await recording(host, before, await recordedSeconds(host));
    stops.push(wallClock(ended, lastOver(ended.samples, SILENT)) - stopped);
  }
  // A busy machine may hold one up; what a press can do is what the quickest did.
  expect(Math.min(...starts), `milliseconds to the first sound: ${starts.join(', ')}`).toBeLessThanOrEqual(1000);
  expect(Math.min(...stops), `milliseconds to silence: ${stops.join(', ')}`).toBeLessThanOrEqual(100);
});

realTime(
  'every stroke of the first bars sounds where the performance has it, as loud as in Node, without a peak',
  async () => {
    await onWholeTape(async () => {
      const { vamp, from } = await startRound(GROOVE);
      const countSeconds = countIn(vamp.meter as Meter, vamp.tempo ?? 0).seconds;
      const barSeconds = (4 * 60) / (vamp.tempo ?? 1);
      await record(countSeconds + 4.5 * barSeconds + 2);
      const { samples, sampleRate } = await recording(host, from, await recordedSeconds(host), { whole: true });
      const { performance, mixed } = roundInNode(vamp, 4, sampleRate);
      const [heard, expected] = [smoothed(samples), smoothed(mixed)];

      // The count-in tells about where the first bar begins; a busy machine may bring it late, and never early.
      const counted = firstOver(samples, SILENT) + Math.round(countSeconds * sampleRate);
      const first = [0, Math.round(0.1 * sampleRate)] as const;
      const where = [counted - Math.round(0.02 * sampleRate), counted + 2 * sampleRate] as const;
      const begun = firstMatch(heard, expected, first, where, 0.4);
      if (!begun) throw new Error('the first stroke is not on the tape');

      const strokes = strokesOf(performance).filter((time) => time < 4 * barSeconds - 0.1);
      expect(strokes.length).toBeGreaterThanOrEqual(32);
      // What sounds there is what was expected, and when; what a busy machine tore is played again, and told if it stays so.
      const torn = misplaced(findStrokes(heard, expected, strokes, { sampleRate, lag: begun.lag }));
      if (torn.length > 0) throw new TapeFault(JSON.stringify({ vamp, first: begun.rest, torn }));

      const four = Math.round(4 * barSeconds * sampleRate);
      const live = samples.subarray(begun.lag, begun.lag + four);
      const apart = louder(live, mixed.subarray(0, four), sampleRate, FADER);
      expect(Math.abs(apart), `${apart} LU beside the file`).toBeLessThan(1);
      expect(peakOf(live)).toBeLessThan(-1);
    });
  },
);

realTime('a change on a bar line leaves no gap', async () => {
  await onWholeTape(async () => {
    const { vamp } = await startRound(GROOVE);
    const { round } = vamp;
    const beat = 60 / (vamp.tempo ?? 1);
    // The other way would leave the groove's range where the round was drawn near its end.
    const tempo = (vamp.tempo ?? 0) + ((vamp.tempo ?? 0) > 90 ? -6 : 6);
    await record(countIn(vamp.meter as Meter, vamp.tempo ?? 0).seconds + 4 * beat);
    const from = await recordedSeconds(host);
    for (const change of [
      { kind: 'tempo', tempo },
      { kind: 'bass-forward' },
      { kind: 'hold', slot: 0 },
      { kind: 'full' },
    ] as const) {
      await order({ type: 'RequestChange', round, change });
      await until(
        () => {
          const { sound } = desk.view();
          return change.kind === 'tempo' ? sound.tempo === change.tempo : sound.change.kind === change.kind;
        },
        `${change.kind} to take`,
        60_000,
      );
    }
    await record(8 * beat);
    const { samples, sampleRate } = await recording(host, from, await recordedSeconds(host), { whole: true });
    // Every string of this groove rings until its next stroke: nothing rests.
    const silence = longestSilence(samples, SILENT, 0, samples.length) / sampleRate;
    expect(silence, 'seconds of silence').toBeLessThanOrEqual(0.05);
  });
  expect(room.faults).toEqual([]);
});
