// House card, winds and dragons.
import type { UnscoredPattern } from '../format.ts';

export const HONORS: readonly UnscoredPattern[] = [
  {
    id: 'honors-1',
    section: 'honors',
    concealed: false,
    groups: [
      { size: 3, tile: { wind: 'east' } },
      { size: 3, tile: { wind: 'north' } },
      { size: 2, tile: { wind: 'west' } },
      { size: 2, tile: { dragon: { var: 'x' } } },
      { size: 4, tile: { dragon: { var: 'y' } } },
    ],
  },
  {
    id: 'honors-2',
    section: 'honors',
    concealed: false,
    groups: [
      { size: 3, tile: { dragon: { var: 'x' } } },
      { size: 2, tile: { dragon: { var: 'y' } } },
      { size: 4, tile: { dragon: { var: 'z' } } },
      { size: 5, tile: { wind: { var: 'w' } } },
    ],
  },
  {
    id: 'honors-3',
    section: 'honors',
    concealed: false,
    groups: [
      { size: 3, tile: { wind: 'west' } },
      { size: 4, tile: { wind: 'north' } },
      { size: 4, tile: { dragon: { var: 'x' } } },
      { size: 3, tile: { dragon: { var: 'y' } } },
    ],
  },
  {
    id: 'honors-4',
    section: 'honors',
    concealed: false,
    groups: [
      { size: 3, tile: { wind: 'east' } },
      { size: 3, tile: { wind: 'west' } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 3, tile: { flower: true } },
    ],
  },
  {
    id: 'honors-5',
    section: 'honors',
    concealed: false,
    groups: [
      { size: 3, tile: { wind: 'north' } },
      { size: 3, tile: { wind: 'south' } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 4, tile: { dragon: { matching: 'p' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
  {
    id: 'honors-6',
    section: 'honors',
    concealed: true,
    groups: [
      { size: 3, tile: { dragon: { var: 'x' } } },
      { size: 2, tile: { dragon: { var: 'y' } } },
      { size: 2, tile: { dragon: { var: 'z' } } },
      { size: 2, tile: { wind: 'south' } },
      { size: 2, tile: { wind: 'north' } },
      { size: 3, tile: { flower: true } },
    ],
  },
  {
    id: 'honors-7',
    section: 'honors',
    concealed: false,
    groups: [
      { size: 2, tile: { wind: 'south' } },
      { size: 3, tile: { wind: 'east' } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 1, tile: { dragon: { matching: 'p' } } },
      { size: 3, tile: { flower: true } },
    ],
  },
];
