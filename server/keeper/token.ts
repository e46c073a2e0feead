import { createHash } from 'node:crypto';

/** What is kept of a student's token: SHA-256, lower-case hex. */
export function hashToken(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}
