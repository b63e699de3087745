// The card layer: the open format of cards, its parser and compiler, and the house card.

export { boundsProblem as cardBoundsProblem } from './bounds.ts';
export { compileCard } from './compile.ts';
export type { CompiledCard, CompiledPattern, Hand } from './compiled.ts';
export { type CardFile, cardFileSchema } from './format.ts';
export { HOUSE_CARD, houseCard } from './house/card.ts';
export { parseCard } from './parse.ts';
