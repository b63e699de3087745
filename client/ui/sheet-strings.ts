// What every sheet says.

export const SHEET = { close: 'Close' } as const;
