// The card validator against anything: it never throws, and what it accepts compiles to hands the set can make.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compileCard } from '../../shared-engine/card/compile.ts';
import type { CardFile } from '../../shared-engine/card/format.ts';
import { HOUSE_CARD } from '../../shared-engine/card/house/card.ts';
import { parseCard } from '../../shared-engine/card/parse.ts';
import { sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { copiesOf, DRAGONS, FACES, NUMBERS, SUITS, WINDS } from '../../shared-engine/rules/tiles/face.ts';
import { handsByBruteForce, handText } from '../kit/card-hands.ts';

function holds(json: unknown): void {
  const parsed = parseCard(json);
  if (parsed.ok) {
    expectPossible(parsed.card);
    return;
  }
  expect(parsed.problems.length).toBeGreaterThan(0);
  for (const { message } of parsed.problems) {
    expect(message).toMatch(/^(Card|Pattern (\d+|"[a-z0-9-]+")(, group \d+)?): .+\.$/s);
  }
}

function expectPossible(card: CardFile): void {
  const { patterns, hands } = compileCard(card);
  expect(new Set(hands.map(({ pattern }) => pattern)).size).toBe(patterns.length);
  const impossible = hands.filter(
    ({ singles, groups }) =>
      sizeOf(singles) + sizeOf(groups) !== 14 ||
      singles.some((count, face) => count > copiesOf(FACES[face]!)),
  );
  expect(impossible).toEqual([]);
}

test('the parser answers any value with a card or with problems', () => {
  fc.assert(fc.property(fc.oneof(fc.anything(), fc.jsonValue({ maxDepth: 12 })), holds), {
    seed: 1,
    numRuns: 3_000,
  });
});

/** The house card with one value somewhere inside changed or renamed. */
const damaged = fc
  .record({
    steps: fc.array(fc.nat(), { minLength: 1, maxLength: 7 }),
    value: fc.oneof(fc.jsonValue(), fc.constantFrom('p', 'n', 'bam', 0, 10, -1, 1e9, '__proto__', [], {})),
    rename: fc.option(fc.constantFrom('__proto__', 'constructor', 'toString', 'var', 'suit', 'x')),
  })
  .map(({ steps, value, rename }) => {
    const card: unknown = JSON.parse(
      JSON.stringify({ ...HOUSE_CARD, patterns: HOUSE_CARD.patterns.slice(0, 6) }),
    );
    let place: unknown = card;
    for (const [depth, step] of steps.entries()) {
      if (typeof place !== 'object' || place === null) break;
      const entries: [string, unknown][] = Object.entries(place);
      const entry = entries[step % Math.max(1, entries.length)];
      if (entry === undefined) break;
      const [key, inner] = entry;
      if (depth === steps.length - 1 || typeof inner !== 'object') {
        Object.defineProperty(place, rename ?? key, {
          value,
          enumerable: true,
          configurable: true,
          writable: true,
        });
        break;
      }
      place = inner;
    }
    return card;
  });

test('the parser answers a damaged house card with a card or with problems', () => {
  fc.assert(fc.property(damaged, holds), { seed: 2, numRuns: 1_500 });
});

const suit = fc.oneof(fc.constantFrom(...SUITS), fc.record({ var: fc.constantFrom('p', 'q', 'r') }));
const number = fc.oneof(
  fc.constantFrom(...NUMBERS),
  fc.record({ var: fc.constantFrom('n', 'm'), plus: fc.integer({ min: -3, max: 3 }) }),
);
const tile = fc.oneof(
  fc.record({ number, suit }),
  fc.record({ wind: fc.oneof(fc.constantFrom(...WINDS), fc.record({ var: fc.constantFrom('v', 'w') })) }),
  fc.record({
    dragon: fc.oneof(
      fc.constantFrom(...DRAGONS),
      fc.record({ var: fc.constantFrom('x', 'y') }),
      fc.record({ matching: fc.constantFrom('p', 'q') }),
    ),
  }),
  fc.constant({ flower: true }),
  fc.constant({ zero: true }),
  fc.record({ yearDigit: fc.integer({ min: 0, max: 3 }), suit }),
);
const SHAPES = [
  [5, 5, 4],
  [4, 4, 3, 3],
  [5, 4, 3, 2],
  [3, 3, 3, 2, 2, 1],
  [2, 2, 2, 2, 2, 2, 2],
];
const wellFormed = fc
  .record({ shape: fc.constantFrom(...SHAPES), tiles: fc.array(tile, { minLength: 7, maxLength: 7 }) })
  .map(({ shape, tiles }) => ({
    format: 'quadrille-card/1',
    id: 'drawn',
    name: 'Drawn card',
    parameters: { year: 2047 },
    sections: [{ id: 'drawn', name: 'Drawn' }],
    patterns: [
      {
        id: 'drawn',
        section: 'drawn',
        points: 1,
        concealed: false,
        groups: shape.map((size, index) => ({ size, tile: tiles[index] })),
      },
    ],
  }));

test('a random pattern is rejected, or compiles to exactly the hands that brute force finds', () => {
  let accepted = 0;
  fc.assert(
    fc.property(wellFormed, (json) => {
      const parsed = parseCard(json);
      if (!parsed.ok) {
        expect(parsed.problems.every(({ code }) => code !== 'not-in-format')).toBe(true);
        return;
      }
      accepted++;
      const ours = compileCard(parsed.card).hands.map(handText);
      expect(new Set(ours)).toEqual(handsByBruteForce(parsed.card.patterns[0]!, 2047));
      expect(new Set(ours).size).toBe(ours.length);
    }),
    { seed: 3, numRuns: 300 },
  );
  expect(accepted).toBeGreaterThan(100);
});
