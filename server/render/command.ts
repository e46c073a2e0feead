import { writeFileSync } from 'node:fs';
import { withBand } from '../../shared-theory/band.ts';
import { GROOVES } from '../../shared-theory/grooves.ts';
import { perform, type Performance } from '../../shared-theory/perform.ts';
import { SCORE_LOOPS } from '../../shared-theory/sound/musicxml.ts';
import { truthOf, type Truth } from '../../shared-theory/truth.ts';
import type { VoicedVamp } from '../../shared-theory/vamps.ts';
import { runCommand, UsageError } from '../command-line.ts';
import { consoleWords } from '../protocol/words/en.ts';
import { fill } from '../protocol/words/fill.ts';
import { vampMidi } from '../vamp-midi.ts';
import { vampMusicXml } from '../vamp-musicxml.ts';
import { LEAD_SECONDS, SAMPLE_RATE, soundFile, TAIL_SECONDS } from '../wav/sound-file.ts';
import { readRenderRequest, type VampRequest } from './request.ts';

const words = consoleWords.render;

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
    console.log(fill(words.groove, { id: id.padEnd(24), name, meter, low: tempo[0], high: tempo[1] }));
}

function renderVamp(request: VampRequest): void {
  const { vamp, loops, human, instrument, files, json } = request;
  const guitar = perform(vamp, { loops, human });
  const truth = soundingTruth(vamp, guitar);
  const performance = playedBy(request, guitar);
  const seconds = LEAD_SECONDS + performance.seconds + TAIL_SECONDS;
  if (files.out !== null) write(files.out, soundFile({ performance, instrument }));
  if (files.midi !== null) write(files.midi, vampMidi(vamp, performance, instrument.voice));
  if (files.musicxml !== null) {
    // Paper knows no small differences of a hand.
    const exact = playedBy(request, perform(vamp, { loops: SCORE_LOOPS }));
    write(files.musicxml, vampMusicXml(vamp, exact, instrument.voice));
  }
  if (json) printPerformance(performance, seconds, truth);
  else printFiles(request, seconds, performance.seconds);
}

/** The parts that are wanted. */
function playedBy({ vamp, parts }: VampRequest, guitar: Performance): Performance {
  const all = withBand(vamp, guitar, parts);
  return parts.guitar ? all : { ...all, notes: [] };
}

function printFiles({ vamp, groove, chords, files }: VampRequest, seconds: number, playing: number): void {
  const wrote = (file: string, lasts: number) =>
    console.log(fill(words.wrote, { file, seconds: lasts.toFixed(1), chords, groove: groove.id, tempo: vamp.tempo }));
  if (files.out !== null) wrote(files.out, seconds);
  if (files.midi !== null) wrote(files.midi, playing);
  if (files.musicxml !== null)
    console.log(fill(words.wroteScore, { file: files.musicxml, chords, groove: groove.id, tempo: vamp.tempo }));
}

/** All that sounds, with times from the start of the file. */
function printPerformance({ notes, kit, bass }: Performance, seconds: number, truth: Truth): void {
  const timed = <Sound extends { readonly time: number; readonly duration?: number }>(sound: Sound): Sound => ({
    ...sound,
    time: rounded(LEAD_SECONDS + sound.time),
    ...(sound.duration === undefined ? {} : { duration: rounded(sound.duration) }),
  });
  const performance = notes.map((note) => {
    const { time, duration, string, fret, midi, stroke, touch, accent, trim, chord, by } = timed(note);
    return { time, duration, string, fret, midi, stroke, touch, accent, trim, chord, ...(by && { by }) };
  });
  const band = { ...(kit && { kit: kit.map(timed) }), ...(bass && { bass: bass.map(timed) }) };
  console.log(JSON.stringify({ seconds: rounded(seconds), sampleRate: SAMPLE_RATE, performance, ...band, truth }));
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
