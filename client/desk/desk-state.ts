import { computed, signal, type ReadonlySignal } from '@preact/signals';
import { PROTOCOL_VERSION, type DeskCommand, type Reply, type SoundChange } from '../../server/protocol/messages.ts';
import type { DeskView, WireStep } from '../../server/protocol/views.ts';
import { createView, openConnection, type ConnectionStatus } from '../shared/connection.ts';
import { newId } from '../shared/ids.ts';
import { refusalSentence } from './sentences.ts';

/** Leaves of the desk; `round` is the one for teaching. */
export const LEAVES = ['round', 'roll', 'crib', 'room'] as const;
export type Leaf = (typeof LEAVES)[number];

/** A question picked by hand, and what was current then: another round or question ends it. */
type Pick = { readonly question: string; readonly round: string | null; readonly over: string | null };

/** A command without the id that the desk gives it. */
type Wish = DeskCommand extends infer Each ? (Each extends { id: string } ? Omit<Each, 'id'> : never) : never;

export type Desk = {
  readonly view: ReadonlySignal<DeskView | null>;
  readonly status: ReadonlySignal<ConnectionStatus>;
  readonly leaf: ReadonlySignal<Leaf>;
  /** The question under the teacher's thumb: the current one, or one picked from the row. */
  readonly step: ReadonlySignal<WireStep | null>;
  /** True while the form for a new round stands in place of the question. */
  readonly choosing: ReadonlySignal<boolean>;
  /** The last refusal as a sentence, until the next wish. */
  readonly notice: ReadonlySignal<string>;
  readonly busy: ReadonlySignal<boolean>;
  readonly turnTo: (leaf: Leaf) => void;
  /** Turns to another question; nothing while one is open or waits to be shown. */
  readonly pick: (question: string) => void;
  /** Passes over a question: it comes back only when it is picked. */
  readonly skip: (question: string) => void;
  readonly skipped: ReadonlySignal<ReadonlySet<string>>;
  readonly choose: (choosing: boolean) => void;
  readonly wish: (wish: Wish) => Promise<Reply | null>;
  readonly change: (change: SoundChange) => Promise<Reply | null>;
};

/** The desk of one room: a view from the server, and what the teacher's thumb rests on. */
export function createDesk(room: string): Desk {
  const { view, listeners } = createView<DeskView>();
  const connection = openConnection({ role: 'desk', room, version: PROTOCOL_VERSION }, listeners);
  const leaf = signal<Leaf>('round');
  const picked = signal<Pick | null>(null);
  const passed = signal<{ readonly round: string | null; readonly questions: ReadonlySet<string> }>({
    round: null,
    questions: new Set(),
  });
  const choosing = signal(false);
  const notice = signal('');
  const busy = signal(false);

  const skipped = computed<ReadonlySet<string>>(() =>
    passed.value.round === (view.value?.vamp?.round ?? null) ? passed.value.questions : new Set(),
  );
  const step = computed(() => chosenStep(view.value, picked.value, skipped.value));
  const pick = (question: string): void => {
    const current = view.value?.current;
    if (current?.status === 'open' || current?.status === 'closed') return;
    picked.value = { question, round: view.value?.vamp?.round ?? null, over: current?.ask ?? null };
    choosing.value = false;
  };

  const wish = async (made: Wish): Promise<Reply | null> => {
    const command = { ...made, id: newId() } as DeskCommand;
    busy.value = true;
    notice.value = '';
    // The same id again: a repeat is answered, not applied twice.
    const reply = (await connection.send(command)) ?? (await connection.send(command));
    busy.value = false;
    notice.value = reply?.ok ? '' : refusalSentence(reply);
    return reply;
  };

  return {
    view,
    status: connection.status,
    leaf,
    step,
    choosing,
    notice,
    busy,
    turnTo: (to) => {
      leaf.value = to;
      notice.value = '';
    },
    pick,
    skipped,
    skip: (question) => {
      const round = view.value?.vamp?.round ?? null;
      const questions = new Set([...skipped.value, question]);
      passed.value = { round, questions };
      const next = nextReady(view.value?.steps ?? [], question, questions);
      if (next) pick(next.question);
    },
    choose: (now) => {
      choosing.value = now;
      notice.value = '';
    },
    wish,
    change: (change) => {
      const round = view.value?.vamp?.round;
      return round ? wish({ type: 'RequestChange', round, change }) : Promise.resolve(null);
    },
  };
}

/** The picked step while nothing newer has been opened, else the current one, else the first that is ready. */
export function chosenStep(view: DeskView | null, picked: Pick | null, skipped: ReadonlySet<string>): WireStep | null {
  if (!view) return null;
  const current = view.current;
  const here = picked?.round === (view.vamp?.round ?? null) && picked?.over === (current?.ask ?? null);
  const byHand = picked && here ? stepOf(view, picked.question) : null;
  if (byHand && (current === null || current.status === 'shown' || current.status === 'ready')) return byHand;
  return current ?? nextReady(view.steps, null, skipped) ?? view.steps.find((step) => step.status === 'ready') ?? null;
}

function stepOf(view: DeskView, question: string): WireStep | null {
  return view.steps.find((step) => step.question === question) ?? null;
}

/** The next question that has not been opened or skipped, after `question` in the row, then from its beginning. */
export function nextReady(
  steps: readonly WireStep[],
  question: string | null,
  skipped: ReadonlySet<string> = new Set(),
): WireStep | null {
  const at = steps.findIndex((step) => step.question === question);
  const ahead = [...steps.slice(at + 1), ...steps.slice(0, at + 1)];
  const waits = (step: WireStep): boolean => step.status === 'ready' && !skipped.has(step.question);
  return ahead.find((step) => waits(step) && step.question !== question) ?? null;
}
