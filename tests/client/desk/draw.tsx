import { render } from 'preact';
import { act } from 'preact/test-utils';
import { DeskPage } from '../../../client/desk/screens/desk-page.tsx';
import type { DeskView } from '../../../server/protocol/views.ts';
import { answers, grooves, leaves } from '../../../client/desk/screens/late.tsx';
import { deskOf } from './fixtures.ts';

// What is fetched late is there: pages are drawn in one go.
await leaves.fetch();
await answers.fetch();
await grooves.fetch();

export const root = document.createElement('div');
document.body.append(root);

/** Draws the desk's page; `made` notes what its presses ask for. */
export function draw(view: DeskView, now: Parameters<typeof deskOf>[1] = {}) {
  const { desk, made } = deskOf(view, now);
  void act(() => render(null, root));
  void act(() => render(<DeskPage desk={desk} />, root));
  return { desk, made };
}

/** The one button that reads so, or is named so for a screen reader. */
export function button(name: string): HTMLButtonElement {
  const named = Array.from(root.querySelectorAll('button')).filter(
    (each) => (each.getAttribute('aria-label') ?? each.textContent?.trim()) === name,
  );
  const [found] = named;
  if (!found || named.length > 1) throw new Error(`${named.length} buttons are called ${name}`);
  return found;
}

export function press(...names: readonly string[]): void {
  for (const name of names) void act(() => button(name).click());
}

/** The press at the thumb, and whether it is in ink. */
export function main(): { readonly name: string; readonly ink: boolean } {
  const found = root.querySelector('.desk-actions .main');
  return { name: found?.textContent ?? '', ink: found?.classList.contains('primary') ?? false };
}

/** The presses beside it. */
export const others = (): readonly string[] =>
  Array.from(root.querySelectorAll('.desk-others button'), (each) => each.textContent ?? '');

export const text = (): string => root.textContent ?? '';
