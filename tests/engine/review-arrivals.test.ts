// What may arrive, held against fresh draws made here: only tiles that the seat had not seen.
import { describe, expect, test } from 'vitest';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { nearness } from '../../shared-engine/kernels/tiles-to-go/nearness.ts';
import { drawn, type Random, stream } from '../../shared-engine/rules/deal/random.ts';
import { addTo, type Bag, bagOf, facesOf, takeFrom } from '../../shared-engine/rules/tiles/bag.ts';
import { copiesOf, FACES, type Face } from '../../shared-engine/rules/tiles/face.ts';
import type { SeatRecord } from '../../shared-engine/rules/view/record.ts';
import { houseKernel, move, passesOf, records, reviewOf } from '../kit/reviews.ts';

/** Faces left of the set without these, as often as each is left; no joker. */
function notAmong(tiles: readonly Face[]): Face[] {
  const counts = bagOf(tiles);
  return FACES.flatMap((face, index) =>
    new Array<Face>(face === 'joker' ? 0 : Math.max(0, copiesOf(face) - counts[index]!)).fill(face),
  );
}

function meanNearness(rest: Bag, from: readonly Face[], size: number, random: Random): number {
  const DRAWS = 250;
  let sum = 0;
  for (let n = 0; n < DRAWS; n++) sum += nearness(houseKernel, addTo(rest, drawn(from, size, random)));
  return sum / DRAWS;
}

/** Nearness of each pass played less that of fresh arrivals from the tiles its seat had not seen. */
function misses(record: SeatRecord): number[] {
  const random = stream('fresh arrivals', JSON.stringify(record));
  const given: Face[] = [];
  return passesOf(reviewRound(record, houseKernel)).map(({ rack, played }) => {
    const from = notAmong([...rack, ...given]);
    given.push(...played.tiles);
    const rest = takeFrom(bagOf(rack), played.tiles)!;
    return played.nearness - meanNearness(rest, from, played.tiles.length, random);
  });
}

describe('arrivals', () => {
  const all = records('arrivals', 16).flatMap(misses);
  const mean = all.reduce((sum, miss) => sum + miss, 0) / all.length;

  test('are drawn evenly from what the seat neither held nor gave, without bias', () => {
    expect(all.length).toBeGreaterThan(60);
    expect(Math.abs(mean)).toBeLessThan(0.02);
  });

  test('are so many that no nearness is far from that of many fresh draws', () => {
    expect(Math.max(...all.map(Math.abs))).toBeLessThan(0.25);
  });
});

describe('a tile that cannot come', () => {
  const rack: readonly Face[] = [
    ...(['bam-3', 'bam-3', 'bam-3', 'bam-4', 'bam-4', 'bam-4', 'bam-5', 'bam-5', 'bam-6'] as const),
    ...(['east', 'north', 'red', 'dot-9'] as const),
  ];
  const strays: readonly Face[] = ['east', 'north', 'red'];

  test('V1 B3 is one that the seat gave away knowingly', () => {
    const afterGiving = (gave: readonly Face[]) => {
      // The same rack at the second pass, once with a tile it needs given away before, once with strays.
      const start = facesOf(addTo(takeFrom(bagOf(rack), strays)!, gave));
      const second = move('first-across', strays, ['dot-1', 'dot-4', 'crak-8']);
      return passesOf(reviewOf(start, [move('first-right', gave, strays), second]))[1]!;
    };
    const needed = afterGiving(['bam-6', 'bam-6', 'bam-6']);
    const useless = afterGiving(['crak-1', 'dot-2', 'crak-7']);
    expect(needed.rack).toEqual(useless.rack);
    expect(needed.played.nearness).toBeLessThan(useless.played.nearness);
  });
});
