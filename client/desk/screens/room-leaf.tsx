import { useSignal } from '@preact/signals';
import { deskWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import type { Desk } from '../desk-state.ts';
import { newPairingCode } from '../requests.ts';
import { counted } from '../sentences.ts';
import { Part } from './part.tsx';
import { SoundSettings } from './sound-settings.tsx';
import { Theory } from './theory-settings.tsx';
import { Tones } from './tones.tsx';

const words = deskWords.room;

type Props = { readonly desk: Desk; readonly view: DeskView };

/** The room itself: host screen, phones, a second desk, the class's settings, the end. */
export function RoomLeaf({ desk, view }: Props) {
  const [first, ...others] = view.addresses;
  const seats = view.students.length;
  return (
    <section class="room-leaf">
      <h1>{words.heading}</h1>
      <Part title={words.hostTitle}>
        <p>{words.host}</p>
        <p>
          <a class="desk-button primary" href={`/host/${view.room}`} target="_blank" rel="noopener">
            {words.hostOpen}
          </a>
        </p>
        <p class="hint">{view.soundHeld ? words.soundOn : words.soundOff}</p>
      </Part>
      <Part title={words.phonesTitle}>
        <p>{words.address}</p>
        <p class="address">{first}</p>
        <p class="hint">{seats === 0 ? words.seats.none : counted(seats, words.seats)}</p>
        {view.visitors === 0 && seats === 0 && <p class="hint">{words.unreached}</p>}
        {others.length > 0 && (
          <details>
            <summary>{words.otherAddresses}</summary>
            <ul>
              {others.map((address) => (
                <li key={address}>{address}</li>
              ))}
            </ul>
          </details>
        )}
      </Part>
      <Pairing address={first ?? location.origin} />
      <Tones desk={desk} view={view} />
      <SoundSettings desk={desk} view={view} />
      <Theory desk={desk} view={view} />
      <QualityPad desk={desk} view={view} />
      <SoundFollows desk={desk} view={view} />
      <Names desk={desk} view={view} />
      <Ending desk={desk} view={view} />
    </section>
  );
}

function Pairing({ address }: { readonly address: string }) {
  const code = useSignal('');
  const ask = async () => {
    code.value = (await newPairingCode())?.code ?? '';
  };
  return (
    <Part title={words.pairTitle}>
      <p>
        <button type="button" class="desk-button" onClick={() => void ask()}>
          {words.pair}
        </button>
      </p>
      <div role="status">
        {code.value && (
          <>
            <p class="pairing-code">{code.value}</p>
            <p class="hint">{fill(words.pairHow, { address: new URL(address).origin })}</p>
          </>
        )}
      </div>
    </Part>
  );
}

const TWO = ['major', 'minor'] as const;
const SIX = ['major', 'minor', 'power', 'suspended-fourth', 'diminished', 'augmented'] as const;

function QualityPad({ desk, view }: Props) {
  const two = view.settings.qualities.length === TWO.length;
  const set = (qualities: readonly string[]) => void desk.wish({ type: 'ChangeSettings', settings: { qualities } });
  return (
    <Part title={words.qualitiesTitle}>
      <div class="choice-row" role="radiogroup" aria-label={words.qualitiesTitle}>
        <label>
          <input type="radio" name="qualities" checked={two} onChange={() => set(TWO)} />
          {words.qualities.two}
        </label>
        <label>
          <input type="radio" name="qualities" checked={!two} onChange={() => set(SIX)} />
          {words.qualities.six}
        </label>
      </div>
      <p class="hint">{words.qualitiesNote}</p>
    </Part>
  );
}

function SoundFollows({ desk, view }: Props) {
  return (
    <Part title={words.soundTitle}>
      <div class="choice-row">
        <label>
          <input
            type="checkbox"
            checked={view.settings.soundFollows}
            onChange={(event) =>
              void desk.wish({ type: 'ChangeSettings', settings: { soundFollows: event.currentTarget.checked } })
            }
          />
          {words.soundFollows}
        </label>
      </div>
      <p class="hint">{words.soundFollowsNote}</p>
    </Part>
  );
}

function Names({ desk, view }: Props) {
  return (
    <Part title={words.namesTitle}>
      <div class="choice-row">
        <label>
          <input
            type="checkbox"
            checked={view.settings.namesShown}
            onChange={(event) =>
              void desk.wish({ type: 'ChangeSettings', settings: { namesShown: event.currentTarget.checked } })
            }
          />
          {words.names}
        </label>
      </div>
      <p class="hint">{words.namesNote}</p>
    </Part>
  );
}

function Ending({ desk, view }: Props) {
  const sure = useSignal(false);
  const endSure = useSignal(false);
  if (view.status === 'room-ended') {
    return (
      <Part title={words.endTitle}>
        <p>{words.ended}</p>
        <p>
          <a class="desk-button" href="/desk">
            {words.newRoom}
          </a>
        </p>
      </Part>
    );
  }
  return (
    <Part title={words.endTitle}>
      <p>
        <button
          type="button"
          class="desk-button"
          disabled={view.status !== 'round'}
          onClick={() => {
            if (!endSure.value) {
              endSure.value = true;
              return;
            }
            void desk.wish({ type: 'EndLesson' }).then((reply) => {
              if (!reply?.ok) return;
              desk.show(null);
              desk.turnTo('round');
            });
          }}
        >
          {endSure.value ? words.endSure : words.endLesson}
        </button>
      </p>
      <p class="hint">{words.endNote}</p>
      <p>
        <button
          type="button"
          class="desk-button"
          onClick={() => {
            if (sure.value) void desk.wish({ type: 'CloseRoom' });
            else sure.value = true;
          }}
        >
          {sure.value ? words.sure : words.closeRoom}
        </button>
      </p>
      <p class="hint">{words.closeNote}</p>
    </Part>
  );
}
