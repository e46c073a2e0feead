import type { HostView } from '../../../server/protocol/views.ts';
import { hostWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { httpAddress, roomAddress } from '../address.ts';
import { Qr } from './qr.tsx';

/** The register page grown small: whoever comes late still finds the room. */
export function JoinCard({ room, addresses }: Pick<HostView, 'room' | 'addresses'>) {
  const address = addresses[0] ?? '';
  const link = roomAddress(address, room);
  return (
    <aside class="join-card">
      <Qr text={link} size={130} label={fill(hostWords.register.scanLabel, { address: link })} />
      <p class="join-text">
        <span class="join-address">{httpAddress(address).replace('http://', '')}</span>
        <strong class="join-room">{room}</strong>
      </p>
    </aside>
  );
}

/** The same in one line of text, for screens whose drawing needs the room. */
export function JoinLine({ room, addresses }: Pick<HostView, 'room' | 'addresses'>) {
  return (
    <p class="join-line">
      {httpAddress(addresses[0] ?? '').replace('http://', '')} <strong>{room}</strong>
    </p>
  );
}
