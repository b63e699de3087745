// Cards of as many hands as there may be, and of more than any server should build, in files of a kilobyte.
import { cardOf } from './card-files.ts';

const number = (name: string, suit: string) => ({ number: { var: name }, suit: { var: suit } });

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

/** 7,728 hands, where 8,000 are allowed; each name makes another card. */
export function largestCard(name: string): unknown {
  const two = widePattern('two-winds', { w: { winds: ['east', 'west'] } });
  const one = widePattern('one-wind', { c: { from: 1, to: 5 }, w: { winds: ['north'] } });
  return { ...cardOf(two, one), name };
}

/** Patterns of as many variables as there may be: 12,096 hands in each of 300 patterns, in a file of 100 KB. */
export function hostileCard(): unknown {
  return cardOf(...Array.from({ length: 300 }, (_, nth) => widePattern(`hostile-${nth}`, {})));
}
