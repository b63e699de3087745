// House card, odds: the numbers 1, 3, 5, 7 and 9.
import type { UnscoredPattern } from '../format.ts';

export const ODDS: readonly UnscoredPattern[] = [
  {
    id: 'odds-1',
    section: 'odds',
    concealed: false,
    groups: [
      { size: 3, tile: { number: 1, suit: { var: 'p' } } },
      { size: 2, tile: { number: 3, suit: { var: 'p' } } },
      { size: 2, tile: { number: 5, suit: { var: 'p' } } },
      { size: 4, tile: { number: 7, suit: { var: 'p' } } },
      { size: 3, tile: { number: 9, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'odds-2',
    section: 'odds',
    concealed: false,
    groups: [
      { size: 5, tile: { number: 1, suit: { var: 'p' } } },
      { size: 3, tile: { number: 5, suit: { var: 'p' } } },
      { size: 3, tile: { number: 5, suit: { var: 'q' } } },
      { size: 3, tile: { number: 9, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'odds-3',
    section: 'odds',
    concealed: false,
    groups: [
      { size: 3, tile: { number: 1, suit: { var: 'p' } } },
      { size: 3, tile: { number: 3, suit: { var: 'p' } } },
      { size: 3, tile: { number: 5, suit: { var: 'q' } } },
      { size: 3, tile: { number: 7, suit: { var: 'q' } } },
      { size: 2, tile: { number: 9, suit: { var: 'r' } } },
    ],
  },
  {
    id: 'odds-4',
    section: 'odds',
    concealed: false,
    groups: [
      { size: 3, tile: { flower: true } },
      { size: 4, tile: { number: 3, suit: { var: 'p' } } },
      { size: 4, tile: { number: 5, suit: { var: 'q' } } },
      { size: 3, tile: { number: 7, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'odds-5',
    section: 'odds',
    concealed: false,
    groups: [
      { size: 2, tile: { number: 1, suit: { var: 'p' } } },
      { size: 4, tile: { number: 3, suit: { var: 'p' } } },
      { size: 1, tile: { number: 7, suit: { var: 'q' } } },
      { size: 3, tile: { number: 9, suit: { var: 'q' } } },
      { size: 4, tile: { flower: true } },
    ],
  },
  {
    id: 'odds-6',
    section: 'odds',
    concealed: false,
    groups: [
      { size: 2, tile: { number: 3, suit: { var: 'p' } } },
      { size: 3, tile: { number: 5, suit: { var: 'p' } } },
      { size: 3, tile: { number: 7, suit: { var: 'p' } } },
      { size: 6, tile: { number: 9, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'odds-7',
    section: 'odds',
    concealed: true,
    groups: [
      { size: 3, tile: { number: 5, suit: { var: 'p' } } },
      { size: 3, tile: { number: 7, suit: { var: 'p' } } },
      { size: 2, tile: { number: 9, suit: { var: 'p' } } },
      { size: 1, tile: { number: 5, suit: { var: 'q' } } },
      { size: 2, tile: { number: 7, suit: { var: 'q' } } },
      { size: 3, tile: { number: 9, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'odds-8',
    section: 'odds',
    concealed: false,
    groups: [
      { size: 2, tile: { flower: true } },
      { size: 2, tile: { number: 1, suit: { var: 'p' } } },
      { size: 2, tile: { number: 3, suit: { var: 'p' } } },
      { size: 2, tile: { number: 5, suit: { var: 'p' } } },
      { size: 3, tile: { number: 7, suit: { var: 'p' } } },
      { size: 3, tile: { dragon: { matching: 'q' } } },
    ],
  },
];
