import { computed, signal, type ReadonlySignal, type Signal } from '@preact/signals';
import { PROTOCOL_VERSION, type DeskCommand, type Reply, type SoundChange } from '../../server/protocol/messages.ts';
import type { DeskView, WireStep } from '../../server/protocol/views.ts';
import { createView, openConnection, type ConnectionStatus } from '../shared/connection.ts';
import { newId } from '../shared/ids.ts';
import type { GrooveDraft } from './groove-draft.ts';
import { createPlanDraft, type PlanDraft } from './plan-draft.ts';
import { createHandRest } from './hand-rest.ts';
import { openSeconds } from './question-clock.ts';
import { refusalSentence } from './sentences.ts';
import { comesUp } from './suggested.ts';

/** Leaves of the desk; `round` is the one for teaching. */
export const LEAVES = ['round', 'lesson', 'grooves', 'roll', 'crib', 'room'] as const;
export type Leaf = (typeof LEAVES)[number];

/** A form in place of the question: a new round, or what the teacher really played in this one. */
export type Form = 'start' | 'correct';

/** A question picked by hand, and what was current then: another round or question ends it. */
type Pick = { readonly question: string; readonly round: string | null; readonly over: string | null };

/** A command without the id that the desk gives it. */
export type Wish = DeskCommand extends infer Each ? (Each extends { id: string } ? Omit<Each, 'id'> : never) : never;

export type Desk = {
  readonly view: ReadonlySignal<DeskView | null>;
  readonly status: ReadonlySignal<ConnectionStatus>;
  readonly leaf: ReadonlySignal<Leaf>;
  /** The question under the teacher's thumb: the current one, or one picked from the row. */
  readonly step: ReadonlySignal<WireStep | null>;
  readonly form: ReadonlySignal<Form | null>;
  /** The last refusal as a sentence, until the next wish. */
  readonly notice: ReadonlySignal<string>;
  readonly busy: ReadonlySignal<boolean>;
  /** Whole seconds since this desk saw the question open; null where none is. */
  readonly seconds: ReadonlySignal<number | null>;
  /** The host has given the hands of the room a rest by itself. */
  readonly rested: ReadonlySignal<boolean>;
  /** The closed sheet before which the loop was played again: the class may answer it again. */
  readonly replayed: ReadonlySignal<string | null>;
  readonly plan: PlanDraft;
  /** Id of the groove that the next vamp of a level is played in; null for one that the level draws. */
  readonly groove: Signal<string | null>;
  /** The contrast pair that was begun last on this page, with its round and level; null where another round was begun since. */
  readonly contrast: Signal<{ readonly contrast: string; readonly level: number; readonly round: string } | null>;
  /** The groove under the pencil; null while none is drawn. */
  readonly drawing: Signal<GrooveDraft | null>;
  /** All sounds that the vamp may turn to are shown, not only the usual ones. */
  readonly moreSounds: Signal<boolean>;
  readonly turnTo: (leaf: Leaf) => void;
  /** Turns to another question; nothing while one is open. */
  readonly pick: (question: string) => void;
  /** Passes over a question: it comes back only when it is picked. */
  readonly skip: (question: string) => void;
  readonly skipped: ReadonlySignal<ReadonlySet<string>>;
  readonly show: (form: Form | null) => void;
  readonly wish: (wish: Wish) => Promise<Reply | null>;
  readonly change: (change: SoundChange) => Promise<Reply | null>;
  /** Plays the loop again from its first bar, or begins it where nothing plays. */
  readonly again: () => Promise<Reply | null>;
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
  const form = signal<Form | null>(null);
  const replayed = signal<string | null>(null);
  const notice = signal('');
  const busy = signal(false);
  const rest = createHandRest(view);

  const skipped = computed<ReadonlySet<string>>(() =>
    passed.value.round === (view.value?.vamp?.round ?? null) ? passed.value.questions : new Set(),
  );
  const step = computed(() => chosenStep(view.value, picked.value, skipped.value));
  const pick = (question: string): void => {
    const current = view.value?.current;
    if (current?.status === 'open') return;
    picked.value = { question, round: view.value?.vamp?.round ?? null, over: current?.ask ?? null };
    form.value = null;
  };

  const wish = async (made: Wish): Promise<Reply | null> => {
    const command = { ...made, id: newId() } as DeskCommand;
    if (command.type === 'RequestChange') rest.asked(command.change);
    busy.value = true;
    notice.value = '';
    // The same id again: a repeat is answered, not applied twice.
    const reply = (await connection.send(command)) ?? (await connection.send(command));
    busy.value = false;
    notice.value = reply?.ok ? '' : refusalSentence(reply);
    return reply;
  };

  const change = (made: SoundChange): Promise<Reply | null> => {
    const round = view.value?.vamp?.round;
    return round ? wish({ type: 'RequestChange', round, change: made }) : Promise.resolve(null);
  };

  return {
    view,
    status: connection.status,
    leaf,
    step,
    form,
    notice,
    busy,
    seconds: openSeconds(view),
    rested: rest.rested,
    replayed,
    plan: createPlanDraft(view, wish),
    groove: signal<string | null>(null),
    contrast: signal<Desk['contrast']['value']>(null),
    drawing: signal<GrooveDraft | null>(null),
    moreSounds: signal(false),
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
    show: (now) => {
      form.value = now;
      notice.value = '';
    },
    wish,
    change,
    again: async () => {
      const ask = view.value?.current?.ask ?? null;
      const { vamp, sound } = view.value ?? {};
      const plays = sound?.playing === true && sound.round === vamp?.round;
      const reply = await (plays || !vamp
        ? change({ kind: 'again' })
        : wish({ type: 'RequestPlay', round: vamp.round }));
      if (reply?.ok) replayed.value = ask;
      return reply;
    },
  };
}

/** The awaited step, the picked one while nothing newer has been opened, the current one, or the first that is ready. */
export function chosenStep(view: DeskView | null, picked: Pick | null, skipped: ReadonlySet<string>): WireStep | null {
  if (!view) return null;
  // What was asked from memory stands under the thumb while the sound falls silent.
  const awaited = view.awaited === null ? null : stepOf(view, view.awaited);
  if (awaited) return awaited;
  const current = view.current;
  const here = picked?.round === (view.vamp?.round ?? null) && picked?.over === (current?.ask ?? null);
  const byHand = picked && here ? stepOf(view, picked.question) : null;
  if (byHand && current?.status !== 'open') return byHand;
  return current ?? nextReady(view.steps, null, skipped) ?? view.steps.find((step) => step.status === 'ready') ?? null;
}

function stepOf(view: DeskView, question: string): WireStep | null {
  return view.steps.find((step) => step.question === question) ?? null;
}

/** The next question that comes up and has not been opened or skipped, after `question` in the row, then from its beginning. */
export function nextReady(
  steps: readonly WireStep[],
  question: string | null,
  skipped: ReadonlySet<string> = new Set(),
): WireStep | null {
  const at = steps.findIndex((step) => step.question === question);
  const ahead = [...steps.slice(at + 1), ...steps.slice(0, at + 1)];
  const waits = (step: WireStep): boolean =>
    step.status === 'ready' && !skipped.has(step.question) && comesUp(steps, step);
  return ahead.find((step) => waits(step) && step.question !== question) ?? null;
}
