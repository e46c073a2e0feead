import { deskWords } from '../../server/protocol/words/en.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import type { DeskView, WireStep } from '../../server/protocol/views.ts';
import { usualSeconds } from '../../shared-theory/questions/script.ts';
import { TAPPED_KINDS, type Kind } from '../../shared-theory/questions/question.ts';
import { nextReady, type Desk } from './desk-state.ts';
import { FEW, MOST, shareRight } from './fallen.ts';
import { startRound } from './start-round.ts';
import { stepName } from './step-names.ts';

const words = deskWords.actions;

export type Action = {
  readonly key: string;
  readonly label: string;
  /** A smaller second line: what it leads to. */
  readonly detail?: string;
  readonly press: () => void;
  readonly off?: boolean;
  /** A press asks first: what is said, and the press that does it. */
  readonly asks?: { readonly note: string; readonly choices: readonly Action[] };
};

/** What can be pressed now. */
export type Script = {
  /** Always in the same place at the thumb. */
  readonly main: Action;
  /** In ink: the likeliest next press. Otherwise nothing is pressed upon the teacher yet. */
  readonly likely: boolean;
  readonly others: readonly Action[];
  /** What goes on, beside the presses. */
  readonly note: string;
};

/** What can be pressed now, for the question under the thumb. */
export function scriptOf(desk: Desk, view: DeskView, step: WireStep | null): Script {
  if (view.awaited !== null) return awaiting(desk);
  if (step === null) return { main: onward(desk, view), likely: true, others: [], note: '' };
  switch (step.status) {
    case 'ready':
      return ready(desk, view, step);
    case 'open':
      return step.aloud ? aloud(desk, view, step) : open(desk, view, step);
    case 'closed':
      return step.aloud ? aloud(desk, view, step) : closed(desk, view, step);
    case 'shown':
      return shown(desk, view, step);
  }
}

/** The press at the thumb is dead: it would close the question if it came as the silence fell. */
function awaiting(desk: Desk): Script {
  const main = { key: 'awaited', label: words.awaited, press: () => undefined, off: true };
  const cancel = { key: 'cancel', label: words.cancel, press: () => void desk.change({ kind: 'full' }) };
  return { main, likely: false, others: [cancel], note: '' };
}

function ready(desk: Desk, view: DeskView, step: WireStep): Script {
  const open = opening(desk, view, step, words.open);
  const others = [...skipping(desk, view, step.question), how(desk, view, step)];
  const play = playing(desk, view);
  return play !== null && isHeardFirst(view, step)
    ? { main: play, likely: true, others: [...others, open], note: '' }
    : { main: open, likely: true, others, note: '' };
}

/** Whether the vamp is to be heard before the question: before the first one, and where it is tapped along with. */
export function isHeardFirst({ steps }: DeskView, { kind, status }: WireStep): boolean {
  return steps.every((step) => step.status === 'ready') || (status === 'ready' && TAPPED_KINDS.has(kind as Kind));
}

function open(desk: Desk, view: DeskView, step: WireStep): Script {
  const [, most] = usualSeconds(step.kind as Kind);
  const allIn = view.handsOf > 0 && view.handsIn >= view.handsOf;
  const seconds = desk.seconds.value ?? 0;
  const ask = step.ask ?? '';
  return {
    main: { key: 'close', label: words.close, press: () => void desk.wish({ type: 'CloseQuestion', ask }) },
    likely: allIn || seconds >= most,
    // From memory: playing it again would give it away.
    others: step.memory ? [] : again(desk, view),
    note: fill(words.openNote, { n: view.handsIn, of: view.handsOf, seconds }),
  };
}

function aloud(desk: Desk, view: DeskView, step: WireStep): Script {
  return { main: showing(desk, step), likely: true, others: again(desk, view), note: words.aloudNote };
}

function closed(desk: Desk, view: DeskView, step: WireStep): Script {
  const here = step.question === view.current?.question;
  const ask = step.ask ?? '';
  const show = showing(desk, step);
  if (!here || step.struck) return { main: show, likely: true, others: [], note: '' };
  const share = shareRight(view);
  const talked = step.sheet > 1;
  const few = share !== null && share < FEW;
  const beforeTalk = !talked && share !== null && share <= MOST;
  const neighbour: readonly Action[] = view.spreadShown
    ? []
    : [
        {
          key: 'neighbour',
          label: few ? words.askAgain : words.neighbour,
          press: () => void desk.wish({ type: 'AnswerAgain', ask }),
        },
      ];
  const spread: readonly Action[] = view.spreadShown ? [] : [spreading(desk, ask, beforeTalk)];
  const all = [...again(desk, view), ...spread, ...neighbour, show];
  const replayed = desk.replayed.value === ask;
  const wanted = !beforeTalk ? 'show' : few && !replayed && again(desk, view).length > 0 ? 'again' : 'neighbour';
  const main = all.find(({ key }) => key === wanted) ?? show;
  return { main, likely: true, others: all.filter((each) => each !== main), note: '' };
}

function shown(desk: Desk, view: DeskView, step: WireStep): Script {
  const next = nextReady(view.steps, step.question, desk.skipped.value);
  if (next === null) return { main: onward(desk, view), likely: true, others: again(desk, view), note: '' };
  const main = { ...opening(desk, view, next, words.next), key: 'next', detail: stepName(view, next) };
  const others = [...again(desk, view), ...skipping(desk, view, next.question), how(desk, view, next)];
  return { main, likely: true, others, note: '' };
}

/** After the last question: the next round of the lesson, or the choice of a new vamp. */
function onward(desk: Desk, view: DeskView): Action {
  const item = desk.plan.next.value;
  if (item === null) return { key: 'vamp', label: words.vamp, press: () => desk.show('start') };
  return {
    key: 'round',
    label: words.nextRound,
    detail: fill(deskWords.round.level, { level: item.level }),
    press: () => void startRound(desk, view, { level: item.level, item: item.item }),
  };
}

function opening(desk: Desk, view: DeskView, { question }: WireStep, label: string): Action {
  const round = view.vamp?.round ?? '';
  const press = () => void desk.wish({ type: 'OpenQuestion', round, question, how: 'phones' });
  return { key: 'open', label, press };
}

/** A settler has not sounded before it is asked; what drops out or is tapped together sounds while it is. */
const NEVER_REMEMBERED = new Set(['settler', 'drop-out', 'together']);

/** Opens a row: aloud with no phones, or from memory what has sounded before it is asked. */
function how(desk: Desk, view: DeskView, { question, kind }: WireStep): Action {
  const round = view.vamp?.round ?? '';
  const by = (how: 'aloud' | 'memory') => ({
    key: how,
    label: words.how[how],
    press: () => void desk.wish({ type: 'OpenQuestion', round, question, how }),
  });
  const remembered = view.vamp?.source === 'guitar' ? words.howGuitar : words.howHost;
  const asks = NEVER_REMEMBERED.has(kind)
    ? { note: words.howAloud, choices: [by('aloud')] }
    : { note: remembered, choices: [by('aloud'), by('memory')] };
  return { key: 'how', label: words.how.label, press: () => undefined, asks };
}

function skipping(desk: Desk, view: DeskView, question: string): readonly Action[] {
  const left = nextReady(view.steps, question, desk.skipped.value) !== null;
  return left ? [{ key: 'skip', label: words.skip, press: () => desk.skip(question) }] : [];
}

function showing(desk: Desk, step: WireStep): Action {
  const ask = step.ask ?? '';
  return { key: 'show', label: words.show, press: () => void desk.wish({ type: 'ShowAnswer', ask }) };
}

/** Before the talk the wall keeps quiet: seeing the crowd pulls people to it, so the press asks first. */
function spreading(desk: Desk, ask: string, beforeTalk: boolean): Action {
  const press = () => void desk.wish({ type: 'ShowSpread', ask });
  const spread = { key: 'spread', label: words.spread, press };
  if (!beforeTalk) return spread;
  return {
    ...spread,
    press: () => undefined,
    asks: { note: words.spreadFirst, choices: [{ key: 'spread-now', label: words.spreadNow, press }] },
  };
}

function again(desk: Desk, view: DeskView): readonly Action[] {
  if (view.vamp?.source !== 'host' || !view.soundHeld) return [];
  return [{ key: 'again', label: words.again, press: () => void desk.again() }];
}

function playing(desk: Desk, view: DeskView): Action | null {
  const { vamp, sound } = view;
  if (vamp?.source !== 'host' || !view.soundHeld || (sound.playing && sound.round === vamp.round)) return null;
  return { key: 'play', label: words.play, press: () => void desk.wish({ type: 'RequestPlay', round: vamp.round }) };
}
