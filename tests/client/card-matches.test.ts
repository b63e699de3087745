// The card beside the rack agrees with the engine's own count of tiles to go, pattern by pattern.
import { describe, expect, it } from 'vitest';
import { cardMatches, likeliestMatches } from '../../client/cards/card-matches.ts';
import { matchSummary } from '../../client/cards/strings.ts';
import { tileName } from '../../client/tiles/tile-names.ts';
import { reachOf } from '../../shared-engine/analysis/coach/reach.ts';
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

  it('hands come in the order in which sampled deals reach them, a concealed one of pairs not before an open one as near', () => {
    const rack = racks[0]!;
    const matches = cardMatches(card, rack);
    const reach = reachOf(card, rack, []);
    expect(reachOf(card, rack, [])).toEqual(reach);
    const rates = likeliestMatches(card, matches, reach).map((match) => reach[matches.indexOf(match)]!.rate);
    expect(rates).toEqual(rates.toSorted((a, b) => b - a));
    // Of hands that are equally far, those are reached most whose groups a discard or a joker may complete.
    const mean = (concealed: boolean) => {
      const same = matches.filter((match) => match.toGo === 8 && match.concealed === concealed);
      return same.reduce((sum, match) => sum + reach[matches.indexOf(match)]!.rate, 0) / same.length;
    };
    expect(mean(false)).toBeGreaterThan(mean(true));
  });

  it('a hand says what it lacks: how far away, how much by joker where any is, and which of its tiles are gone', () => {
    const matches = cardMatches(card, racks[0]!);
    const match = matches.find(({ tiles }) => tiles.every(({ status }) => status !== 'joker'))!;
    const { face } = match.tiles.find(({ status }) => status === 'missing')!;
    expect(matchSummary(match, [face, face, 'joker'])).toBe(
      `${match.toGo} away · ${match.points} points${match.concealed ? ' · concealed' : ''} · two ${tileName(face)} already gone`,
    );
    const gone = [face, face, face];
    expect(reachOf(card, racks[0]!, gone)[matches.indexOf(match)]!.left).toBeGreaterThanOrEqual(
      reachOf(card, racks[0]!, [])[matches.indexOf(match)]!.left,
    );
  });
});
