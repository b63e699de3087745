// House card, bookends: partners as far from the 5, 1 and 9, 2 and 8, 3 and 7, 4 and 6.
import type { UnscoredPattern } from '../format.ts';

export const BOOKENDS: readonly UnscoredPattern[] = [
  {
    id: 'bookends-1',
    section: 'bookends',
    concealed: false,
    groups: [
      { size: 2, tile: { number: 1, suit: { var: 'p' } } },
      { size: 3, tile: { number: 2, suit: { var: 'p' } } },
      { size: 1, tile: { number: 5, suit: { var: 'p' } } },
      { size: 3, tile: { number: 8, suit: { var: 'p' } } },
      { size: 2, tile: { number: 9, suit: { var: 'p' } } },
      { size: 3, tile: { flower: true } },
    ],
  },
  {
    id: 'bookends-2',
    section: 'bookends',
    concealed: false,
    groups: [
      { size: 4, tile: { number: 1, suit: { var: 'p' } } },
      { size: 4, tile: { number: 9, suit: { var: 'p' } } },
      { size: 3, tile: { number: 4, suit: { var: 'q' } } },
      { size: 3, tile: { number: 6, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'bookends-3',
    section: 'bookends',
    concealed: false,
    groups: [
      { size: 5, tile: { number: 2, suit: { var: 'p' } } },
      { size: 5, tile: { number: 8, suit: { var: 'p' } } },
      { size: 2, tile: { number: 3, suit: { var: 'q' } } },
      { size: 2, tile: { number: 7, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'bookends-4',
    section: 'bookends',
    concealed: false,
    groups: [
      { size: 2, tile: { number: 3, suit: { var: 'p' } } },
      { size: 2, tile: { number: 7, suit: { var: 'p' } } },
      { size: 3, tile: { number: 4, suit: { var: 'q' } } },
      { size: 3, tile: { number: 6, suit: { var: 'q' } } },
      { size: 2, tile: { number: 5, suit: { var: 'r' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
  {
    id: 'bookends-5',
    section: 'bookends',
    concealed: false,
    groups: [
      { size: 2, tile: { number: 1, suit: { var: 'p' } } },
      { size: 3, tile: { number: 4, suit: { var: 'p' } } },
      { size: 3, tile: { number: 6, suit: { var: 'p' } } },
      { size: 2, tile: { number: 9, suit: { var: 'p' } } },
      { size: 4, tile: { number: 5, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'bookends-6',
    section: 'bookends',
    concealed: false,
    groups: [
      { size: 4, tile: { number: 2, suit: { var: 'p' } } },
      { size: 3, tile: { number: 3, suit: { var: 'p' } } },
      { size: 4, tile: { number: 8, suit: { var: 'q' } } },
      { size: 3, tile: { number: 7, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'bookends-7',
    section: 'bookends',
    concealed: false,
    groups: [
      { size: 3, tile: { number: 2, suit: { var: 'p' } } },
      { size: 3, tile: { number: 8, suit: { var: 'q' } } },
      { size: 5, tile: { number: 5, suit: { var: 'r' } } },
      { size: 3, tile: { flower: true } },
    ],
  },
  {
    id: 'bookends-8',
    section: 'bookends',
    concealed: true,
    groups: [
      { size: 3, tile: { number: 1, suit: { var: 'p' } } },
      { size: 3, tile: { number: 9, suit: { var: 'p' } } },
      { size: 2, tile: { number: 1, suit: { var: 'q' } } },
      { size: 2, tile: { number: 9, suit: { var: 'q' } } },
      { size: 2, tile: { number: 1, suit: { var: 'r' } } },
      { size: 2, tile: { number: 9, suit: { var: 'r' } } },
    ],
  },
  {
    id: 'bookends-9',
    section: 'bookends',
    concealed: true,
    groups: [
      { size: 2, tile: { number: 1, suit: { var: 'p' } } },
      { size: 2, tile: { number: 9, suit: { var: 'p' } } },
      { size: 2, tile: { number: 2, suit: { var: 'q' } } },
      { size: 2, tile: { number: 8, suit: { var: 'q' } } },
      { size: 2, tile: { number: 3, suit: { var: 'r' } } },
      { size: 2, tile: { number: 7, suit: { var: 'r' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
];
