import { isIP } from 'node:net';
import { networkInterfaces } from 'node:os';

/** One IPv4 or IPv6 address of this machine that a phone could try. */
export type Address = { readonly address: string; readonly score: number };

type Interface = { readonly address: string; readonly family: string | number; readonly internal: boolean };
export type Interfaces = Readonly<Record<string, readonly Interface[] | undefined>>;

/** Bridges, containers, virtual machines and tunnels by the names that systems give them: phones do not reach those. */
const VIRTUAL =
  /docker|^br-|^veth|vethernet|wsl|vmnet|vmware|vboxnet|virtualbox|virbr|^utun|^tun|^tap|tailscale|^zt|zerotier|^wg|ppp|^ham|^llw|^awdl|bluetooth/i;

/** Below this an address is shown only on request. */
const LIKELY = 50;

/** Addresses that phones could reach, the likeliest first. */
export function rankAddresses(interfaces: Interfaces): readonly Address[] {
  const found = Object.entries(interfaces).flatMap(([name, list]) =>
    (list ?? [])
      .filter(({ family, internal, address }) => (family === 'IPv4' || family === 4) && !internal && reachable(address))
      .map(({ address }) => ({ address, score: rangeScore(address) - (VIRTUAL.test(name) ? 100 : 0) })),
  );
  return found.toSorted((left, right) => right.score - left.score);
}

/** Addresses of this machine now; with `forced` that one stands first. */
export function ownAddresses(forced?: string): {
  readonly likely: readonly string[];
  readonly more: readonly string[];
} {
  return splitAddresses(rankAddresses(networkInterfaces()), forced);
}

/** The likely ones, best first, and the rest; where none is likely the best of the rest must do. */
export function splitAddresses(ranked: readonly Address[], forced?: string) {
  const all = ranked.map(({ address }) => address);
  const likely = ranked.filter(({ score }) => score >= LIKELY).map(({ address }) => address);
  const first = forced ? [forced, ...likely.filter((address) => address !== forced)] : likely;
  const shown = first.length > 0 ? first : all.slice(0, 1);
  return { likely: shown, more: all.filter((address) => !shown.includes(address)) };
}

/** The address of a page as typed and as coded in the square: always with `http://`, or a browser may try another way. */
export function pageUrl(host: string, port: number, path = '/'): string {
  return `http://${isIP(host) === 6 ? `[${host}]` : host}:${port}${path}`;
}

/** An IPv4 peer of a socket that listens on both families, without its prefix. */
export function plainAddress(address: string): string {
  return address.replace(/^::ffff:/i, '');
}

export function isLoopback(address: string): boolean {
  return plainAddress(address).startsWith('127.') || address === '::1';
}

/** An address that the machine gave to itself because nobody answered leads nowhere. */
function reachable(address: string): boolean {
  return !address.startsWith('169.254.') && !address.startsWith('127.');
}

function rangeScore(address: string): number {
  const [first = 0, second = 0] = address.split('.').map(Number);
  if (first === 192 && second === 168) return 90;
  if (first === 10) return 80;
  if (first === 172 && second >= 16 && second < 32) return 70;
  // Shared address space of carriers and of private networks over the internet.
  if (first === 100 && second >= 64 && second < 128) return 10;
  return 60;
}
