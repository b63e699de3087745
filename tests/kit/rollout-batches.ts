// Choices of every kind in random deals, as rollouts take them.
import type { Neighbors, RolloutBatch, RolloutEnd } from '../../shared-engine/analysis/rollouts/batch.ts';
import { type Random, shuffled } from '../../shared-engine/rules/deal/random.ts';
import { SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import { mayPassBlind, STEPS, type Step } from '../../shared-engine/rules/exchange/schedule.ts';
import { type ExchangeTerms, STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { type Bag, bagOf, FULL_SET, facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { faceIndex } from '../../shared-engine/rules/tiles/face.ts';

export interface BatchShape {
  readonly step: Step;
  readonly seat: Seat;
  readonly dealer: Seat;
  readonly deals: number;
  readonly alternatives: number;
  /** As usual where left out. */
  readonly terms?: ExchangeTerms;
  readonly end?: RolloutEnd;
  readonly neighbors?: Neighbors;
}

/** Random deals, each with its own random legal actions; tiles agreed on in a courtesy pass are 2 and 1. */
export function anyBatch(shape: BatchShape, random: Random): RolloutBatch {
  const { step, seat, dealer, alternatives, terms = STANDARD_TERMS.friends } = shape;
  const agreed = step === 'courtesy-pass' ? [2, 1, 2, 1] : [0, 0, 0, 0];
  const dealt = Array.from({ length: shape.deals }, () => dealtRacks(dealer, random));
  return {
    seed: random.below(2 ** 32),
    seat,
    dealer,
    terms,
    step: STEPS.indexOf(step),
    agreed,
    end: shape.end ?? 'close',
    neighbors: shape.neighbors ?? 'alike',
    count: shape.deals,
    alternatives,
    keys: Uint32Array.from(dealt, () => random.below(2 ** 32)),
    deals: Uint8Array.from(dealt.flat(2)),
    actions: Int8Array.from(
      dealt.flatMap((racks) =>
        Array.from({ length: alternatives }, () =>
          anyAction({ step, terms, agreed: agreed[seat]! }, racks[seat]!, random),
        ).flat(),
      ),
    ),
  };
}

function dealtRacks(dealer: Seat, random: Random): Bag[] {
  const tiles = shuffled(facesOf(FULL_SET), random);
  return SEATS.map((seat) => bagOf(tiles.splice(0, seat === dealer ? 14 : 13)));
}

function anyAction(
  { step, terms, agreed }: { readonly step: Step; readonly terms: ExchangeTerms; readonly agreed: number },
  rack: Bag,
  random: Random,
): number[] {
  if (step === 'vote') return [-1, -1, -1, random.below(2)];
  if (step === 'courtesy-ask') return [-1, -1, -1, random.below(4)];
  const blind = mayPassBlind(step, terms);
  const size = step === 'courtesy-pass' ? agreed : blind ? random.below(4) : 3;
  const own = shuffled(
    facesOf(rack).filter((face) => face !== 'joker'),
    random,
  ).slice(0, size);
  return [...own.map(faceIndex), -1, -1, -1].slice(0, 3).concat(size);
}
