import { writeFileSync } from 'node:fs';
import { GROOVES } from '../../shared-theory/grooves.ts';
import { perform, type Performance } from '../../shared-theory/perform.ts';
import { mixPerformance } from '../../shared-theory/sound/mix.ts';
import { writeWav } from '../../shared-theory/sound/wav.ts';
import { truthOf, type Truth } from '../../shared-theory/truth.ts';
import type { VoicedVamp } from '../../shared-theory/vamps.ts';
import { runCommand, UsageError } from '../command-line.ts';
import { consoleWords } from '../protocol/words/en.ts';
import { fill } from '../protocol/words/fill.ts';
import { vampMidi } from '../vamp-midi.ts';
import { readRenderRequest, type RenderRequest } from './request.ts';

const words = consoleWords.render;

const SAMPLE_RATE = 44100;

/** Silence before the first stroke, so that its onset can be told, and time for the last chord to ring out. In seconds. */
const LEAD_SECONDS = 0.1;
const TAIL_SECONDS = 1.5;

await runCommand((args) => {
  const request = readRenderRequest(args);
  if (request.what === 'grooves') printGrooves(request.json);
  else renderVamp(request);
});

function printGrooves(json: boolean): void {
  if (json) {
    console.log(JSON.stringify(GROOVES.map(({ id, name, meter, tempo }) => ({ id, name, meter, tempo }))));
    return;
  }
  for (const { id, name, meter, tempo } of GROOVES)
    console.log(fill(words.groove, { id: id.padEnd(20), name, meter, low: tempo[0], high: tempo[1] }));
}

function renderVamp({ vamp, groove, chords, loops, out, midi, json }: Extract<RenderRequest, { what: 'vamp' }>): void {
  const performance = perform(vamp, { loops });
  const truth = soundingTruth(vamp, performance);
  const seconds = LEAD_SECONDS + performance.seconds + TAIL_SECONDS;
  if (out !== null) {
    const samples = mixPerformance(performance, { sampleRate: SAMPLE_RATE, lead: LEAD_SECONDS, tail: TAIL_SECONDS });
    write(out, writeWav(samples, SAMPLE_RATE));
  }
  if (midi !== null) write(midi, vampMidi(vamp, performance));
  if (!json) {
    const wrote = (file: string, lasts: number) =>
      console.log(fill(words.wrote, { file, seconds: lasts.toFixed(1), chords, groove: groove.id, tempo: vamp.tempo }));
    if (out !== null) wrote(out, seconds);
    if (midi !== null) wrote(midi, performance.seconds);
    return;
  }
  const notes = performance.notes.map(({ time, duration, string, fret, midi, stroke, touch, accent, trim, chord }) => {
    const place = { time: rounded(LEAD_SECONDS + time), duration: rounded(duration) };
    return { ...place, string, fret, midi, stroke, touch, accent, trim, chord };
  });
  console.log(JSON.stringify({ seconds: rounded(seconds), sampleRate: SAMPLE_RATE, performance: notes, truth }));
}

/** The truth of what sounds; a groove that leaves out a note of these chords cannot be asked about, and is refused. */
function soundingTruth(vamp: VoicedVamp, performance: Performance): Truth {
  try {
    return truthOf(vamp, performance);
  } catch (error) {
    if (error instanceof RangeError) throw new UsageError(error.message);
    throw error;
  }
}

function write(file: string, bytes: Uint8Array): void {
  try {
    writeFileSync(file, bytes);
  } catch (error) {
    throw new UsageError(fill(words.notWritten, { file, why: error instanceof Error ? error.message : String(error) }));
  }
}

/** Microseconds are more than a sound card knows. */
function rounded(seconds: number): number {
  return Math.round(seconds * 1e6) / 1e6;
}
