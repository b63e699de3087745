// Small card files for tests, as the JSON a stranger would send.
import type { CardGroup, CardPattern } from '../../shared-engine/card/format.ts';

/** A pattern of 14 tiles that is right in itself; tests change one thing of it. */
export const GOOD_PATTERN: CardPattern = {
  id: 'plain',
  section: 'first',
  points: 20,
  concealed: false,
  groups: [
    { size: 5, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
    { size: 4, tile: { number: { var: 'n', plus: 2 }, suit: { var: 'q' } } },
    { size: 3, tile: { dragon: { matching: 'p' } } },
    { size: 2, tile: { flower: true } },
  ],
};

/** A card of one section with these patterns, which need not be right. */
export function cardOf(...patterns: readonly unknown[]): Record<string, unknown> {
  return {
    format: 'quadrille-card/1',
    id: 'test',
    name: 'Test card',
    parameters: {},
    sections: [{ id: 'first', name: 'First section' }],
    patterns,
  };
}

/** `GOOD_PATTERN` with other groups and, if given, other entries. */
export function patternOf(groups: readonly CardGroup[], more: Record<string, unknown> = {}): unknown {
  return { ...GOOD_PATTERN, groups, ...more };
}
