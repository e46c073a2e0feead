import type { ComponentChildren } from 'preact';
import { Heading, TopLine } from './heading.tsx';

/** A screen that asks nothing: waiting, the end, a room that has closed. Six strings at rest carry it. */
export function Quiet(props: {
  readonly room: string;
  readonly name: string;
  readonly title: string;
  readonly children?: ComponentChildren;
}) {
  return (
    <main class="page quiet">
      <TopLine room={props.room} name={props.name} />
      <Heading screen={props.title}>{props.title}</Heading>
      <div class="quiet-text">{props.children}</div>
      <Strings />
    </main>
  );
}

/** Thickness of the strings in pixels, the highest first. */
const STRINGS = [1, 1, 2, 3, 4, 5];

/** Six strings, the thickest lowest, from edge to edge. */
function Strings() {
  return (
    <div class="strings" aria-hidden="true">
      {STRINGS.map((height, string) => (
        <i key={string} style={{ height }} />
      ))}
    </div>
  );
}
