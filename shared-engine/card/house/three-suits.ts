// House card, three suits: every suit has its part.
import type { UnscoredPattern } from '../format.ts';

export const THREE_SUITS: readonly UnscoredPattern[] = [
  {
    id: 'three-suits-1',
    section: 'three-suits',
    concealed: false,
    groups: [
      { size: 4, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 4, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'r' } } },
      { size: 3, tile: { flower: true } },
    ],
  },
  {
    id: 'three-suits-2',
    section: 'three-suits',
    concealed: false,
    groups: [
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 5, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'r' } } },
      { size: 3, tile: { flower: true } },
    ],
  },
  {
    id: 'three-suits-3',
    section: 'three-suits',
    concealed: false,
    groups: [
      { size: 4, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 4, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'r' } } },
    ],
  },
  {
    id: 'three-suits-4',
    section: 'three-suits',
    concealed: false,
    groups: [
      { size: 6, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'r' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
  {
    id: 'three-suits-5',
    section: 'three-suits',
    concealed: false,
    groups: [
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'r' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
  {
    id: 'three-suits-6',
    section: 'three-suits',
    concealed: false,
    groups: [
      { size: 5, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 5, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'r' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
  {
    id: 'three-suits-7',
    section: 'three-suits',
    concealed: false,
    groups: [
      { size: 2, tile: { number: 1, suit: { var: 'p' } } },
      { size: 3, tile: { number: 2, suit: { var: 'p' } } },
      { size: 2, tile: { number: 4, suit: { var: 'q' } } },
      { size: 3, tile: { number: 5, suit: { var: 'q' } } },
      { size: 1, tile: { number: 7, suit: { var: 'r' } } },
      { size: 3, tile: { number: 8, suit: { var: 'r' } } },
    ],
  },
  {
    id: 'three-suits-8',
    section: 'three-suits',
    concealed: true,
    groups: [
      { size: 1, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 1, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'q' } } },
      { size: 1, tile: { number: { var: 'n' }, suit: { var: 'r' } } },
      { size: 3, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'r' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
  {
    id: 'three-suits-9',
    section: 'three-suits',
    concealed: true,
    groups: [
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'r' } } },
      { size: 2, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'r' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
];
