// The card layer: the open format of cards, its parser and compiler, the shorthand, cards in the making, the house card.

export { variableUses } from './assignment.ts';
export { boundsProblem as cardBoundsProblem } from './bounds.ts';
export { canonicalPattern, type PatternBody, STANDARD_NAMES } from './canonical.ts';
export { freeId, meanSameHands, mergedCard } from './compare.ts';
export { compileCard, countsAt } from './compile.ts';
export type { CompiledCard, CompiledPattern, Hand } from './compiled.ts';
export { exampleOf } from './example.ts';
export {
  CARD_FORMAT,
  CARD_LIMITS,
  type CardFile,
  type CardGroup,
  type CardPattern,
  type CardTile,
  cardDraftSchema,
  cardFileSchema,
} from './format.ts';
export { MIN_JOKER_GROUP } from './hands.ts';
export { HOUSE_CARD, houseCard } from './house/card.ts';
export { readJson } from './json-text.ts';
export { parseCard } from './parse.ts';
export type { CardProblem } from './problem.ts';
export { areTooMany, type PatternReport, patternReport, playablePart, reportingPattern } from './report.ts';
export { readShorthand, type ShorthandProblem } from './shorthand/read.ts';
export { writeShorthand } from './shorthand/write.ts';
