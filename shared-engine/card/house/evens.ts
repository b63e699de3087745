// House card, evens: the numbers 2, 4, 6 and 8.
import type { UnscoredPattern } from '../format.ts';

export const EVENS: readonly UnscoredPattern[] = [
  {
    id: 'evens-1',
    section: 'evens',
    concealed: false,
    groups: [
      { size: 3, tile: { number: 2, suit: { var: 'p' } } },
      { size: 4, tile: { number: 4, suit: { var: 'p' } } },
      { size: 5, tile: { number: 6, suit: { var: 'p' } } },
      { size: 2, tile: { number: 8, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'evens-2',
    section: 'evens',
    concealed: false,
    groups: [
      { size: 3, tile: { number: 2, suit: { var: 'p' } } },
      { size: 4, tile: { number: 4, suit: { var: 'q' } } },
      { size: 2, tile: { number: 6, suit: { var: 'q' } } },
      { size: 3, tile: { number: 8, suit: { var: 'p' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
  {
    id: 'evens-3',
    section: 'evens',
    concealed: false,
    groups: [
      { size: 5, tile: { number: 2, suit: { var: 'p' } } },
      { size: 5, tile: { number: 8, suit: { var: 'p' } } },
      { size: 2, tile: { number: 4, suit: { var: 'q' } } },
      { size: 2, tile: { number: 6, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'evens-4',
    section: 'evens',
    concealed: false,
    groups: [
      { size: 3, tile: { number: 2, suit: { var: 'p' } } },
      { size: 3, tile: { number: 2, suit: { var: 'q' } } },
      { size: 2, tile: { number: 6, suit: { var: 'p' } } },
      { size: 3, tile: { number: 6, suit: { var: 'q' } } },
      { size: 3, tile: { dragon: { matching: 'r' } } },
    ],
  },
  {
    id: 'evens-5',
    section: 'evens',
    concealed: false,
    groups: [
      { size: 3, tile: { number: 4, suit: { var: 'p' } } },
      { size: 3, tile: { number: 8, suit: { var: 'p' } } },
      { size: 3, tile: { number: 4, suit: { var: 'q' } } },
      { size: 5, tile: { number: 8, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'evens-6',
    section: 'evens',
    concealed: false,
    groups: [
      { size: 1, tile: { number: 2, suit: { var: 'p' } } },
      { size: 2, tile: { number: 4, suit: { var: 'p' } } },
      { size: 4, tile: { number: 6, suit: { var: 'p' } } },
      { size: 2, tile: { number: 8, suit: { var: 'p' } } },
      { size: 2, tile: { dragon: { matching: 'p' } } },
      { size: 3, tile: { flower: true } },
    ],
  },
  {
    id: 'evens-7',
    section: 'evens',
    concealed: true,
    groups: [
      { size: 3, tile: { number: 2, suit: { var: 'p' } } },
      { size: 3, tile: { number: 4, suit: { var: 'p' } } },
      { size: 2, tile: { number: 6, suit: { var: 'q' } } },
      { size: 2, tile: { number: 8, suit: { var: 'q' } } },
      { size: 2, tile: { number: 4, suit: { var: 'r' } } },
      { size: 2, tile: { number: 6, suit: { var: 'r' } } },
    ],
  },
  {
    id: 'evens-8',
    section: 'evens',
    concealed: false,
    groups: [
      { size: 1, tile: { number: 2, suit: { var: 'p' } } },
      { size: 2, tile: { number: 4, suit: { var: 'p' } } },
      { size: 3, tile: { number: 6, suit: { var: 'p' } } },
      { size: 3, tile: { number: 8, suit: { var: 'p' } } },
      { size: 2, tile: { dragon: { var: 'x' } } },
      { size: 3, tile: { flower: true } },
    ],
  },
];
