import * as v from 'valibot';
import {
  DEPTHS,
  FEELS,
  HIGHEST_CAPO,
  MOST_BARS_BEFORE_DROP_OUT,
  MOST_GROOVE_TEXT,
  NAMINGS,
  PITCH_RANGE,
  POLICIES,
  PROTOCOL_VERSION,
  VOICES,
  type Command,
  type Handshake,
  type Reason,
} from './messages.ts';
import { messageFaults } from './words/en.ts';
import { fill } from './words/fill.ts';

/** What arrived as a typed value, or why it cannot be one. */
export type Parsed<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly reason: Reason; readonly detail?: Readonly<Record<string, string | number>> };

/** Longest text of any field; what a name or a chord line may hold is for the room to judge. */
const MOST_TEXT = 4000;
const MOST_ID = 64;
/** Parts of one answer: as many as an answer has taps, which are the most. */
export const MOST_PARTS = 64;
/** Rounds in one planned lesson. */
const MOST_ITEMS = 24;
/** Kinds in one planned round: all that there are, and a few more than that for the room to name as none. */
const MOST_KINDS = 40;
const MOST_NUMBER = 1_000_000_000;

const text = v.pipe(v.string(), v.maxLength(MOST_TEXT));
const identifier = v.pipe(v.string(), v.minLength(1), v.maxLength(MOST_ID));
const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(MOST_NUMBER));
const number = v.pipe(v.number(), v.finite(), v.minValue(-MOST_NUMBER), v.maxValue(MOST_NUMBER));
const milliseconds = v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(MOST_NUMBER));

/** Any answer is short: a word, a place on the neck, a few keys, some taps. Its kind is judged by the question. */
const answerText = v.pipe(v.string(), v.maxLength(40));
const answerPart = v.union([answerText, number, v.boolean(), v.null()]);
const answerList = v.pipe(v.array(answerPart), v.maxLength(MOST_PARTS));
const answer = v.union([
  answerPart,
  answerList,
  v.pipe(
    v.custom<object>(isObject),
    v.record(answerText, v.union([answerPart, answerList])),
    v.check((fields) => Object.keys(fields).length <= 8),
  ),
]);

/** In the grid language, on several lines or on one; whether it is a groove is for the room to say. */
const grooveText = v.pipe(v.string(), v.minLength(1), v.maxLength(MOST_GROOVE_TEXT));

const fret = v.nullable(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(24)));
const soundSlot = v.strictObject({
  chord: v.pipe(v.string(), v.maxLength(16)),
  beats: v.pipe(v.number(), v.minValue(0.25), v.maxValue(64)),
  frets: v.pipe(v.array(fret), v.length(6)),
});
const reading = v.pipe(v.array(soundSlot), v.minLength(1), v.maxLength(16));
const band = { kit: v.boolean(), bass: v.boolean() };
const change = v.variant('kind', [
  v.strictObject({ kind: v.literal('full') }),
  v.strictObject({ kind: v.literal('again') }),
  v.strictObject({ kind: v.literal('hold'), slot: count }),
  v.strictObject({ kind: v.literal('pair'), slot: count }),
  v.strictObject({ kind: v.literal('bass-alone') }),
  v.strictObject({ kind: v.literal('root-alone'), slot: count }),
  v.strictObject({ kind: v.literal('muted') }),
  v.strictObject({ kind: v.literal('soft') }),
  v.strictObject({ kind: v.literal('settler'), index: count }),
  v.strictObject({ kind: v.literal('both'), ask: identifier, wrong: reading, right: reading }),
  v.strictObject({ kind: v.literal('silence') }),
  v.strictObject({ kind: v.literal('bass-forward') }),
  v.strictObject({ kind: v.literal('kit-only') }),
  v.strictObject({ kind: v.literal('chord-alone'), slot: count }),
  v.strictObject({ kind: v.literal('root-then-chord'), slot: count }),
  v.strictObject({
    kind: v.literal('drop-out'),
    after: v.exactOptional(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(MOST_BARS_BEFORE_DROP_OUT))),
  }),
  // Told by the host page alone: a desk plays it by PlayEcho.
  v.strictObject({ kind: v.literal('echo'), groove: grooveText }),
  v.strictObject({ kind: v.literal('tempo'), tempo: number }),
  v.strictObject({ kind: v.literal('climb'), to: number }),
  v.strictObject({ kind: v.literal('feel'), feel: v.picklist(FEELS) }),
  v.strictObject({ kind: v.literal('band'), ...band }),
]);
const tone = v.variant('kind', [
  v.strictObject({ kind: v.literal('reference') }),
  v.strictObject({ kind: v.literal('string'), string: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(6)) }),
  v.strictObject({ kind: v.literal('bass-check') }),
]);
const settings = v.strictObject({
  policy: v.exactOptional(v.picklist(POLICIES)),
  naming: v.exactOptional(v.picklist(NAMINGS)),
  capo: v.exactOptional(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(HIGHEST_CAPO))),
  slashIsNew: v.exactOptional(v.boolean()),
  qualities: v.exactOptional(v.pipe(v.array(identifier), v.maxLength(20))),
  namesShown: v.exactOptional(v.boolean()),
  soundFollows: v.exactOptional(v.boolean()),
  voice: v.exactOptional(v.picklist(VOICES)),
  pitch: v.exactOptional(v.pipe(v.number(), v.minValue(PITCH_RANGE[0]), v.maxValue(PITCH_RANGE[1]))),
  smallSpeaker: v.exactOptional(v.boolean()),
  band: v.exactOptional(v.strictObject(band)),
  beatLevel: v.exactOptional(number),
});
const directions = v.pipe(v.array(v.picklist(['up', 'down', 'same', 'usual'])), v.maxLength(64));

const echoOf = v.variant('grid', [
  v.strictObject({ grid: v.literal('student'), student: identifier }),
  v.strictObject({ grid: v.literal('class') }),
  v.strictObject({ grid: v.literal('right') }),
]);

const id = identifier;
const ask = identifier;
const round = identifier;
/** Unknown fields are refused: a page that sends them is not of this version. */
const command = v.variant('type', [
  v.strictObject({
    type: v.literal('Join'),
    id,
    name: text,
    leftHanded: v.boolean(),
    pair: v.boolean(),
    leftThumb: v.boolean(),
  }),
  v.strictObject({ type: v.literal('WriteAnswer'), id, ask, counter: count, answer, heldMs: milliseconds }),
  v.strictObject({ type: v.literal('CannotHear'), id, ask }),
  v.strictObject({
    type: v.literal('StartRound'),
    id,
    after: count,
    level: number,
    item: v.nullable(identifier),
    groove: v.nullable(identifier),
    contrast: v.nullable(identifier),
  }),
  v.strictObject({
    type: v.literal('PlanLesson'),
    id,
    items: v.pipe(
      v.array(
        v.strictObject({
          item: identifier,
          level: number,
          kinds: v.pipe(v.array(identifier), v.maxLength(MOST_KINDS)),
        }),
      ),
      v.maxLength(MOST_ITEMS),
    ),
  }),
  v.strictObject({
    type: v.literal('CorrectRound'),
    id,
    round,
    after: count,
    chords: text,
    groove: v.nullable(identifier),
    tempo: v.nullable(number),
    directions: v.nullable(directions),
    pointsMayFall: v.boolean(),
  }),
  v.strictObject({ type: v.literal('LetStand'), id, round, question: identifier, answer, stands: v.boolean() }),
  v.strictObject({ type: v.literal('StrikeQuestion'), id, round, question: identifier, struck: v.boolean() }),
  v.strictObject({ type: v.literal('PlayBoth'), id, ask }),
  v.strictObject({ type: v.literal('PlayEcho'), id, ask, of: echoOf }),
  v.strictObject({ type: v.literal('TickHand'), id, student: identifier, beat: number, played: v.boolean() }),
  v.strictObject({
    type: v.literal('StartGuitarRound'),
    id,
    after: count,
    chords: text,
    groove: v.nullable(identifier),
    tempo: v.nullable(number),
    directions: v.nullable(directions),
  }),
  v.strictObject({
    type: v.literal('OpenQuestion'),
    id,
    round,
    question: identifier,
    how: v.picklist(['phones', 'aloud', 'memory']),
  }),
  v.strictObject({ type: v.literal('CloseQuestion'), id, ask }),
  v.strictObject({ type: v.literal('ShowSpread'), id, ask }),
  v.strictObject({ type: v.literal('ShowAnswer'), id, ask }),
  v.strictObject({ type: v.literal('AnswerAgain'), id, ask }),
  v.strictObject({ type: v.literal('RequestPlay'), id, round }),
  v.strictObject({ type: v.literal('RequestChange'), id, round, change }),
  v.strictObject({ type: v.literal('RequestStop'), id }),
  v.strictObject({ type: v.literal('RequestTone'), id, tone }),
  v.strictObject({ type: v.literal('SaveGroove'), id, text: grooveText }),
  v.strictObject({ type: v.literal('EraseGroove'), id, groove: identifier }),
  v.strictObject({ type: v.literal('ChangeSettings'), id, settings }),
  v.strictObject({ type: v.literal('RenameStudent'), id, student: identifier, name: text }),
  v.strictObject({ type: v.literal('EraseStudent'), id, student: identifier }),
  v.strictObject({ type: v.literal('SetDepth'), id, student: identifier, depth: v.picklist(DEPTHS) }),
  v.strictObject({ type: v.literal('EndLesson'), id }),
  v.strictObject({ type: v.literal('CloseRoom'), id }),
  v.strictObject({ type: v.literal('HoldSound'), id, takeOver: v.boolean() }),
  v.strictObject({ type: v.literal('VampStarted'), id, round, tempo: number }),
  v.strictObject({ type: v.literal('ChangeTook'), id, round, change, bar: count }),
  v.strictObject({ type: v.literal('VampStopped'), id, round }),
  v.strictObject({ type: v.literal('SilenceKept'), id, round }),
]);

/** Whether there is such a room, and such a token in it, is for the room to say. */
const room = v.pipe(v.string(), v.maxLength(MOST_ID), v.toUpperCase());
const version = v.literal(PROTOCOL_VERSION);
const token = v.pipe(v.string(), v.maxLength(MOST_ID));
const page = v.pipe(v.string(), v.regex(/^[\w-]{16,64}$/));
const handshake = v.variant('role', [
  v.object({ role: v.literal('student'), room, version, token: v.exactOptional(token) }),
  v.object({ role: v.literal('host'), room, version, page: v.exactOptional(page) }),
  v.object({ role: v.literal('desk'), room, version }),
]);

/** Reads the payload of the socket event `command`. */
export function parseCommand(payload: unknown): Parsed<Command> {
  return outcome(v.safeParse(command, payload, { abortEarly: true }), payload, 'type');
}

/** Reads the handshake's `auth`; the room comes out in capitals. A page of another version is told so before anything else. */
export function parseHandshake(payload: unknown): Parsed<Handshake> {
  if (isObject(payload) && payload['version'] !== PROTOCOL_VERSION && typeof payload['version'] === 'number') {
    return { ok: false, reason: 'page-too-old' };
  }
  return outcome(v.safeParse(handshake, payload, { abortEarly: true }), payload, 'role');
}

/** Reads the body of POST /api/pair: six figures or letters, in any case and with spaces between. */
export function parsePairing(body: unknown): Parsed<{ readonly code: string }> {
  const code = v.pipe(
    v.string(),
    v.maxLength(40),
    v.transform((typed) => typed.replace(/[\s-]/g, '').toUpperCase()),
    v.regex(/^[A-Z0-9]{6}$/),
  );
  return outcome(v.safeParse(v.object({ code }), body, { abortEarly: true }), body, 'code');
}

type Outcome<T> =
  | { readonly success: true; readonly output: T }
  | { readonly success: false; readonly issues: readonly v.BaseIssue<unknown>[] };

function outcome<T>(result: Outcome<T>, payload: unknown, discriminator: string): Parsed<T> {
  if (result.success) return { ok: true, value: result.output };
  return { ok: false, reason: 'message-not-readable', detail: { what: fault(result.issues, payload, discriminator) } };
}

function fault(issues: readonly v.BaseIssue<unknown>[], payload: unknown, discriminator: string): string {
  const [issue] = issues;
  const field = issue && v.getDotPath(issue);
  if (!isObject(payload) || !issue || !field) return messageFaults.notAnObject;
  if (field === discriminator && issue.type === 'variant') {
    return fill(messageFaults.unknown, { field, found: shortened(payload[field]) });
  }
  if (issue.received === 'undefined') return fill(messageFaults.missing, { field });
  if (issue.expected === 'never') return fill(messageFaults.surplus, { field });
  return fill(messageFaults.field, { field, expected: issue.expected ?? messageFaults.other });
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function shortened(value: unknown): string {
  return typeof value === 'string' ? value.slice(0, 40) : typeof value;
}
