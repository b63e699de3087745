// House card, matching dragons: numbers with their suit's dragon; soap, the dragon of dots, is also a zero.
import type { UnscoredPattern } from '../format.ts';

export const MATCHING_DRAGONS: readonly UnscoredPattern[] = [
  {
    id: 'matching-dragons-1',
    section: 'matching-dragons',
    concealed: false,
    groups: [
      { size: 4, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 4, tile: { dragon: { matching: 'p' } } },
      { size: 3, tile: { flower: true } },
    ],
  },
  {
    id: 'matching-dragons-2',
    section: 'matching-dragons',
    concealed: false,
    groups: [
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 4, tile: { dragon: { matching: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'q' } } },
      { size: 4, tile: { dragon: { matching: 'q' } } },
    ],
  },
  {
    id: 'matching-dragons-3',
    section: 'matching-dragons',
    concealed: false,
    groups: [
      { size: 5, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
      { size: 5, tile: { dragon: { matching: 'p' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
  {
    id: 'matching-dragons-4',
    section: 'matching-dragons',
    concealed: false,
    groups: [
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'p' } } },
      { size: 3, tile: { dragon: { matching: 'p' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
  {
    id: 'matching-dragons-5',
    section: 'matching-dragons',
    concealed: false,
    groups: [
      { size: 4, tile: { number: { var: 'n' }, suit: 'dot' } },
      { size: 4, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 6, tile: { zero: true } },
    ],
    where: { q: { suits: ['bam', 'crak'] } },
  },
  {
    id: 'matching-dragons-6',
    section: 'matching-dragons',
    concealed: false,
    groups: [
      { size: 3, tile: { number: { var: 'n' }, suit: 'dot' } },
      { size: 3, tile: { number: { var: 'n', plus: 5 }, suit: 'dot' } },
      { size: 4, tile: { zero: true } },
      { size: 4, tile: { wind: { var: 'w' } } },
    ],
  },
  {
    id: 'matching-dragons-7',
    section: 'matching-dragons',
    concealed: true,
    groups: [
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { dragon: { matching: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'q' } } },
      { size: 3, tile: { dragon: { matching: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'r' } } },
      { size: 2, tile: { dragon: { matching: 'r' } } },
    ],
  },
  {
    id: 'matching-dragons-8',
    section: 'matching-dragons',
    concealed: true,
    groups: [
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 2, tile: { dragon: { matching: 'p' } } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'q' } } },
      { size: 2, tile: { dragon: { matching: 'q' } } },
      { size: 2, tile: { flower: true } },
    ],
  },
];
