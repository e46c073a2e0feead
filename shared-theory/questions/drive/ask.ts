import { oneOf } from '../one-of.ts';

export const driveAsk = oneOf('drive', ['driving', 'relaxed']);
