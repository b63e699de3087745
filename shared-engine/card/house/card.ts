// The house card: nine sections of patterns; each pattern puts a kind of tiles into a partition of 14 into groups.
import { compileCard } from '../compile.ts';
import type { CompiledCard } from '../compiled.ts';
import { CARD_FORMAT, type CardFile } from '../format.ts';
import { EVENS } from './evens.ts';
import { FLOWERS } from './flowers.ts';
import { HONORS } from './honors.ts';
import { LIKE_NUMBERS } from './like-numbers.ts';
import { ODDS } from './odds.ts';
import { PAIRS } from './pairs.ts';
import { POINTS } from './points.ts';
import { RUNS } from './runs.ts';
import { THREES } from './threes.ts';
import { YEAR } from './year.ts';

export const HOUSE_CARD: CardFile = {
  format: CARD_FORMAT,
  id: 'house',
  name: 'House card',
  parameters: { year: 2026 },
  sections: [
    { id: 'runs', name: 'Runs' },
    { id: 'like-numbers', name: 'Like numbers' },
    { id: 'odds', name: 'Odds' },
    { id: 'evens', name: 'Evens' },
    { id: 'threes', name: 'Threes, sixes and nines' },
    { id: 'honors', name: 'Winds and dragons' },
    { id: 'flowers', name: 'Flowers' },
    { id: 'pairs', name: 'Singles and pairs' },
    { id: 'year', name: 'Year digits' },
  ],
  patterns: [RUNS, LIKE_NUMBERS, ODDS, EVENS, THREES, HONORS, FLOWERS, PAIRS, YEAR]
    .flat()
    .map((pattern) => ({ ...pattern, points: POINTS[pattern.id]! })),
};

let compiled: CompiledCard | null = null;

/** The house card, compiled when first asked for. */
export function houseCard(): CompiledCard {
  compiled ??= compileCard(HOUSE_CARD);
  return compiled;
}
