// House card, one suit: numbers of a single suit, alone or with flowers.
import type { UnscoredPattern } from '../format.ts';

export const ONE_SUIT: readonly UnscoredPattern[] = [
  {
    id: 'one-suit-1',
    section: 'one-suit',
    concealed: false,
    groups: [
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'p' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
  {
    id: 'one-suit-2',
    section: 'one-suit',
    concealed: false,
    groups: [
      { size: 4, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 4, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
      { size: 3, tile: { flower: true } },
    ],
  },
  {
    id: 'one-suit-3',
    section: 'one-suit',
    concealed: false,
    groups: [
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 6 }, suit: { var: 'p' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
  {
    id: 'one-suit-4',
    section: 'one-suit',
    concealed: false,
    groups: [
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 5, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 3, tile: { flower: true } },
    ],
  },
  {
    id: 'one-suit-5',
    section: 'one-suit',
    concealed: false,
    groups: [
      { size: 5, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 5, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'one-suit-6',
    section: 'one-suit',
    concealed: false,
    groups: [
      { size: 6, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 5, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'one-suit-7',
    section: 'one-suit',
    concealed: true,
    groups: [
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 1, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 6 }, suit: { var: 'p' } } },
      { size: 3, tile: { flower: true } },
    ],
  },
  {
    id: 'one-suit-8',
    section: 'one-suit',
    concealed: true,
    groups: [
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 6 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 7 }, suit: { var: 'p' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
];
