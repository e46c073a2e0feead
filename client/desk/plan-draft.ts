import { computed, effect, signal, type ReadonlySignal } from '@preact/signals';
import type { LessonItem, Reply } from '../../server/protocol/messages.ts';
import type { DeskView } from '../../server/protocol/views.ts';
import type { Wish } from './desk-state.ts';
import { nextItem } from './lesson-plan.ts';

/** The lesson's plan as the teacher sees it while it is being changed. */
export type PlanDraft = {
  readonly items: ReadonlySignal<readonly LessonItem[]>;
  /** The first that has not been played; null where none is left. */
  readonly next: ReadonlySignal<LessonItem | null>;
  /** Sends the whole list; a refusal brings back what the server holds. */
  readonly set: (items: readonly LessonItem[]) => void;
};

/** Keeps what was set until the server's list has followed, so that quick changes build on each other. */
export function createPlanDraft(
  view: ReadonlySignal<DeskView | null>,
  wish: (made: Wish) => Promise<Reply | null>,
): PlanDraft {
  const draft = signal<{
    readonly items: readonly LessonItem[];
    readonly over: unknown;
    readonly done: boolean;
  } | null>(null);
  const plan = computed(() => view.value?.plan);
  effect(() => {
    const made = draft.value;
    const held = plan.value;
    if (made === null || held === undefined) return;
    const followed = JSON.stringify(held.items) === JSON.stringify(made.items);
    if (followed || (made.done && held !== made.over)) draft.value = null;
  });
  const items = computed(() => draft.value?.items ?? plan.value?.items ?? []);
  return {
    items,
    next: computed(() => nextItem(items.value, plan.value?.played ?? [])),
    set: (list) => {
      const mine = { items: list, over: plan.value, done: false };
      draft.value = mine;
      void wish({ type: 'PlanLesson', items: list }).then((reply) => {
        if (draft.value === mine) draft.value = reply?.ok ? { ...mine, done: true } : null;
      });
    },
  };
}
