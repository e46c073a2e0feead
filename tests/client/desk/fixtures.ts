import { signal } from '@preact/signals';
import { chosenStep, type Desk, type Form, type Leaf } from '../../../client/desk/desk-state.ts';
import type { GrooveDraft } from '../../../client/desk/groove-draft.ts';
import { nextItem } from '../../../client/desk/lesson-plan.ts';
import type { LessonItem } from '../../../server/protocol/messages.ts';
import type {
  DeskView,
  WireAsking,
  WireSound,
  WireSpread,
  WireStep,
  WireStudentReport,
} from '../../../server/protocol/views.ts';
import { levelOf } from '../../../shared-theory/levels.ts';
import { questionsOf } from '../../../shared-theory/questions/round-questions.ts';

/** A desk as a page sees it: the whole order of a loop of two chords with two settlers. */

const QUALITIES = ['major', 'minor', 'power', 'suspended-fourth', 'diminished', 'augmented'];

/** Em and D: G and D own both; C settles it for G, A for D (common practice). */
export const EM_D: NonNullable<DeskView['vamp']> = {
  round: 'r1',
  number: 1,
  source: 'host',
  level: 7,
  meter: '4/4',
  grooveText: 'relaxed-alternate',
  tempo: 100,
  seed: 7,
  slots: [
    { chord: 'Em', beats: 8, frets: [0, 2, 2, 0, 0, 0] },
    { chord: 'D', beats: 8, frets: [null, null, 0, 2, 3, 2] },
  ],
  settlers: [
    { chord: 'C', beats: 4, frets: [null, 3, 2, 0, 1, 0] },
    { chord: 'A', beats: 4, frets: [null, 0, 2, 2, 2, 0] },
  ],
};

/** The loop as it plays, the guitar alone. */
export const PLAYING: WireSound = {
  playing: true,
  round: 'r1',
  change: { kind: 'full' },
  tempo: 100,
  climb: null,
  feel: 'written',
  band: { kit: false, bass: false },
};
export const STILL: WireSound = { ...PLAYING, playing: false, round: null, tempo: null };

const TRUTHS: DeskView['truths'] = {
  'strokes-0': 'down-up',
  'count-0': 2,
  'direction-1': 'down',
  'quality-0': 'minor',
  'root-0': { string: 6, fret: 0 },
  'distance-1': -2,
  'quality-1': 'major',
  'numeral-0': ['vi', 'V'],
  'one-or-several-0': 'several',
  'keys-0': ['2M', '7M'],
  'settler-0': ['7M'],
  'settler-1': ['2M'],
};

/** The right answers by their keys. */
export const RIGHT: Readonly<Record<string, string>> = {
  'strokes-0': 'down-up',
  'count-0': '2',
  'direction-1': 'down',
  'quality-0': 'minor',
  'root-0': '6.0',
  'distance-1': '-2',
  'quality-1': 'major',
  'numeral-0': 'vi V',
  'one-or-several-0': 'several',
  'keys-0': '2M 7M',
  'settler-0': '7M',
  'settler-1': '2M',
};

/** What level 7 asks of it, with the count. */
export const ORDER = questionsOf({ chords: ['Em', 'D'], grooveKnown: true, settlers: 2 }).filter(({ kind }) =>
  ['count', ...levelOf(7).questions].includes(kind),
);

/** The steps of the round, those before `at` shown, the one at it with the given status. */
export function stepsAt(at: number, status: WireStep['status']): readonly WireStep[] {
  return ORDER.map(({ id, kind, target }, index) => {
    const now = index < at ? 'shown' : index === at ? status : 'ready';
    const ask = now === 'ready' ? null : `a-${id}`;
    return {
      question: id,
      kind,
      target,
      status: now,
      sheet: 1,
      ask,
      aloud: false,
      memory: false,
      struck: false,
    };
  });
}

/** Where a question stands in the order. */
function placeOf(question: string): number {
  return ORDER.findIndex(({ id }) => id === question);
}

function askingOf({ kind, target }: WireStep): WireAsking {
  if (kind === 'quality') return { kind, target, options: QUALITIES };
  if (kind === 'keys') return { kind, target, options: ['majors'], loop: 'two' };
  if (kind === 'settler') return { kind, target, options: ['majors', '2M', '7M'] };
  return kind === 'direction' || kind === 'distance' ? { kind, target, loop: 'two' } : { kind, target };
}

const NAMES = ['Oda', 'Jory', 'Pim', 'Nele', 'Bram'];

/** A desk whose question has the given status. */
export function deskView(
  question = 'direction-1',
  status: WireStep['status'] = 'ready',
  change: Partial<DeskView> = {},
): DeskView {
  const at = placeOf(question);
  const steps = stepsAt(at, status);
  const now = steps[at];
  return {
    v: 1,
    room: 'WAKUR',
    status: 'round',
    settings: {
      policy: 'majors',
      naming: 'english',
      capo: 0,
      slashIsNew: false,
      qualities: QUALITIES,
      namesShown: false,
      soundFollows: true,
      voice: 'steel',
      pitch: 440,
      smallSpeaker: false,
      band: { kit: false, bass: false },
      beatLevel: 3,
      grooves: [],
    },
    addresses: ['http://192.168.4.7:4600'],
    holdsSound: false,
    soundHeld: true,
    vamp: EM_D,
    steps,
    current: now && status !== 'ready' ? { ...now, asking: askingOf(now) } : null,
    handsIn: 17,
    handsOf: 24,
    keysReveal: null,
    sound: PLAYING,
    breakdown: [],
    opinions: [],
    common: [],
    students: NAMES.map((name, index) => ({
      student: `s${index + 1}`,
      seat: index + 1,
      name,
      here: index !== 4,
      pair: false,
      leftHanded: index === 0,
      depth: 'keys' as const,
      wrote: index > 0,
      cannotHear: index === 0,
      hands: index === 1 ? [1, 3] : [],
    })),
    spread: null,
    truth: null,
    topWrong: null,
    letStand: [],
    reports: [],
    plan: { items: [], played: [] },
    entered: null,
    awaited: null,
    askedUnder: { policy: 'majors', qualities: QUALITIES },
    crib: {
      chords: ['Em', 'D'],
      keys: [
        { key: 'G major', numerals: ['vi', 'V'] },
        { key: 'D major', numerals: ['ii', 'I'] },
      ],
      deciders: [{ note: 'C#', leaves: ['D major'] }],
      settlers: [{ chord: 'F#m', leaves: ['D major'] }],
      visited: [],
      safe: ['E', 'F#', 'G', 'A', 'B', 'D'],
      safeOf: null,
      bass: ['E', 'D'],
      directions: ['down'],
    },
    policyChanges: [],
    truths: TRUTHS,
    spreadShown: false,
    visitors: 1,
    grooves: [
      { id: 'waltz', name: 'Waltz', meter: '3/4', tempo: [84, 180] },
      { id: 'relaxed-alternate', name: 'Relaxed alternate', meter: '4/4', tempo: [80, 126] },
    ],
    levels: [
      { level: 1, name: 'One chord or two' },
      { level: 2, name: 'The bass goes up, goes down or stays' },
      { level: 3, name: 'Major, minor or no third' },
      { level: 4, name: 'The root on the low strings' },
      { level: 5, name: 'From a major home chord, up or down, and how far' },
      { level: 6, name: 'Two chords of one key, from its major or minor home' },
      { level: 7, name: 'Every key that owns both chords' },
    ],
    beatLevels: [
      { level: 1, name: 'The numbers, steady' },
      { level: 2, name: 'Where one is' },
      { level: 3, name: 'Heavy and light' },
    ],
    contrasts: [
      { id: 'driving-or-relaxed', name: 'driving or relaxed' },
      { id: 'straight-or-swung', name: 'straight or swung' },
    ],
    classTaps: null,
    ...change,
  };
}

/** How answers fell, by their key; the answer is read off the key. */
export function spreadOf(
  question: string,
  counts: Readonly<Record<string, number>>,
  rest: { readonly notSure?: number; readonly silent?: number } = {},
): WireSpread {
  const { notSure = 0, silent = 0 } = rest;
  const step = stepsAt(placeOf(question), 'closed')[placeOf(question)];
  if (!step) throw new Error(`no question ${question}`);
  const { kind, target } = step;
  const tallies = Object.entries(counts).map(([key, count]) => ({ key, answer: answerOf(kind, key), count }));
  return {
    ask: `a-${question}`,
    kind,
    target,
    asking: askingOf(step),
    counts: tallies.toSorted((a, b) => b.count - a.count),
    notSure,
    silent,
    of: tallies.reduce((sum, { count }) => sum + count, notSure + silent),
  };
}

function answerOf(kind: string, key: string): unknown {
  if (kind === 'distance' || kind === 'count') return Number(key);
  if (kind === 'keys' || kind === 'settler') return key === 'none' ? [] : key.split(' ');
  if (kind === 'numeral') return key.split(' ');
  if (kind !== 'root') return key;
  const [string, fret] = key.split('.').map(Number);
  return { string, fret };
}

/** A closed or shown question with its spread; of its answers `right` is the right one. */
export function fallenView(
  question: string,
  status: 'closed' | 'shown',
  counts: Readonly<Record<string, number>>,
  right: string,
  change: Partial<DeskView> = {},
): DeskView {
  const spread = spreadOf(question, counts, { notSure: 2, silent: 1 });
  return deskView(question, status, {
    spread,
    truth: { answer: answerOf(spread.kind, right), key: right },
    ...change,
  });
}

export function reportOf(student: string, change: Partial<WireStudentReport> = {}): WireStudentReport {
  return {
    student,
    right: 5,
    part: 1,
    wrong: 1,
    notSure: 1,
    silent: 0,
    of: 8,
    points: 56,
    memory: { right: 0, of: 0 },
    beat: { right: 4, of: 5, needs: [5, 6], played: false },
    errors: [],
    habits: [],
    ...change,
  };
}

/** The teacher's own guitar, as entered. */
export const ENTERED: NonNullable<DeskView['entered']> = {
  chords: 'Em D',
  groove: null,
  tempo: null,
  directions: null,
  corrections: 0,
  shown: 0,
};

export const GUITAR: Partial<DeskView> = {
  vamp: { ...EM_D, source: 'guitar', level: null, grooveText: '', tempo: null },
  soundHeld: false,
  sound: STILL,
  entered: ENTERED,
};

/** A desk that notes what is asked of it. */
export function deskOf(
  view: DeskView,
  now: {
    readonly leaf?: Leaf;
    readonly form?: Form | null;
    readonly seconds?: number | null;
    readonly rested?: boolean;
    readonly replayed?: string | null;
    readonly pick?: string;
    /** Id of the round that a start is answered with. */
    readonly begun?: string;
  } = {},
) {
  const made: unknown[] = [];
  const note = (what: unknown) => {
    made.push(what);
    return Promise.resolve(
      now.begun === undefined ? { ok: true as const } : { ok: true as const, value: { round: now.begun } },
    );
  };
  const pick = now.pick ?? null;
  const picked = pick === null ? null : { question: pick, round: 'r1', over: view.current?.ask ?? null };
  const items = signal<readonly LessonItem[]>(view.plan.items);
  const form = signal<Form | null>(now.form ?? null);
  const desk: Desk = {
    view: signal(view),
    status: signal({ kind: 'live' as const }),
    leaf: signal<Leaf>(now.leaf ?? 'round'),
    step: signal(chosenStep(view, picked, new Set())),
    form,
    notice: signal(''),
    busy: signal(false),
    seconds: signal(now.seconds ?? null),
    rested: signal(now.rested ?? false),
    replayed: signal(now.replayed ?? null),
    plan: {
      items,
      next: signal(nextItem(view.plan.items, view.plan.played)),
      set: (list) => {
        items.value = list;
        made.push({ plan: list });
      },
    },
    groove: signal<string | null>(null),
    contrast: signal<Desk['contrast']['value']>(null),
    drawing: signal<GrooveDraft | null>(null),
    moreSounds: signal(false),
    turnTo: (leaf) => void made.push({ turnTo: leaf }),
    pick: (question) => void made.push({ pick: question }),
    skip: (question) => void made.push({ skip: question }),
    skipped: signal(new Set<string>()),
    show: (to) => {
      form.value = to;
      made.push({ show: to });
    },
    wish: note,
    change: (change) => note({ change }),
    again: () => note('again'),
  };
  return { desk, made };
}
