import { useSignal } from '@preact/signals';
import { deskWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { LessonItem } from '../../../server/protocol/messages.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { kindsFor, readyLesson, roundKinds } from '../../../shared-theory/lessons.ts';
import { kindsOfLevel } from '../../../shared-theory/levels.ts';
import { newId } from '../../shared/ids.ts';
import type { Desk } from '../desk-state.ts';
import { moved, without, withKind } from '../lesson-plan.ts';
import { kindName } from '../step-names.ts';
import { LevelPresses } from './level-row.tsx';
import { NextPlanned } from './next-planned.tsx';

const words = deskWords.plan;

type Props = { readonly desk: Desk; readonly view: DeskView };

/** The lesson as a list of rounds: a ready one in one press, and every round of it to be changed. */
export function PlanList({ desk, view }: Props) {
  const items = desk.plan.items.value;
  const { played } = view.plan;
  const { beatLevel } = view.settings;
  const add = (level: number) =>
    desk.plan.set([...items, { item: newId(), level, kinds: roundKinds(level, beatLevel) }]);
  const ready = (level: number) =>
    desk.plan.set([
      ...items.filter(({ item }) => played.includes(item)),
      ...readyLesson(level, beatLevel).map((round) => ({ item: newId(), level: round.level, kinds: round.kinds })),
    ]);
  return (
    <section class="plan">
      <h2>{words.rounds}</h2>
      {items.length === 0 && <p class="hint">{words.none}</p>}
      <ol>
        {items.map((each, index) => (
          <Item
            key={each.item}
            desk={desk}
            view={view}
            item={each}
            number={index + 1}
            played={played.includes(each.item)}
          />
        ))}
      </ol>
      <NextPlanned desk={desk} view={view} />
      <LevelPresses levels={view.levels} label={words.add} name={words.addOne} onPress={add} />
      <LevelPresses levels={view.levels} label={words.ready} name={words.readyOne} onPress={ready} />
      <p class="hint">
        {words.readyNote} {items.length > 0 && words.readyReplaces}
      </p>
    </section>
  );
}

type ItemProps = Props & { readonly item: LessonItem; readonly number: number; readonly played: boolean };

function Item({ desk, view, item, number, played }: ItemProps) {
  const open = useSignal(false);
  return (
    <li class={played ? 'plan-item played' : 'plan-item'}>
      <div class="plan-line">
        <p>
          <strong>{fill(words.item, { n: number, level: item.level })}</strong>
          <span class="plan-kinds">{item.kinds.map(kindName).join(', ')}</span>
        </p>
        {played ? (
          <span class="hint">{words.played}</span>
        ) : (
          <button
            type="button"
            class="desk-link"
            aria-expanded={open.value}
            onClick={() => {
              open.value = !open.value;
            }}
          >
            {open.value ? words.done : words.change}
          </button>
        )}
      </div>
      {open.value && !played && <Editing desk={desk} view={view} item={item} />}
    </li>
  );
}

function Editing({ desk, view, item }: Props & { readonly item: LessonItem }) {
  const items = desk.plan.items.value;
  const set = desk.plan.set;
  const { beatLevel } = view.settings;
  const kinds = kindsOfLevel(item.level, beatLevel);
  const turn = (level: number) => {
    const kept = kindsFor(level, item.kinds, beatLevel);
    const asked = kept.length > 0 ? kept : roundKinds(level, beatLevel);
    set(items.map((each) => (each === item ? { ...each, level, kinds: asked } : each)));
  };
  return (
    <div class="plan-edit">
      <div class="kind-row" role="group" aria-label={words.kinds}>
        {kinds.map((kind) => (
          <button
            key={kind}
            type="button"
            class="toggle"
            aria-pressed={item.kinds.includes(kind)}
            onClick={() => set(withKind(items, item.item, kind, kinds))}
          >
            {kindName(kind)}
          </button>
        ))}
      </div>
      <div class="plan-moves">
        <label class="field narrow">
          <span>{words.level}</span>
          <select value={String(item.level)} onChange={(event) => turn(Number(event.currentTarget.value))}>
            {view.levels.map(({ level }) => (
              <option key={level} value={String(level)}>
                {level}
              </option>
            ))}
          </select>
        </label>
        <button type="button" class="desk-link" onClick={() => set(moved(items, item.item, -1))}>
          {words.up}
        </button>
        <button type="button" class="desk-link" onClick={() => set(moved(items, item.item, 1))}>
          {words.down}
        </button>
        <button type="button" class="desk-link" onClick={() => set(without(items, item.item))}>
          {words.remove}
        </button>
      </div>
    </div>
  );
}
