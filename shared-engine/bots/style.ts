// The ways a bot may play, as data.

export const STYLES = ['casual', 'typical', 'strong', 'guarded', 'random'] as const;
export type StyleName = (typeof STYLES)[number];
