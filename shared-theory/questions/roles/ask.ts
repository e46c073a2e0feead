import { onTheGrid } from '../on-the-grid.ts';

const SIGNS = { kick: 'k', slap: 's', closed: 'c', open: 'o', silent: '-' } as const;

export const rolesAsk = onTheGrid('roles', ['kick', 'slap', 'closed', 'open', 'silent'], (role) => SIGNS[role]);
