import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';

/** Listens on both IP families, or on IPv4 alone where the machine has no other, and returns the port. Rejects with the system's error. */
export async function listen(server: Server, port: number): Promise<number> {
  try {
    return await listenOn(server, port, '::');
  } catch (error) {
    if (!hasCode(error, ['EAFNOSUPPORT', 'EADDRNOTAVAIL', 'EINVAL'])) throw error;
    return listenOn(server, port, '0.0.0.0');
  }
}

/** Whether an error of the system carries one of these codes. */
export function hasCode(error: unknown, codes: readonly string[]): boolean {
  return error instanceof Error && 'code' in error && codes.includes(String(error.code));
}

function listenOn(server: Server, port: number, host: string): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen({ port, host, ipv6Only: false }, () => {
      server.off('error', reject);
      resolve((server.address() as AddressInfo).port);
    });
  });
}
