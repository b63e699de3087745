// House card, singles and pairs: no group a joker could help.
import type { UnscoredPattern } from '../format.ts';

export const PAIRS: readonly UnscoredPattern[] = [
  {
    id: 'pairs-1',
    section: 'pairs',
    concealed: true,
    groups: [
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'q' } } },
      { size: 2, tile: { wind: 'east' } },
    ],
    where: { n: { numbers: [2, 4, 6] } },
  },
  {
    id: 'pairs-2',
    section: 'pairs',
    concealed: true,
    groups: [
      { size: 1, tile: { wind: 'east' } },
      { size: 2, tile: { wind: 'south' } },
      { size: 1, tile: { wind: 'west' } },
      { size: 2, tile: { wind: 'north' } },
      { size: 2, tile: { dragon: { var: 'x' } } },
      { size: 2, tile: { dragon: { var: 'y' } } },
      { size: 2, tile: { flower: true } },
      { size: 2, tile: { number: 5, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'pairs-3',
    section: 'pairs',
    concealed: true,
    groups: [
      { size: 2, tile: { number: 1, suit: { var: 'p' } } },
      { size: 2, tile: { number: 3, suit: { var: 'p' } } },
      { size: 2, tile: { number: 5, suit: { var: 'p' } } },
      { size: 2, tile: { number: 7, suit: { var: 'p' } } },
      { size: 2, tile: { number: 9, suit: { var: 'p' } } },
      { size: 2, tile: { number: 1, suit: { var: 'q' } } },
      { size: 2, tile: { number: 9, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'pairs-4',
    section: 'pairs',
    concealed: true,
    groups: [
      { size: 1, tile: { number: 2, suit: { var: 'p' } } },
      { size: 2, tile: { number: 4, suit: { var: 'p' } } },
      { size: 2, tile: { number: 6, suit: { var: 'p' } } },
      { size: 2, tile: { number: 8, suit: { var: 'p' } } },
      { size: 2, tile: { number: 4, suit: { var: 'q' } } },
      { size: 2, tile: { number: 6, suit: { var: 'q' } } },
      { size: 2, tile: { number: 8, suit: { var: 'q' } } },
      { size: 1, tile: { dragon: { matching: 'r' } } },
    ],
  },
  {
    id: 'pairs-5',
    section: 'pairs',
    concealed: true,
    groups: [
      { size: 2, tile: { flower: true } },
      { size: 2, tile: { number: 3, suit: { var: 'p' } } },
      { size: 2, tile: { number: 6, suit: { var: 'p' } } },
      { size: 1, tile: { number: 9, suit: { var: 'p' } } },
      { size: 2, tile: { number: 3, suit: { var: 'q' } } },
      { size: 2, tile: { number: 6, suit: { var: 'q' } } },
      { size: 1, tile: { number: 9, suit: { var: 'q' } } },
      { size: 2, tile: { number: 6, suit: { var: 'r' } } },
    ],
  },
];
