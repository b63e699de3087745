// House card, threes, sixes and nines.
import type { UnscoredPattern } from '../format.ts';

export const THREES: readonly UnscoredPattern[] = [
  {
    id: 'threes-1',
    section: 'threes',
    concealed: false,
    groups: [
      { size: 2, tile: { number: 3, suit: { var: 'p' } } },
      { size: 3, tile: { number: 6, suit: { var: 'p' } } },
      { size: 4, tile: { number: 9, suit: { var: 'p' } } },
      { size: 2, tile: { flower: true } },
      { size: 3, tile: { dragon: { var: 'x' } } },
    ],
  },
  {
    id: 'threes-2',
    section: 'threes',
    concealed: false,
    groups: [
      { size: 2, tile: { number: 3, suit: { var: 'p' } } },
      { size: 2, tile: { number: 6, suit: { var: 'p' } } },
      { size: 3, tile: { number: 9, suit: { var: 'p' } } },
      { size: 3, tile: { number: 3, suit: { var: 'q' } } },
      { size: 4, tile: { number: 9, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'threes-3',
    section: 'threes',
    concealed: false,
    groups: [
      { size: 2, tile: { number: 3, suit: { var: 'p' } } },
      { size: 5, tile: { number: 6, suit: { var: 'q' } } },
      { size: 3, tile: { number: 9, suit: { var: 'p' } } },
      { size: 4, tile: { dragon: { matching: 'q' } } },
    ],
  },
  {
    id: 'threes-4',
    section: 'threes',
    concealed: false,
    groups: [
      { size: 3, tile: { number: 3, suit: { var: 'p' } } },
      { size: 5, tile: { number: 3, suit: { var: 'q' } } },
      { size: 3, tile: { number: 6, suit: { var: 'p' } } },
      { size: 3, tile: { number: 6, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'threes-5',
    section: 'threes',
    concealed: false,
    groups: [
      { size: 2, tile: { number: 6, suit: { var: 'p' } } },
      { size: 3, tile: { number: 9, suit: { var: 'p' } } },
      { size: 3, tile: { number: 6, suit: { var: 'q' } } },
      { size: 3, tile: { number: 9, suit: { var: 'q' } } },
      { size: 3, tile: { flower: true } },
    ],
  },
  {
    id: 'threes-6',
    section: 'threes',
    concealed: true,
    groups: [
      { size: 2, tile: { number: 3, suit: { var: 'p' } } },
      { size: 3, tile: { number: 6, suit: { var: 'p' } } },
      { size: 3, tile: { number: 9, suit: { var: 'p' } } },
      { size: 3, tile: { number: 3, suit: { var: 'q' } } },
      { size: 2, tile: { number: 6, suit: { var: 'q' } } },
      { size: 1, tile: { number: 9, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'threes-7',
    section: 'threes',
    concealed: false,
    groups: [
      { size: 2, tile: { flower: true } },
      { size: 2, tile: { number: 3, suit: { var: 'p' } } },
      { size: 3, tile: { number: 6, suit: { var: 'p' } } },
      { size: 3, tile: { number: 9, suit: { var: 'p' } } },
      { size: 2, tile: { number: 3, suit: { var: 'q' } } },
      { size: 2, tile: { number: 6, suit: { var: 'r' } } },
    ],
  },
  {
    id: 'threes-8',
    section: 'threes',
    concealed: false,
    groups: [
      { size: 2, tile: { number: 3, suit: { var: 'p' } } },
      { size: 1, tile: { number: 6, suit: { var: 'p' } } },
      { size: 3, tile: { number: 9, suit: { var: 'p' } } },
      { size: 2, tile: { dragon: { matching: 'p' } } },
      { size: 4, tile: { wind: { var: 'w' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
];
