import { isIP } from 'node:net';
import { hostname } from 'node:os';
import helmet from 'helmet';
import type { IncomingMessage } from 'node:http';
import type { RequestHandler } from 'express';

/** Decides by which names this server may be called: a name that others own could be pointed at it (DNS rebinding). */
export type HostNames = { readonly allows: (hostHeader: string | undefined) => boolean };

/** IP literals, localhost, this machine's own name and `.local` names are allowed, and the `listed` ones. */
export function hostNames(listed: readonly string[], machine = hostname()): HostNames {
  const named = new Set(['localhost', machine, ...listed].map((name) => name.toLowerCase()));
  return {
    allows: (hostHeader) => {
      const name = hostOf(hostHeader);
      if (name === null) return false;
      return isIP(name) !== 0 || named.has(name) || /\.(local|localhost)$/.test(name);
    },
  };
}

/** True where a browser sent it from a page of this very server, or no browser page sent it at all. */
export function sameOrigin(request: IncomingMessage): boolean {
  const { origin, host } = request.headers;
  if (origin === undefined) return true;
  const own = `http://${host}`;
  if (host === undefined || !URL.canParse(origin) || !URL.canParse(own)) return false;
  const url = new URL(origin);
  return (url.protocol === 'http:' || url.protocol === 'https:') && url.host === new URL(own).host;
}

/** Headers of every answer: only what this server itself serves may run, show or be spoken to. */
export function securityHeaders({ dev = false } = {}): RequestHandler {
  return helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'"],
        // The development server puts its styles into the page.
        styleSrc: dev ? ["'self'", "'unsafe-inline'"] : ["'self'"],
        imgSrc: ["'self'", 'data:'],
        fontSrc: ["'self'"],
        mediaSrc: ["'self'", 'blob:'],
        // The clock of the music runs in a worker made from a blob.
        workerSrc: ["'self'", 'blob:'],
        // Older phones do not count web sockets of the same host to 'self'.
        connectSrc: ["'self'", (request) => sockets(request.headers.host)],
        objectSrc: ["'none'"],
        baseUri: ["'self'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
    // Plain http on the local network is the normal case; a header that demands https would lock the phones out.
    strictTransportSecurity: false,
    // Ignored by browsers on plain http, with a warning on every page.
    crossOriginOpenerPolicy: false,
    originAgentCluster: false,
    referrerPolicy: { policy: 'same-origin' },
  });
}

function sockets(host: string | undefined): string {
  return hostOf(host) === null ? "'self'" : `ws://${host} wss://${host}`;
}

/** Name in a Host header, lower case, without port and brackets; null where it is no such header. */
function hostOf(hostHeader: string | undefined): string | null {
  const match = /^(\[[0-9a-f:.]+\]|[a-z0-9._-]+)(:\d{1,5})?$/i.exec(hostHeader ?? '');
  // Ports above 65535, numbers that are no address.
  if (!URL.canParse(`http://${hostHeader}`)) return null;
  return (
    match?.[1]
      ?.replace(/^\[|\]$/g, '')
      .replace(/\.$/, '')
      .toLowerCase() ?? null
  );
}
