// Points of the house card's lines.

export const POINTS: Readonly<Record<string, number>> = {};
