// How many different three-tile passes a rack has, against the generating function of elementary combinatorics.
import { expect, test } from 'vitest';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { SEATS } from '../../shared-engine/rules/deal/seat.ts';
import { passObjection } from '../../shared-engine/rules/exchange/legality.ts';
import type { Bag } from '../../shared-engine/rules/tiles/bag.ts';
import { FACES, type Face, JOKER_INDEX } from '../../shared-engine/rules/tiles/face.ts';
import { seedNamed } from '../kit/rounds.ts';

/** The coefficient of x³ in ∏(1 + x + … + x^c) over the faces without the joker. */
function coefficientOfCube(rack: Bag): number {
  let polynomial = [1, 0, 0, 0];
  rack.forEach((count, face) => {
    if (face === JOKER_INDEX) return;
    polynomial = polynomial.map((_, power) => {
      let sum = 0;
      for (let taken = 0; taken <= Math.min(count, power); taken++) sum += polynomial[power - taken]!;
      return sum;
    });
  });
  return polynomial[3]!;
}

/** Every multiset of three faces that `legality` does not object to. */
function passesAllowed(rack: Bag): number {
  let allowed = 0;
  for (let a = 0; a < FACES.length; a++) {
    for (let b = a; b < FACES.length; b++) {
      for (let c = b; c < FACES.length; c++) {
        const tiles: Face[] = [FACES[a]!, FACES[b]!, FACES[c]!];
        if (passObjection(rack, { count: 3, blindAllowed: false }, tiles, 0) === null) allowed++;
      }
    }
  }
  return allowed;
}

test('C1 C2 the legal passes of dealt racks are as many as the generating function says', () => {
  for (let n = 0; n < 10; n++) {
    const { racks } = dealTiles({ seed: seedNamed(`passes ${n}`), dealer: 0 });
    for (const seat of SEATS) expect(passesAllowed(racks[seat])).toBe(coefficientOfCube(racks[seat]));
  }
});

test('C1 fourteen different tiles have 364 passes, the most there can be', () => {
  const rack = FACES.map((_, face) => (face < 14 ? 1 : 0));
  expect(coefficientOfCube(rack)).toBe(364);
  expect(passesAllowed(rack)).toBe(364);
});
