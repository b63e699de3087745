// Cards of as many hands as there may be, and of more than any server should build.
import { cardOf } from './card-files.ts';

const number = (name: string, suit: string, plus = 0) => ({
  number: plus === 0 ? { var: name } : { var: name, plus },
  suit: { var: suit },
});

/** Three numbers and three suits in every way, 3,024 hands, for each wind. */
function widePattern(id: string, where: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const groups = [
    { size: 4, tile: number('a', 'p') },
    { size: 3, tile: number('b', 'q') },
    { size: 2, tile: number('c', 'r') },
    { size: 3, tile: { wind: { var: 'w' } } },
    { size: 2, tile: { flower: true } },
  ];
  return { id, section: 'first', points: 20, concealed: false, groups, where };
}

const SECTIONS = 25;
const SIZES = [
  [4, 3, 3, 2, 2],
  [3, 4, 2, 3, 2],
  [3, 3, 4, 2, 2],
  [2, 4, 4, 2, 2],
  [4, 4, 2, 2, 2],
] as const;
const WINDS = [
  ['east', 'south'],
  ['east', 'west'],
  ['east', 'north'],
  ['south', 'west'],
  ['south', 'north'],
  ['west', 'north'],
] as const;

/** Number `nth` of 300: 72 hands and 60 by turns, all of them different. */
function largePattern(nth: number): Record<string, unknown> {
  const [one, two, three, wind, flower] = SIZES[nth % 5]!;
  const step = 1 + (Math.floor(nth / 30) % 5);
  const groups = [
    { size: one, tile: number('a', 'p') },
    { size: two, tile: number('a', 'p', 1) },
    { size: three, tile: number('a', 'q', step - 2) },
    { size: wind, tile: { wind: { var: 'w' } } },
    { size: flower, tile: { flower: true } },
  ];
  const to = nth % 2 === 0 && step < 5 ? 7 : 6;
  return {
    id: `hand-${nth}`,
    section: `section-${Math.floor((nth * SECTIONS) / 300)}`,
    points: 25,
    concealed: nth >= 150,
    groups,
    where: { a: { from: 2, to }, w: { winds: WINDS[Math.floor(nth / 5) % 6] } },
  };
}

/** 300 patterns with 19,440 hands, where 20,000 are allowed; each name makes another card. */
export function largestCard(name: string): unknown {
  return {
    ...cardOf(...Array.from({ length: 300 }, (_, nth) => largePattern(nth))),
    name,
    sections: Array.from({ length: SECTIONS }, (_, nth) => ({
      id: `section-${nth}`,
      name: `Section ${nth + 1}`,
    })),
  };
}

/** Patterns of as many variables as there may be: 12,096 hands in each of 300 patterns, in a file of 100 KB. */
export function hostileCard(): unknown {
  return cardOf(...Array.from({ length: 300 }, (_, nth) => widePattern(`hostile-${nth}`, {})));
}
