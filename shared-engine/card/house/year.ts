// House card, year digits: the digits of the year of the card, 0 being soap.
import type { UnscoredPattern } from '../format.ts';

export const YEAR: readonly UnscoredPattern[] = [
  {
    id: 'year-1',
    section: 'year',
    concealed: false,
    groups: [
      { size: 3, tile: { yearDigit: 0, suit: { var: 'p' } } },
      { size: 3, tile: { yearDigit: 3, suit: { var: 'p' } } },
      { size: 5, tile: { yearDigit: 3, suit: { var: 'q' } } },
      { size: 3, tile: { zero: true } },
    ],
  },
  {
    id: 'year-2',
    section: 'year',
    concealed: false,
    groups: [
      { size: 4, tile: { yearDigit: 0, suit: { var: 'p' } } },
      { size: 3, tile: { yearDigit: 1, suit: { var: 'p' } } },
      { size: 2, tile: { yearDigit: 2, suit: { var: 'q' } } },
      { size: 3, tile: { yearDigit: 3, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'r' } } },
    ],
  },
  {
    id: 'year-3',
    section: 'year',
    concealed: false,
    groups: [
      { size: 3, tile: { yearDigit: 0, suit: { var: 'p' } } },
      { size: 3, tile: { yearDigit: 0, suit: { var: 'q' } } },
      { size: 2, tile: { yearDigit: 3, suit: { var: 'p' } } },
      { size: 3, tile: { zero: true } },
      { size: 3, tile: { flower: true } },
    ],
  },
  {
    id: 'year-4',
    section: 'year',
    concealed: false,
    groups: [
      { size: 2, tile: { yearDigit: 0, suit: { var: 'p' } } },
      { size: 4, tile: { yearDigit: 3, suit: { var: 'q' } } },
      { size: 5, tile: { zero: true } },
      { size: 3, tile: { wind: { var: 'w' } } },
    ],
  },
  {
    id: 'year-5',
    section: 'year',
    concealed: false,
    groups: [
      { size: 2, tile: { flower: true } },
      { size: 1, tile: { yearDigit: 0, suit: { var: 'p' } } },
      { size: 4, tile: { zero: true } },
      { size: 2, tile: { yearDigit: 2, suit: { var: 'q' } } },
      { size: 2, tile: { yearDigit: 3, suit: { var: 'p' } } },
      { size: 3, tile: { yearDigit: 3, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'year-6',
    section: 'year',
    concealed: false,
    groups: [
      { size: 1, tile: { flower: true } },
      { size: 3, tile: { yearDigit: 0, suit: { var: 'p' } } },
      { size: 3, tile: { zero: true } },
      { size: 2, tile: { yearDigit: 3, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'year-7',
    section: 'year',
    concealed: true,
    groups: [
      { size: 3, tile: { yearDigit: 0, suit: { var: 'p' } } },
      { size: 3, tile: { yearDigit: 3, suit: { var: 'p' } } },
      { size: 2, tile: { yearDigit: 1, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'r' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
];
