// The sounds there are.

export const SOUNDS = ['tap', 'clack', 'chime'] as const;
export type Sound = (typeof SOUNDS)[number];
