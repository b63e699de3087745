// The house card keeps to its own format, to the set of 152 tiles and to the balance it promises.
import { expect, test } from 'vitest';
import {
  copiesOf,
  FACES,
  HOUSE_CARD,
  houseCard,
  parseCard,
  sizeOf,
  type Target,
} from '../../shared-engine/index.ts';
import { handText } from '../kit/card-hands.ts';
import { proof } from '../prove/proofs/card.ts';

/** What is wrong with a target, in words; nothing for one that the set can make. */
function objections({ singles, groups }: Target): string[] {
  const beyond = FACES.map((face, index) => Math.max(0, singles[index]! + groups[index]! - copiesOf(face)));
  return [
    ...(sizeOf(singles) + sizeOf(groups) === 14 ? [] : ['not 14 tiles']),
    ...(FACES.every((face, index) => singles[index]! <= copiesOf(face)) ? [] : ['too few naturals']),
    ...(sizeOf(beyond) <= copiesOf('joker') ? [] : ['too many jokers']),
    ...(singles[35] === 0 && groups[35] === 0 ? [] : ['a joker as a wanted face']),
    ...(groups.every((count) => count === 0 || count >= 3) ? [] : ['a group too small for a joker']),
  ];
}

test('the validator accepts it from JSON, unchanged', () => {
  const json: unknown = JSON.parse(JSON.stringify(HOUSE_CARD));
  expect(parseCard(json)).toEqual({ ok: true, card: HOUSE_CARD });
});

test('every target has 14 tiles and the set can make it (S1)', () => {
  expect(houseCard().targets.flatMap(objections)).toEqual([]);
});

test('every line compiles, in the order of the card', () => {
  const { lines, targets, families } = houseCard();
  expect(lines.map(({ id }) => id)).toEqual(HOUSE_CARD.lines.map(({ id }) => id));
  expect(lines.map(({ family }) => families[family]!.id)).toEqual(
    HOUSE_CARD.lines.map(({ family }) => family),
  );
  const order = targets.map(({ line }) => line);
  expect(order).toEqual([...order].sort((a, b) => a - b));
  expect(new Set(order).size).toBe(lines.length);
});

test('no hand belongs to two lines', () => {
  const hands = houseCard().targets.map(handText);
  expect(new Set(hands).size).toBe(hands.length);
});

test('flowers are wanted in most families, and jokers are of no use in singles and pairs', () => {
  const { families, lines, targets } = houseCard();
  const flower = FACES.indexOf('flower');
  const withFlowers = new Set(
    targets
      .filter(({ singles, groups }) => singles[flower]! + groups[flower]! > 0)
      .map(({ line }) => lines[line]!.family),
  );
  expect(withFlowers.size).toBeGreaterThanOrEqual(7);
  const pairs = families.findIndex(({ id }) => id === 'pairs');
  const ofPairs = targets.filter(({ line }) => lines[line]!.family === pairs);
  expect(ofPairs.length).toBeGreaterThan(0);
  expect(ofPairs.every(({ groups }) => sizeOf(groups) === 0)).toBe(true);
});

test('size, balance and points hold as the proof measures them', async () => {
  const rows = await proof.run({ seed: 'another seed', size: 'small' });
  expect(rows.filter(({ ok }) => !ok)).toEqual([]);
  const shares = rows.filter(({ what }) => what.includes('nearest in')).map(({ value }) => Number(value));
  expect(shares).toHaveLength(HOUSE_CARD.families.length);
  expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(100, 0);
});
