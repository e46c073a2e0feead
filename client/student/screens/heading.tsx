import { useEffect, useRef } from 'preact/hooks';
import type { ComponentChildren } from 'preact';

/** Heading of a screen. It takes the focus when the screen changes, so that a screen reader reads on from there. */
export function Heading(props: { readonly screen: string; readonly children: ComponentChildren }) {
  const ref = useRef<HTMLHeadingElement>(null);
  useEffect(() => ref.current?.focus({ preventScroll: true }), [props.screen]);
  return (
    <h1 class="serif question" tabIndex={-1} ref={ref}>
      {props.children}
    </h1>
  );
}

/** Top line of every screen after the door: room, and whose phone it is. */
export function TopLine(props: { readonly room: string; readonly name: string }) {
  return (
    <header class="top-line">
      <span class="top-room">{props.room}</span>
      <bdi class="top-name">{props.name}</bdi>
    </header>
  );
}
