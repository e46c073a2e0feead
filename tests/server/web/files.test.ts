import type { AddressInfo } from 'node:net';
import { setTimeout } from 'node:timers/promises';
import { parseMidi, type MidiEvent } from 'midi-file';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { RoomLook } from '../../../server/keeper/keeper.ts';
import { guitarRound } from '../../../server/rooms/guitar-round.ts';
import { vampOf } from '../../../server/rooms/heard-round.ts';
import { hostRound } from '../../../server/rooms/host-round.ts';
import type { HeardRound, NewEvent } from '../../../server/rooms/events.ts';
import { createHttp, type HttpParts } from '../../../server/web/http.ts';
import { ROUND_FILES, roundFile, type RoundFileKind } from '../../../server/web/round-files.ts';
import type { SoundJob } from '../../../server/wav/sound-file.ts';
import { LEVELS } from '../../../shared-theory/levels.ts';
import { perform } from '../../../shared-theory/perform.ts';
import { fold, guitar, opened, SETTINGS, started } from '../../support/given.ts';
import { startGuitarRound } from '../../support/lesson.ts';
import { connectWatcher } from '../../support/socket-client.ts';
import { startTestApp, type TestApp } from '../../support/test-app.ts';

/** A room of these rounds, after what happened first, as the keeper shows it. */
function roomOf(...parts: readonly (HeardRound | readonly NewEvent[])[]) {
  const events = parts.flatMap((part) => ('slots' in part ? [started(part)] : part));
  const state = fold([opened, ...events]);
  const look = { state, people: new Map(), seq: 0, soundHolder: null } as unknown as RoomLook;
  return {
    find: async () => 'here' as const,
    look: async <T>(_room: string, read: (look: RoomLook) => T) => read(look),
  };
}

/** Keeps what the workers would be given, and makes nothing of it. */
const jobs: SoundJob[] = [];
const wav = {
  make: async (job: SoundJob) => {
    jobs.push(job);
    return Uint8Array.of(0);
  },
};

async function fileOf(kind: RoundFileKind, keeper: ReturnType<typeof roomOf>, number: number) {
  const file = await roundFile({ keeper, wav }, 'WAKUR', number, kind);
  if (!file.ok) throw new Error(file.reason);
  return file;
}

async function midi(...rounds: readonly HeardRound[]) {
  const file = await fileOf('mid', roomOf(...rounds), rounds.at(-1)?.number ?? 0);
  return { name: file.name, ...parseMidi(file.bytes) };
}

type Read = Awaited<ReturnType<typeof midi>>;
/** Ticks and MIDI notes of all that begins. */
function begun({ tracks }: Pick<Read, 'tracks'>): readonly (readonly [number, number])[] {
  let tick = 0;
  return (tracks[1] ?? []).flatMap((event: MidiEvent) => {
    tick += event.deltaTime;
    return event.type === 'noteOn' ? [[tick, event.noteNumber] as const] : [];
  });
}
const nameOf = ({ tracks }: Read) => tracks[0]?.flatMap((event) => (event.type === 'trackName' ? [event.text] : []))[0];
const tempoOf = ({ tracks }: Read) =>
  tracks[0]?.flatMap((event) =>
    event.type === 'setTempo' ? [Math.round(60_000_000 / event.microsecondsPerBeat)] : [],
  );

function own(chords: string, more: Partial<Parameters<typeof guitarRound>[1]> = {}): HeardRound {
  const entered = { chords, naming: 'english' as const, groove: null, tempo: null, directions: null, ...more };
  const round = guitarRound({ id: 'r1', settings: SETTINGS, beat: 1, grooves: [] }, entered, 7);
  if ('reason' in round) throw new Error(round.reason);
  return round;
}

describe('a round as a MIDI file', () => {
  test('that the host plays: its notes are those that sound', async () => {
    const rounds = LEVELS.map((level) => {
      const round = hostRound(fold([opened]), 1, { level: level.level, item: null, groove: null, contrast: null }, 5);
      if ('reason' in round) throw new Error(round.reason);
      return round;
    });
    for (const round of rounds) {
      const read = await midi(round);
      const vamp = vampOf(round);
      const played = perform(vamp);
      expect(begun(read).map(([, note]) => note)).toEqual(
        played.notes.toSorted((one, other) => one.time - other.time).map((note) => note.midi),
      );
      expect(read.name).toBe('hearsay-WAKUR-1.mid');
      expect(nameOf(read)).toContain(round.slots.map(({ chord }) => chord).join(' '));
    }
  });

  test('on the teacher’s guitar without a groove: one stroke a chord, at the tempo he named or 90', async () => {
    const read = await midi(own('Em D'));
    expect([tempoOf(read), nameOf(read)]).toEqual([[90], 'Em D']);
    const strokes = begun(read);
    expect(strokes.map(([, note]) => note)).toEqual([40, 47, 52, 55, 59, 64, 50, 57, 62, 66]);
    expect(strokes.filter(([tick]) => tick % 1920 === 0).map(([, note]) => note)).toEqual([40, 50]);
    expect(tempoOf(await midi(own('Em D', { tempo: 140 })))).toEqual([140]);
  });

  test('with a groove: its strokes, and its bass on the root of each chord', async () => {
    const read = await midi(own('Em D', { groove: 'boom-chick' }));
    expect([tempoOf(read), nameOf(read)]).toEqual([[90], 'Em D, Boom-chick']);
    expect(begun(read).filter(([, note]) => note <= 50)).toEqual([
      [0, 40],
      [960, 40],
      [1920, 50],
      [2880, 50],
    ]);
    // A groove that goes no slower than 120.
    expect(tempoOf(await midi(own('Em D', { groove: 'driving-eighths' })))).toEqual([120]);
  });

  test('the bass goes where the teacher said it went', async () => {
    const lowest = async (directions: ('up' | 'down')[]) =>
      begun(await midi(own('Em D', { directions }))).flatMap(([tick, note]) => (tick % 1920 === 0 ? [note] : []));
    expect(await lowest(['up'])).toEqual([40, 50]);
    const [home = 0, other = 0] = await lowest(['down']);
    expect(other).toBeLessThan(home);
  });

  test('a round that is not there', async () => {
    for (const kind of ROUND_FILES)
      expect(await roundFile({ keeper: roomOf(guitar('Em D')), wav }, 'WAKUR', 2, kind)).toEqual({
        ok: false,
        reason: 'round-unknown',
      });
    const unread = { find: async () => 'failed' as const, look: async () => null };
    expect(await roundFile({ keeper: unread, wav }, 'WAKUR', 1, 'mid')).toEqual({ ok: false, reason: 'not-saved' });
  });
});

describe('a round as sound and as a score', () => {
  const settings = {
    ...SETTINGS,
    voice: 'nylon',
    pitch: 442,
    smallSpeaker: true,
    band: { kit: true, bass: true },
  } as const;
  const banded = (round: HeardRound) => roomOf([{ type: 'SettingsChanged', settings }], round);

  test('sound: what the room’s guitar and band play, as often round as lasts eight bars', async () => {
    const file = await fileOf('wav', banded(own('Em D C', { groove: 'boom-chick', tempo: 120 })), 1);
    expect(file.name).toBe('hearsay-WAKUR-1.wav');
    const job = jobs.at(-1);
    expect(job?.instrument).toEqual({ voice: 'nylon', pitch: 442, smallSpeaker: true });
    expect(job?.performance).toMatchObject({ loops: 3, seconds: 18 });
    expect(job?.performance.kit?.length).toBeGreaterThan(0);
    expect(job?.performance.bass?.length).toBeGreaterThan(0);
  });

  test('a room without a band: the guitar alone', async () => {
    await fileOf('wav', roomOf(own('Em D')), 1);
    expect(jobs.at(-1)?.performance.kit).toBeUndefined();
    expect(jobs.at(-1)?.instrument).toEqual({ voice: 'steel', pitch: 440, smallSpeaker: false });
  });

  test('a round that would sound for more than ten minutes is no sound, but notes', async () => {
    const held = Array.from({ length: 90 }, () => '.').join(' | ');
    const keeper = roomOf(own(`| Em | ${held} | D |`, { tempo: 30 }));
    const before = jobs.length;
    expect(await roundFile({ keeper, wav }, 'WAKUR', 1, 'wav')).toEqual({
      ok: false,
      reason: 'sound-too-long',
      detail: { most: 10 },
    });
    expect(jobs).toHaveLength(before);
    expect((await fileOf('mid', keeper, 1)).bytes.length).toBeGreaterThan(0);
  });

  test('a score: the guitar by the room’s voice, and the band', async () => {
    const { name, bytes } = await fileOf('musicxml', banded(own('Em D', { groove: 'boom-chick' })), 1);
    expect(name).toBe('hearsay-WAKUR-1.musicxml');
    const xml = new TextDecoder().decode(bytes);
    expect([...xml.matchAll(/<part-name>([^<]*)</g)].map(([, part]) => part)).toEqual([
      'Nylon guitar',
      'Bass guitar',
      'Kit',
    ]);
    expect(xml).toContain('<work-title>Em D, Boom-chick</work-title>');
  });
});

describe('over http', () => {
  let app: TestApp;
  beforeAll(async () => {
    app = await startTestApp();
  });
  afterAll(() => app.close());
  const get = (path: string, cookie = app.cookie) => fetch(`${app.url}${path}`, { headers: { cookie } });

  test('the teacher gets it as a file with a plain name; nobody else does', async () => {
    const room = await app.room();
    const desk = await connectWatcher(app.url, room, 'desk', { cookie: app.cookie });
    await startGuitarRound(desk, 'G D Em C');
    const path = `/api/rooms/${room}/rounds/1.mid`;
    const answer = await get(path);
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-disposition')).toBe(`attachment; filename=hearsay-${room}-1.mid`);
    expect(answer.headers.get('content-type')).toBe('audio/midi');
    const bytes = new Uint8Array(await answer.arrayBuffer());
    expect(begun(parseMidi(bytes)).flatMap(([tick, note]) => (tick % 1920 === 0 ? [note] : []))).toEqual([
      43, 50, 40, 48,
    ]);
    expect((await get(path.toLowerCase())).status).toBe(200);
    for (const cookie of ['', `hearsay-teacher-${app.port}=guess`]) {
      const refused = await get(path, cookie);
      expect([refused.status, await refused.json()]).toEqual([403, { ok: false, reason: 'not-teacher' }]);
    }
    desk.close();
  });

  test('a score and a sound, each of its type and name', async () => {
    const room = await app.room();
    const desk = await connectWatcher(app.url, room, 'desk', { cookie: app.cookie });
    await startGuitarRound(desk, 'G D Em C');
    const score = await get(`/api/rooms/${room}/rounds/1.musicxml`);
    expect([score.status, score.headers.get('content-type'), score.headers.get('content-disposition')]).toEqual([
      200,
      'application/vnd.recordare.musicxml+xml',
      `attachment; filename=hearsay-${room}-1.musicxml`,
    ]);
    expect((await score.text()).startsWith('<?xml version="1.0" encoding="UTF-8"?>')).toBe(true);
    expect((await get(`/api/rooms/${room}/rounds/1.wav`, '')).status).toBe(403);

    // The sound is made in a process of its own: the room goes on answering until it is there.
    const progress = { made: false };
    const sound = get(`/api/rooms/${room}/rounds/1.wav`).then((answer) => {
      progress.made = true;
      return answer;
    });
    let answered = 0;
    while (!progress.made) {
      expect((await get('/healthz')).status).toBe(200);
      if (!progress.made) answered += 1;
      await setTimeout(10);
    }
    const answer = await sound;
    expect([answer.status, answer.headers.get('content-type'), answer.headers.get('content-disposition')]).toEqual([
      200,
      'audio/wav',
      `attachment; filename=hearsay-${room}-1.wav`,
    ]);
    const bytes = Buffer.from(await answer.arrayBuffer());
    expect(bytes.toString('latin1', 0, 4)).toBe('RIFF');
    // Eight bars of four at 90, a little silence before and a second and a half after.
    expect((bytes.length - 44) / 2 / bytes.readUInt32LE(24)).toBeCloseTo((32 * 60) / 90 + 1.6, 3);
    expect(
      Math.max(...Array.from({ length: 20_000 }, (_, n) => Math.abs(bytes.readInt16LE(44 + 2 * n)))),
    ).toBeGreaterThan(1000);
    // Made here, it would let one or two through at most: the render is one piece of work.
    expect(answered).toBeGreaterThan(4);
    desk.close();
  });

  test('what is not there is told as JSON', async () => {
    const room = await app.room();
    const asked = async (path: string) => {
      const answer = await get(path);
      return [answer.status, await answer.json()];
    };
    expect(await asked(`/api/rooms/${room}/rounds/1.mid`)).toEqual([404, { ok: false, reason: 'round-unknown' }]);
    expect(await asked('/api/rooms/ABABA/rounds/1.mid')).toEqual([
      404,
      { ok: false, reason: 'room-not-found', detail: { room: 'ABABA' } },
    ]);
    for (const path of [`${room}/rounds/x.mid`, `${room}/rounds/1.mp3`, `${room}/rounds/-1.mid`, '%2e/rounds/1.mid'])
      expect(await asked(`/api/rooms/${path}`)).toEqual([404, { ok: false, reason: 'not-found' }]);
    expect(app.faults).toEqual([]);
  });
});

test('who goes away before a file is there is waited for no more, and is no fault', async () => {
  const faults: unknown[] = [];
  const asked: AbortSignal[] = [];
  let dropped = false;
  const http = createHttp({
    sessions: { isTeacher: async () => true },
    hosts: { allows: () => true },
    rooms: {
      // It comes to an end only where nobody waits.
      roundFile: (_room: string, _round: number, _kind: string, signal: AbortSignal) =>
        new Promise((_, reject) => {
          asked.push(signal);
          signal.addEventListener('abort', () => {
            dropped = true;
            reject(signal.reason as Error);
          });
        }),
    },
    built: null,
    files: null,
    fault: (error: unknown) => faults.push(error),
  } as unknown as HttpParts);
  const server = http.listen(0);
  const { port } = server.address() as AddressInfo;
  const gone = new AbortController();
  const left = fetch(`http://127.0.0.1:${port}/api/rooms/WAKUR/rounds/1.wav`, { signal: gone.signal });
  const told = expect(left).rejects.toThrow();
  await expect.poll(() => asked.map(({ aborted }) => aborted)).toEqual([false]);
  gone.abort();
  await told;
  await expect.poll(() => dropped).toBe(true);
  await setTimeout(0);
  expect(faults).toEqual([]);
  server.closeAllConnections();
  await new Promise((closed) => server.close(closed));
});
