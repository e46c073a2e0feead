import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import * as v from 'valibot';
import { UsageError } from '../command-line.ts';
import { listenWords as words } from '../protocol/words/listen-words.ts';
import { fill } from '../protocol/words/fill.ts';
import type { HeardNote } from './hearing.ts';

/** The program in a transcriber's folder: it takes a WAV file and prints JSON with the notes it hears. */
const PROGRAM = 'hear.mjs';

const HEARD = v.object({
  notes: v.array(v.object({ midi: v.number(), start: v.number(), end: v.number(), amplitude: v.number() })),
});

/** Hears the notes of a WAV file. */
export type Ear = (file: string) => Promise<readonly HeardNote[]>;

/** A transcriber that stands in a folder. UsageError where none is named or none stands there. */
export function earIn(folder: string | undefined): Ear {
  if (folder === undefined || folder === '') throw new UsageError(words.noEar);
  const program = join(resolve(folder), PROGRAM);
  if (!existsSync(program)) throw new UsageError(fill(words.notAnEar, { folder, program: PROGRAM }));
  return async (file) => {
    const printed = await run(program, file);
    let heard: unknown;
    try {
      heard = JSON.parse(printed);
    } catch {
      throw new UsageError(fill(words.unreadable, { program, found: printed.slice(0, 80) }));
    }
    const read = v.safeParse(HEARD, heard);
    if (!read.success) throw new UsageError(fill(words.unreadable, { program, found: printed.slice(0, 80) }));
    return read.output.notes;
  };
}

function run(program: string, file: string): Promise<string> {
  return new Promise((settle, fail) => {
    const child = spawn(process.execPath, [program, file], { stdio: ['ignore', 'pipe', 'pipe'] });
    let printed = '';
    let complaint = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => (printed += text));
    child.stderr.setEncoding('utf8').on('data', (text: string) => (complaint += text));
    child.once('error', fail);
    child.once('close', (status) => {
      if (status === 0) settle(printed);
      else fail(new UsageError(fill(words.failed, { program, why: complaint.trim().slice(-300) })));
    });
  });
}
