import type { ComponentChildren } from 'preact';
import { studentWords } from '../../../server/protocol/words/student.ts';
import { DoubleBar, Mark, PalmMuteDashes } from '../../shared/marks.tsx';

/** The foot while a question is open: three targets of one size, ink under the last once there is something to write. */
export function Foot(props: {
  readonly leftThumb: boolean;
  /** null: nothing to write. */
  readonly write: 'write' | 'take-back' | null;
  readonly notSure: boolean;
  readonly called: boolean;
  readonly onCannotHear: () => void;
  readonly onNotSure: () => void;
  readonly onWrite: () => void;
}) {
  const label = props.write === 'take-back' ? studentWords.takeBack : studentWords.write;
  const [hear, sure, write] = [
    <button type="button" key="hear" class="foot-button" aria-pressed={props.called} onClick={props.onCannotHear}>
      {studentWords.cannotHear}
    </button>,
    <button type="button" key="sure" class="foot-button" aria-pressed={props.notSure} onClick={props.onNotSure}>
      {studentWords.notSure}
    </button>,
    <button
      type="button"
      key="write"
      class={`foot-button${props.write ? ' ready' : ' idle'}`}
      aria-disabled={props.write === null}
      onClick={props.onWrite}
    >
      {label}
    </button>,
  ];
  return <div class="foot">{props.leftThumb ? [write, sure, hear] : [hear, sure, write]}</div>;
}

/** What became of an answer, in the foot's place and at its height. */
export function Panel(props: {
  readonly mark: 'in' | 'sending' | 'kept' | 'closed' | 'shown';
  readonly title: string;
  readonly text?: ComponentChildren;
  readonly children?: ComponentChildren;
}) {
  return (
    <div class={`panel panel-${props.mark}`}>
      {props.mark === 'kept' && (
        <div class="kept-line" aria-hidden="true">
          <span>{studentWords.keptMark}</span>
          <svg class="kept-dashes" height="14" width="100%">
            <PalmMuteDashes x={0} y={7} width={2000} />
          </svg>
          <i />
        </div>
      )}
      {props.mark === 'closed' && (
        <Mark width={16} height={76} class="panel-bar">
          <DoubleBar x={16} y={0} height={76} size={17} />
        </Mark>
      )}
      <div class="panel-words">
        <p class="serif panel-title">{props.title}</p>
        {props.text && <p class="panel-text">{props.text}</p>}
      </div>
      {props.children}
    </div>
  );
}
