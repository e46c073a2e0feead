import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { deskWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { Wordmark } from '../../shared/marks.tsx';
import { listRooms, openRoom, type OpenRoom } from '../requests.ts';

const words = deskWords.lobby;

/** Before a room: open one, or go on in one that is still open. */
export function Lobby() {
  const rooms = useSignal<readonly OpenRoom[]>([]);
  const busy = useSignal(false);
  const notice = useSignal('');
  useEffect(() => {
    void listRooms().then((found) => {
      rooms.value = found ?? [];
      if (!found) notice.value = words.failed;
    });
  }, []);
  const open = async () => {
    busy.value = true;
    const room = await openRoom();
    busy.value = false;
    if (room) location.assign(`/desk/${room}`);
    else notice.value = words.failed;
  };
  return (
    <div class="desk-lobby">
      <Wordmark />
      <h1>{words.heading}</h1>
      <p class="lead">{words.lead}</p>
      <button type="button" class="desk-button primary" disabled={busy.value} onClick={() => void open()}>
        {busy.value ? words.opening : words.open}
      </button>
      <p class="notice" role="status">
        {notice.value}
      </p>
      {rooms.value.length > 0 && (
        <section>
          <h2>{words.standing}</h2>
          <ul class="desk-list">
            {rooms.value.map(({ room, openedAt }) => (
              <li key={room}>
                <a href={`/desk/${room}`}>{fill(words.return, { room })}</a>
                <span>{fill(words.since, { time: clockTime(openedAt) })}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}

function clockTime(at: number): string {
  return new Date(at).toLocaleString([], { weekday: 'short', hour: '2-digit', minute: '2-digit' });
}
