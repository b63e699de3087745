// The house card fits its format and the set of 152 tiles, and its sections are balanced.
import { expect, test } from 'vitest';
import type { Hand } from '../../shared-engine/card/compiled.ts';
import { HOUSE_CARD, houseCard } from '../../shared-engine/card/house/card.ts';
import { parseCard } from '../../shared-engine/card/parse.ts';
import { sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { copiesOf, FACES } from '../../shared-engine/rules/tiles/face.ts';
import { handText } from '../kit/card-hands.ts';
import { proof } from '../prove/proofs/card.ts';

/** What is wrong with a hand, in words; nothing for one that the set can make. */
function objections({ singles, groups }: Hand): string[] {
  const beyond = FACES.map((face, index) => Math.max(0, singles[index]! + groups[index]! - copiesOf(face)));
  return [
    ...(sizeOf(singles) + sizeOf(groups) === 14 ? [] : ['not 14 tiles']),
    ...(FACES.every((face, index) => singles[index]! <= copiesOf(face)) ? [] : ['too few naturals']),
    ...(sizeOf(beyond) <= copiesOf('joker') ? [] : ['too many jokers']),
    ...(singles[35] === 0 && groups[35] === 0 ? [] : ['a joker as a wanted face']),
    ...(groups.every((count) => count === 0 || count >= 3) ? [] : ['a group too small for a joker']),
  ];
}

test('the parser accepts the house card as JSON, unchanged', () => {
  const json: unknown = JSON.parse(JSON.stringify(HOUSE_CARD));
  expect(parseCard(json)).toEqual({ ok: true, card: HOUSE_CARD });
});

test('S1 every hand of the house card has 14 tiles that the set can make', () => {
  expect(houseCard().hands.flatMap(objections)).toEqual([]);
});

test('every pattern of the house card compiles, in the order of the card', () => {
  const { patterns, hands, sections } = houseCard();
  expect(patterns.map(({ id }) => id)).toEqual(HOUSE_CARD.patterns.map(({ id }) => id));
  expect(patterns.map(({ section }) => sections[section]!.id)).toEqual(
    HOUSE_CARD.patterns.map(({ section }) => section),
  );
  const order = hands.map(({ pattern }) => pattern);
  expect(order).toEqual([...order].sort((a, b) => a - b));
  expect(new Set(order).size).toBe(patterns.length);
});

test('no hand of the house card belongs to two patterns', () => {
  const hands = houseCard().hands.map(handText);
  expect(new Set(hands).size).toBe(hands.length);
});

test('most sections of the house card want flowers, and most have a hand of pairs, which has no use for jokers', () => {
  const { patterns, hands } = houseCard();
  const flower = FACES.indexOf('flower');
  const withFlowers = new Set(
    hands
      .filter(({ singles, groups }) => singles[flower]! + groups[flower]! > 0)
      .map(({ pattern }) => patterns[pattern]!.section),
  );
  expect(withFlowers.size).toBeGreaterThanOrEqual(7);
  const ofPairs = hands.filter(({ groups }) => sizeOf(groups) === 0).map(({ pattern }) => patterns[pattern]!);
  expect(new Set(ofPairs.map(({ section }) => section)).size).toBeGreaterThanOrEqual(5);
  expect(ofPairs.every(({ concealed }) => concealed)).toBe(true);
});

test('size, balance and points of the house card are as its proof demands', async () => {
  const rows = await proof.run({ seed: 'another seed', size: 'small' });
  expect(rows.filter(({ ok }) => !ok)).toEqual([]);
  const shares = rows.filter(({ what }) => what.includes('nearest in')).map(({ value }) => Number(value));
  expect(shares).toHaveLength(HOUSE_CARD.sections.length);
  expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(100, 0);
});
