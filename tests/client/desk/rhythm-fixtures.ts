import type { DeskView, WireSpread, WireStep, WireTaps } from '../../../server/protocol/views.ts';
import { GRID_KINDS, type Kind } from '../../../shared-theory/questions/question.ts';
import { deskView, EM_D } from './fixtures.ts';

/** What a round asks of a groove in eighths, as the row shows it. */
const KINDS: readonly Kind[] = ['tempo', 'drop-out', 'together', 'accents', 'count'];

export const EIGHTHS: NonNullable<DeskView['vamp']> = {
  ...EM_D,
  grooveText: 'relaxed-alternate, Relaxed alternate | E8 | 4/4 | 66-120 | r=1..1.3 | heavy numbers, light ands',
};

const stepOf = (kind: Kind, status: WireStep['status']): WireStep => ({
  question: `${kind}-0`,
  kind,
  target: 0,
  status,
  sheet: 1,
  ask: status === 'ready' ? null : `a-${kind}`,
  aloud: false,
  memory: false,
  struck: false,
});

/** A desk whose question about the groove has the given status; all others wait. */
export function rhythmView(
  kind: Kind,
  status: WireStep['status'],
  change: Partial<DeskView> = {},
  kinds: readonly Kind[] = KINDS,
): DeskView {
  const steps = kinds.map((each) => stepOf(each, each === kind ? status : 'ready'));
  const now = steps.find((each) => each.kind === kind);
  const asking = { kind, target: 0, ...(GRID_KINDS.has(kind) ? { grid: 'E8' } : {}) };
  return deskView('count-0', 'ready', {
    vamp: EIGHTHS,
    steps,
    current: now && status !== 'ready' ? { ...now, asking } : null,
    truths: {},
    ...change,
  });
}

/** Taps at a tempo, in milliseconds from the first. */
export const tapsAt = (tempo: number): readonly number[] =>
  Array.from({ length: 9 }, (_, tap) => (tap * 60_000) / tempo);

export function spread(kind: Kind, counts: WireSpread['counts'], change: Partial<WireSpread> = {}): WireSpread {
  return {
    ask: `a-${kind}`,
    kind,
    target: 0,
    asking: { kind, target: 0, ...(GRID_KINDS.has(kind) ? { grid: 'E8' } : {}) },
    counts,
    notSure: 0,
    silent: 0,
    of: counts.reduce((sum, { count }) => sum + count, 0),
    ...change,
  };
}

/** A room that taps 96 a minute. */
export const ROOM_TAPS: WireTaps = {
  read: 14,
  of: 17,
  tempo: 96.3,
  between: [92.4, 100.6],
  tempi: [92.4, 96.3, 100.6],
  unevenness: [3.2, 6.1, 9.4],
  spread: null,
  drift: { percent: 1.2, error: 0.9 },
  curve: null,
};
