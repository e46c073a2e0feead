import { render } from 'preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createKeep } from '../../../client/shared/storage.ts';
import { Inside } from '../../../client/student/app.tsx';
import { createStudent, type Student } from '../../../client/student/student-state.ts';
import type { StudentCommon, StudentOwn } from '../../../server/protocol/views.ts';
import { roomServer, type RoomServer } from '../shared/room-server.ts';

const WAIT = { timeout: 8000 };
const own: StudentOwn = { v: 1, name: 'Nele', leftHanded: false, pair: false, leftThumb: false, counter: 0 };
const question = (
  kind: string,
  more: Partial<StudentCommon> & { readonly options?: readonly string[] } = {},
): StudentCommon => {
  const { options, ...rest } = more;
  return {
    v: 2,
    phase: 'open',
    ask: 'a1',
    asking: { kind, target: kind === 'direction' ? 1 : 0, ...(options && { options }) },
    ...rest,
  };
};

let server: RoomServer;
let students: Student[] = [];
let place: HTMLElement;
let stored = new Map<string, string>();

const keepOf = (map: Map<string, string>) =>
  createKeep(() => ({
    getItem: (name) => map.get(name) ?? null,
    setItem: (name, value) => void map.set(name, value),
    removeItem: (name) => void map.delete(name),
  }));

const TOKEN = 'ab12'.repeat(8);

/** What a phone keeps that has had a seat. */
function hasBeenHere(): void {
  stored.set('hearsay:WAKUR:token', TOKEN);
  stored.set('hearsay:WAKUR:seated', '1');
}

/** The tokens of all lines that came, in order. */
const tokens: string[] = [];

function openPage(keep = keepOf(stored), onLeave: (why: string) => void = () => undefined): Student {
  const student = createStudent('WAKUR', keep, { url: server.url });
  students.push(student);
  place = document.body.appendChild(document.createElement('div'));
  render(<Inside student={student} keep={keep} onLeave={onLeave} />, place);
  return student;
}

/** Greets every connection as the server does: the phase first, then what belongs to this phone. */
function greet(common: StudentCommon, mine: StudentOwn | null = own): void {
  server.desk.greet = (socket) => {
    socket.emit('common', common);
    if (mine) socket.emit('own', mine);
  };
}

const button = (name: string): HTMLButtonElement | undefined =>
  Array.from(place.querySelectorAll('button')).find(
    (each) => (each.getAttribute('aria-label') ?? each.textContent) === name,
  );

async function tap(name: string): Promise<void> {
  await vi.waitFor(() => expect(button(name), name).toBeDefined(), WAIT);
  button(name)?.click();
  await new Promise((resolve) => setTimeout(resolve, 20));
}

const shows = (text: string) => vi.waitFor(() => expect(place.textContent).toContain(text), WAIT);

beforeEach(async () => {
  stored = new Map();
  server = await roomServer();
  tokens.length = 0;
  server.io.use((socket, next) => {
    tokens.push(String(socket.handshake.auth.token));
    next();
  });
});

const isLive = () => vi.waitFor(() => expect(students[0]?.store.get().status.kind).toBe('live'), WAIT);

afterEach(async () => {
  for (const student of students) student.close();
  students = [];
  document.body.replaceChildren();
  await server.close();
});

test('a phone brings a token that it made itself, takes a seat and waits', async () => {
  server.desk.greet = (socket) => socket.emit('common', { v: 1, phase: 'waiting' });
  openPage();
  await shows('take a seat');
  server.desk.reply = (command) => {
    if (command.type === 'Join') server.io.emit('own', { ...own, name: command.name });
    return { ok: true };
  };
  await isLive();
  const name = place.querySelector<HTMLInputElement>('input[name=name]');
  if (!name) throw new Error('no field for the name');
  name.value = '<img src=x onerror=alert(1)>';
  name.dispatchEvent(new Event('input', { bubbles: true }));
  const left = Array.from(place.querySelectorAll<HTMLInputElement>('input[type=radio]'))[1];
  left?.click();
  await tap('take a seat');
  await shows('Listen.');
  expect(server.commands[0]).toMatchObject({
    type: 'Join',
    name: '<img src=x onerror=alert(1)>',
    leftHanded: true,
    pair: false,
  });
  expect(tokens).toEqual([stored.get('hearsay:WAKUR:token')]);
  expect(tokens[0]).toMatch(/^[0-9a-f]{32}$/);
  // Shown as it was written, never read as markup.
  expect(place.querySelector('img')).toBeNull();
  expect(place.textContent).toContain('<img src=x onerror=alert(1)>');
});

test('a refused name gets the sentence of the catalogue', async () => {
  server.desk.greet = (socket) => socket.emit('common', { v: 1, phase: 'waiting' });
  server.desk.reply = () => ({ ok: false, reason: 'name-too-long', detail: { most: 24 } });
  openPage();
  await isLive();
  await tap('take a seat');
  await shows('That name is too long. Up to 24 characters fit.');
});

test('a phone that stores nothing still takes a seat, and says that it forgets', async () => {
  const refuse = (): never => {
    throw new DOMException('denied', 'SecurityError');
  };
  server.desk.greet = (socket) => socket.emit('common', { v: 1, phase: 'waiting' });
  server.desk.reply = () => {
    server.io.emit('own', own);
    return { ok: true };
  };
  openPage(createKeep(refuse));
  await shows('keeps nothing after the page is closed');
  await isLive();
  await tap('take a seat');
  await shows('Listen.');
});

test('a phone that only looked in stands at the door at once', async () => {
  server.desk.greet = (socket) => socket.emit('common', { v: 1, phase: 'waiting' });
  openPage();
  await isLive();
  expect(stored.has('hearsay:WAKUR:token')).toBe(true);
  students[0]?.close();
  server.desk.reachable = false;
  openPage();
  expect(students[1]?.store.get().atDoor).toBe(true);
  await shows('take a seat');
});

test('what another tab wrote later is what is in', async () => {
  hasBeenHere();
  greet(question('direction'));
  openPage();
  await tap('up');
  await tap('write it');
  await shows('It is in.');
  server.io.emit('own', { ...own, v: 3, ask: 'a1', counter: 2, answer: 'down' });
  await vi.waitFor(() => expect(students[0]?.store.get().own?.answer).toBe('down'), WAIT);
  await vi.waitFor(() => expect(button('write it')).toBeDefined(), WAIT);
  await tap('down');
  await shows('It is in.');
  expect(server.commands).toHaveLength(1);
});

test('an acknowledgement that names another answer is taken at its word', async () => {
  hasBeenHere();
  greet(question('direction'));
  server.desk.reply = () => ({ ok: true, value: { counter: 1, answer: 'down' } });
  openPage();
  await tap('up');
  await tap('write it');
  await vi.waitFor(() => expect(server.commands).toHaveLength(1), WAIT);
  await tap('down');
  await shows('It is in.');
  expect(server.commands).toHaveLength(1);
});

test('a door that cannot save for now lets the phone in by itself, and the room stays in the address', async () => {
  hasBeenHere();
  let refusals = 0;
  server.io.use((_socket, next) => {
    refusals += 1;
    if (refusals > 2) next();
    else next(Object.assign(new Error('refused'), refusals === 1 ? { data: { reason: 'not-saved' } } : {}));
  });
  greet({ v: 1, phase: 'waiting' });
  const left = vi.fn();
  openPage(keepOf(stored), left);
  await shows('Listen.');
  expect(refusals).toBe(3);
  expect(left).not.toHaveBeenCalled();
});

test('choosing, writing, changing, taking back', async () => {
  hasBeenHere();
  greet(question('direction'));
  openPage();
  await shows('where did the bass go?');
  await tap('up');
  expect(button('up')?.getAttribute('aria-pressed')).toBe('true');
  expect(server.commands).toHaveLength(0);
  await tap('write it');
  await shows('It is in.');
  await tap('down');
  expect(button('up')?.getAttribute('aria-pressed')).toBe('false');
  await tap('write it');
  await shows('It is in.');
  await tap('down');
  await tap('take it back');
  await vi.waitFor(() => expect(server.commands).toHaveLength(3), WAIT);
  expect(server.commands).toMatchObject([
    { type: 'WriteAnswer', ask: 'a1', counter: 1, answer: 'up' },
    { type: 'WriteAnswer', ask: 'a1', counter: 2, answer: 'down' },
    { type: 'WriteAnswer', ask: 'a1', counter: 3, answer: null },
  ]);
  await vi.waitFor(() => expect(button('write it')?.getAttribute('aria-disabled')).toBe('true'), WAIT);
});

test('not sure is an answer; can’t hear is a private press', async () => {
  hasBeenHere();
  greet(question('quality', { options: ['major', 'minor'] }));
  openPage();
  await tap('can’t hear');
  await shows('Your teacher knows');
  await tap('not sure');
  await shows('Not sure: it is in.');
  expect(server.commands).toMatchObject([
    { type: 'CannotHear', ask: 'a1' },
    { type: 'WriteAnswer', answer: 'not-sure' },
  ]);
});

test('written without a network it is kept, and goes in once when the network is back', async () => {
  hasBeenHere();
  greet(question('direction'));
  openPage();
  await tap('up');
  const down = new Promise<void>((resolve) =>
    server.io.on('connection', (socket) => socket.on('disconnect', () => resolve())),
  );
  server.drop();
  void down;
  await vi.waitFor(() => expect(students[0]?.store.get().status.kind).toBe('lost'), WAIT);
  await tap('write it');
  await shows('Kept on this phone.');
  for (const choice of ['down', 'stays', 'up']) await tap(choice);
  await shows('Kept on this phone.');
  server.desk.reachable = true;
  await shows('It is in.');
  expect(server.commands).toMatchObject([{ type: 'WriteAnswer', answer: 'up', counter: 1 }]);
  expect(server.commands).toHaveLength(1);
});

test('after the double bar the ring is dashed and the page says so', async () => {
  hasBeenHere();
  greet(question('direction'));
  server.desk.reply = () => {
    server.io.emit('common', question('direction', { phase: 'closed' }));
    return { ok: false, reason: 'too-late' };
  };
  openPage();
  await tap('up');
  await tap('write it');
  await shows('After the double bar.');
  expect(place.querySelector('[stroke-dasharray]')).not.toBeNull();
  expect(button('up')?.disabled).toBe(true);
});

test('a phone that slept wakes to the question that stands now', async () => {
  hasBeenHere();
  greet(question('direction'));
  openPage();
  await tap('up');
  greet(question('strokes', { ask: 'a4', v: 9 }), { ...own, v: 9, ask: 'a4', counter: 3, answer: null });
  server.drop();
  await shows('All downs, or down and up?');
  expect(button('all downs')?.getAttribute('aria-pressed')).toBe('false');
  await tap('down and up');
  await tap('write it');
  await shows('It is in.');
  expect(server.commands).toMatchObject([{ ask: 'a4', counter: 4, answer: 'down-up' }]);
});

test('a reload in the middle keeps the answer that is in', async () => {
  hasBeenHere();
  greet(question('root'), { ...own, ask: 'a1', counter: 2, answer: { string: 6, fret: 3 } });
  openPage();
  await shows('It is in.');
  await vi.waitFor(() => expect(button('string 6, fret 3')?.getAttribute('aria-pressed')).toBe('true'), WAIT);
});

test('an answer to the question before is not taken for one to this', async () => {
  hasBeenHere();
  greet(question('direction', { ask: 'a2' }), { ...own, ask: 'a1', counter: 2, answer: 'up' });
  openPage();
  await vi.waitFor(() => expect(button('up')).toBeDefined(), WAIT);
  expect(button('up')?.getAttribute('aria-pressed')).toBe('false');
});

test('the reveal: right answer, verdict, what was written, a sentence; no points, no rank', async () => {
  hasBeenHere();
  greet(
    question('root', {
      phase: 'shown',
      truth: { answer: { string: 6, fret: 0 }, key: '6.0', also: ['5.7', '6.12'], name: 'E' },
    }),
    {
      ...own,
      ask: 'a1',
      answer: { string: 6, fret: 7 },
      mark: { credit: 0.4, exact: false, error: 'hears-the-fifth' },
    },
  );
  openPage();
  await shows('The root is E.');
  await shows('Not this one.');
  await shows('You wrote: string 6, fret 7.');
  await shows('Which of the two could you stop on?');
  expect(place.textContent).not.toMatch(/0\.4|40|points|rank/i);
  // A lens for each place of the note.
  await vi.waitFor(() => expect(place.querySelectorAll('.lens-body')).toHaveLength(3), WAIT);
});

test('several keys, one answer: the order of tapping does not matter', async () => {
  hasBeenHere();
  greet(question('keys', { options: ['majors'] }));
  openPage();
  await tap('G major');
  await tap('D major');
  await shows('Marked: two.');
  await tap('write it');
  await tap('no key owns all');
  expect(button('G major')?.getAttribute('aria-pressed')).toBe('false');
  await tap('write it');
  await vi.waitFor(() => expect(server.commands).toHaveLength(2), WAIT);
  expect(server.commands).toMatchObject([{ answer: ['2M', '7M'] }, { answer: [] }]);
});

test('an unfinished answer cannot be written', async () => {
  hasBeenHere();
  greet(question('numeral'));
  openPage();
  await tap('next chord: empty');
  await tap('five');
  expect(button('write it')?.getAttribute('aria-disabled')).toBe('true');
  await tap('write it');
  await tap('first chord: empty');
  await tap('six');
  await tap('minor');
  await tap('write it');
  await shows('It is in.');
  expect(server.commands).toMatchObject([{ type: 'WriteAnswer', answer: ['vi', 'V'] }]);
  expect(server.commands).toHaveLength(1);
});

test('home is an answer like any other', async () => {
  hasBeenHere();
  greet(question('distance'));
  openPage();
  await tap('home, the same note');
  await tap('write it');
  await shows('It is in.');
  expect(server.commands).toMatchObject([{ answer: 0 }]);
});

test('asked aloud there is no pad and no foot; the reveal blames no phone', async () => {
  hasBeenHere();
  greet(question('direction', { phase: 'aloud' }));
  openPage();
  await shows('where did the bass go?');
  await shows('Hands off the phone');
  expect(place.querySelectorAll('button')).toHaveLength(0);
  server.io.emit('common', question('direction', { phase: 'shown', truth: { answer: 'up', key: 'up' } }));
  await shows('The bass went up.');
  await shows('This one was asked aloud.');
});

test('from memory says so; a struck question says so before and after the reveal', async () => {
  hasBeenHere();
  greet(question('direction', { memory: true }));
  openPage();
  await shows('From memory. Hum the lowest note.');
  server.io.emit('common', question('direction', { phase: 'closed', struck: true }));
  await shows('This one is struck: everybody has it.');
  server.io.emit('own', { ...own, ask: 'a1', answer: 'up', mark: { credit: 1, exact: false, error: 'says-moves' } });
  server.io.emit(
    'common',
    question('direction', { phase: 'shown', struck: true, truth: { answer: 'down', key: 'down' } }),
  );
  await shows('The bass went down.');
  await shows('This one is struck: everybody has it.');
  expect(place.textContent).not.toContain('Right');
  expect(place.querySelector('.mark-say')).toBeNull();
});

test.each([
  [
    { credit: 1, exact: false, note: 'follows-own-answer' },
    'Right, from your own earlier answer on.',
    'nothing is lost twice',
  ],
  [{ credit: 1, exact: true, note: 'right-in-another-key' }, 'Right.', 'Right in another key'],
  [{ credit: 1, exact: true, note: 'also-right' }, 'Right.', 'lets this stand'],
  [{ credit: 0.5, exact: false, error: 'numeral-case-wrong' }, 'Partly right.', 'Capital for major'],
  [{ credit: 0.49, exact: false, error: 'numeral-case-wrong' }, 'Not this one.', 'Capital for major'],
])('a mark %j is said in words', async (mark, verdict, beside) => {
  hasBeenHere();
  greet(question('numeral', { phase: 'shown', truth: { answer: ['vi', 'V'], key: 'vi V', also: ['ii I'] } }), {
    ...own,
    ask: 'a1',
    answer: ['VI', 'V'],
    mark,
  });
  openPage();
  await shows('The numerals: vi – V or ii – I.');
  await vi.waitFor(() => expect(place.querySelector('.mark-title')?.textContent).toBe(verdict), WAIT);
  await shows(beside);
});

test('a truth that the teacher corrects after the reveal is drawn anew, with the new mark', async () => {
  hasBeenHere();
  const shown = (answer: number) => question('count', { phase: 'shown', truth: { answer, key: String(answer) } });
  greet(shown(2), { ...own, ask: 'a1', answer: 3, mark: { credit: 0.3, exact: false } });
  openPage();
  await shows('Two different chords.');
  await shows('Not this one.');
  await shows('You wrote: three.');
  const lens = () => place.querySelector('.lens-body')?.closest('button')?.getAttribute('aria-label');
  await vi.waitFor(() => expect(lens()).toBe('two'), WAIT);
  server.io.emit('common', { ...shown(3), v: 5 });
  server.io.emit('own', { ...own, v: 5, ask: 'a1', answer: 3, mark: { credit: 1, exact: true } });
  await shows('Three different chords.');
  await shows('Right.');
  await vi.waitFor(() => expect(lens()).toBe('three'), WAIT);
  expect(place.textContent).not.toContain('You wrote');
  expect(button('three')?.getAttribute('aria-pressed')).toBe('true');
});

test('the mark of the question before is not taken for one of this', async () => {
  hasBeenHere();
  greet(question('direction', { ask: 'a2', phase: 'shown', truth: { answer: 'up', key: 'up' } }), {
    ...own,
    ask: 'a1',
    answer: 'down',
    mark: { credit: 0, exact: false, error: 'says-stays' },
  });
  openPage();
  await shows('The bass went up.');
  await shows('No answer from this phone.');
  expect(place.querySelector('.mark-say')).toBeNull();
});

test('the end of the lesson says how many were right, and nothing of others', async () => {
  hasBeenHere();
  greet({ v: 9, phase: 'lesson-ended' }, { ...own, lesson: { right: 7, part: 2, of: 11 } });
  openPage();
  await shows('7 of 11 heard right.');
});

test('one taken off the roll stands at the door again, without the old token', async () => {
  hasBeenHere();
  greet({ v: 1, phase: 'waiting' });
  openPage();
  await shows('Listen.');
  server.desk.greet = () => undefined;
  server.io.emit('removed');
  await shows('take a seat');
  // The line comes again at once, as somebody new: a seat taken now is found again like any other.
  await vi.waitFor(() => expect(tokens).toHaveLength(2), WAIT);
  expect(tokens).toEqual([TOKEN, stored.get('hearsay:WAKUR:token')]);
  expect(tokens[1]).toMatch(/^[0-9a-f]{32}$/);
  expect(tokens[1]).not.toBe(TOKEN);
  expect(stored.has('hearsay:WAKUR:seated')).toBe(false);
});

test('one taken off the roll while away stands at the door after the first refusal', async () => {
  hasBeenHere();
  greet(question('direction'));
  server.desk.reply = (command) =>
    command.type === 'WriteAnswer' ? { ok: false, reason: 'not-joined' } : { ok: true };
  openPage();
  await tap('up');
  server.desk.greet = () => undefined;
  await tap('write it');
  await shows('take a seat');
  expect(stored.get('hearsay:WAKUR:token')).not.toBe(TOKEN);
});

test('a left thumb finds its keys in reverse', async () => {
  hasBeenHere();
  greet(question('direction'), { ...own, leftThumb: true });
  openPage();
  await vi.waitFor(() => expect(place.querySelector('.foot')?.textContent).toBe('write itnot surecan’t hear'), WAIT);
});

/** Eight taps on the strings, half a second apart, from so many milliseconds of the page's clock on. */
async function tapStrings(from: number): Promise<void> {
  await vi.waitFor(() => expect(button('tap here')).toBeDefined(), WAIT);
  for (let index = 0; index < 8; index += 1) {
    const event = new PointerEvent('pointerdown', { bubbles: true, cancelable: true, button: 0 });
    // Within what a slow page may be behind.
    Object.defineProperty(event, 'timeStamp', { value: from + index * 500 });
    button('tap here')?.dispatchEvent(event);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}

const TAPS = Array.from({ length: 8 }, (_, index) => index * 500);

const answersSent = () =>
  server.commands.flatMap((command) => (command.type === 'WriteAnswer' ? [command.answer] : []));

/** The page's clock runs ahead, so that taps half a second apart have been already. */
function clockAhead(): number {
  const before = performance.now();
  const now = performance.now.bind(performance);
  vi.spyOn(performance, 'now').mockImplementation(() => now() + 5000);
  return before + 1000;
}

test('taps are written as any answer; shown, the own tempo stands beside the right one', async () => {
  const from = clockAhead();
  greet(question('tempo'));
  openPage();
  await tapStrings(from);
  await tap('write it');
  await vi.waitFor(() => expect(answersSent()).toEqual([TAPS]), WAIT);
  await shows('It is in.');
  const right = Array.from({ length: 16 }, (_, index) => index * 480);
  server.io.emit('common', { ...question('tempo'), phase: 'shown', truth: { answer: right, key: '125' } });
  server.io.emit('own', { ...own, ask: 'a1', answer: TAPS, mark: { credit: 0.6, exact: false } });
  await shows('You tapped about 120; it was 125.');
  vi.restoreAllMocks();
});

test('of even taps no tempo is right, and of a silence what was tapped in it is told', async () => {
  const right = Array.from({ length: 9 }, (_, index) => index * 500);
  const shown = (kind: string) => ({
    ...question(kind),
    phase: 'shown' as const,
    truth: { answer: right, key: '120' },
  });
  greet(shown('steadiness'), { ...own, ask: 'a1', answer: TAPS, mark: { credit: 1, exact: true } });
  openPage();
  await shows('You tapped about 120.');
  // Eight taps in time, then ahead by a twentieth while nothing sounds, then in time again.
  const through = Array.from({ length: 9 }, (_, index) => 4000 + index * 475);
  const taps = [...TAPS, ...through, ...Array.from({ length: 16 }, (_, index) => 8300 + index * 500)];
  const answer = { taps, silentFrom: 8 };
  server.io.emit('common', { ...shown('drop-out'), ask: 'a2' });
  server.io.emit('own', { ...own, ask: 'a2', answer, mark: { credit: 0.6, exact: false } });
  await shows('In the silence you tapped about 126; it was 120.');
});

test('who taps together presses nothing: the taps go in, the page stays as it is, and nobody is marked', async () => {
  const from = clockAhead();
  greet(question('together'));
  openPage();
  await tapStrings(from);
  await vi.waitFor(() => expect(answersSent()).toEqual([TAPS]), WAIT);
  await shows('Tap on: it follows you.');
  expect(place.textContent).not.toContain('Sending');
  expect(place.textContent).toContain('Your taps go in by themselves.');
  server.io.emit('common', { ...question('together'), phase: 'closed' });
  await vi.waitFor(() => expect(place.textContent).not.toContain('go in by themselves'), WAIT);
  server.io.emit('common', { ...question('together'), phase: 'shown' });
  server.io.emit('own', { ...own, ask: 'a1', answer: TAPS });
  await shows('nobody is marked');
  expect(place.textContent).toContain('You tapped about 120.');
  vi.restoreAllMocks();
});

test('a phone is told while the groove is away, and when its own grid sounds', async () => {
  greet(question('drop-out', { droppedOut: true }));
  openPage();
  await shows('Keep on. It comes back.');
  server.io.emit('common', question('drop-out'));
  await vi.waitFor(() => expect(place.textContent).not.toContain('Keep on.'), WAIT);
  server.io.emit('common', {
    ...question('accents', { ask: 'a2' }),
    asking: { kind: 'accents', target: 0, grid: 'E8' },
  });
  server.io.emit('own', { ...own, ask: 'a2', answer: null, echo: true });
  await shows('the grid that sounds now is yours');
  server.io.emit('own', { ...own, ask: 'a2', answer: null });
  await vi.waitFor(() => expect(place.textContent).not.toContain('sounds now'), WAIT);
});

test.each([
  ['accents', [2, 1, 2, 1, 2, 1, 2, 1], [2, 1, 1, 1, 2, 1, 1, 1], 'Between light and heavy both are right.'],
  ['stroke-grid', Array(8).fill('down'), Array(8).fill('up'), 'The bars differ: yours is one of them.'],
])('of %s that are right and drawn otherwise, the phone says why', async (kind, answer, right, why) => {
  const asking = { kind, target: 0, grid: 'E8' };
  const drawn = (drawing: readonly unknown[]) => {
    server.io.emit('common', { ...question(kind), asking, phase: 'shown', truth: { answer: right, key: '' } });
    server.io.emit('own', { ...own, ask: 'a1', answer: drawing, mark: { credit: 1, exact: true } });
  };
  greet({ ...question(kind), asking }, { ...own, ask: 'a1', answer });
  openPage();
  await shows('It is in.');
  drawn(answer);
  await shows(why);
  drawn(right);
  await vi.waitFor(() => expect(place.textContent).not.toContain(why), WAIT);
  expect(place.textContent).toContain('Right.');
});

test('a drawn grid is told in words after the reveal, unless that would push the grid off a small page', async () => {
  const accents = [2, 1, 1, 2, 1, 1, 2, 0];
  const asking = { kind: 'accents', target: 0, grid: 'E8' };
  greet({ ...question('accents'), asking }, { ...own, ask: 'a1', answer: accents });
  openPage();
  await shows('It is in.');
  server.io.emit('common', { ...question('accents'), asking, phase: 'shown', truth: { answer: accents, key: '' } });
  server.io.emit('own', { ...own, ask: 'a1', answer: accents, mark: { credit: 0.6, exact: false } });
  await shows('You wrote: heavy on 1, 2-and and 4');
  // No line ends within a count, in the heading or beneath.
  const whole = () =>
    Array.from(place.querySelectorAll<HTMLElement>('span[style*=nowrap]'), (each) => each.textContent);
  await vi.waitFor(() => expect(whole()).toEqual(['2-and', '4-and', '2-and', '4-and']), WAIT);
  const roles = ['kick', 'closed', 'slap', 'open', 'kick', 'silent', 'slap', 'closed'];
  server.io.emit('common', {
    ...question('roles'),
    asking: { kind: 'roles', target: 0, grid: 'E8' },
    phase: 'shown',
    truth: { answer: roles, key: '' },
  });
  await shows('Here is how it went.');
});
