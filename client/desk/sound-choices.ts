import { deskWords } from '../../server/protocol/words/en.ts';
import { FEELS, type Band, type SoundChange } from '../../server/protocol/messages.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import type { DeskView, WireStep } from '../../server/protocol/views.ts';
import { printChord } from '../shared/names.ts';
import { meanwhileOf } from '../../shared-theory/questions/script.ts';
import { RHYTHM_KINDS, type Kind } from '../../shared-theory/questions/question.ts';
import { isSung, settlerName } from '../shared/settler-name.ts';

const words = deskWords.sound;

/** One press of slower or faster. */
const STEP = 0.08;
/** How much faster a climb ends, unless the teacher says otherwise: two presses of faster. */
const CLIMB = 2 * STEP;
/** Tempos that the sound may be brought to where no groove says less, beats a minute. */
const TEMPOS: readonly [number, number] = [30, 300];

export type Choice = {
  /** What stands on the button. */
  readonly label: string;
  /** What it does, in full. */
  readonly name: string;
  /** What it asks for, one after the other. */
  readonly changes: readonly SoundChange[];
  /** Whether it stands now; null for what is done once and stands nowhere. */
  readonly on: boolean | null;
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
    case 'chord-alone':
      return fill(words.chordAlone, { chord: slot(change.slot) });
    case 'root-then-chord':
      return fill(words.rootThenChord, { chord: slot(change.slot) });
    case 'settler': {
      const settler = vamp?.settlers[change.index];
      if (settler === undefined) return '';
      return fill(isSung(settler) ? words.sung : words.settler, { name: settlerName(settler) });
    }
    case 'tempo':
      return fill(words.tempo, { tempo: change.tempo });
    case 'climb':
      return fill(words.climb, { tempo: change.to });
    case 'feel':
      return words.feel[change.feel];
    case 'band':
      return bandName(change);
    case 'full':
    case 'again':
    case 'bass-alone':
    case 'bass-forward':
    case 'muted':
    case 'soft':
    case 'both':
    case 'silence':
    case 'kit-only':
    case 'drop-out':
    case 'echo':
      return words.changes[change.kind];
  }
}

function bandName({ kit, bass }: Band): string {
  if (kit) return bass ? words.band.all : words.band.kit;
  return bass ? words.band.bass : words.band.guitar;
}

/** What usually sounds while this question is answered, in a few words. */
export function meanwhileName(view: Pick<DeskView, 'vamp'>, step: WireStep): string {
  return soundName(view, meanwhileOf({ kind: step.kind as Kind, target: step.target }));
}

/** The four that a thumb looks for: all of it, what goes with this question, the bass, and slower. */
export function usualChoices(view: DeskView, step: WireStep | null): readonly Choice[] {
  const usual = step === null ? null : meanwhileOf({ kind: step.kind as Kind, target: step.target });
  const fitting: SoundChange =
    usual === null || step === null ? HOLD : usual.kind === 'full' ? fittingTo(step.kind as Kind) : usual;
  return [
    choice(view, { kind: 'full' }),
    choice(view, fitting),
    choice(view, { kind: 'bass-alone' }),
    paced(view, words.slower, 1 - STEP),
  ];
}

const HOLD: SoundChange = { kind: 'hold', slot: 0 };

/** What brings out what is asked, where all of it sounds as usual: the hand alone for its groove, unless it is about what rings. */
function fittingTo(kind: Kind): SoundChange {
  if (kind === 'change-place') return { kind: 'soft' };
  return RHYTHM_KINDS.has(kind) && kind !== 'roles' && kind !== 'opened' ? { kind: 'muted' } : HOLD;
}

/** All the others, by what they do; each group that holds one that stands shows which. */
export function moreChoices(view: DeskView): readonly ChoiceGroup[] {
  const slots = different(view);
  const byChord = (kind: ChordKind, from: readonly number[]) =>
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
  return [
    {
      title: words.rest,
      choices: (['again', 'soft', 'bass-forward', 'muted', 'drop-out', 'silence'] as const).map((kind) =>
        choice(view, { kind }),
      ),
    },
    { title: words.bandTitle, choices: bandChoices(view) },
    { title: words.tempoTitle, choices: [paced(view, words.slower, 1 - STEP), paced(view, words.faster, 1 + STEP)] },
    {
      title: words.feelTitle,
      choices: FEELS.map((feel) => beside(view, { kind: 'feel', feel }, view.sound.feel === feel)),
    },
    { title: words.holds, choices: byChord('hold', slots) },
    { title: words.alones, choices: byChord('chord-alone', slots) },
    { title: words.rootsThen, choices: byChord('root-then-chord', slots) },
    { title: words.roots, choices: byChord('root-alone', slots) },
    { title: words.pairs, choices: byChord('pair', slots.slice(1)) },
    { title: words.settlers, choices: settlers },
  ].filter(({ choices }) => choices.length > 0);
}

type ChordKind = 'hold' | 'pair' | 'root-alone' | 'chord-alone' | 'root-then-chord';

const BANDS: readonly Band[] = [
  { kit: false, bass: false },
  { kit: true, bass: false },
  { kit: false, bass: true },
  { kit: true, bass: true },
];

/** Who plays: the guitar with or without the others, or the kit alone. One of them stands. */
function bandChoices(view: DeskView): readonly Choice[] {
  const { change, band } = view.sound;
  const alone = change.kind === 'kit-only';
  const withGuitar = BANDS.map((each): Choice => {
    const same = each.kit === band.kit && each.bass === band.bass;
    const made = beside(view, { kind: 'band', ...each }, same && !alone);
    // While the kit is alone the guitar has to come back first.
    return alone ? { ...made, changes: [{ kind: 'full' }, ...(same ? [] : made.changes)] } : made;
  });
  return [...withGuitar.slice(0, 2), choice(view, { kind: 'kit-only' }), ...withGuitar.slice(2)];
}

/** Where a climb may end, and where it ends unless the teacher says otherwise; in whole beats a minute. */
export function climbRange({ vamp, sound, grooves }: Pick<DeskView, 'vamp' | 'sound' | 'grooves'>): {
  readonly low: number;
  readonly high: number;
  readonly usual: number;
} {
  // A groove's text begins with its id.
  const groove = grooves.find(({ id }) => vamp?.grooveText.startsWith(`${id},`));
  const high = groove?.tempo[1] ?? TEMPOS[1];
  const now = sound.tempo ?? vamp?.tempo ?? TEMPOS[0];
  const low = Math.min(high, Math.floor(now) + 1);
  return { low, high, usual: Math.max(low, Math.min(high, Math.round(now * (1 + CLIMB)))) };
}

/** First slot of each different chord. */
function different({ vamp }: Pick<DeskView, 'vamp'>): readonly number[] {
  const slots = vamp?.slots ?? [];
  return slots.flatMap(({ chord }, slot) => (slots.findIndex((each) => each.chord === chord) === slot ? [slot] : []));
}

function choice(view: DeskView, change: SoundChange): Choice {
  return beside(view, change, same(view.sound.change, change));
}

function beside(view: DeskView, change: SoundChange, on: boolean): Choice {
  const name = soundName(view, change);
  return { label: name, name, changes: [change], on };
}

function paced(view: DeskView, label: string, by: number): Choice {
  const tempo = Math.round((view.sound.tempo ?? view.vamp?.tempo ?? 0) * by);
  return { label, name: label, changes: [{ kind: 'tempo', tempo }], on: null };
}

function same(now: SoundChange, change: SoundChange): boolean {
  if (now.kind !== change.kind) return false;
  if ('slot' in now && 'slot' in change) return now.slot === change.slot;
  return !('index' in now && 'index' in change) || now.index === change.index;
}
