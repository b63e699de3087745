// Patterns drawn at random for property tests: every kind of tile, odd names of variables, limits of every kind.
import fc from 'fast-check';
import { variableUses } from '../../shared-engine/card/assignment.ts';
import type { CardDomain, CardPattern, CardTile } from '../../shared-engine/card/format.ts';
import { DRAGONS, NUMBERS, SUITS, WINDS } from '../../shared-engine/rules/tiles/face.ts';

const suit = fc.oneof(fc.constantFrom(...SUITS), fc.record({ var: fc.constantFrom('p', 'q', 'suit1') }));
const number = fc.oneof(
  fc.constantFrom(...NUMBERS),
  fc.record({ var: fc.constantFrom('n', 'b', 'a') }),
  fc.record({ var: fc.constantFrom('n', 'b'), plus: fc.integer({ min: -3, max: 4 }) }),
);
const tile: fc.Arbitrary<CardTile> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ number, suit }) },
  fc.record({
    wind: fc.oneof(fc.constantFrom(...WINDS), fc.record({ var: fc.constantFrom('v', 'w', 'wind1') })),
  }),
  fc.record({
    dragon: fc.oneof(
      fc.constantFrom(...DRAGONS),
      fc.record({ var: fc.constantFrom('x', 'dragon2') }),
      fc.record({ matching: fc.constantFrom('p', 'q') }),
    ),
  }),
  fc.constantFrom<CardTile>({ flower: true }, { zero: true }),
  fc.record({ yearDigit: fc.constantFrom(0, 1, 2, 3), suit }),
);
/** Ways to part 14 tiles into groups. */
const SIZES = [
  [5, 5, 4],
  [4, 3, 4, 3],
  [2, 3, 4, 5],
  [6, 5, 3],
  [2, 3, 2, 3, 4],
  [1, 3, 3, 1, 3, 3],
  [2, 2, 2, 2, 2, 2, 2],
  [4, 1, 1, 4, 1, 1, 2],
];

const DOMAINS: Readonly<Record<'number' | 'suit' | 'dragon' | 'wind', fc.Arbitrary<CardDomain>>> = {
  number: fc.oneof(
    fc.record({ from: fc.constantFrom(...NUMBERS), to: fc.constantFrom(...NUMBERS) }),
    fc.record({ numbers: fc.array(fc.constantFrom(...NUMBERS), { minLength: 1, maxLength: 4 }) }),
  ),
  suit: fc.record({ suits: fc.array(fc.constantFrom(...SUITS), { minLength: 1, maxLength: 3 }) }),
  dragon: fc.record({ dragons: fc.array(fc.constantFrom(...DRAGONS), { minLength: 1, maxLength: 3 }) }),
  wind: fc.record({ winds: fc.array(fc.constantFrom(...WINDS), { minLength: 1, maxLength: 4 }) }),
};

/** Of the right structure; whether the set can make it is another matter. */
export const drawnPattern: fc.Arbitrary<CardPattern> = fc
  .record({
    sizes: fc.constantFrom(...SIZES),
    tiles: fc.array(tile, { minLength: 8, maxLength: 8 }),
    points: fc.integer({ min: 0, max: 1000 }),
    concealed: fc.boolean(),
    limited: fc.boolean(),
  })
  .chain(({ sizes, tiles, points, concealed, limited }) => {
    const groups = sizes.map((size, nth) => ({ size, tile: tiles[nth]! }));
    const pattern: CardPattern = { id: 'drawn', section: 'drawn', points, concealed, groups };
    const uses = variableUses(pattern);
    if (!limited || uses.length === 0) return fc.constant(pattern);
    const { name, kind } = uses[uses.length - 1]!;
    return DOMAINS[kind].map((domain): CardPattern => ({ ...pattern, where: { [name]: domain } }));
  });
