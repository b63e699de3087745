// What the steady player goes by: weights of hands against a count of each hand by itself, and the fitted policy's origin.
import { describe, expect, it } from 'vitest';
import type { Hand } from '../../shared-engine/card/compiled.ts';
import { createHandWeights } from '../../shared-engine/kernels/hand-weights/reference.ts';
import { FITTED_SELECTION } from '../../shared-engine/kernels/pass-selection/fitted.ts';
import { drawn, stream } from '../../shared-engine/rules/deal/random.ts';
import { type Bag, bagOf, FULL_SET, facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../shared-engine/rules/tiles/face.ts';
import { randomCard } from '../kit/random-card.ts';

const card = randomCard('weights', 12, 6);
const { steps } = FITTED_SELECTION;

/** Tiles that the rack matches with its jokers, and the most that singles and pairs let it match. */
function fitOf({ singles, groups }: Hand, rack: Bag): { matched: number; limit: number } {
  let all = rack[JOKER_INDEX]!;
  let limit = 0;
  for (let face = 0; face < FACE_COUNT; face++) {
    all += face === JOKER_INDEX ? 0 : Math.min(rack[face]!, singles[face]! + groups[face]!);
    limit += groups[face]! + (face === JOKER_INDEX ? 0 : Math.min(rack[face]!, singles[face]!));
  }
  return { matched: Math.min(all, limit), limit };
}

function halvings(hand: Hand, rack: Bag): number {
  const { matched, limit } = fitOf(hand, rack);
  if (matched === 0) return Number.POSITIVE_INFINITY;
  const concealed = card.patterns[hand.pattern]!.concealed ? steps.concealed : 0;
  return steps.tile * (14 - matched) + steps.pair * Math.max(0, 13 - limit) + concealed;
}

describe('the weights of hands', () => {
  const random = stream('weights', 'racks');
  const racks = Array.from({ length: 24 }, (_, nth) =>
    bagOf(drawn(facesOf(FULL_SET), 4 + (nth % 11), random)),
  );

  it('are halved by tiles to go, by tiles lacking in singles and pairs, and where a pattern is concealed', () => {
    const weights = createHandWeights(card, steps);
    for (const rack of racks) {
      weights.read(Uint8Array.from(rack), 0);
      const away = card.hands.map((hand) => halvings(hand, rack));
      const least = Math.min(...away);
      const weighed = away.map((each) => (each - least > 4 ? 0 : 128 / 2 ** (each - least)));
      expect(weights.total()).toBe(weighed.reduce((sum, weight) => sum + weight, 0));
      for (let face = 0; face < JOKER_INDEX; face++) {
        if (rack[face] === 0) continue;
        const rest = rack.map((count, other) => (other === face ? count - 1 : count));
        const moved = card.hands.map((hand, n) =>
          fitOf(hand, rest).matched < fitOf(hand, rack).matched ? weighed[n]! : 0,
        );
        expect(weights.loss(face)).toBe(moved.reduce((sum, weight) => sum + weight, 0));
      }
    }
  });

  it('were fitted by a command that is named beside them, with its seed', () => {
    const { command, seed } = FITTED_SELECTION.made;
    expect(command).toMatch(/^npm run build:pass-selection -- /);
    expect(command).toContain(`--seed ${seed} `);
  });
});
