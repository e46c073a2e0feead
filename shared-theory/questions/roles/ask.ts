import type { Role } from '../../rhythm/rhythm-truth.ts';
import { onTheGrid } from '../on-the-grid.ts';

/** Pieces of a kit on the pad, and none. */
export const ROLES: readonly Role[] = ['kick', 'slap', 'closed', 'open', 'silent'];

const SIGNS = { kick: 'k', slap: 's', closed: 'c', open: 'o', silent: '-' } as const;

export const rolesAsk = onTheGrid('roles', ROLES, (role) => SIGNS[role]);
