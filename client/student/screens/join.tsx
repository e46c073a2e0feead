import { useState } from 'preact/hooks';
import { studentWords } from '../../../server/protocol/words/student.ts';
import { PencilRing, Wordmark, Mark } from '../../shared/marks.tsx';
import type { Seat } from '../student-state.ts';

type DoorProps = {
  readonly room: string;
  readonly first: Seat;
  readonly busy: boolean;
  /** A sentence, where a seat was refused. */
  readonly fault: string;
  readonly forgets: boolean;
  readonly onJoin: (seat: Seat) => void;
  readonly onLeave: () => void;
};

/** The door of a room: a name, and how this phone is held. */
export function Join(props: DoorProps) {
  const [seat, change] = useState(props.first);
  const set = (part: Partial<Seat>): void => change((now) => ({ ...now, ...part }));
  const submit = (event: Event): void => {
    event.preventDefault();
    if (!props.busy) props.onJoin(seat);
  };
  return (
    <main>
      <form class="page door" onSubmit={submit} noValidate>
        <div class="door-sheet">
          <header class="top-line">
            <Wordmark />
            <button type="button" class="quiet-link" onClick={props.onLeave}>
              {studentWords.otherRoom}
            </button>
          </header>
          <h1 class="room-code" aria-label={`${studentWords.room} ${props.room.split('').join(' ')}`}>
            {props.room}
          </h1>
          <label class="field">
            <span class="field-label">{studentWords.nameLabel}</span>
            <input
              class="serif name-input"
              name="name"
              value={seat.name}
              autoComplete="given-name"
              autoCapitalize="words"
              spellcheck={false}
              enterKeyHint="go"
              dir="auto"
              aria-invalid={props.fault !== ''}
              aria-describedby="door-fault"
              onInput={(event) => set({ name: event.currentTarget.value })}
            />
          </label>
          <p class="fault" id="door-fault" role="alert">
            {props.fault}
          </p>
          <Pair
            label={studentWords.guitarLabel}
            options={[studentWords.rightHanded, studentWords.leftHanded]}
            second={seat.leftHanded}
            onChange={(leftHanded) => set({ leftHanded })}
          />
          <Pair
            label={studentWords.seatsLabel}
            options={[studentWords.one, studentWords.two]}
            second={seat.pair}
            onChange={(pair) => set({ pair })}
          />
          <Pair
            label={studentWords.thumbLabel}
            options={[studentWords.rightThumb, studentWords.leftThumb]}
            second={seat.leftThumb}
            onChange={(leftThumb) => set({ leftThumb })}
          />
          {props.forgets && <p class="small">{studentWords.doorForgets}</p>}
        </div>
        <button type="submit" class="foot-single" aria-disabled={props.busy}>
          {props.busy ? studentWords.takingSeat : studentWords.takeSeat}
        </button>
      </form>
    </main>
  );
}

/** One of two, the chosen one ringed. Radio buttons underneath, so that arrows and readers work as everywhere. */
function Pair(props: {
  readonly label: string;
  readonly options: readonly [string, string];
  readonly second: boolean;
  readonly onChange: (second: boolean) => void;
}) {
  return (
    <fieldset class="pair">
      <legend class="field-label">{props.label}</legend>
      <div class="pair-options">
        {props.options.map((option, index) => {
          const checked = props.second === (index === 1);
          const half = option.length * 4.7 + 24;
          return (
            <label key={option} class={`pair-option${checked ? ' said' : ''}`}>
              <input
                type="radio"
                class="visually-hidden"
                name={props.label}
                checked={checked}
                onChange={() => props.onChange(index === 1)}
              />
              {checked && (
                <Mark width={164} height={52} class="pair-ring">
                  <PencilRing x={82} y={27} rx={Math.min(half, 76)} ry={20} />
                </Mark>
              )}
              <span>{option}</span>
            </label>
          );
        })}
      </div>
    </fieldset>
  );
}
