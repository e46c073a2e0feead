import { expect } from 'vitest';
import { generate, type GeneratedVamp } from '../../shared-theory/generate.ts';
import { kindsOfLevel, type Level } from '../../shared-theory/levels.ts';
import { asks } from '../../shared-theory/questions/asks.ts';
import { judgeOf } from '../../shared-theory/questions/judges.ts';
import { levelQuestions } from '../../shared-theory/questions/level-questions.ts';
import type { Answer, AskedOf, Kind, QuestionSettings } from '../../shared-theory/questions/question.ts';
import type { Truth } from '../../shared-theory/truth.ts';

const VAMPS = 10_000;

/** A question, and every answer that is right to it, each as one text. */
export type Asked = {
  readonly kind: Kind;
  readonly target: number;
  readonly right: ReadonlySet<string>;
};
export type Heard = { readonly made: GeneratedVamp; readonly asked: readonly Asked[] };
export type Evening = readonly Heard[];

/** One text per thing heard: a place on the neck is its pitch class, whichever string. */
function nameOf(kind: Kind, answer: Answer): string {
  return kind === 'root' || kind === 'bass' ? judgeOf<Kind>(kind).heard(answer) : asks[kind].key(answer as never);
}

function askedOf(truth: Truth, settings: QuestionSettings, kinds: readonly Kind[]): readonly Asked[] {
  return levelQuestions(truth, settings, kinds).map(({ kind, target }): Asked => {
    const of: AskedOf = { truth, target, settings };
    const judge = judgeOf<Kind>(kind);
    const right = [judge.truth(of), ...judge.also(of)].filter((answer) => answer !== null);
    return { kind, target, right: new Set(right.map((answer) => nameOf(kind, answer))) };
  });
}

/** A long evening of a level: each vamp knows those before it, and all that a round of it can ask is asked. */
export function evening(level: Level, counting: boolean): Evening {
  const kinds = kindsOfLevel(level.level).filter((kind) => kind !== 'count' || counting);
  const settings = { policy: 'majors', qualities: level.qualities } as const;
  // What is asked hangs on the chords, the ways of the bass and the strokes: worked out once for each.
  const known = new Map<string, readonly Asked[]>();
  let recent: readonly GeneratedVamp['vamp'][] = [];
  return Array.from({ length: VAMPS }, (_, seed) => {
    const made = generate({ level: level.level, seed, counting, recent });
    recent = [...recent, made.vamp].slice(-8);
    const { truth } = made;
    const name = JSON.stringify([made.chords, truth.directions, truth.strokes, truth.settlers]);
    const asked = known.get(name) ?? askedOf(truth, settings, kinds);
    known.set(name, asked);
    return { made, asked };
  });
}

/** How often an answer is right among the questions of a kind that it can be given to, and how many those are. */
export type Rate = { readonly rate: number; readonly count: number };
/** What is answered to a question; null where the strategy has nothing to say. */
export type Strategy = (asked: Asked, heard: Heard, index: number) => Answer | null;

export function rateOf(heard: Evening, kind: Kind, strategy: Strategy): Rate {
  let right = 0;
  let count = 0;
  for (const [index, each] of heard.entries()) {
    for (const asked of each.asked) {
      if (asked.kind !== kind) continue;
      const answer = strategy(asked, each, index);
      if (answer === null) continue;
      count += 1;
      if (asked.right.has(nameOf(kind, answer))) right += 1;
    }
  }
  return { rate: right / count, count };
}

/** Every constant answer that is ever right, by its rate among all questions of the kind: any other earns nothing. */
export function constants(
  heard: Evening,
  kind: Kind,
  holds: (heard: Heard) => boolean = () => true,
): Map<string, Rate> {
  const asked = heard.filter(holds).flatMap((each) => each.asked.filter((one) => one.kind === kind));
  const rights = new Map<string, number>();
  for (const { right } of asked) for (const name of right) rights.set(name, (rights.get(name) ?? 0) + 1);
  return new Map([...rights].map(([name, count]) => [name, { rate: count / asked.length, count: asked.length }]));
}

/** No more than a share, but for luck: four standard deviations of as many tries. */
export function expectAtMost(name: string, { rate, count }: Rate, most: number): void {
  const luck = 4 * Math.sqrt((most * (1 - most)) / count);
  expect([name, rate <= most + luck, rate]).toEqual([name, true, rate]);
}
