import type { HostView } from '../../../server/protocol/views.ts';
import { hostWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { httpAddress, portOf, roomAddress } from '../address.ts';
import { isNarrow, MARGIN, type Frame } from '../frame.ts';
import { Header } from '../parts/header.tsx';
import { Qr } from '../parts/qr.tsx';
import { Seats } from '../parts/seats.tsx';
import { SoundPanel, type SoundProps } from '../parts/sound-panel.tsx';

const words = hostWords.register;

type RegisterProps = Omit<SoundProps, 'view'> & {
  readonly view: HostView;
  readonly frame: Frame;
  /** A minute has passed and no seat is taken. */
  readonly unreached: boolean;
};

/** The page before the first round: where to join, who has come, and whether it sounds. */
export function Register({ view, frame, unreached, sound, actions }: RegisterProps) {
  const [address = ''] = view.addresses;
  const link = roomAddress(address, view.room);
  const taken = view.seats.length;
  const count = taken === 0 ? words.none : taken === 1 ? words.one : fill(words.many, { n: taken });
  return (
    <main class="screen register">
      <Header>
        <span class="label">{words.waiting}</span>
      </Header>
      <section class="join">
        <div>
          <h1 class="question">{words.heading}</h1>
          <p class="instruction">{words.how}</p>
          <p class="address">{httpAddress(address)}</p>
          <p class="room-line">
            <span class="label">{words.room}</span> <strong class="room-code">{view.room}</strong>
          </p>
        </div>
        <Qr text={link} size={440} label={fill(words.scanLabel, { address: link })} />
      </section>
      <section class="roll">
        {unreached && taken === 0 ? null : (
          <p class="roll-count" role="status">
            {count}
          </p>
        )}
        {unreached && taken === 0 ? (
          <Unreached addresses={view.addresses} />
        ) : (
          <Seats
            seats={view.seats}
            named={view.settings.namesShown}
            width={frame.width - 2 * MARGIN}
            height={rollHeight(frame)}
          />
        )}
      </section>
      <SoundPanel view={view} sound={sound} actions={actions} />
    </main>
  );
}

/** What the seats may take of the picture. */
function rollHeight(frame: Frame): number {
  return Math.max(150, frame.height - (isNarrow(frame) ? 900 : 838));
}

/** Why phones may not get through; said only after a minute without any. */
function Unreached({ addresses }: Pick<HostView, 'addresses'>) {
  const [first = '', ...others] = addresses;
  const { heading, hints, others: also } = hostWords.unreached;
  return (
    <div class="unreached" role="alert">
      <h2>{heading}</h2>
      <ul>
        {hints.map((hint) => (
          <li key={hint}>{fill(hint, { port: portOf(first) })}</li>
        ))}
        {others.length > 0 ? <li>{fill(also, { addresses: others.map(httpAddress).join(', ') })}</li> : null}
      </ul>
    </div>
  );
}
