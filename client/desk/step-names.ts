import { deskWords, stepWords } from '../../server/protocol/words/en.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import type { DeskView, WireAsking, WireStep, WireVamp } from '../../server/protocol/views.ts';
import { COLLECTED_KINDS, GRID_KINDS, type Kind } from '../../shared-theory/questions/question.ts';
import { printChord } from '../shared/names.ts';
import { isSung, settlerName } from '../shared/settler-name.ts';

const names: Readonly<Record<string, string>> = stepWords;

/** A kind of question in the row of steps: `bass`. */
export function kindName(kind: string): string {
  return names[kind] ?? kind;
}

/** `keys`; where a round asks a kind more than once, with its chord: `quality Am`, `settler C`; of a note `settler, C sung`. */
export function stepName({ steps, vamp }: Pick<DeskView, 'steps' | 'vamp'>, step: WireStep): string {
  const settler = vamp?.settlers[step.target];
  const chord = vamp?.slots[step.target]?.chord;
  const named =
    step.kind === 'settler'
      ? settler && settlerName(settler)
      : chord === undefined
        ? undefined
        : printChord(chord).text;
  const several = steps.filter(({ kind }) => kind === step.kind).length > 1;
  if (several && step.kind === 'settler' && settler && isSung(settler))
    return `${kindName(step.kind)}, ${fill(deskWords.sound.sung, { name: settlerName(settler) })}`;
  return several && named !== undefined ? `${kindName(step.kind)} ${named}` : kindName(step.kind);
}

/** Whether the answers are opinions: none is right, and none is marked. */
export const isCollected = ({ kind }: WireStep): boolean => COLLECTED_KINDS.has(kind as Kind);

/** What is asked, for its prompt: as it was opened, else as it would be under the settings of its round. */
export function askingOf(view: DeskView, step: WireStep): WireAsking {
  if (step.question === view.current?.question) return view.current.asking;
  const { kind, target } = step;
  const { policy, qualities } = view.askedUnder ?? view.settings;
  const settler = kind === 'settler' ? view.vamp?.settlers[target] : undefined;
  return {
    kind,
    target,
    options: kind === 'quality' ? qualities : [policy],
    ...(settler && isSung(settler) ? { sung: true } : {}),
    ...(GRID_KINDS.has(kind as Kind) && view.vamp ? gridOf(view.vamp) : {}),
  };
}

/** The grid of a round's groove, as its text names it: `… | E8 | 4/4 | …`. */
function gridOf({ grooveText }: Pick<WireVamp, 'grooveText'>): { readonly grid?: string } {
  const grid = /\|\s*([A-Z][0-9]+)\s*\|/.exec(grooveText)?.[1];
  return grid === undefined ? {} : { grid };
}
