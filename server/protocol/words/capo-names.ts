/** Under a capo a chord has two names, and neither stands without saying which it is. */
export const capoNames = { sounding: 'sounding', shape: 'shape, capo {capo}' } as const;
