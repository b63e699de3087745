// The card beside the rack agrees with the engine's own count of tiles to go, line by line.
import { describe, expect, it } from 'vitest';
import { linesAtHand, nearestFirst } from '../../client/cards/card-matches.ts';
import { createPlainKernel, facesOf, houseCard } from '../../shared-engine/index.ts';
import { opened } from '../kit/rounds.ts';

const card = houseCard();
const kernel = createPlainKernel(card);
const racks = ['one', 'two', 'three'].flatMap((name) => opened(name).round.racks);

describe('lines at hand', () => {
  it('shows each line as near as the kernel says, with fourteen tiles', () => {
    for (const rack of racks) {
      const lines = linesAtHand(card, rack);
      expect(lines.map(({ toGo }) => toGo)).toEqual([...kernel.toGoByLine(rack)]);
      expect(new Set(lines.map(({ tiles }) => tiles.length))).toEqual(new Set([14]));
    }
  });

  it('lights exactly the tiles that count, and no tile twice', () => {
    for (const rack of racks) {
      const held = facesOf(rack);
      for (const { tiles, toGo } of linesAtHand(card, rack)) {
        expect(tiles.filter(({ light }) => light === 'missing')).toHaveLength(toGo);
        const left = [...held];
        for (const { face, light } of tiles) {
          if (light === 'missing') continue;
          const at = left.indexOf(light === 'joker' ? 'joker' : face);
          expect(at).toBeGreaterThanOrEqual(0);
          left.splice(at, 1);
        }
      }
    }
  });

  it('puts the nearest first', () => {
    const order = nearestFirst(linesAtHand(card, racks[0]!)).map(({ toGo }) => toGo);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(order[0]).toBe(kernel.toGo(racks[0]!));
  });
});
