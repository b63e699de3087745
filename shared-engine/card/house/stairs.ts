// House card, stairs: groups whose sizes climb.
import type { UnscoredPattern } from '../format.ts';

export const STAIRS: readonly UnscoredPattern[] = [
  {
    id: 'stairs-1',
    section: 'stairs',
    concealed: false,
    groups: [
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 4, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 5, tile: { number: { var: 'n', plus: 6 }, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'stairs-2',
    section: 'stairs',
    concealed: false,
    groups: [
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'q' } } },
      { size: 4, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
      { size: 5, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'q' } } },
    ],
  },
  {
    id: 'stairs-3',
    section: 'stairs',
    concealed: false,
    groups: [
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'p' } } },
      { size: 4, tile: { wind: { var: 'w' } } },
    ],
    where: { w: { winds: ['south', 'west'] } },
  },
  {
    id: 'stairs-4',
    section: 'stairs',
    concealed: false,
    groups: [
      { size: 2, tile: { flower: true } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 4, tile: { number: { var: 'n', plus: 3 }, suit: { var: 'p' } } },
      { size: 5, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'stairs-5',
    section: 'stairs',
    concealed: false,
    groups: [
      { size: 2, tile: { flower: true } },
      { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 4, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'q' } } },
      { size: 5, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'r' } } },
    ],
  },
  {
    id: 'stairs-6',
    section: 'stairs',
    concealed: false,
    groups: [
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 4 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'q' } } },
      { size: 4, tile: { dragon: { matching: 'r' } } },
    ],
  },
  {
    id: 'stairs-7',
    section: 'stairs',
    concealed: false,
    groups: [
      { size: 2, tile: { dragon: { var: 'x' } } },
      { size: 3, tile: { wind: 'south' } },
      { size: 4, tile: { dragon: { var: 'y' } } },
      { size: 5, tile: { wind: 'north' } },
    ],
  },
  {
    id: 'stairs-8',
    section: 'stairs',
    concealed: false,
    groups: [
      { size: 2, tile: { flower: true } },
      { size: 3, tile: { wind: { var: 'w' } } },
      { size: 4, tile: { dragon: { matching: 'p' } } },
      { size: 5, tile: { number: 5, suit: { var: 'p' } } },
    ],
  },
  {
    id: 'stairs-9',
    section: 'stairs',
    concealed: true,
    groups: [
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
      { size: 3, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'p' } } },
      { size: 4, tile: { number: { var: 'n', plus: 5 }, suit: { var: 'p' } } },
      { size: 2, tile: { number: { var: 'n' }, suit: { var: 'q' } } },
      { size: 3, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'q' } } },
    ],
  },
];
