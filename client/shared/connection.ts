import { signal, type ReadonlySignal } from '@preact/signals';
import type { Handshake } from '../../server/protocol/messages.ts';
import { openLine, type ConnectionStatus, type Line, type LineOptions, type Listeners } from './line.ts';

export type { ConnectionStatus } from './line.ts';

/** The socket of host or desk, with its status as a signal. Phones use the line itself: signals would cost them a pad. */
export type Connection = Line & { readonly status: ReadonlySignal<ConnectionStatus> };

/** Opens the one socket of a page. `handshake` may be a function: it is then asked at each attempt. */
export function openConnection(
  handshake: Handshake | (() => Handshake),
  on: Listeners,
  options: LineOptions = {},
): Connection {
  const status = signal<ConnectionStatus>({ kind: 'connecting' });
  const line = openLine(handshake, on, (next) => (status.value = next), options);
  return { ...line, status };
}

/** The server's view as a signal: `view` is whole, `patch` replaces top-level fields. Spread `listeners` into `openConnection`. */
export function createView<View extends object>(): {
  readonly view: ReadonlySignal<View | null>;
  readonly listeners: { readonly view: (view: View) => void; readonly patch: (patch: Partial<View>) => void };
} {
  const view = signal<View | null>(null);
  return {
    view,
    listeners: {
      view: (whole) => {
        view.value = whole;
      },
      patch: (patch) => {
        // A patch without a whole view before it describes nothing; the whole one comes with each connect.
        if (view.value) view.value = { ...view.value, ...patch };
      },
    },
  };
}
