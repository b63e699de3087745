// Small card files for tests, as the JSON a stranger would send.
import type { CardGroup, CardLine } from '../../shared-engine/index.ts';

/** A line of 14 tiles that is right in itself; tests change one thing of it. */
export const GOOD_LINE: CardLine = {
  id: 'plain',
  family: 'first',
  points: 20,
  concealed: false,
  groups: [
    { size: 5, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
    { size: 4, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'q' } } },
    { size: 3, tile: { dragon: { matching: 'p' } } },
    { size: 2, tile: { flower: true } },
  ],
};

/** A card of one family with these lines, which need not be right. */
export function cardOf(...lines: readonly unknown[]): Record<string, unknown> {
  return {
    format: 'quadrille-card/1',
    id: 'test',
    name: 'Test card',
    parameters: {},
    families: [{ id: 'first', name: 'First family' }],
    lines,
  };
}

/** `GOOD_LINE` with other groups and, if given, other entries. */
export function lineOf(groups: readonly CardGroup[], more: Record<string, unknown> = {}): unknown {
  return { ...GOOD_LINE, groups, ...more };
}
