/** An address as phones must open it: with its `http://`, or some browsers try https. */
export function httpAddress(address: string): string {
  const bare = address.replace(/^https?:\/\//, '').replace(/\/+$/, '');
  const scheme = address.startsWith('https://') ? 'https' : 'http';
  return `${scheme}://${bare}`;
}

/** What the QR code holds: the room's page. */
export function roomAddress(address: string, room: string): string {
  return `${httpAddress(address)}/${room}`;
}

/** Port of an address; 80 where none is written. */
export function portOf(address: string): string {
  return /:(\d+)$/.exec(httpAddress(address))?.[1] ?? '80';
}
