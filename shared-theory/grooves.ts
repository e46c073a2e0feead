import { GROOVE_TEXTS } from './groove-catalogue.ts';
import { BEATS_PER_BAR } from './meters.ts';
import type { Touch } from './perform.ts';
import type { Meter } from './vamps.ts';

/** One slot of the grid: what the hand does, where, how, how heavily. */
export type GrooveSlot = {
  /**
   * `down-silent` and `up-silent` move without touching. Without a pick: the thumb alone, the fingers alone, or both at once, which
   * pinch the bass and the high strings.
   */
  readonly stroke: 'down' | 'up' | 'pinch' | 'thumb' | 'fingers' | 'down-silent' | 'up-silent' | 'none';
  /**
   * Which strings: root bass, other bass (the fifth or the next string), low three, middle four, high three (more where a
   * chord needs them), all.
   */
  readonly zone: 'root' | 'other-bass' | 'low' | 'middle' | 'high' | 'all' | 'none';
  readonly touch: Touch | 'none';
  /** 0 silent, 1 light, 2 medium, 3 heavy. */
  readonly accent: 0 | 1 | 2 | 3;
  /** It sounds what the next bar begins with already, and rings over: the first slot there is then a silent pass. */
  readonly pushes?: true;
};

/** A strumming pattern read from the grid language. */
export type Groove = {
  /** Kebab name, e.g. `relaxed-alternate`. */
  readonly id: string;
  readonly name: string;
  readonly grid: 'E8' | 'S16' | 'T12' | 'C6' | 'W6' | 'E16' | 'V7';
  readonly meter: Meter;
  /** Lowest and highest tempo, beats a minute. */
  readonly tempo: readonly [number, number];
  /** Long to short eighth, lowest and highest; 1 is straight. */
  readonly swing: readonly [number, number];
  /** One pattern (one bar; two bars for E16). */
  readonly slots: readonly GrooveSlot[];
  /** Replaces `slots` in the first bar of each chord, so that its quality is heard; absent where not needed. */
  readonly opening?: readonly GrooveSlot[];
  /** The text it was read from: a round stores this. */
  readonly text: string;
};

type Grid = Groove['grid'];

/** Facts of each grid: its meter, slots in the pattern, bars the pattern lasts, and whether its pairs of slots may swing. */
const GRIDS: Readonly<Record<Grid, { meter: Meter; slots: number; bars: number; swings: boolean }>> = {
  E8: { meter: '4/4', slots: 8, bars: 1, swings: true },
  S16: { meter: '4/4', slots: 16, bars: 1, swings: true },
  T12: { meter: '12/8', slots: 12, bars: 1, swings: false },
  C6: { meter: '6/8', slots: 6, bars: 1, swings: false },
  W6: { meter: '3/4', slots: 6, bars: 1, swings: true },
  E16: { meter: '4/4', slots: 16, bars: 2, swings: true },
  V7: { meter: '7/8', slots: 7, bars: 1, swings: false },
};

const STROKES = { D: 'down', U: 'up', d: 'down-silent', u: 'up-silent', '-': 'none' } as const;
const ZONES = { B: 'root', b: 'other-bass', L: 'low', M: 'middle', H: 'high', A: 'all', '.': 'none' } as const;
const TOUCHES = { p: 'palm', x: 'dead', c: 'choke', o: 'open', '.': 'none' } as const;
const ACCENTS = { '0': 0, '1': 1, '2': 2, '3': 3 } as const;

const LANES = ['strk', 'zone', 'tch', 'acc'] as const;
type Lane = (typeof LANES)[number];

/** A fault in a groove's text; `line` counts from 1, `slot` from 1 or null where the whole line is at fault. */
export class GrooveError extends Error {
  override readonly name = 'GrooveError';
  readonly line: number;
  readonly slot: number | null;
  constructor(line: number, slot: number | null, fault: string) {
    super(`Groove, line ${line}${slot === null ? '' : `, slot ${slot}`}: ${fault}`);
    this.line = line;
    this.slot = slot;
  }
}

/** The highest lawful long-to-short ratio: the short note keeps 100 ms. `tempo` in beats a minute. */
export function swingCap(tempo: number): number {
  return (60_000 / tempo - 100) / 100;
}

/** Slots of the groove's grid in one bar. */
export function slotsPerBar(groove: Groove): number {
  return GRIDS[groove.grid].slots / GRIDS[groove.grid].bars;
}

/** Beats that one slot lasts, swing apart. */
export function beatsPerSlot(groove: Groove): number {
  return BEATS_PER_BAR[groove.meter] / slotsPerBar(groove);
}

/** A groove's text with the root in the place of the other bass, so that the bass never moves inside a chord. */
export function withRootBass(text: string): string {
  return text.replaceAll(/^(?:open-)?zone\b.*$/gm, (lane) => lane.replaceAll(/\bb\b/g, 'B'));
}

/** True where the groove's sounding strokes are downs alone; false where any is an up. */
export function allDowns(groove: Groove): boolean {
  return [...groove.slots, ...(groove.opening ?? [])].every((slot) => slot.stroke !== 'up');
}

function isKey<T extends object>(table: T, token: string): token is Extract<keyof T, string> {
  return Object.hasOwn(table, token);
}

function range(text: string): [number, number] | null {
  const match = /^(\d+(?:\.\d+)?)(?:(?:-|\.\.)(\d+(?:\.\d+)?))?$/.exec(text);
  if (!match) return null;
  return [Number(match[1]), Number(match[2] ?? match[1])];
}

function readHeader(header: string): Omit<Groove, 'slots' | 'opening' | 'text'> {
  const fault = (sentence: string) => new GrooveError(1, null, sentence);
  const fields = header.split('|').map((field) => field.trim());
  const [title = '', grid = '', meter = '', tempoText = '', swingText = ''] = fields;
  if (fields.length < 5 || fields.length > 6)
    throw fault('a header reads "id, name | grid | meter | tempo | r=swing | note".');
  const [, id, name] = /^([a-z]+(?:-[a-z]+)*),\s*(\S.*)$/.exec(title) ?? [];
  if (id === undefined || name === undefined)
    throw fault(`"${title}" must be a kebab-case id, a comma and a name: "quarter-downs, Quarter downs".`);
  if (!isKey(GRIDS, grid)) throw fault(`"${grid}" is no grid; use one of ${Object.keys(GRIDS).join(' ')}.`);
  const facts = GRIDS[grid];
  if (meter !== facts.meter) throw fault(`grid ${grid} is in ${facts.meter}, not "${meter}".`);
  const tempo = range(tempoText);
  if (!tempo || tempo[0] < 30 || tempo[0] > tempo[1] || tempo[1] > 300)
    throw fault(`"${tempoText}" must be a tempo range between 30 and 300, low first: "60-116".`);
  const swing = swingText.startsWith('r=') ? range(swingText.slice(2)) : null;
  if (!swing || swing[0] < 1 || swing[0] > swing[1])
    throw fault(`"${swingText}" must be a swing ratio from 1, low first: "r=1" or "r=1..1.5".`);
  if (!facts.swings && swing[1] > 1) throw fault(`grid ${grid} is straight: "r=1".`);
  const pairsPerBeat = facts.slots / facts.bars / BEATS_PER_BAR[facts.meter] / 2;
  const cap = swingCap(tempo[1] * pairsPerBeat);
  if (swing[0] > 1 && swing[0] > cap)
    throw fault(`a swing of ${swing[0]} leaves the short note under 100 ms at ${tempo[1]}; at most ${cap.toFixed(2)}.`);
  return { id, name, grid, meter: facts.meter, tempo, swing };
}

type Tokens = { readonly line: number; readonly tokens: readonly string[] };

function readSlots(lanes: Readonly<Record<Lane, Tokens>>, count: number): GrooveSlot[] {
  for (const lane of LANES) {
    const { line, tokens } = lanes[lane];
    if (tokens.length !== count)
      throw new GrooveError(
        line,
        Math.min(tokens.length, count) + 1,
        `${lane} has ${tokens.length} slots, not ${count}.`,
      );
  }
  function pick<T extends object>(lane: Lane, table: T, index: number): T[keyof T] {
    const { line, tokens } = lanes[lane];
    const token = tokens[index] ?? '';
    if (!isKey(table, token))
      throw new GrooveError(line, index + 1, `"${token}" is no ${lane}; use one of ${Object.keys(table).join(' ')}.`);
    return table[token];
  }
  return Array.from({ length: count }, (_, index) => {
    const slot: GrooveSlot = {
      stroke: pick('strk', STROKES, index),
      zone: pick('zone', ZONES, index),
      touch: pick('tch', TOUCHES, index),
      accent: pick('acc', ACCENTS, index),
    };
    const sounds = slot.stroke === 'down' || slot.stroke === 'up';
    const agree = (lane: Lane, said: boolean) => {
      if (said === sounds) return;
      const { line, tokens } = lanes[lane];
      const stroke = lanes.strk.tokens[index] ?? '';
      const rule = sounds ? `stroke ${stroke} sounds` : `stroke ${stroke} is silent`;
      throw new GrooveError(line, index + 1, `${rule}, but ${lane} says "${tokens[index] ?? ''}".`);
    };
    agree('zone', slot.zone !== 'none');
    agree('tch', slot.touch !== 'none');
    agree('acc', slot.accent !== 0);
    return slot;
  });
}

/**
 * Reads one groove: a header line and the lanes `strk`, `zone`, `tch`, `acc`, one token a slot; the lanes `open-strk` and so
 * on, all or none, give the first bar of each chord. Throws `GrooveError` with line and slot of the first fault.
 */
export function parseGroove(text: string): Groove {
  const lines = text.trim().split(/\r?\n/);
  const header = readHeader(lines[0] ?? '');
  const found = new Map<string, Tokens>();
  for (const [index, row] of lines.entries()) {
    const [lane = '', ...tokens] = row.trim().split(/\s+/);
    if (index === 0 || lane === '') continue;
    const names = LANES.flatMap((name) => [name, `open-${name}`]);
    if (!names.includes(lane)) throw new GrooveError(index + 1, null, `"${lane}" is no lane; use ${names.join(' ')}.`);
    if (found.has(lane)) throw new GrooveError(index + 1, null, `${lane} is given twice.`);
    found.set(lane, { line: index + 1, tokens });
  }
  const lanes = (prefix: string): Record<Lane, Tokens> => {
    const lane = (name: Lane): Tokens => {
      const tokens = found.get(prefix + name);
      if (!tokens) throw new GrooveError(lines.length, null, `the lane ${prefix}${name} is missing.`);
      return tokens;
    };
    return { strk: lane('strk'), zone: lane('zone'), tch: lane('tch'), acc: lane('acc') };
  };
  const grid = GRIDS[header.grid];
  const slots = readSlots(lanes(''), grid.slots);
  const groove = { ...header, slots, text };
  if (!LANES.some((lane) => found.has(`open-${lane}`))) return groove;
  return { ...groove, opening: readSlots(lanes('open-'), grid.slots / grid.bars) };
}

/** The groove catalogue in the order it is taught. */
export const GROOVES: readonly Groove[] = GROOVE_TEXTS.map(parseGroove);

/** The groove of that kebab name. Throws `RangeError` naming the ids there are. */
export function grooveById(id: string): Groove {
  const groove = GROOVES.find((candidate) => candidate.id === id);
  if (!groove) throw new RangeError(`No groove "${id}"; there are ${GROOVES.map((known) => known.id).join(', ')}.`);
  return groove;
}
