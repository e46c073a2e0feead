import type { ComponentChildren } from 'preact';

/** One target of a pad: a real button over its drawing. Tapped again it takes the answer back. */
export function Choice(props: {
  readonly label: string;
  readonly pressed: boolean;
  readonly closed: boolean;
  readonly sounded?: boolean | undefined;
  readonly class?: string;
  /** Place over the drawing in CSS pixels; none for a target in the flow of the page. */
  readonly at?: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  /** A second target for the same answer: for thumbs alone. */
  readonly twin?: boolean;
  readonly onTap: () => void;
  readonly children?: ComponentChildren;
}) {
  const { at } = props;
  return (
    <button
      type="button"
      class={`choice ${props.class ?? ''}${at ? ' over' : ''}`}
      style={at && { left: `${at.x}px`, top: `${at.y}px`, width: `${at.width}px`, height: `${at.height}px` }}
      aria-label={props.label}
      aria-pressed={props.pressed}
      disabled={props.closed}
      {...(props.twin && { tabIndex: -1, 'aria-hidden': true })}
      onClick={props.onTap}
    >
      {props.children}
    </button>
  );
}
