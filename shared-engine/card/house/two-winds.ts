// House card, two winds: two of the winds beside numbers or a dragon.
import type { UnscoredPattern } from '../format.ts';

export const TWO_WINDS: readonly UnscoredPattern[] = [
  {
    id: 'two-winds-1',
    section: 'two-winds',
    concealed: false,
    groups: [
      { size: 3, tile: { wind: 'east' } },
      { size: 3, tile: { wind: 'south' } },
      { size: 4, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 4, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'two-winds-2',
    section: 'two-winds',
    concealed: false,
    groups: [
      { size: 3, tile: { wind: 'south' } },
      { size: 3, tile: { wind: 'west' } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'q' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
  {
    id: 'two-winds-3',
    section: 'two-winds',
    concealed: false,
    groups: [
      { size: 4, tile: { wind: 'west' } },
      { size: 4, tile: { wind: 'north' } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'two-winds-4',
    section: 'two-winds',
    concealed: false,
    groups: [
      { size: 5, tile: { wind: 'north' } },
      { size: 2, tile: { wind: 'east' } },
      { size: 5, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'two-winds-5',
    section: 'two-winds',
    concealed: false,
    groups: [
      { size: 2, tile: { wind: 'south' } },
      { size: 2, tile: { wind: { var: 'w' } } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 4, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'p' } } },
    ],
    where: { w: { winds: ['east', 'west'] } },
  },
  {
    id: 'two-winds-6',
    section: 'two-winds',
    concealed: false,
    groups: [
      { size: 4, tile: { wind: { var: 'v' } } },
      { size: 3, tile: { wind: { var: 'w' } } },
      { size: 4, tile: { dragon: { var: 'x' } } },
      { size: 3, tile: { flower: true } },
    ],
  },
  {
    id: 'two-winds-7',
    section: 'two-winds',
    concealed: false,
    groups: [
      { size: 6, tile: { wind: 'east' } },
      { size: 3, tile: { wind: 'west' } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'two-winds-8',
    section: 'two-winds',
    concealed: true,
    groups: [
      { size: 2, tile: { wind: 'north' } },
      { size: 2, tile: { wind: 'east' } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'q' } } },
      { size: 2, tile: { dragon: { matching: 'r' } } },
    ],
  },
];
