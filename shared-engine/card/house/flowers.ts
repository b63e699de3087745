// House card, flowers: groups of flowers beside numbers, winds or dragons.
import type { UnscoredPattern } from '../format.ts';

export const FLOWERS: readonly UnscoredPattern[] = [
  {
    id: 'flowers-1',
    section: 'flowers',
    concealed: false,
    groups: [
      { size: 5, tile: { flower: true } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'flowers-2',
    section: 'flowers',
    concealed: false,
    groups: [
      { size: 4, tile: { flower: true } },
      { size: 4, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
      { size: 3, tile: { dragon: { matching: 'q' } } },
    ],
  },
  {
    id: 'flowers-3',
    section: 'flowers',
    concealed: false,
    groups: [
      { size: 5, tile: { flower: true } },
      { size: 3, tile: { wind: { var: 'v' } } },
      { size: 3, tile: { wind: { var: 'w' } } },
      { size: 3, tile: { dragon: { var: 'x' } } },
    ],
  },
  {
    id: 'flowers-4',
    section: 'flowers',
    concealed: false,
    groups: [
      { size: 6, tile: { flower: true } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'p' } } },
      { size: 2, tile: { dragon: { matching: 'p' } } },
    ],
  },
  {
    id: 'flowers-5',
    section: 'flowers',
    concealed: false,
    groups: [
      { size: 4, tile: { flower: true } },
      { size: 3, tile: { number: 1, suit: { var: 'p' } } },
      { size: 3, tile: { number: 9, suit: { var: 'p' } } },
      { size: 2, tile: { number: 1, suit: { var: 'q' } } },
      { size: 2, tile: { number: 9, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'flowers-6',
    section: 'flowers',
    concealed: false,
    groups: [
      { size: 4, tile: { flower: true } },
      { size: 5, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 5, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'flowers-7',
    section: 'flowers',
    concealed: false,
    groups: [
      { size: 4, tile: { flower: true } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'flowers-8',
    section: 'flowers',
    concealed: false,
    groups: [
      { size: 4, tile: { flower: true } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 2, tile: { wind: 'east' } },
      { size: 1, tile: { wind: 'south' } },
      { size: 1, tile: { wind: 'west' } },
    ],
  },
];
