// The card beside the rack agrees with the engine's own count of tiles to go, pattern by pattern.
import { describe, expect, it } from 'vitest';
import { cardMatches, nearestFirst } from '../../client/cards/card-matches.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { createReferenceKernel } from '../../shared-engine/kernels/tiles-to-go/reference.ts';
import { facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { opened } from '../kit/rounds.ts';

const card = houseCard();
const kernel = createReferenceKernel(card);
const racks = ['one', 'two', 'three'].flatMap((name) => opened(name).round.racks);

describe('the hands of the card', () => {
  it('each hand of the card is shown as near as the kernel says, with fourteen tiles', () => {
    for (const rack of racks) {
      const matches = cardMatches(card, rack);
      expect(matches.map(({ toGo }) => toGo)).toEqual([...kernel.toGoByPattern(rack)]);
      expect(new Set(matches.map(({ tiles }) => tiles.length))).toEqual(new Set([14]));
    }
  });

  it('exactly the tiles that count are bright, and no tile twice', () => {
    for (const rack of racks) {
      const held = facesOf(rack);
      for (const { tiles, toGo } of cardMatches(card, rack)) {
        expect(tiles.filter(({ status }) => status === 'missing')).toHaveLength(toGo);
        const left = [...held];
        for (const { face, status } of tiles) {
          if (status === 'missing') continue;
          const at = left.indexOf(status === 'joker' ? 'joker' : face);
          expect(at).toBeGreaterThanOrEqual(0);
          left.splice(at, 1);
        }
      }
    }
  });

  it('the nearest hand comes first', () => {
    const order = nearestFirst(cardMatches(card, racks[0]!)).map(({ toGo }) => toGo);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(order[0]).toBe(kernel.toGo(racks[0]!));
  });
});
