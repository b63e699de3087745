// Sentences about a constraint: why no rack can meet it, why none was found, and how rare such racks are.
import { describe, expect, test } from 'vitest';
import { constraintText, rarityText } from '../../shared-engine/drill/constraint-messages.ts';
import type { Constraint } from '../../shared-engine/drill/format.ts';
import type { Rarity } from '../../shared-engine/drill/rarity.ts';
import { sampleRack, sampleRackWithRarity } from '../../shared-engine/drill/sampled.ts';
import { houseKernel } from '../kit/reviews.ts';

function rejection(constraint: Constraint, size = 13) {
  const drawn = sampleRack({ constraint: constraint, size: size, kernel: houseKernel }, 'refusal');
  if (drawn.ok) throw new Error('a rack was found');
  return drawn;
}

describe('an impossible constraint is rejected with the parts that exclude each other', () => {
  test.each<[Constraint, string]>([
    [
      { pairs: 0, pungs: { from: 1 }, section: 'one-suit' },
      'no rack of 13 tiles can have these together: no pair and 1 pung or more; change one of them. A kong is also a pung, and a pung also a pair.',
    ],
    [
      { jokers: { from: 7 }, flowers: 8, inARow: { to: 3 } },
      'no rack of 13 tiles can have these together: 7 jokers or more and 8 flowers; change one of them.',
    ],
    [{ kongs: 4 }, 'no rack of 13 tiles can have 4 kongs; choose something else.'],
    [{ toGo: 0 }, 'no rack of 13 tiles starts with 0 tiles to go; choose 1 or more.'],
    [{ likeNumbers: 1 }, 'no rack of 13 tiles can have 1 like number; choose something else.'],
    [
      { inARow: 0, likeNumbers: { from: 2 } },
      'no rack of 13 tiles can have these together: no numbered tile and 2 like numbers or more; change one of them.',
    ],
    [
      { inARow: { from: 9 }, likeNumbers: { from: 6 }, jokers: { to: 2 } },
      'no rack of 13 tiles can have these together: 9 tiles in a row in one suit or more and 6 like numbers or more; change one of them.',
    ],
    [
      { flowers: { from: 2 }, pairs: 0 },
      'no rack of 13 tiles can have these together: 2 flowers or more and no pair; change one of them.',
    ],
    [
      { toGo: { to: 2 }, jokers: 0, pairs: 0 },
      'no rack of 13 tiles can have these together: no joker, no pair and at most 2 tiles to go; change one of them.',
    ],
    [
      { toGo: 14, jokers: { from: 3, to: 4 } },
      'no rack of 13 tiles can have these together: 3 to 4 jokers and 14 tiles to go; change one of them.',
    ],
  ])('%j', (constraint, message) => {
    expect(rejection(constraint)).toMatchObject({ code: 'impossible-constraint', message });
    expect(sampleRackWithRarity({ constraint: constraint, size: 13, kernel: houseKernel }, 'other')).toEqual(
      rejection(constraint),
    );
  });

  test('a constraint that 13 tiles cannot meet may be met by the dealer’s 14', () => {
    const constraint: Constraint = { kongs: 3, pairs: 4 };
    expect(rejection(constraint).code).toBe('impossible-constraint');
    expect(sampleRack({ constraint: constraint, size: 14, kernel: houseKernel }, 'refusal').ok).toBe(true);
  });
});

test('a constraint too rare to meet says after how many racks, how rare at least, and what to loosen', () => {
  const { code, parts, message } = rejection({ toGo: { from: 12 }, jokers: { to: 1 } });
  expect(code).toBe('too-rare');
  expect(parts).toEqual(['toGo']);
  expect(message).toMatch(
    /^such racks are too rare to find: none of the \d\d,\d{3} racks drawn fits, so fewer than 1 of [\d,]+ racks of 13 tiles does\. Loosen "12 tiles to go or more" first: none of \d\d,\d{3} racks had that\.$/,
  );
});

test('the part to loosen is the one that the fewest racks had', () => {
  const { parts, message } = rejection({ inARow: 9, jokers: 2, likeNumbers: { from: 3 } });
  expect(parts).toEqual(['inARow']);
  expect(message).toContain('Loosen "9 tiles in a row in one suit" first');
});

describe('how rare racks are, in words', () => {
  const rarity = (share: number, low: number, high: number, drawn = 2000): Rarity => ({
    share,
    low,
    high,
    drawn,
    fitted: 1,
  });

  test.each<[Rarity, string]>([
    [rarity(1, 1, 1, 0), '100% of racks fit'],
    [rarity(0.1714, 0.1714, 0.1714, 0), '17% of racks fit'],
    [rarity(0.0435, 0.0435, 0.0435, 0), '1 rack of 23 fits'],
    [rarity(0.366, 0.346, 0.388), 'about 37% of racks fit (between 35% and 39%)'],
    [rarity(0.00294, 0.00212, 0.00413), 'about 1 rack of 340 fits (between 1 of 472 and 1 of 242)'],
    [rarity(2.83e-12, 2.83e-12, 2.83e-12, 0), '1 rack of 353,000,000,000 fits'],
    [rarity(0, 0, 0.0001), 'fewer than 1 rack of 10,000 fits'],
  ])('%j', (given, text) => {
    expect(rarityText(given)).toBe(text);
  });

  test('the interval of a rarity holds its share', () => {
    for (const constraint of [
      { inARow: { from: 5 } },
      { toGo: 6 },
      { section: 'two-winds' },
    ] satisfies Constraint[]) {
      const told = sampleRackWithRarity({ constraint: constraint, size: 13, kernel: houseKernel }, 'rarity');
      if (!told.ok) throw new Error(told.message);
      const { low, share, high, drawn, fitted } = told.rarity;
      expect(drawn).toBeGreaterThanOrEqual(2000);
      expect(fitted).toBeGreaterThan(0);
      expect(low).toBeLessThan(share);
      expect(share).toBeLessThan(high);
    }
  });
});

test('a constraint in words names each of its parts, and sections by their names', () => {
  const constraint: Constraint = {
    jokers: 1,
    flowers: { from: 2 },
    pairs: { from: 1, to: 2 },
    kongs: 0,
    inARow: { from: 4 },
    toGo: { to: 6 },
    section: 'one-suit',
  };
  const [oneSuit] = houseKernel.card.sections.filter(({ id }) => id === 'one-suit');
  expect(constraintText(constraint, houseKernel)).toBe(
    `1 joker, 2 flowers or more, 1 to 2 pairs, no kong, 4 tiles in a row in one suit or more, at most 6 tiles to go and "${oneSuit!.name}" as the closest section`,
  );
  expect(constraintText({}, houseKernel)).toBe('anything');
});
