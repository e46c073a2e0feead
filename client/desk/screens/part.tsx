import type { ComponentChildren } from 'preact';

/** A part of a leaf under a heading of its own. */
export function Part({ title, children }: { readonly title: string; readonly children: ComponentChildren }) {
  return (
    <section class="part">
      <h2>{title}</h2>
      {children}
    </section>
  );
}
