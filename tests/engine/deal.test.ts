// The deal: seeds, shuffles and racks.
import { describe, expect, test } from 'vitest';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS } from '../../shared-engine/rules/deal/seat.ts';
import { decide, openRound } from '../../shared-engine/rules/exchange/decide.ts';
import { begin } from '../../shared-engine/rules/exchange/evolve.ts';
import { addTo, FULL_SET, sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { seedNamed } from '../kit/rounds.ts';

describe('the deal', () => {
  test('D1 wall and racks together are the whole set, for every dealer', () => {
    for (const dealer of SEATS) {
      const { racks, wall } = dealTiles({ seed: seedNamed(`set ${dealer}`), dealer });
      const all = racks.reduce(
        (sum, rack) => sum.map((count, i) => count + rack[i]!),
        addTo([...racks[0]].fill(0), wall),
      );
      expect(all).toEqual(FULL_SET);
    }
  });

  test('D2 the dealer gets 14 tiles, the others 13, and 99 stay in the wall', () => {
    for (const dealer of SEATS) {
      const { racks, wall } = dealTiles({ seed: seedNamed('sizes'), dealer });
      for (const seat of SEATS) expect(sizeOf(racks[seat])).toBe(seat === dealer ? 14 : 13);
      expect(wall).toHaveLength(99);
    }
  });

  test('D1 the same seed gives the same deal, another seed another one', () => {
    const deal = { seed: seedNamed('one'), dealer: 2 } as const;
    expect(dealTiles(deal)).toEqual(dealTiles(deal));
    expect(dealTiles(deal)).not.toEqual(dealTiles({ ...deal, seed: seedNamed('two') }));
  });

  test('drawing from one stream of a seed does not change its other streams', () => {
    const alone = stream('seed', 'a');
    const first = [alone.below(1000), alone.below(1000)];
    const beside = stream('seed', 'a');
    const other = stream('seed', 'b');
    const second = [beside.below(1000)];
    other.below(1000);
    second.push(beside.below(1000));
    expect(second).toEqual(first);
  });
});

describe('a new round', () => {
  const deal = { seed: seedNamed('a new round'), dealer: 1 } as const;

  test('a round begins at first right with the racks of its deal', () => {
    const event = openRound(deal, { revealRacks: false });
    const round = begin(event);
    expect(round.phase === 'passing' && round.step).toBe('first-right');
    expect(round.racks).toEqual(dealTiles(deal).racks);
    expect(decide(round, { kind: 'vote', step: 'vote', go: true, seat: 0, by: 'player' }).ok).toBe(false);
  });
});
