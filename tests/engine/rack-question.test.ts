// Ten racks, one question: the racks, and what is said of an answer.
import { describe, expect, it } from 'vitest';
import { choiceVerdict } from '../../shared-engine/analysis/review/choice-verdict.ts';
import { bestAtFirstLook } from '../../shared-engine/analysis/review/sentences/pass.ts';
import {
  type AskedRack,
  askedRack,
  reviewAskedPass,
  sectionDistances,
} from '../../shared-engine/practice/rack-question.ts';
import { bagOf, sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { houseKernel } from '../kit/reviews.ts';

function rack(nth: number, wish: Parameters<typeof askedRack>[2] = null): AskedRack {
  const result = askedRack('ten', nth, wish, houseKernel);
  if (!result.ok) throw new Error(result.message);
  return result.asked;
}

describe('an asked rack', () => {
  it('is the same for the same seed, and holds 14 tiles where the seat is East and 13 where it is not', () => {
    const racks = Array.from({ length: 40 }, (_, nth) => rack(nth));
    expect(racks[3]).toEqual(rack(3));
    for (const { isEast, rack: tiles } of racks) expect(tiles.length).toBe(isEast ? 14 : 13);
    expect(new Set(racks.map(({ dealer }) => dealer)).size).toBe(4);
  });

  it('fits the wish, and a wish that cannot be met is answered in words', () => {
    for (let nth = 0; nth < 5; nth++) {
      const held = bagOf(rack(nth, { jokers: 2, flowers: { from: 1 } }).rack);
      expect(held[35]).toBe(2);
      expect(held[34]).toBeGreaterThanOrEqual(1);
      expect(sizeOf(held)).toBeGreaterThanOrEqual(13);
    }
    expect(askedRack('ten', 1, { kongs: 4 }, houseKernel)).toMatchObject({ ok: false });
  });
});

describe('an answer', () => {
  it('that is the best of the first answer is told so, and another one is shown the better pass', () => {
    const asked = rack(1);
    const any = asked.rack.filter((face) => face !== 'joker').slice(0, 3);
    const [first] = reviewAskedPass(asked, any, houseKernel).choices;
    if (first?.kind !== 'pass') throw new Error('no pass');
    const review = reviewAskedPass(asked, first.best.tiles, houseKernel);
    expect(review.choices.map(choiceVerdict)).toEqual(['best']);
    expect(review.story.choices).toHaveLength(1);
  });

  it('that is about as good is shown the best beside it, and how little that brings', () => {
    const shown = [1, 2, 3, 4].flatMap((nth) => {
      const asked = rack(nth);
      const any = asked.rack.filter((face) => face !== 'joker').slice(0, 3);
      const [first] = reviewAskedPass(asked, any, houseKernel).choices;
      if (first?.kind !== 'pass') throw new Error('no pass');
      return first.alternatives.map(({ tiles }) => {
        const [choice] = reviewAskedPass(asked, tiles, houseKernel).choices;
        const best = bestAtFirstLook(choice!);
        // Only of such a pass does the answer itself name no other.
        expect(best !== null).toBe(choiceVerdict(choice!) === 'just-as-good');
        if (best !== null) expect(best.tiles).toEqual(first.best.tiles);
        return best;
      });
    });
    const said = shown.flatMap((best) => (best === null ? [] : [best.sentences.join(' ')]));
    expect(said.length).toBeGreaterThan(4);
    for (const words of said) {
      expect(words).toMatch(
        /^The best at first look: pass .+\. It comes (hardly|0\.[12] tiles) closer to a hand on average, too little to matter\.$/,
      );
    }
  });

  it('that names sections is held against the distance of each, nearest first', () => {
    const distances = sectionDistances(rack(2).rack, houseKernel);
    expect(distances).toHaveLength(houseKernel.card.sections.length);
    const least = Math.min(...houseKernel.toGoByPattern(bagOf(rack(2).rack)));
    expect(distances[0]).toMatchObject({ toGo: least, inReach: true });
    expect(distances.map(({ toGo }) => toGo)).toEqual(
      distances.map(({ toGo }) => toGo).toSorted((a, b) => a - b),
    );
    for (const { toGo, inReach } of distances) expect(inReach).toBe(toGo <= least + 1);
  });
});
