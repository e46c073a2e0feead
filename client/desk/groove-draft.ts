import {
  ACCENTS,
  emptyGroove,
  GRIDS,
  silentHand,
  slotsPerBar,
  slotSounds,
  STROKES,
  TOUCHES,
  ZONES,
  type Grid,
  type Groove,
  type GrooveSlot,
} from '../../shared-theory/groove-grid.ts';
import { grooveLine } from '../../shared-theory/groove-text.ts';

/** Lanes of the grid language that a slot is drawn in, from the top. */
export const DRAWN_LANES = ['acc', 'strk', 'zone', 'tch'] as const;
export type DrawnLane = (typeof DRAWN_LANES)[number];
/** The pattern itself, or the first bar of each chord where that differs. */
export type Side = 'pattern' | 'opening';
/** A place on the grid; slots count from 0. */
export type Cell = { readonly side: Side; readonly lane: DrawnLane; readonly slot: number };

/** A slot under the pencil: what it sounds, kept also while its stroke is silent, so that it comes back as it was. */
type DraftSlot = {
  readonly stroke: GrooveSlot['stroke'];
  readonly zone: Exclude<GrooveSlot['zone'], 'none'>;
  readonly touch: Exclude<GrooveSlot['touch'], 'none'>;
  readonly accent: 1 | 2 | 3;
};
export type DraftSide = {
  readonly slots: readonly DraftSlot[];
  /** For each bar, whether its last stroke already plays the next chord. */
  readonly pushes: readonly boolean[];
};

/** A groove that is being drawn; its numbers as typed. */
export type GrooveDraft = {
  /** Null until it is saved: then it follows from the name. */
  readonly id: string | null;
  readonly name: string;
  readonly grid: Grid;
  readonly slowest: string;
  readonly fastest: string;
  readonly swingFrom: string;
  readonly swingTo: string;
  readonly pattern: DraftSide;
  readonly opening: DraftSide | null;
};

const LONGEST_ID = 40;

/** What a slot sounds unless it is told otherwise: downs over all strings, lighter ups over the high ones. */
function usualSlot(grid: Grid, place: number): DraftSlot {
  const { stroke } = silentHand({ grid }, place);
  const down = stroke === 'down-silent';
  return { stroke, zone: down ? 'all' : 'high', touch: 'open', accent: down ? 2 : 1 };
}

function sideOf(grid: Grid, slots: readonly GrooveSlot[]): DraftSide {
  const perBar = slotsPerBar({ grid });
  return {
    slots: slots.map((slot, place) => {
      const usual = usualSlot(grid, place);
      return {
        stroke: slot.stroke,
        zone: slot.zone === 'none' ? usual.zone : slot.zone,
        touch: slot.touch === 'none' ? usual.touch : slot.touch,
        accent: slot.accent === 0 ? usual.accent : slot.accent,
      };
    }),
    pushes: Array.from({ length: slots.length / perBar }, (_, bar) =>
      slots.slice(bar * perBar, (bar + 1) * perBar).some(({ pushes }) => pushes),
    ),
  };
}

/** A groove to draw on; with `id` it will be saved in that one's place. */
export function draftOf(groove: Omit<Groove, 'text' | 'id'>, id: string | null): GrooveDraft {
  const { name, grid, tempo, swing, slots, opening } = groove;
  return {
    id,
    name,
    grid,
    slowest: String(tempo[0]),
    fastest: String(tempo[1]),
    swingFrom: String(swing[0]),
    swingTo: String(swing[1]),
    pattern: sideOf(grid, slots),
    opening: opening ? sideOf(grid, opening) : null,
  };
}

/** Nothing sounds yet: the hand passes down and up. */
export function emptyDraft(name: string): GrooveDraft {
  return draftOf({ ...emptyGroove('E8'), name }, null);
}

/** A slot as the grid language has it. */
function slotOf({ stroke, zone, touch, accent }: DraftSlot): GrooveSlot {
  return slotSounds({ stroke, zone, touch, accent })
    ? { stroke, zone, touch, accent }
    : { stroke, zone: 'none', touch: 'none', accent: 0 };
}

/** Slots of one side, the last stroke of a bar pushing where its bar says so: then it is the whole chord, and rings. */
export function slotsOf(grid: Grid, { slots, pushes }: DraftSide): readonly GrooveSlot[] {
  const perBar = slotsPerBar({ grid });
  const plain = slots.map(slotOf);
  const last = pushes.map((push, bar) =>
    push ? bar * perBar + plain.slice(bar * perBar, (bar + 1) * perBar).findLastIndex(slotSounds) : -1,
  );
  return plain.map((slot, place): GrooveSlot => {
    if (!slotSounds(slot) || !last.includes(place)) return slot;
    return { ...slot, zone: 'all', touch: slot.touch === 'ring' ? 'ring' : 'open', pushes: true };
  });
}

/** Whether a cell can be pressed: strings and touch need a stroke that sounds, and a push has all strings. */
export function canPress(slot: GrooveSlot, lane: DrawnLane): boolean {
  if (lane === 'acc' || lane === 'strk') return true;
  return slotSounds(slot) && !(lane === 'zone' && slot.pushes);
}

/** What stands in a cell. */
function valueAt(slot: GrooveSlot, lane: DrawnLane): string | number {
  return { acc: slot.accent, strk: slot.stroke, zone: slot.zone, tch: slot.touch }[lane];
}

/** What a cell takes by turns, in the order in which presses bring it. */
const TURNS = {
  acc: [0, 1, 2, 3],
  strk: ['down', 'up', 'down-silent', 'up-silent', 'thumb', 'fingers', 'pinch', 'none'],
  zone: ['root', 'other-bass', 'low', 'middle', 'high', 'all'],
  tch: ['open', 'ring', 'half', 'palm', 'dead', 'choke'],
} as const satisfies Readonly<Record<DrawnLane, readonly (string | number)[]>>;

const TOKENS: Readonly<Record<DrawnLane, Readonly<Record<string, string | number>>>> = {
  acc: ACCENTS,
  strk: STROKES,
  zone: ZONES,
  tch: TOUCHES,
};

/** The stroke that takes another's place when its slot falls silent, and when it sounds. */
const SILENCED: Readonly<Partial<Record<GrooveSlot['stroke'], GrooveSlot['stroke']>>> = {
  down: 'down-silent',
  up: 'up-silent',
};
const SOUNDED: Readonly<Partial<Record<GrooveSlot['stroke'], GrooveSlot['stroke']>>> = {
  'down-silent': 'down',
  'up-silent': 'up',
};

const isBass = (zone: string): boolean => zone === 'root' || zone === 'other-bass';

/** The draft with a value in a cell, and in the other lanes of its slot what goes with it; unchanged where none of that lane. */
function withValue(draft: GrooveDraft, { side, lane, slot: at }: Cell, value: string | number): GrooveDraft {
  const drawn = draft[side];
  const slot = drawn?.slots[at];
  if (!drawn || !slot || !(TURNS[lane] as readonly (string | number)[]).includes(value)) return draft;
  const made = changed(slot, lane, value, SOUNDED[usualSlot(draft.grid, at).stroke] ?? 'down');
  // One string is no pinch: it takes them all.
  const kept = made.stroke === 'pinch' && isBass(made.zone) ? { ...made, zone: 'all' as const } : made;
  return { ...draft, [side]: { ...drawn, slots: drawn.slots.with(at, kept) } };
}

function changed(slot: DraftSlot, lane: DrawnLane, value: string | number, struck: GrooveSlot['stroke']): DraftSlot {
  if (lane === 'strk') return { ...slot, stroke: value as DraftSlot['stroke'] };
  const sounds = slotSounds(slotOf(slot));
  if (lane === 'acc') {
    if (value === 0) return { ...slot, stroke: sounds ? (SILENCED[slot.stroke] ?? 'none') : slot.stroke };
    const stroke = sounds ? slot.stroke : (SOUNDED[slot.stroke] ?? struck);
    return { ...slot, stroke, accent: value as DraftSlot['accent'] };
  }
  // What does not sound has neither strings nor touch.
  if (!sounds) return slot;
  return lane === 'zone'
    ? { ...slot, zone: value as DraftSlot['zone'] }
    : { ...slot, touch: value as DraftSlot['touch'] };
}

/** What a cell of a slot may come to by presses. */
function turnsOf(slot: GrooveSlot, lane: DrawnLane): readonly (string | number)[] {
  if (lane === 'zone' && slot.stroke === 'pinch') return TURNS.zone.filter((zone) => !isBass(zone));
  if (lane === 'tch' && slot.pushes) return ['open', 'ring'];
  return TURNS[lane];
}

/** The draft after a press on a cell: the next in turn, round again after the last. */
export function pressed(draft: GrooveDraft, cell: Cell): GrooveDraft {
  const drawn = draft[cell.side];
  const slot = drawn && slotsOf(draft.grid, drawn)[cell.slot];
  if (!slot || !canPress(slot, cell.lane)) return draft;
  const turns = turnsOf(slot, cell.lane);
  const at = turns.indexOf(valueAt(slot, cell.lane));
  return withValue(draft, cell, turns[(at + 1) % turns.length] ?? '');
}

/** The draft after a sign of the grid language was typed on a cell; null where its lane has no such sign. */
export function typedOn(draft: GrooveDraft, cell: Cell, sign: string): GrooveDraft | null {
  const value = Object.hasOwn(TOKENS[cell.lane], sign) ? TOKENS[cell.lane][sign] : undefined;
  return value === undefined || (value === 'none' && cell.lane !== 'strk') ? null : withValue(draft, cell, value);
}

/** The same drawing on another grid: slots keep their places, those beyond are silent; what the new grid cannot have goes. */
export function onGrid(draft: GrooveDraft, grid: Grid): GrooveDraft {
  const { slots: count, bars, swings } = GRIDS[grid];
  const { pattern, opening } = draft;
  return {
    ...draft,
    grid,
    ...(swings ? {} : { swingFrom: '1', swingTo: '1' }),
    pattern: {
      slots: Array.from({ length: count }, (_, place) => pattern.slots[place] ?? usualSlot(grid, place)),
      pushes: Array.from({ length: bars }, (_, bar) => pattern.pushes[bar] ?? false),
    },
    opening: opening && opening.slots.length === count / bars ? opening : null,
  };
}

/** With a first bar of each chord of its own, as the pattern's first until it is changed. */
export function withOwnOpening(draft: GrooveDraft): GrooveDraft {
  const { slots } = draft.pattern;
  return { ...draft, opening: { slots: slots.slice(0, slotsPerBar(draft)), pushes: [false] } };
}

/** With or without a push at the end of a bar. */
export function withPush(draft: GrooveDraft, side: Side, bar: number, push: boolean): GrooveDraft {
  const drawn = draft[side];
  return drawn ? { ...draft, [side]: { ...drawn, pushes: drawn.pushes.with(bar, push) } } : draft;
}

/** The groove as drawn, under an id of its own or one that no other has; `taken` are the ids of all others. */
export function grooveOfDraft(draft: GrooveDraft, taken: ReadonlySet<string>): Omit<Groove, 'text'> {
  const { grid, opening } = draft;
  // Bars and slashes with spaces part the fields and lanes of the line.
  const name = draft.name
    .replaceAll('|', ' ')
    .replaceAll(/(^|\s)\/(?=\s|$)/g, ' ')
    .replaceAll(/\s+/g, ' ')
    .trim();
  return {
    id: draft.id ?? freeId(name, taken),
    name,
    grid,
    meter: GRIDS[grid].meter,
    tempo: [Number(draft.slowest), Number(draft.fastest)],
    swing: [Number(draft.swingFrom), Number(draft.swingTo)],
    slots: slotsOf(grid, draft.pattern),
    ...(opening ? { opening: slotsOf(grid, opening) } : {}),
  };
}

/** The drawing as one line of text. */
export function draftLine(draft: GrooveDraft, taken: ReadonlySet<string>): string {
  return grooveLine(grooveOfDraft(draft, taken));
}

/** A kebab id made of a name, numbered where another groove has it. */
export function freeId(name: string, taken: ReadonlySet<string>): string {
  const plain = name
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST_ID - 4)
    .replaceAll(/^[-0-9]+|-+$/g, '');
  const first = plain === '' ? 'own-groove' : plain;
  const candidates = [first, ...Array.from({ length: taken.size + 1 }, (_, index) => `${first}-${index + 2}`)];
  return candidates.find((id) => !taken.has(id)) ?? first;
}
