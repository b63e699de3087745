// House card, garden: four flowers or more.
import type { UnscoredPattern } from '../format.ts';

export const GARDEN: readonly UnscoredPattern[] = [
  {
    id: 'garden-1',
    section: 'garden',
    concealed: false,
    groups: [
      { size: 4, tile: { flower: true } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'garden-2',
    section: 'garden',
    concealed: false,
    groups: [
      { size: 5, tile: { flower: true } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'p' } } },
      { size: 3, tile: { wind: { var: 'w' } } },
    ],
    where: { w: { winds: ['east', 'north'] } },
  },
  {
    id: 'garden-3',
    section: 'garden',
    concealed: false,
    groups: [
      { size: 6, tile: { flower: true } },
      { size: 5, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'garden-4',
    section: 'garden',
    concealed: false,
    groups: [
      { size: 4, tile: { flower: true } },
      { size: 3, tile: { dragon: { var: 'x' } } },
      { size: 3, tile: { dragon: { var: 'y' } } },
      { size: 4, tile: { wind: { var: 'w' } } },
    ],
  },
  {
    id: 'garden-5',
    section: 'garden',
    concealed: false,
    groups: [
      { size: 4, tile: { flower: true } },
      { size: 5, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 5, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'garden-6',
    section: 'garden',
    concealed: false,
    groups: [
      { size: 4, tile: { flower: true } },
      { size: 4, tile: { flower: true } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'garden-7',
    section: 'garden',
    concealed: true,
    groups: [
      { size: 4, tile: { flower: true } },
      { size: 1, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 1, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'p' } } },
      { size: 1, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 1, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'garden-8',
    section: 'garden',
    concealed: true,
    groups: [
      { size: 2, tile: { flower: true } },
      { size: 2, tile: { flower: true } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'r' } } },
    ],
  },
];
