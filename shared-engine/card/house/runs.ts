// House card, runs: consecutive numbers.
import type { UnscoredPattern } from '../format.ts';

export const RUNS: readonly UnscoredPattern[] = [
  {
    id: 'runs-1',
    section: 'runs',
    concealed: false,
    groups: [
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 4, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 1, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'runs-2',
    section: 'runs',
    concealed: false,
    groups: [
      { size: 5, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 4, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'runs-3',
    section: 'runs',
    concealed: false,
    groups: [
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'q' } } },
      { size: 5, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'runs-4',
    section: 'runs',
    concealed: false,
    groups: [
      { size: 3, tile: { flower: true } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'runs-5',
    section: 'runs',
    concealed: false,
    groups: [
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
      { size: 1, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'runs-6',
    section: 'runs',
    concealed: false,
    groups: [
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'q' } } },
      { size: 2, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 4, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'runs-7',
    section: 'runs',
    concealed: true,
    groups: [
      { size: 1, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 4, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 2, tile: { dragon: { matching: 'p' } } },
      { size: 4, tile: { dragon: { matching: 'q' } } },
    ],
  },
  {
    id: 'runs-8',
    section: 'runs',
    concealed: false,
    groups: [
      { size: 6, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 5, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
    ],
  },
];
