// House card, like numbers: one number across suits.
import type { UnscoredPattern } from '../format.ts';

export const LIKE_NUMBERS: readonly UnscoredPattern[] = [
  {
    id: 'like-numbers-1',
    section: 'like-numbers',
    concealed: false,
    groups: [
      { size: 6, tile: { flower: true } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'r' } } },
    ],
  },
  {
    id: 'like-numbers-2',
    section: 'like-numbers',
    concealed: false,
    groups: [
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'r' } } },
      { size: 3, tile: { dragon: { matching: 'p' } } },
      { size: 2, tile: { dragon: { matching: 'q' } } },
    ],
  },
  {
    id: 'like-numbers-3',
    section: 'like-numbers',
    concealed: false,
    groups: [
      { size: 4, tile: { flower: true } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'r' } } },
      { size: 2, tile: { dragon: { matching: 'p' } } },
    ],
  },
  {
    id: 'like-numbers-4',
    section: 'like-numbers',
    concealed: false,
    groups: [
      { size: 5, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 5, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 2, tile: { dragon: { matching: 'p' } } },
      { size: 2, tile: { dragon: { matching: 'q' } } },
    ],
  },
  {
    id: 'like-numbers-5',
    section: 'like-numbers',
    concealed: false,
    groups: [
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'r' } } },
      { size: 2, tile: { flower: true } },
      { size: 3, tile: { wind: 'north' } },
      { size: 1, tile: { wind: 'south' } },
    ],
  },
  {
    id: 'like-numbers-6',
    section: 'like-numbers',
    concealed: true,
    groups: [
      { size: 1, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'r' } } },
      { size: 2, tile: { dragon: { matching: 'p' } } },
      { size: 3, tile: { dragon: { matching: 'q' } } },
      { size: 2, tile: { dragon: { matching: 'r' } } },
    ],
  },
];
