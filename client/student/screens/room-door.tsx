import { useState } from 'preact/hooks';
import { studentWords } from '../../../server/protocol/words/student.ts';
import { Wordmark } from '../../shared/marks.tsx';

/** Where no room is named in the address, or the named one is not there: five letters to type. */
export function RoomDoor(props: {
  readonly first: string;
  readonly fault: string;
  readonly onRoom: (typed: string) => void;
}) {
  const [typed, type] = useState(props.first);
  return (
    <main>
      <form
        class="page door"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          props.onRoom(typed);
        }}
      >
        <div class="door-sheet">
          <header class="top-line">
            <h1>
              <Wordmark />
            </h1>
          </header>
          <label class="field room-field">
            <span class="field-label">{studentWords.roomLabel}</span>
            <input
              class="room-input"
              name="room"
              value={typed}
              autoComplete="off"
              autoCapitalize="characters"
              autoCorrect="off"
              spellcheck={false}
              enterKeyHint="go"
              aria-invalid={props.fault !== ''}
              aria-describedby="room-fault"
              onInput={(event) => type(event.currentTarget.value.toUpperCase())}
            />
          </label>
          <p class="fault" id="room-fault" role="alert">
            {props.fault}
          </p>
        </div>
        <button type="submit" class="foot-single">
          {studentWords.goIn}
        </button>
      </form>
    </main>
  );
}
