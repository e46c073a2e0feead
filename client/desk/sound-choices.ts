import { deskWords } from '../../server/protocol/words/en.ts';
import type { SoundChange } from '../../server/protocol/messages.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import type { DeskView, WireStep } from '../../server/protocol/views.ts';
import { printChord } from '../shared/names.ts';
import { meanwhileOf } from '../../shared-theory/questions/script.ts';
import type { Kind } from '../../shared-theory/questions/question.ts';
import { isSung, settlerName } from '../shared/settler-name.ts';

const words = deskWords.sound;

/** One press of slower or faster. */
const STEP = 0.08;

export type Choice = {
  /** What stands on the button. */
  readonly label: string;
  /** What it does, in full. */
  readonly name: string;
  readonly change: SoundChange;
  /** Whether it sounds now. */
  readonly on: boolean;
  /** The label is a chord. */
  readonly chord?: boolean;
};
export type ChoiceGroup = { readonly title: string; readonly choices: readonly Choice[] };

/** A change of the sound in a few words: `hold Em`, `Em and D`, `with C`. */
export function soundName({ vamp }: Pick<DeskView, 'vamp'>, change: SoundChange): string {
  const chord = (symbol: string | undefined) => (symbol === undefined ? '' : printChord(symbol).text);
  const slot = (index: number) => chord(vamp?.slots[index]?.chord);
  switch (change.kind) {
    case 'hold':
      return fill(words.hold, { chord: slot(change.slot) });
    case 'pair':
      return fill(words.pair, { home: slot(0), chord: slot(change.slot) });
    case 'root-alone':
      return fill(words.rootAlone, { chord: slot(change.slot) });
    case 'settler': {
      const settler = vamp?.settlers[change.index];
      if (settler === undefined) return '';
      return fill(isSung(settler) ? words.sung : words.settler, { name: settlerName(settler) });
    }
    case 'tempo':
      return fill(words.tempo, { tempo: change.tempo });
    case 'full':
    case 'again':
    case 'bass-alone':
    case 'muted':
    case 'soft':
    case 'both':
    case 'silence':
      return words.changes[change.kind];
  }
}

/** What usually sounds while this question is answered, in a few words. */
export function meanwhileName(view: Pick<DeskView, 'vamp'>, step: WireStep): string {
  return soundName(view, meanwhileOf({ kind: step.kind as Kind, target: step.target }));
}

/** The four that a thumb looks for: all of it, what goes with this question, the bass, and slower. */
export function usualChoices(view: DeskView, step: WireStep | null): readonly Choice[] {
  const usual = step === null ? null : meanwhileOf({ kind: step.kind as Kind, target: step.target });
  const fitting: SoundChange = usual === null || usual.kind === 'full' ? { kind: 'hold', slot: 0 } : usual;
  return [
    choice(view, { kind: 'full' }),
    choice(view, fitting),
    choice(view, { kind: 'bass-alone' }),
    paced(view, words.slower, 1 - STEP),
  ];
}

/** All the others, by what they do. */
export function moreChoices(view: DeskView): readonly ChoiceGroup[] {
  const slots = different(view);
  const byChord = (kind: 'hold' | 'pair' | 'root-alone', from: readonly number[]) =>
    from.map((slot) => ({
      ...choice(view, { kind, slot }),
      label: printChord(view.vamp?.slots[slot]?.chord ?? '').text,
      chord: true,
    }));
  const settlers = (view.vamp?.settlers ?? []).map((settler, index) => {
    const each = choice(view, { kind: 'settler', index });
    // A note may have the name of a chord beside it.
    return isSung(settler) ? each : { ...each, label: settlerName(settler), chord: true };
  });
  const rest = (['again', 'soft', 'muted', 'silence'] as const).map((kind) => choice(view, { kind }));
  return [
    { title: words.holds, choices: byChord('hold', slots) },
    { title: words.pairs, choices: byChord('pair', slots.slice(1)) },
    { title: words.roots, choices: byChord('root-alone', slots) },
    { title: words.settlers, choices: settlers },
    { title: words.rest, choices: [...rest, paced(view, words.faster, 1 + STEP)] },
  ].filter(({ choices }) => choices.length > 0);
}

/** First slot of each different chord. */
function different({ vamp }: Pick<DeskView, 'vamp'>): readonly number[] {
  const slots = vamp?.slots ?? [];
  return slots.flatMap(({ chord }, slot) => (slots.findIndex((each) => each.chord === chord) === slot ? [slot] : []));
}

function choice(view: DeskView, change: SoundChange): Choice {
  const name = soundName(view, change);
  return { label: name, name, change, on: same(view.sound.change, change) };
}

function paced(view: DeskView, label: string, by: number): Choice {
  const tempo = Math.round((view.sound.tempo ?? view.vamp?.tempo ?? 0) * by);
  return { label, name: label, change: { kind: 'tempo', tempo }, on: false };
}

function same(now: SoundChange, change: SoundChange): boolean {
  if (now.kind !== change.kind) return false;
  if ('slot' in now && 'slot' in change) return now.slot === change.slot;
  return !('index' in now && 'index' in change) || now.index === change.index;
}
