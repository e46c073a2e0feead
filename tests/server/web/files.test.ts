import { parseMidi, type MidiEvent } from 'midi-file';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { RoomLook } from '../../../server/keeper/keeper.ts';
import { guitarRound, hostRound, vampOf } from '../../../server/rooms/heard-round.ts';
import type { HeardRound } from '../../../server/rooms/events.ts';
import { midiOf } from '../../../server/web/files.ts';
import { LEVELS } from '../../../shared-theory/levels.ts';
import { perform } from '../../../shared-theory/perform.ts';
import { fold, guitar, opened, SETTINGS, started } from '../../support/given.ts';
import { startGuitarRound } from '../../support/lesson.ts';
import { connectWatcher } from '../../support/socket-client.ts';
import { startTestApp, type TestApp } from '../../support/test-app.ts';

/** A room of these rounds, as the keeper shows it. */
function roomOf(...rounds: readonly HeardRound[]) {
  const state = fold([opened, ...rounds.map(started)]);
  const look = { state, people: new Map(), seq: 0, soundHolder: null } as unknown as RoomLook;
  return {
    find: async () => 'here' as const,
    look: async <T>(_room: string, read: (look: RoomLook) => T) => read(look),
  };
}

async function midi(...rounds: readonly HeardRound[]) {
  const file = await midiOf(roomOf(...rounds), 'WAKUR', rounds.at(-1)?.number ?? 0);
  if (!file.ok) throw new Error(file.reason);
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
  const round = guitarRound({ id: 'r1', settings: SETTINGS, grooves: [] }, entered, 7);
  if ('reason' in round) throw new Error(round.reason);
  return round;
}

describe('a round as a MIDI file', () => {
  test('that the host plays: its notes are those that sound', async () => {
    const rounds = LEVELS.map((level) => {
      const round = hostRound(fold([opened]), 1, { level: level.level, item: null, groove: null }, 5);
      if ('reason' in round) throw new Error(round.reason);
      return round;
    });
    for (const round of rounds) {
      const read = await midi(round);
      const vamp = vampOf(round);
      const performance = perform(vamp);
      expect(begun(read).map(([, note]) => note)).toEqual(
        performance.notes.toSorted((one, other) => one.time - other.time).map((note) => note.midi),
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
    expect(await midiOf(roomOf(guitar('Em D')), 'WAKUR', 2)).toEqual({ ok: false, reason: 'round-unknown' });
    const unread = { find: async () => 'failed' as const, look: async () => null };
    expect(await midiOf(unread, 'WAKUR', 1)).toEqual({ ok: false, reason: 'not-saved' });
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
    for (const path of [`${room}/rounds/x.mid`, `${room}/rounds/1.wav`, `${room}/rounds/-1.mid`, '%2e/rounds/1.mid'])
      expect(await asked(`/api/rooms/${path}`)).toEqual([404, { ok: false, reason: 'not-found' }]);
    expect(app.faults).toEqual([]);
  });
});
