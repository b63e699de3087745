// House card, twin suits: the same groups in two suits.
import type { UnscoredPattern } from '../format.ts';

export const TWIN_SUITS: readonly UnscoredPattern[] = [
  {
    id: 'twin-suits-1',
    section: 'twin-suits',
    concealed: false,
    groups: [
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'q' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
  {
    id: 'twin-suits-2',
    section: 'twin-suits',
    concealed: false,
    groups: [
      { size: 4, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
      { size: 4, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'twin-suits-3',
    section: 'twin-suits',
    concealed: false,
    groups: [
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'twin-suits-4',
    section: 'twin-suits',
    concealed: false,
    groups: [
      { size: 5, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 5, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'twin-suits-5',
    section: 'twin-suits',
    concealed: false,
    groups: [
      { size: 4, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 1, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 1, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 4, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 1, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'q' } } },
      { size: 1, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'q' } } },
      { size: 2, tile: { dragon: { matching: 'r' } } },
    ],
  },
  {
    id: 'twin-suits-6',
    section: 'twin-suits',
    concealed: false,
    groups: [
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'q' } } },
      { size: 4, tile: { wind: { var: 'w' } } },
    ],
  },
  {
    id: 'twin-suits-7',
    section: 'twin-suits',
    concealed: true,
    groups: [
      { size: 1, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 6 }, suit: { var: 'p' } } },
      { size: 1, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n', plus: 6 }, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'twin-suits-8',
    section: 'twin-suits',
    concealed: true,
    groups: [
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'q' } } },
      { size: 2, tile: { dragon: { matching: 'r' } } },
    ],
  },
];
