import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FEELS, PROTOCOL_VERSION, REASONS } from '../../../server/protocol/messages.ts';
import { parseCommand, parseHandshake, parsePairing } from '../../../server/protocol/parsers.ts';

const COMMANDS: readonly Record<string, unknown>[] = [
  { type: 'Join', id: 'i1', name: 'Ana', leftHanded: false, pair: false, leftThumb: true },
  { type: 'WriteAnswer', id: 'i1', ask: 'a1', counter: 3, answer: 'up', heldMs: 12.5 },
  { type: 'WriteAnswer', id: 'i1', ask: 'a1', counter: 3, answer: null, heldMs: 0 },
  { type: 'WriteAnswer', id: 'i1', ask: 'a1', counter: 3, answer: ['7M', '2M'], heldMs: 0 },
  { type: 'WriteAnswer', id: 'i1', ask: 'a1', counter: 3, answer: { string: 6, fret: 3 }, heldMs: 0 },
  { type: 'CannotHear', id: 'i1', ask: 'a1' },
  { type: 'StartRound', id: 'i1', after: 0, level: 2, item: null, groove: null, contrast: null },
  { type: 'StartGuitarRound', id: 'i1', after: 1, chords: 'Em D', groove: null, tempo: null, directions: null },
  {
    type: 'StartGuitarRound',
    id: 'i1',
    after: 1,
    chords: '| G . D . |',
    groove: 'waltz',
    tempo: 90,
    directions: ['up'],
  },
  { type: 'OpenQuestion', id: 'i1', round: 'r1', question: 'direction-1', how: 'phones' },
  { type: 'CloseQuestion', id: 'i1', ask: 'a1' },
  { type: 'ShowSpread', id: 'i1', ask: 'a1' },
  { type: 'ShowAnswer', id: 'i1', ask: 'a1' },
  { type: 'AnswerAgain', id: 'i1', ask: 'a1' },
  { type: 'RequestPlay', id: 'i1', round: 'r1' },
  { type: 'RequestChange', id: 'i1', round: 'r1', change: { kind: 'full' } },
  { type: 'RequestChange', id: 'i1', round: 'r1', change: { kind: 'hold', slot: 1 } },
  { type: 'RequestChange', id: 'i1', round: 'r1', change: { kind: 'bass-alone' } },
  { type: 'RequestChange', id: 'i1', round: 'r1', change: { kind: 'tempo', tempo: 88 } },
  { type: 'RequestStop', id: 'i1' },
  { type: 'ChangeSettings', id: 'i1', settings: {} },
  {
    type: 'ChangeSettings',
    id: 'i1',
    settings: { policy: 'relatives', qualities: ['major', 'minor'], namesShown: false },
  },
  { type: 'RenameStudent', id: 'i1', student: 's1', name: 'Ana B' },
  { type: 'EraseStudent', id: 'i1', student: 's1' },
  { type: 'EndLesson', id: 'i1' },
  { type: 'CloseRoom', id: 'i1' },
  { type: 'HoldSound', id: 'i1', takeOver: false },
  { type: 'VampStarted', id: 'i1', round: 'r1', tempo: 100 },
  { type: 'ChangeTook', id: 'i1', round: 'r1', change: { kind: 'full' }, bar: 4 },
  { type: 'VampStopped', id: 'i1', round: 'r1' },
  { type: 'SilenceKept', id: 'i1', round: 'r1' },
  { type: 'SetDepth', id: 'i1', student: 's1', depth: 'floor' },
  {
    type: 'ChangeSettings',
    id: 'i1',
    settings: { policy: 'modes', naming: 'fixed-do', capo: 9, slashIsNew: true },
  },
  { type: 'StartRound', id: 'i1', after: 0, level: 2, item: 'i7', groove: 'waltz', contrast: null },
  { type: 'PlanLesson', id: 'i1', items: [] },
  { type: 'PlanLesson', id: 'i1', items: [{ item: 'i7', level: 7, kinds: ['count', 'keys'] }] },
  {
    type: 'CorrectRound',
    id: 'i1',
    round: 'r1',
    after: 0,
    chords: 'Em D',
    groove: null,
    tempo: null,
    directions: ['usual'],
    pointsMayFall: false,
  },
  { type: 'LetStand', id: 'i1', round: 'r1', question: 'numeral-0', answer: ['vi', 'V'], stands: true },
  { type: 'StrikeQuestion', id: 'i1', round: 'r1', question: 'numeral-0', struck: true },
  { type: 'PlayBoth', id: 'i1', ask: 'a1' },
  { type: 'OpenQuestion', id: 'i1', round: 'r1', question: 'direction-1', how: 'aloud' },
  { type: 'OpenQuestion', id: 'i1', round: 'r1', question: 'direction-1', how: 'memory' },
  { type: 'RequestChange', id: 'i1', round: 'r1', change: { kind: 'again' } },
  { type: 'RequestChange', id: 'i1', round: 'r1', change: { kind: 'pair', slot: 1 } },
  { type: 'RequestChange', id: 'i1', round: 'r1', change: { kind: 'root-alone', slot: 0 } },
  { type: 'RequestChange', id: 'i1', round: 'r1', change: { kind: 'muted' } },
  { type: 'RequestChange', id: 'i1', round: 'r1', change: { kind: 'soft' } },
  { type: 'RequestChange', id: 'i1', round: 'r1', change: { kind: 'settler', index: 1 } },
  { type: 'RequestChange', id: 'i1', round: 'r1', change: { kind: 'silence' } },
  {
    type: 'ChangeTook',
    id: 'i1',
    round: 'r1',
    change: {
      kind: 'both',
      ask: 'a1',
      wrong: [{ chord: 'E', beats: 4, frets: [0, 2, 2, 1, 0, 0] }],
      right: [{ chord: 'D', beats: 4, frets: [null, null, 0, 2, 3, 2] }],
    },
    bar: 8,
  },
  { type: 'ChangeSettings', id: 'i1', settings: { soundFollows: false } },
  ...[
    { kind: 'bass-forward' },
    { kind: 'kit-only' },
    { kind: 'chord-alone', slot: 1 },
    { kind: 'root-then-chord', slot: 0 },
    { kind: 'drop-out' },
    { kind: 'drop-out', after: 0 },
    { kind: 'drop-out', after: 4 },
    { kind: 'echo', groove: 'x'.repeat(1500) },
    { kind: 'climb', to: 120 },
    ...FEELS.map((feel) => ({ kind: 'feel', feel })),
    { kind: 'band', kit: true, bass: false },
  ].flatMap((change) => [
    { type: 'RequestChange', id: 'i1', round: 'r1', change },
    { type: 'ChangeTook', id: 'i1', round: 'r1', change, bar: 4 },
  ]),
  ...[{ kind: 'reference' }, { kind: 'string', string: 1 }, { kind: 'string', string: 6 }, { kind: 'bass-check' }].map(
    (tone) => ({ type: 'RequestTone', id: 'i1', tone }),
  ),
  { type: 'StartRound', id: 'i1', after: 0, level: 2, item: null, groove: null, contrast: 'drive' },
  { type: 'PlayEcho', id: 'i1', ask: 'a1', of: { grid: 'student', student: 's1' } },
  { type: 'PlayEcho', id: 'i1', ask: 'a1', of: { grid: 'class' } },
  { type: 'PlayEcho', id: 'i1', ask: 'a1', of: { grid: 'right' } },
  { type: 'TickHand', id: 'i1', student: 's1', beat: 3, played: true },
  { type: 'ChangeSettings', id: 'i1', settings: { beatLevel: 8 } },
  {
    type: 'WriteAnswer',
    id: 'i1',
    ask: 'a1',
    counter: 3,
    answer: Array.from({ length: 64 }, (_, i) => i * 500.5),
    heldMs: 0,
  },
  {
    type: 'WriteAnswer',
    id: 'i1',
    ask: 'a1',
    counter: 3,
    answer: { taps: Array.from({ length: 64 }, (_, i) => i * 500.5), silentFrom: 9 },
    heldMs: 0,
  },
  { type: 'SaveGroove', id: 'i1', text: 'x'.repeat(1500) },
  { type: 'EraseGroove', id: 'i1', groove: 'our-groove' },
  ...[415, 440.5, 466].map((pitch) => ({
    type: 'ChangeSettings',
    id: 'i1',
    settings: { voice: 'clean', pitch, smallSpeaker: true, band: { kit: true, bass: true } },
  })),
];

describe('commands', () => {
  test.each(COMMANDS)('$type is read as it was sent', (command) => {
    expect(parseCommand(command)).toEqual({ ok: true, value: command });
  });

  test.each(COMMANDS)(
    '$type without one of its fields, or with one more, is refused by the name of the field',
    (command) => {
      for (const field of Object.keys(command).filter((name) => name !== 'type')) {
        const { [field]: _taken, ...rest } = command;
        const parsed = parseCommand(rest);
        expect(parsed).toMatchObject({ ok: false, reason: 'message-not-readable' });
        expect(JSON.stringify(parsed)).toContain(`field ${field} is missing`);
      }
      expect(JSON.stringify(parseCommand({ ...command, extra: 1 }))).toContain('extra');
    },
  );

  test.each<[unknown, string]>([
    [undefined, 'no object'],
    [null, 'no object'],
    ['Join', 'no object'],
    [[], 'no object'],
    [[COMMANDS[0]], 'no object'],
    [Buffer.from('Join'), 'type'],
    [{}, 'type'],
    [{ type: 'Nope' }, 'Nope'],
    [{ type: { toString: 'Join' } }, 'type'],
    [{ ...COMMANDS[0], name: { length: 3 } }, 'name'],
    [{ ...COMMANDS[0], name: 'x'.repeat(5000) }, 'name'],
    [{ ...COMMANDS[0], id: '' }, 'id'],
    [{ ...COMMANDS[0], id: 'x'.repeat(65) }, 'id'],
    [{ ...COMMANDS[0], pair: 1 }, 'pair'],
    [{ ...COMMANDS[1], counter: Infinity }, 'counter'],
    [{ ...COMMANDS[1], counter: -1 }, 'counter'],
    [{ ...COMMANDS[1], counter: 1.5 }, 'counter'],
    [{ ...COMMANDS[1], heldMs: Number.NaN }, 'heldMs'],
    [{ ...COMMANDS[1], answer: { a: { b: {} } } }, 'answer'],
    [{ ...COMMANDS[1], answer: [[1]] }, 'answer'],
    [{ ...COMMANDS[1], answer: 'x'.repeat(41) }, 'answer'],
    [{ ...COMMANDS[1], answer: Array.from({ length: 65 }, (_, i) => i) }, 'answer'],
    [{ ...COMMANDS[15], change: { kind: 'hold', slot: -1 } }, 'slot'],
    [{ ...COMMANDS[15], change: { kind: 'loud' } }, 'kind'],
    [{ ...COMMANDS[21], settings: { policy: 'all' } }, 'policy'],
    [{ ...COMMANDS[21], settings: { naming: 'italian' } }, 'naming'],
    [{ ...COMMANDS[21], settings: { capo: 10 } }, 'capo'],
    [{ ...COMMANDS[21], settings: { capo: 1.5 } }, 'capo'],
    [{ ...COMMANDS[21], settings: { pitch: 414.9 } }, 'pitch'],
    [{ ...COMMANDS[21], settings: { pitch: 466.1 } }, 'pitch'],
    [{ ...COMMANDS[21], settings: { pitch: '440' } }, 'pitch'],
    [{ ...COMMANDS[21], settings: { pitch: Number.NaN } }, 'pitch'],
    [{ ...COMMANDS[21], settings: { voice: 'piano' } }, 'voice'],
    [{ ...COMMANDS[21], settings: { smallSpeaker: 1 } }, 'smallSpeaker'],
    [{ ...COMMANDS[21], settings: { band: { kit: true } } }, 'bass'],
    [{ ...COMMANDS[21], settings: { band: { kit: true, bass: true, horns: true } } }, 'horns'],
    // Grooves are kept one by one.
    [{ ...COMMANDS[21], settings: { grooves: [] } }, 'grooves'],
    [{ ...COMMANDS[15], change: { kind: 'chord-alone', slot: 0.5 } }, 'slot'],
    [{ ...COMMANDS[15], change: { kind: 'climb', to: Infinity } }, 'to'],
    [{ ...COMMANDS[15], change: { kind: 'feel', feel: 'sad' } }, 'feel'],
    [{ ...COMMANDS[15], change: { kind: 'band', kit: true } }, 'bass'],
    [{ ...COMMANDS[15], change: { kind: 'kit-only', slot: 0 } }, 'slot'],
    ...[-1, 5, 0.5, '2'].map((after): [unknown, string] => [
      { ...COMMANDS[15], change: { kind: 'drop-out', after } },
      'after',
    ]),
    [{ ...COMMANDS[15], change: { kind: 'echo', groove: '' } }, 'groove'],
    [{ type: 'PlayEcho', id: 'i1', ask: 'a1', of: { grid: 'mine' } }, 'grid'],
    [{ type: 'PlayEcho', id: 'i1', ask: 'a1', of: { grid: 'student' } }, 'student'],
    [{ type: 'PlayEcho', id: 'i1', ask: 'a1', of: { grid: 'class', student: 's1' } }, 'student'],
    [{ type: 'TickHand', id: 'i1', student: 's1', beat: '3', played: true }, 'beat'],
    [{ ...COMMANDS[21], settings: { beatLevel: 'three' } }, 'beatLevel'],
    [{ type: 'RequestTone', id: 'i1', tone: { kind: 'string', string: 0 } }, 'string'],
    [{ type: 'RequestTone', id: 'i1', tone: { kind: 'string', string: 7 } }, 'string'],
    [{ type: 'RequestTone', id: 'i1', tone: { kind: 'string', string: 1.5 } }, 'string'],
    [{ type: 'RequestTone', id: 'i1', tone: { kind: 'horn' } }, 'kind'],
    [{ type: 'SaveGroove', id: 'i1', text: '' }, 'text'],
    [{ type: 'SaveGroove', id: 'i1', text: 'x'.repeat(1501) }, 'text'],
    [{ type: 'EraseGroove', id: 'i1', groove: 'x'.repeat(65) }, 'groove'],
  ])('%j is refused, and what was wrong is named: %s', (payload, named) => {
    const parsed = parseCommand(payload);
    expect(parsed).toMatchObject({ ok: false, reason: 'message-not-readable' });
    expect(JSON.stringify(parsed)).toContain(named);
    expect(JSON.stringify(parsed).length).toBeLessThan(400);
  });

  test('whatever arrives is read or refused, never thrown at', () => {
    const anything = fc.oneof(fc.anything({ withBigInt: true, withDate: true, withMap: true }), fc.jsonValue());
    const mutant = fc
      .tuple(fc.constantFrom(...COMMANDS), fc.string(), anything)
      .map(([command, field, value]) => ({ ...command, [field]: value }));
    const swapped = fc
      .tuple(fc.constantFrom(...COMMANDS), fc.nat(8), anything)
      .map(([command, place, value]) => ({ ...command, [Object.keys(command)[place] ?? 'id']: value }));
    fc.assert(
      fc.property(fc.oneof(anything, mutant, swapped), (payload) => {
        const parsed = parseCommand(payload);
        return parsed.ok || REASONS.includes(parsed.reason);
      }),
      { numRuns: 2000 },
    );
  });

  test('a deep object does not exhaust the reader', () => {
    let deep: unknown = 'end';
    for (let level = 0; level < 10_000; level += 1) deep = { a: deep };
    expect(parseCommand(deep).ok).toBe(false);
    expect(parseCommand({ ...COMMANDS[1], answer: deep }).ok).toBe(false);
  });

  test('names of the language’s own machinery are no fields', () => {
    const parsed = parseCommand(
      JSON.parse('{"type":"Join","id":"i","__proto__":{"leftHanded":true},"name":"a","pair":false,"leftThumb":false}'),
    );
    expect(parsed.ok).toBe(false);
    expect(({} as Record<string, unknown>)['leftHanded']).toBeUndefined();
  });
});

describe('handshakes', () => {
  const version = PROTOCOL_VERSION;
  test('are read, the room in capitals', () => {
    const token = '0123456789abcdef0123456789abcdef';
    expect(parseHandshake({ role: 'student', room: 'wakur', version, token })).toEqual({
      ok: true,
      value: { role: 'student', room: 'WAKUR', version, token },
    });
    expect(parseHandshake({ role: 'desk', room: 'WAKUR', version }).ok).toBe(true);
    expect(parseHandshake({ role: 'host', room: 'WAKUR', version, page: 'p-0123456789abcdef' }).ok).toBe(true);
  });
  test.each([version - 1, version + 1, 0.5])(
    'a page of version %d is told to reload, whatever else it says',
    (other) => {
      expect(parseHandshake({ role: 'student', room: 'WAKUR', version: other })).toEqual({
        ok: false,
        reason: 'page-too-old',
      });
      expect(parseHandshake({ version: other, newField: true })).toEqual({ ok: false, reason: 'page-too-old' });
    },
  );
  test.each<unknown>([
    undefined,
    null,
    'x',
    [],
    {},
    { version },
    { role: 'student', version },
    { role: 'admin', room: 'WAKUR', version },
    { role: 'student', room: 5, version },
    { role: 'student', room: 'W'.repeat(100), version },
    { role: 'student', room: 'WAKUR' },
    { role: 'host', room: 'WAKUR', version, page: '<script>' },
  ])('%j is refused', (auth) => {
    expect(parseHandshake(auth)).toMatchObject({ ok: false, reason: 'message-not-readable' });
  });
});

describe('pairing', () => {
  test.each(['ABC234', 'abc234', ' abc 234 ', 'ABC-234'])('%j is read as the six signs', (code) => {
    expect(parsePairing({ code })).toEqual({ ok: true, value: { code: 'ABC234' } });
  });
  test.each<unknown>([
    undefined,
    {},
    { code: 123_456 },
    { code: 'ABC23' },
    { code: 'ABC2345' },
    { code: 'ÄBC234' },
    [],
  ])('%j is refused', (body) =>
    expect(parsePairing(body)).toMatchObject({ ok: false, reason: 'message-not-readable' }),
  );
});
