import { NO_PRESS } from './no-press.ts';
import type { HostProps } from '../../../client/host/app.tsx';
import { frameOf } from '../../../client/host/frame.ts';
import { SOUND_OFF, type LocalSound } from '../../../client/host/sound-view.ts';
import type {
  HostView,
  WireAsking,
  WireBreakdownLine,
  WireKeysReveal,
  WireSound,
  WireSpread,
  WireStep,
  WireVamp,
} from '../../../server/protocol/views.ts';

const QUALITIES = ['major', 'minor', 'power', 'suspended-fourth', 'diminished', 'augmented'];

const SEATS: HostView['seats'] = Array.from({ length: 24 }, (_, index) => ({
  seat: index + 1,
  name: null,
  here: index % 11 !== 7,
}));

const NAMES =
  'Nele Oda Jory Pim Łukasz Bjørn Ana Zoë Tarek Mia Ines Kofi Sára Juri Lena Ayo Rosa Max Ida Nils Eva Tom Yuki Liv';
export const NAMED_SEATS: HostView['seats'] = NAMES.split(' ').map((name, index) => ({
  seat: index + 1,
  name,
  here: index !== 6,
}));

export const EM_D: WireVamp = {
  round: 'r1',
  number: 1,
  source: 'host',
  level: 4,
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

const step = (kind: string, target: number, status: WireStep['status']): WireStep => ({
  question: `${kind}-${target}`,
  kind,
  target,
  status,
  sheet: 1,
  ask: status === 'ready' ? null : `a-${kind}-${target}`,
  aloud: false,
  memory: false,
  struck: false,
});

const ORDER = [
  ['strokes', 0],
  ['direction', 1],
  ['quality', 0],
  ['root', 0],
  ['quality', 1],
  ['keys', 0],
] as const;

/** The steps of a round of two chords, those before `at` shown, the one at it with the given status. */
export function stepsAt(at: number, status: WireStep['status']): readonly WireStep[] {
  return ORDER.map(([kind, target], index) =>
    step(kind, target, index < at ? 'shown' : index === at ? status : 'ready'),
  );
}

function askingOf(kind: string, target: number, letter?: string): WireAsking {
  if (kind === 'quality') return { kind, target, options: QUALITIES, ...(letter ? { letter } : {}) };
  if (kind === 'keys') return { kind, target, options: ['majors'], loop: 'two' };
  if (kind === 'seventh') return { kind, target, ...(letter ? { letter } : {}) };
  if (kind === 'home') return { kind, target, loop: 'two' };
  return kind === 'direction' ? { kind, target, loop: 'two' } : { kind, target };
}

/** The loop as it plays, the guitar alone. */
const PLAYING: WireSound = {
  playing: true,
  round: 'r1',
  change: { kind: 'full' },
  tempo: 100,
  climb: null,
  feel: 'written',
  band: { kit: false, bass: false },
};
const STILL: WireSound = { ...PLAYING, playing: false, round: null, tempo: null };

export const REGISTER: HostView = {
  v: 1,
  room: 'WAKUR',
  status: 'register',
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
    beatLevel: 1,
    grooves: [],
  },
  addresses: ['192.168.4.7:4600', '10.0.3.12:4600'],
  seats: SEATS,
  holdsSound: false,
  soundHeld: false,
  vamp: null,
  steps: [],
  current: null,
  handsIn: 0,
  handsOf: 0,
  spread: null,
  truth: null,
  keysReveal: null,
  sound: STILL,
  breakdown: null,
  opinions: [],
  common: [],
};

/** A round whose question `at` (of six: strokes, bass, quality, root, quality, keys) has the given status. */
export function roundAt(at: number, status: WireStep['status'], letter?: string): HostView {
  const steps = stepsAt(at, status);
  const now = steps[at];
  return {
    ...REGISTER,
    status: 'round',
    vamp: EM_D,
    steps,
    current: now && status !== 'ready' ? { ...now, asking: askingOf(now.kind, now.target, letter) } : null,
    handsIn: 17,
    handsOf: 24,
    holdsSound: true,
    soundHeld: true,
    sound: PLAYING,
  };
}

export function spreadOf(
  kind: string,
  target: number,
  counts: Readonly<Record<string, number>>,
  rest: {
    readonly notSure?: number;
    readonly silent?: number;
    readonly letter?: string;
    readonly options?: readonly string[];
  } = {},
): WireSpread {
  const { notSure = 2, silent = 0, letter } = rest;
  const tallies = Object.entries(counts).map(([key, count]) => ({ key, answer: key, count }));
  const asking = askingOf(kind, target, letter);
  return {
    ask: `a-${kind}-${target}`,
    kind,
    target,
    asking: rest.options ? { ...asking, options: rest.options } : asking,
    counts: tallies.toSorted((a, b) => b.count - a.count),
    notSure,
    silent,
    of: tallies.reduce((sum, { count }) => sum + count, 0) + notSure + silent,
  };
}

export const ROOT_SPREAD = spreadOf('root', 0, {
  '5.0': 4,
  '5.2': 1,
  '5.4': 1,
  '5.5': 2,
  '5.7': 1,
  '6.0': 4,
  '6.4': 2,
  '6.5': 6,
  '6.10': 1,
});

export const KEYS_SPREAD = spreadOf('keys', 0, { '2M 7M': 6, '2M': 6, '7M': 1, '9M': 4, '0M': 2, '4M': 1, none: 2 });

const row = (cells: string): WireKeysReveal['rows'][number]['row'] =>
  cells.split(' ').map((cell) => {
    const [symbol = '', numeral = '', marks = ''] = cell.split(':');
    return { symbol, numeral, inVamp: marks.includes('v'), holdsDecider: marks.includes('d') };
  });

/** D and G, the pair of common practice in which the keys part in the last column. */
export const KEYS_D_G: WireKeysReveal = {
  chords: ['D', 'G'],
  rows: [
    {
      key: 'G major',
      id: '7M',
      row: row('D:V:v Em:vi F#dim:viio:d G:I:v Am:ii:d Bm:iii C:IV:d'),
      notes: ['D', 'E', 'F#', 'G', 'A', 'B', 'C'],
    },
    {
      key: 'D major',
      id: '2M',
      row: row('D:I:v Em:ii F#m:iii:d G:IV:v A:V:d Bm:vi C#dim:viio:d'),
      notes: ['D', 'E', 'F#', 'G', 'A', 'B', 'C#'],
    },
  ],
  deciders: [
    { note: 'C', leaves: ['G major'] },
    { note: 'C#', leaves: ['D major'] },
  ],
};

export const KEYS_EM_D: WireKeysReveal = {
  chords: ['Em', 'D'],
  rows: [
    {
      key: 'G major',
      id: '7M',
      row: row('Em:vi:v F#dim:viio:d G:I Am:ii:d Bm:iii C:IV:d D:V:v'),
      notes: ['E', 'F#', 'G', 'A', 'B', 'C', 'D'],
    },
    {
      key: 'D major',
      id: '2M',
      row: row('Em:ii:v F#m:iii:d G:IV A:V:d Bm:vi C#dim:viio:d D:I:v'),
      notes: ['E', 'F#', 'G', 'A', 'B', 'C#', 'D'],
    },
  ],
  deciders: KEYS_D_G.deciders,
};

/** C and Am: three neighbours, two deciding letters. */
export const KEYS_C_AM: WireKeysReveal = {
  chords: ['C', 'Am'],
  rows: [
    {
      key: 'F major',
      id: '5M',
      row: row('C:V:v Dm:vi Edim:viio:d F:I Gm:ii:d Am:iii:v Bb:IV:d'),
      notes: ['C', 'D', 'E', 'F', 'G', 'A', 'Bb'],
    },
    {
      key: 'C major',
      id: '0M',
      row: row('C:I:v Dm:ii:d Em:iii:d F:IV:d G:V:d Am:vi:v Bdim:viio:d'),
      notes: ['C', 'D', 'E', 'F', 'G', 'A', 'B'],
    },
    {
      key: 'G major',
      id: '7M',
      row: row('C:IV:v D:V:d Em:vi F#dim:viio:d G:I Am:ii:v Bm:iii:d'),
      notes: ['C', 'D', 'E', 'F#', 'G', 'A', 'B'],
    },
  ],
  deciders: [
    { note: 'Bb', leaves: ['F major'] },
    { note: 'F', leaves: ['F major', 'C major'] },
    { note: 'B', leaves: ['C major', 'G major'] },
    { note: 'F#', leaves: ['G major'] },
  ],
};

/** C and D: only G owns both. */
export const KEYS_C_D: WireKeysReveal = {
  chords: ['C', 'D'],
  rows: [
    {
      key: 'G major',
      id: '7M',
      row: row('C:IV:v D:V:v Em:vi F#dim:viio G:I Am:ii Bm:iii'),
      notes: ['C', 'D', 'E', 'F#', 'G', 'A', 'B'],
    },
  ],
  deciders: [],
};

export const KEYS_AM_E: WireKeysReveal = { chords: ['Am', 'E'], rows: [], deciders: [] };

const line = (
  round: number,
  kind: string,
  target: number,
  truth: unknown,
  [right, part, wrong, notSure]: readonly [number, number, number, number],
  missed: WireBreakdownLine['missed'] = [],
): WireBreakdownLine => ({
  question: `${kind}-${target}`,
  round,
  kind,
  target,
  asking: askingOf(kind, target),
  right,
  part,
  wrong,
  notSure,
  silent: 0,
  missed,
  truth,
  memory: false,
  ...({ again: null } as object),
});

const missed = (key: string, answer: unknown, count: number) => ({ key, answer, count, error: null });

export const BREAKDOWN: readonly WireBreakdownLine[] = [
  line(1, 'strokes', 0, 'down-up', [19, 0, 3, 2], [missed('all-downs', 'all-downs', 3)]),
  line(1, 'direction', 1, 'down', [13, 0, 9, 2], [missed('up', 'up', 6), missed('same', 'same', 3)]),
  line(1, 'quality', 0, 'minor', [20, 0, 3, 1], [missed('major', 'major', 3)]),
  line(
    1,
    'root',
    0,
    { string: 6, fret: 0 },
    [11, 0, 11, 2],
    [missed('5.2', { string: 5, fret: 2 }, 7), missed('5.0', { string: 5, fret: 0 }, 4)],
  ),
  line(1, 'quality', 1, 'major', [17, 2, 4, 1], [missed('suspended-fourth', 'suspended-fourth', 4)]),
  line(1, 'keys', 0, ['2M', '7M'], [6, 8, 7, 3], [missed('7M', ['7M'], 8), missed('2M', ['2M'], 4)]),
  line(2, 'strokes', 0, 'all-downs', [16, 0, 6, 2], [missed('down-up', 'down-up', 6)]),
  line(2, 'direction', 1, 'up', [18, 0, 4, 2], [missed('same', 'same', 3)]),
  line(2, 'quality', 0, 'major', [22, 0, 1, 1], [missed('minor', 'minor', 1)]),
  line(2, 'root', 0, { string: 5, fret: 3 }, [14, 0, 8, 2], [missed('6.3', { string: 6, fret: 3 }, 6)]),
  line(2, 'keys', 0, [], [9, 0, 12, 3], [missed('0M', ['0M'], 8)]),
];

export const SOUND_ON: LocalSound = { ...SOUND_OFF, state: 'on' };

/** Everything the host page draws from, at 1920 × 1080. */
export function hostProps(view: HostView | null, rest: Partial<HostProps> = {}): HostProps {
  return {
    view,
    waiting: '',
    lost: false,
    sound: SOUND_ON,
    actions: NO_PRESS,
    frame: frameOf(1920, 1080),
    still: false,
    unreached: false,
    ...rest,
  };
}
