import {
  ACCENTS,
  CHANGES,
  GRIDS,
  slotSounds,
  STROKES,
  swingCap,
  TEMPO_LIMITS,
  TOUCHES,
  ZONES,
  type Groove,
  type GrooveSlot,
} from './groove-grid.ts';
import { BEATS_PER_BAR } from './meters.ts';

/** Lanes that every groove has; `chg` stands only where a stroke pushes. */
const LANES = ['strk', 'zone', 'tch', 'acc'] as const;
const PUSHES = 'chg';
type Lane = (typeof LANES)[number] | typeof PUSHES;
const LANE_NAMES = [...LANES, PUSHES].flatMap((lane) => [lane, `open-${lane}`]);

/** Between the header and the lanes of a groove in one line. */
const BETWEEN = ' / ';

/** The widest swing that a groove may name; above it the short note is an ornament of the long one. */
const WIDEST_SWING = 9;

type Place = {
  /** Which line it is, from 1; in the one-line form which part. */
  readonly line: number;
  /** Null for the header. */
  readonly lane: string | null;
  /** From 1; null where the whole lane is at fault. */
  readonly slot: number | null;
};

/** A fault in a groove's text: where, and what would be right. A text of one line is told by its lanes, others by their lines. */
export class GrooveError extends Error {
  override readonly name = 'GrooveError';
  readonly line: number;
  readonly lane: string | null;
  readonly slot: number | null;
  constructor({ line, lane, slot }: Place, oneLine: boolean, fault: string) {
    const where = oneLine ? (lane === null ? 'header' : `lane ${lane}`) : `line ${line}`;
    super(`Groove, ${where}${slot === null ? '' : `, slot ${slot}`}: ${fault}`);
    this.line = line;
    this.lane = lane;
    this.slot = slot;
  }
}

type Fault = (place: Place, sentence: string) => GrooveError;

function isKey<T extends object>(table: T, token: string): token is Extract<keyof T, string> {
  return Object.hasOwn(table, token);
}

function range(text: string): [number, number] | null {
  const match = /^(\d+(?:\.\d+)?)(?:(?:-|\.\.)(\d+(?:\.\d+)?))?$/.exec(text);
  if (!match) return null;
  return [Number(match[1]), Number(match[2] ?? match[1])];
}

function readHeader(header: string, faultAt: Fault): Omit<Groove, 'slots' | 'opening' | 'text'> {
  const fault = (sentence: string) => faultAt({ line: 1, lane: null, slot: null }, sentence);
  const fields = header.split('|').map((field) => field.trim());
  const [title = '', grid = '', meter = '', tempoText = '', swingText = ''] = fields;
  if (fields.length < 5 || fields.length > 6)
    throw fault(`"${header}" must be a header: "id, name | grid | meter | tempo | r=swing | note".`);
  const [, id, name] = /^([a-z][a-z0-9]*(?:-[a-z0-9]+)*),\s*(\S.*)$/.exec(title) ?? [];
  if (id === undefined || name === undefined)
    throw fault(`"${title}" must be a kebab-case id, a comma and a name: "quarter-downs, Quarter downs".`);
  if (/(^|\s)\/(\s|$)/.test(name))
    throw fault(`"${name}" must stand in one line: a slash in a name has no spaces round it.`);
  if (!isKey(GRIDS, grid)) throw fault(`"${grid}" is no grid; use one of ${Object.keys(GRIDS).join(' ')}.`);
  const facts = GRIDS[grid];
  if (meter !== facts.meter) throw fault(`grid ${grid} is in ${facts.meter}, not "${meter}".`);
  const [slowest, fastest] = TEMPO_LIMITS;
  const tempo = range(tempoText);
  if (!tempo || tempo[0] < slowest || tempo[0] > tempo[1] || tempo[1] > fastest)
    throw fault(`"${tempoText}" must be a tempo range between ${slowest} and ${fastest}, low first: "60-116".`);
  const swing = swingText.startsWith('r=') ? range(swingText.slice(2)) : null;
  if (!swing || swing[0] < 1 || swing[0] > swing[1] || swing[1] > WIDEST_SWING)
    throw fault(`"${swingText}" must be a swing ratio from 1 to ${WIDEST_SWING}, low first: "r=1" or "r=1..1.5".`);
  if (!facts.swings && swing[1] > 1) throw fault(`"${swingText}" swings, but grid ${grid} is straight: "r=1".`);
  const pairsPerBeat = facts.slots / facts.bars / BEATS_PER_BAR[facts.meter] / 2;
  const cap = swingCap(tempo[1] * pairsPerBeat);
  if (swing[0] > 1 && swing[0] > cap)
    throw fault(`a swing of ${swing[0]} leaves the short note under 100 ms at ${tempo[1]}; at most ${cap.toFixed(2)}.`);
  return { id, name, grid, meter: facts.meter, tempo, swing };
}

type Tokens = { readonly line: number; readonly name: string; readonly tokens: readonly string[] };
type Lanes = Readonly<Record<Exclude<Lane, typeof PUSHES>, Tokens>> & { readonly chg: Tokens | null };

const SOUNDING_TOKENS = { zone: 'one of B b L M H A', tch: 'one of o r c h p x', acc: '1, 2 or 3' } as const;
const SILENT_TOKENS = { zone: '"."', tch: '"."', acc: '"0"' } as const;

function readSlots(lanes: Lanes, count: number, perBar: number, faultAt: Fault): GrooveSlot[] {
  for (const { line, name, tokens } of [...LANES.map((lane) => lanes[lane]), ...(lanes.chg ? [lanes.chg] : [])]) {
    if (tokens.length === count) continue;
    const slot = Math.min(tokens.length, count) + 1;
    throw faultAt({ line, lane: name, slot }, `${name} has ${tokens.length} slots, not ${count}.`);
  }
  function pick<T extends object>({ line, name, tokens }: Tokens, table: T, index: number): T[keyof T] {
    const token = tokens[index] ?? '';
    if (isKey(table, token)) return table[token];
    const sentence = `"${token}" is no ${name}; use one of ${Object.keys(table).join(' ')}.`;
    throw faultAt({ line, lane: name, slot: index + 1 }, sentence);
  }
  const slots = Array.from({ length: count }, (_, index): GrooveSlot => {
    const slot: GrooveSlot = {
      stroke: pick(lanes.strk, STROKES, index),
      zone: pick(lanes.zone, ZONES, index),
      touch: pick(lanes.tch, TOUCHES, index),
      accent: pick(lanes.acc, ACCENTS, index),
      ...(lanes.chg && pick(lanes.chg, CHANGES, index) ? { pushes: true } : {}),
    };
    const sounds = slotSounds(slot);
    const stroke = lanes.strk.tokens[index] ?? '';
    const refuse = ({ line, name }: Tokens, sentence: string) =>
      faultAt({ line, lane: name, slot: index + 1 }, sentence);
    for (const lane of ['zone', 'tch', 'acc'] as const) {
      const said = { zone: slot.zone !== 'none', tch: slot.touch !== 'none', acc: slot.accent !== 0 }[lane];
      if (said === sounds) continue;
      const rule = sounds ? `stroke ${stroke} sounds` : `stroke ${stroke} is silent`;
      const right = (sounds ? SOUNDING_TOKENS : SILENT_TOKENS)[lane];
      const { name, tokens } = lanes[lane];
      throw refuse(lanes[lane], `${rule}, but ${name} says "${tokens[index] ?? ''}"; write ${right}.`);
    }
    if (slot.stroke === 'pinch' && (slot.zone === 'root' || slot.zone === 'other-bass')) {
      const zone = lanes.zone.tokens[index] ?? '';
      throw refuse(lanes.zone, `a pinch takes several strings, zone ${zone} has one; write A, or stroke T.`);
    }
    if (slot.pushes && !sounds && lanes.chg)
      throw refuse(lanes.chg, `stroke ${stroke} is silent and pushes nothing; write ".", or let it sound.`);
    if (slot.pushes && slot.zone !== 'all')
      throw refuse(lanes.zone, `a push sounds the whole chord, not zone ${lanes.zone.tokens[index] ?? ''}; write A.`);
    if (slot.pushes && slot.touch !== 'open' && slot.touch !== 'ring')
      throw refuse(
        lanes.tch,
        `a push rings over the bar line, touch ${lanes.tch.tokens[index] ?? ''} stops; write o or r.`,
      );
    return slot;
  });
  const late = slots.findIndex((slot, index) => {
    const barStart = index - (index % perBar);
    return slotSounds(slot) && slots.slice(barStart, index).some(({ pushes }) => pushes);
  });
  if (late !== -1 && lanes.chg) {
    const { line, name } = lanes.chg;
    throw faultAt(
      { line, lane: name, slot: late + 1 },
      'after a push nothing sounds until the next bar; put ">" on the last stroke of its bar.',
    );
  }
  return slots;
}

/** The header and the lanes of a groove's text, one each, in either form. */
export function grooveLines(text: string): { readonly lines: readonly string[]; readonly oneLine: boolean } {
  const lines = text.trim().split(/\r?\n/);
  const oneLine = lines.length === 1;
  return { lines: oneLine ? (lines[0] ?? '').split(/\s+\/\s+/) : lines, oneLine };
}

/**
 * Reads one groove: a header and the lanes `strk`, `zone`, `tch`, `acc` and, where a stroke pushes, `chg`, one token a slot with or
 * without spaces between; the lanes `open-strk` and so on, all or none, give the first bar of each chord. Each stands on a line of its
 * own, or all in one line with ` / ` between. An up may take a bass zone, as alternate picking does; a pinch may not, and a push is
 * the last stroke of its bar. Throws `GrooveError` with the place of the first fault.
 */
export function parseGroove(text: string): Groove {
  const { lines, oneLine } = grooveLines(text);
  const fault: Fault = (place, sentence) => new GrooveError(place, oneLine, sentence);
  const header = readHeader(lines[0] ?? '', fault);
  const found = new Map<string, Tokens>();
  for (const [index, row] of lines.entries()) {
    const [name = '', ...rest] = row.trim().split(/\s+/);
    if (index === 0 || name === '') continue;
    const place = { line: index + 1, lane: name, slot: null };
    if (!LANE_NAMES.includes(name)) throw fault(place, `"${name}" is no lane; use ${LANE_NAMES.join(' ')}.`);
    if (found.has(name)) throw fault(place, `${name} is given twice; keep one.`);
    found.set(name, { line: index + 1, name, tokens: Array.from(rest.join('')) });
  }
  const lanes = (prefix: string): Lanes => {
    const lane = (name: Lane): Tokens => {
      const tokens = found.get(prefix + name);
      if (tokens) return tokens;
      const place = { line: lines.length, lane: prefix + name, slot: null };
      throw fault(place, `the lane ${prefix}${name} is missing; give it one token a slot.`);
    };
    const chg = found.get(prefix + PUSHES) ?? null;
    return { strk: lane('strk'), zone: lane('zone'), tch: lane('tch'), acc: lane('acc'), chg };
  };
  const { slots: count, bars } = GRIDS[header.grid];
  const slots = readSlots(lanes(''), count, count / bars, fault);
  if (!slots.some(slotSounds))
    throw fault(
      { line: found.get('strk')?.line ?? 1, lane: 'strk', slot: null },
      'no stroke sounds; use D, U, P, T or F at least once.',
    );
  const groove = { ...header, slots, text };
  if (![...found.keys()].some((name) => name.startsWith('open-'))) return groove;
  return { ...groove, opening: readSlots(lanes('open-'), count / bars, count / bars, fault) };
}

function tokenOf(table: object, meaning: unknown): string {
  return Object.entries(table).find(([, value]) => value === meaning)?.[0] ?? '';
}

function laneLines(slots: readonly GrooveSlot[], prefix: string): string[] {
  const line = (lane: Lane, token: (slot: GrooveSlot) => string) => `${prefix}${lane} ${slots.map(token).join('')}`;
  return [
    line('strk', ({ stroke }) => tokenOf(STROKES, stroke)),
    line('zone', ({ zone }) => tokenOf(ZONES, zone)),
    line('tch', ({ touch }) => tokenOf(TOUCHES, touch)),
    line('acc', ({ accent }) => tokenOf(ACCENTS, accent)),
    ...(slots.some(({ pushes }) => pushes) ? [line(PUSHES, ({ pushes }) => tokenOf(CHANGES, pushes === true))] : []),
  ];
}

const upTo = ([low, high]: readonly [number, number], between: string) =>
  low === high ? `${low}` : `${low}${between}${high}`;

/** A groove in one line, which `parseGroove` reads back as the same groove; its note is left out. */
export function grooveLine(groove: Omit<Groove, 'text'>): string {
  const { id, name, grid, meter, tempo, swing, slots, opening } = groove;
  const header = `${id}, ${name} | ${grid} | ${meter} | ${upTo(tempo, '-')} | r=${upTo(swing, '..')}`;
  return [header, ...laneLines(slots, ''), ...(opening ? laneLines(opening, 'open-') : [])].join(BETWEEN);
}

/** A groove's text with the root in the place of the other bass, so that the bass never moves inside a chord. */
export function withRootBass(text: string): string {
  return text.replaceAll(
    /(?<=^|\s\/\s)((?:open-)?zone\s)([^/\n]*)/gm,
    (_, lane: string, tokens: string) => lane + tokens.replaceAll('b', 'B'),
  );
}
